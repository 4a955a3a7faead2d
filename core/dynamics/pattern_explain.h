// pattern_explain.h: why an arrangement, in codes and arguments.
#pragma once

#include <vector>

#include "core/dynamics/pattern_list.h"

namespace flatwise::dynamics {

/// What the advised arrangement is; what proves it; what the simple patterns leave and why; and, where errors decide, that they
/// do.
///
/// Model      Like rotors with nothing else out of balance: facing pairs them off, a third of a turn sets three against each other,
///            and what is over makes the couple of one; an arrangement that is neither is told as its pairs and threes.
[[nodiscard]] std::vector<Message> explain(const PatternTask& task, const PatternList& list);

/// What is left as what it is: a force, or a couple where the couple judges.
[[nodiscard]] AnyQuantity left_of(const PatternTask& task, double left_si);

}  // namespace flatwise::dynamics
