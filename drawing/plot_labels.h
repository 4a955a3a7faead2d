// plot_labels.h: where the name of a curve stands: beside it, and as far as can be from everything else. Not for other folders.
#pragma once

#include <string>
#include <vector>

#include "drawing/pen.h"

namespace flatwise::drawing {

/// Width of words at a size: B612's digits and small letters are a little over half as wide as they are high.
[[nodiscard]] double words_width(const std::string& words, double size);

struct Crowd {
  std::vector<Point> points;  ///< Of all else that is drawn, in millimetres, close together.
  std::vector<Box> boxes;     ///< Words that stand already.
  double slack = 0;           ///< By how much something else may be nearer to the words of a single point.
};

struct NamePlace {
  Box at;
  bool own = true;   ///< Nothing drawn is nearer to it than its curve; else a line must lead from it to the curve.
  bool free = true;  ///< It stands on nothing.
};
/// Places a box of that size beside one of the curve's points inside `area`, the furthest it can be from the crowd among the places that
/// are nearest to the curve itself.
[[nodiscard]] NamePlace place_beside(const std::vector<Point>& curve, const Box& size, const Box& area,
                                     const Crowd& crowd);

}  // namespace flatwise::drawing
