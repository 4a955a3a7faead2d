// pattern_keeper.h: the best arrangements seen so far. Two within rounding of each other are the same, and the simpler one is
// the better; the turned and the mirrored image of one that is kept is not kept again. Inside core/dynamics only.
#pragma once

#include <vector>

#include "core/dynamics/pattern_simple.h"
#include "core/dynamics/pattern_task.h"

namespace flatwise::dynamics {

struct Kept {
  Places places;
  double left_si = 0;  ///< PatternSums::of.
  Simplicity simplicity;
};

class Keeper {
 public:
  /// Keeps the `most` best of those that leave `ceiling` at most.
  Keeper(const PatternTask& task, const PatternSums& sums, int most, double ceiling);

  /// Looks at an arrangement anew, in full doubles, and gives the limit from now on.
  double offer(const Places& places);
  /// What leaves more is of no use any more.
  [[nodiscard]] double limit() const { return limit_; }
  [[nodiscard]] double best() const;  ///< Infinity while nothing is kept.
  [[nodiscard]] int size() const { return static_cast<int>(kept_.size()); }
  [[nodiscard]] int most() const { return most_; }
  /// The least first; those within rounding of the first of them by simplicity, then by their places.
  [[nodiscard]] std::vector<Kept> sorted() const;

 private:
  [[nodiscard]] std::size_t worst() const;

  const PatternTask& task_;
  const PatternSums& sums_;
  int most_;
  double limit_;
  std::vector<Kept> kept_;
};

/// Of an arrangement's turned and mirrored images the one whose list comes first, where turn and hand are free.
[[nodiscard]] Places first_image(const Places& places, const PatternTask& task);

}  // namespace flatwise::dynamics
