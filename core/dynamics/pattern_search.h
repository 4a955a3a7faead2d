// pattern_search.h: the arrangement that leaves the least, with what proves it.
//
//   const auto found = find_pattern(task);
//   found->best[0].places, found->best[0].left_si, found->proof
#pragma once

#include <vector>

#include "core/dynamics/pattern_halves.h"
#include "core/dynamics/pattern_keeper.h"

namespace flatwise::dynamics {

/// What is known of the first arrangement.
enum class Proof {
  nought,       ///< It leaves nothing: none can leave less.
  complete,     ///< Every arrangement was covered: none leaves less.
  under_floor,  ///< It leaves less than stated errors do; another may leave still less, which nobody could measure.
  none,         ///< The best that was seen; the effort ran out.
};

struct PatternFound {
  std::vector<Kept> best;  ///< Not empty; the least first, of those that are the same within rounding the simplest.
  Proof proof = Proof::none;
  double arrangements = 0;  ///< How many there are, turned and mirrored ones counted.
  double seen_to = 0;  ///< Of what leaves no more than this the best are all here; 0 where only the first is known.
  int turned = 0;      ///< Rotors that the exact search turned; the others stand by a simple rule.
};

/// Searches for the `keep` best arrangements.
///
/// Model      In this order: simple arrangements (pattern_simple.h); where rotors are alike, the least by sets of positions
///            (pattern_sets.h) and a simple order of such a set; by halves (pattern_halves.h); and where there are too many,
///            some of the rotors by halves, the others by a simple rule, until what is left is under the floor.
/// Returns    A proven optimum to 16 unlike rotors on a hexagon, 24 on a square, 14 on an octagon or with something that does not turn along;
///            for like rotors mostly any number; else an arrangement under the floor (root mean square), and it says which.
/// Refuses    As problem_with().
/// Accuracy   32 eps of the sum of all sizes; arrangements nearer than that to each other count as the same.
/// Source     [Halves], [Lam-Leung].
[[nodiscard]] Result<PatternFound> find_pattern(const PatternTask& task, int keep = 1, const Effort& effort = {});

}  // namespace flatwise::dynamics
