// say.h: a finished check as findings with their instructions. Inside core/timing only.
#pragma once

#include <vector>

#include "core/timing/check.h"
#include "core/timing/frame.h"

namespace flatwise::timing {

/// In the order to be said: fixed rotors, the shaft's stories, rotor by rotor, then what puts it right.
[[nodiscard]] std::vector<Finding> say_check(const Shaft& shaft, const Frame& frame, const Reading& reading,
                                             const Check& check, bool contradiction_is_a_tie);

}  // namespace flatwise::timing
