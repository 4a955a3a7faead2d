// pattern_list.h: the arrangements to choose from: one least where it means something, else those that stated errors cannot
// tell apart, the simplest first, with how they bear those errors.
#pragma once

#include <vector>

#include "core/dynamics/pattern_hangers.h"
#include "core/dynamics/pattern_search.h"

namespace flatwise::dynamics {

struct PatternRow {
  Places places;
  double left_si = 0;   ///< With every number as said.
  double worst_si = 0;  ///< With every stated error at its limit in the worst direction: worst_left().
  Simplicity simplicity;
  std::optional<Pressed> pressed = std::nullopt;  ///< Where the task has hangers.
};

struct PatternList {
  std::vector<PatternRow> rows;  ///< Not empty; the advised one first.
  std::size_t robust = 0;        ///< The row whose worst case is least.
  Kept least;                    ///< The one that leaves the least.
  Proof proof = Proof::none;
  double arrangements = 0;
  double seen_to = 0;  ///< As PatternFound::seen_to.
  int turned = 0;
  /// More than one arrangement leaves less than the floor: which of them leaves the least, nobody can measure. The rows are then
  /// those under the floor by simplicity, and the most robust; where the task has hangers, first by how hard they are pressed, in steps
  /// of what can be measured there.
  bool errors_decide = false;
  int under_floor = 0;  ///< Different ones seen under the floor; there may be more.
  double floor_rms = 0, floor_worst = 0;
  double hangers_floor = 0;  ///< N; where the task has hangers.
};

/// Whether the second row is proven to be the next best: all that leaves no more was seen, or it leaves just what the least does.
[[nodiscard]] bool next_is_proven(const PatternList& list, const PatternSums& sums);

/// What is left with every stated error at its limit, each in the direction that makes it worst.
///
/// Model      A rotor's share may be longer or shorter by `share` of itself and turned by `azimuth`, each alone; the sums of all
///            such errors fill a polygon, and its farthest corner is taken. Root mean square errors are the same for every
///            arrangement, so they rank nothing; the worst case is less the more directions the rotors stand in. Where both
///            planes judge together, each at its own worst: an upper bound.
/// Accuracy   1e-12 relative.
[[nodiscard]] double worst_left(const PatternSums& sums, const StatedErrors& errors, std::span<const int> places);

/// The list for a task: `rows` at most.
///
/// Model      Of arrangements under the floor those are ranked that were seen: the best of the search and the simple ones; where hangers
///            judge too, all of them as long as there are no more than 50 000.
/// Refuses    As find_pattern().
[[nodiscard]] Result<PatternList> list_patterns(const PatternTask& task, int rows = 8, const Effort& effort = {});

}  // namespace flatwise::dynamics
