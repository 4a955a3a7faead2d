// pattern_join.h: the pairs of points, one of each side, that lie within reach of each other. Inside core/dynamics only.
#pragma once

#include <cstdint>
#include <functional>

#include "core/dynamics/pattern_points.h"

namespace flatwise::dynamics::halves {

struct Joining {
  double reach = 0;        ///< To begin with.
  std::int64_t tests = 0;  ///< How many pairs may be looked at, one handed over counting as many; what is
                           ///< left of it afterwards.
  /// A pair (places in the two lists of points) within reach; gives the reach from now on.
  std::function<double(std::size_t left, std::size_t right)> near;
};

/// Hands over every pair within the reach of its moment, measured in P and Q together.
///
/// Model      Strips across x, sorted by y within; each point is held against those of its own and the two neighbouring strips
///            that its reach covers. Strips are as wide as makes about one pair to look at a point, and no narrower than
///            twice the reach. Whoever hands over a smaller reach shrinks what is looked at.
/// Returns    False where the tests ran out: then pairs may be missing.
/// Accuracy   Single precision, with a margin for it: no pair within reach is missed, pairs a little farther may come too.
[[nodiscard]] bool join(const Points& left, const Points& right, Joining& joining);

}  // namespace flatwise::dynamics::halves
