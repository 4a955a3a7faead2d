// stories.h: other ways to tell how the marks came to be so. Inside core/timing only.
#pragma once

#include <vector>

#include "core/timing/check.h"
#include "core/timing/frame.h"

namespace flatwise::timing {

/// Model      A story is told where it is shorter: one mistake and what it leaves over, against the fewest mistakes by the
///            definition's pattern (a rotor indexed wrong is one mistake, a half out is one, both halves out differently
///            two). Swaps are told where they explain everything by one reference.
[[nodiscard]] std::vector<Story> stories(const Frame& frame, const Reading& reading, const Mends& mends);

}  // namespace flatwise::timing
