// stack_length.h: how long the clamped stack should be, before anybody has measured it. Paper asks here; the rule of seating judges by the
// same working.
#pragma once

#include "job/judge.h"

namespace flatwise::job {

/// Figure stack-length of the whole stack with every joint home: parts as measured where they were, else by the definition. None where
/// the definition's lengths add up to nothing that can be.
[[nodiscard]] WorkingPtr stack_length(const Facts& facts);

}  // namespace flatwise::job
