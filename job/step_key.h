// step_key.h: the key of a step as an entry keeps it, read back into what was done and to which parts.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/units/code.h"

namespace flatwise::job {

/// "teardown.draw_rotor/11#2": the step, the stations it is about (from 1), and the how manieth time on this job.
struct StepKey {
  Word what;  ///< As a log says it: "drawn", "put on".
  std::vector<int> stations;
  int times = 1;
};

/// Nothing for a key that no plan makes; it is then shown as it was written.
[[nodiscard]] std::optional<StepKey> read_step_key(std::string_view key);

}  // namespace flatwise::job
