// pattern_sets.h: like rotors: which sets of positions leave the least, and an order of a set along the shaft.
// Inside core/dynamics only.
#pragma once

#include <optional>
#include <vector>

#include "core/dynamics/pattern_halves.h"

namespace flatwise::dynamics {

/// What no arrangement can be under, and sets of positions that leave just that.
struct LeastSets {
  double left_si = 0;
  std::vector<Places> sets;  ///< The free rotors in some order of theirs, the others where they are.
};

/// All free rotors alike, n even: only how many more stand at a position than at the opposite one matters. Goes through all such
/// numbers but the last, whose best follows.
///
/// Returns    None where n is odd, rotors differ, or there are more than some 20 million numbers to go through.
/// Source     Vanishing sums of roots of unity: [Lam-Leung]; checked against going through them all (tests).
[[nodiscard]] std::optional<LeastSets> least_by_counts(const PatternTask& task, const PatternSums& sums,
                                                       const Halves& halves);

/// The set in an order along the shaft that the task allows: like rotors change places among themselves. Prefers to go on with
/// the step before, then facing, then the least step. None where none was found after some 20,000 steps.
[[nodiscard]] std::optional<Places> order_of(const PatternTask& task, const PatternSums& sums, const Places& set);

}  // namespace flatwise::dynamics
