// press_curve.h: the force over a ring's way in: the band to expect, what was read when it was home, and the points on the way.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/fits/press_curve.h"
#include "drawing/plot.h"

namespace flatwise::drawing {

/// A unit as the axis names it, and how much of SI one of it is.
struct PlotUnit {
  std::string name;
  double si = 1;
};
struct PressCurve {
  std::vector<fits::CurvePoint> band;
  Length home;                            ///< Travel with the whole width in.
  std::optional<Force> force{};           ///< What was read there.
  std::vector<fits::ReadPoint> points{};  ///< What was read on the way.
  PlotUnit travel_unit{}, force_unit{};
  std::string title{}, question{}, x_words{}, read_words{};
};
/// Ids as plot(): "band-expected", "mark-read", "mark-point-1", ...
[[nodiscard]] DisplayList press_curve(const PressCurve& curve, const PlotSize& size);

}  // namespace flatwise::drawing
