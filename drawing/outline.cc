#include "drawing/outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

namespace flatwise::drawing {
namespace {

struct Vector {
  double up = 0, near = 0, along = 0;  // Near is azimuth 90°, which faces an eye that has end A on its left.
};

struct Basis {
  Vector axis, first, second;  // first: the rotor's own 'up'; second completes it towards the eye.
};

Basis basis_of(const Axis& axis) {
  const double s = std::sin(axis.lean_rad);
  const double c = std::cos(axis.lean_rad);
  const double ca = std::cos(axis.azimuth_rad);
  const double sa = std::sin(axis.azimuth_rad);
  // Shaft frame carried over by the shortest turn from the shaft's axis to the rotor's: a rotor does not turn with it.
  return {.axis = {s * ca, s * sa, c},
          .first = {c * ca * ca + sa * sa, (c - 1) * ca * sa, -s * ca},
          .second = {(c - 1) * ca * sa, c * sa * sa + ca * ca, -s * sa}};
}

Vector place(const OnRotor& p, const Axis& axis) {
  const Basis b = basis_of(axis);
  const double u = p.out * std::cos(p.turn_rad);
  const double v = p.out * std::sin(p.turn_rad);
  return {b.axis.up * p.along + b.first.up * u + b.second.up * v,
          b.axis.near * p.along + b.first.near * u + b.second.near * v,
          b.axis.along * p.along + b.first.along * u + b.second.along * v};
}

double turn_of(Point a, Point b, Point c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

std::vector<Point> cut(const std::vector<Point>& outline, double height, double side) {
  std::vector<Point> left;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point a = outline[i];
    const Point b = outline[(i + 1) % outline.size()];
    const double da = (a.y - height) * side;
    const double db = (b.y - height) * side;
    if (da >= 0) left.push_back(a);
    if ((da < 0) != (db < 0)) left.push_back({a.x + (b.x - a.x) * da / (da - db), height});
  }
  return left;
}

}  // namespace

Point seen(const OnRotor& point, const Axis& axis) {
  const Vector v = place(point, axis);
  return {v.along, -v.up};
}

double depth(const OnRotor& point, const Axis& axis) { return place(point, axis).near; }

std::vector<Point> hull(std::vector<Point> points) {
  std::sort(points.begin(), points.end(), [](Point a, Point b) { return std::tie(a.x, a.y) < std::tie(b.x, b.y); });
  if (points.size() < 3) return points;
  std::vector<Point> chain;
  const auto add = [&chain](Point p, std::size_t least) {
    while (chain.size() >= least + 2 && turn_of(chain[chain.size() - 2], chain.back(), p) <= 0) chain.pop_back();
    chain.push_back(p);
  };
  for (const Point p : points) add(p, 0);
  const std::size_t upper = chain.size() - 1;
  for (std::size_t i = points.size() - 1; i-- > 0;) add(points[i], upper);
  chain.pop_back();
  return chain;
}

std::vector<Point> silhouette(const Cylinder& body, const Axis& axis) {
  constexpr int kCorners = 48;
  std::vector<Point> points;
  for (int i = 0; i < kCorners; ++i) {
    const double turn = 2 * std::numbers::pi * i / kCorners;
    points.push_back(seen({body.from, body.radius, turn}, axis));
    points.push_back(seen({body.to, body.radius, turn}, axis));
  }
  return hull(std::move(points));
}

std::vector<Point> between(const std::vector<Point>& outline, double top, double bottom) {
  return cut(cut(outline, top, 1), bottom, -1);
}

}  // namespace flatwise::drawing
