// outline.h: silhouettes of round bodies whose axis leans, seen square to the shaft, and cutting them at a line.
#pragma once

#include <vector>

#include "drawing/display_list.h"

namespace flatwise::drawing {

/// A cylinder about a leaning axis, in shaft millimetres, relative to the middle of its axis.
struct Cylinder {
  double radius = 0;
  double from = 0, to = 0;  ///< Along its own axis, from the wobble centre; towards B is positive.
};

/// Direction of a leaning axis. Frames of core/shaft: lean alpha towards azimuth phi (clockwise seen from A, 0 up).
struct Axis {
  double lean_rad = 0;
  double azimuth_rad = 0;
};

/// Outline of the cylinder as seen square to the shaft, end A left and flat 1 up: x towards B, y downwards.
///
/// Model      Parallel projection: hull of its two end circles, which are seen as ellipses.
/// Accuracy   Each ellipse is a polygon of 48 corners on the true curve: 0.2 % of its smaller half-axis.
[[nodiscard]] std::vector<Point> silhouette(const Cylinder& body, const Axis& axis);

/// Where a point `along` the leaning axis and `out` from it, at `turn_rad` round it (0: up), is seen.
struct OnRotor {
  double along = 0, out = 0, turn_rad = 0;
};
[[nodiscard]] Point seen(const OnRotor& point, const Axis& axis);
/// How far the same point lies in front of the shaft's axis (towards the eye is positive).
[[nodiscard]] double depth(const OnRotor& point, const Axis& axis);

/// Convex hull, clockwise on the page.
[[nodiscard]] std::vector<Point> hull(std::vector<Point> points);

/// What is left of a closed outline between two heights (y grows downwards).
[[nodiscard]] std::vector<Point> between(const std::vector<Point>& outline, double top, double bottom);

}  // namespace flatwise::drawing
