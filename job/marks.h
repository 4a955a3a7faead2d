// marks.h: the marks of a job as the timing check takes them: what was read, what never left the shaft, what is on it now.
#pragma once

#include "core/timing/check.h"
#include "job/judge.h"

namespace flatwise::job {

/// Refuses    Rotors said to be off that lie between two that are on.
[[nodiscard]] Result<timing::Reading> marks_reading(const Facts& facts);

}  // namespace flatwise::job
