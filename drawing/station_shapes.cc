#include "drawing/station_shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace flatwise::drawing {
namespace {

double mm(Length length) { return length.si() * 1e3; }

std::vector<Point> rectangle(double x0, double y0, double x1, double y1) {
  return {{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}};
}

Shape round_body(double length, double radius) {
  return {
      .pieces = {{.outline = rectangle(0, -radius, length, radius)}}, .lines = {}, .top = -radius, .bottom = radius};
}

Shape nut_shape(double length, double radius) {
  Shape shape = round_body(length, radius);
  // A hexagon with a corner up shows the two next corners at half its radius.
  shape.lines = {{{0, -radius / 2}, {length, -radius / 2}}, {{0, radius / 2}, {length, radius / 2}}};
  return shape;
}

Shape hanger_shape(double length, double radius, double arm_mm) {
  const double arm = 0.42 * length;
  const double middle = length / 2;
  const double plate = 0.045 * arm_mm;
  Shape shape;
  shape.pieces = {
      {.outline = rectangle(middle - arm, -arm_mm + plate, middle + arm, -radius), .tine = true},
      {.outline = rectangle(middle - 1.1 * length, -arm_mm, middle + 1.1 * length, -arm_mm + plate), .tine = true},
      {.outline = rectangle(-0.12 * length, -radius, 1.12 * length, radius)}};
  const double ring = 0.55 * radius;
  shape.lines = {{{0, -ring}, {length, -ring}, {length, ring}, {0, ring}, {0, -ring}}};
  shape.top = -arm_mm;
  shape.bottom = radius;
  return shape;
}

Shape pulley_shape(double length, double radius) {
  const int grooves = std::max(1, static_cast<int>(std::lround(length / 17.0)));
  const double depth = std::min(0.12 * radius, 0.9 * length / grooves);
  const double pitch = length / grooves;
  std::vector<Point> top;
  for (int i = 0; i < grooves; ++i) {
    const double x = i * pitch;
    top.insert(top.end(), {{x, -radius},
                           {x + 0.14 * pitch, -radius},
                           {x + 0.36 * pitch, -radius + depth},
                           {x + 0.64 * pitch, -radius + depth},
                           {x + 0.86 * pitch, -radius},
                           {x + pitch, -radius}});
  }
  std::vector<Point> outline = top;
  for (auto p = top.rbegin(); p != top.rend(); ++p) outline.push_back({p->x, -p->y});
  Shape shape{.pieces = {{.outline = outline}}, .lines = {}, .top = -radius, .bottom = radius};
  shape.lines = {{{0, -radius + depth}, {length, -radius + depth}}, {{0, radius - depth}, {length, radius - depth}}};
  return shape;
}

Shape own_shape(double length, double radius) {
  const double corner = std::min(0.2 * length, 0.2 * radius);
  Shape shape = round_body(length, radius);
  shape.pieces[0].outline = {{corner, -radius},         {length - corner, -radius}, {length, -radius + corner},
                             {length, radius - corner}, {length - corner, radius},  {corner, radius},
                             {0, radius - corner},      {0, -radius + corner}};
  return shape;
}

// A tine: narrow at the neck, as wide as the definition says at its shoe.
std::vector<Point> tine(const Rotor& rotor, double hub, double turn, const Axis& lean) {
  const double tip = mm(rotor.tip_radius);
  const double half = mm(rotor.tine_width) / 2;
  const struct {
    double out, half;
  } edge[] = {{hub * 0.98, 0.5 * half},
              {hub + 0.8 * (tip - hub), 0.34 * half},
              {hub + 0.87 * (tip - hub), half},
              {tip - 0.05 * (tip - hub), half},
              {tip, 0.62 * half}};
  std::vector<Point> points;
  for (const auto& e : edge) points.push_back(seen({-e.half, e.out, turn}, lean));
  for (auto e = std::rbegin(edge); e != std::rend(edge); ++e) points.push_back(seen({e->half, e->out, turn}, lean));
  return points;
}

void add_tines(Shape& shape, const Rotor& rotor, double hub, const Axis& lean) {
  const int count = std::clamp(rotor.tines, 2, 24);
  std::vector<std::pair<double, double>> order;  // Depth, turn: the far ones first.
  for (int i = 0; i < count; ++i) {
    const double turn = 2 * std::numbers::pi * i / count;
    order.emplace_back(depth({0, mm(rotor.tip_radius), turn}, lean), turn);
  }
  std::sort(order.begin(), order.end());
  for (const auto& [near, turn] : order) {
    // Tines that point at the eye or away from it are hidden behind the hub or would only blot it.
    if (std::abs(std::cos(turn)) < 0.5) continue;
    shape.pieces.push_back({.outline = tine(rotor, hub, turn, lean), .tine = true});
  }
}

}  // namespace

double radius_mm(const Station& station, const Shaft& shaft) {
  const double shaft_mm = mm(shaft.spec().profile.across_flats);
  return station.outside.si() > 0 ? mm(station.outside) / 2 : 0.75 * shaft_mm;
}

double hub_radius_mm(const Station& station, const Rotor& rotor) {
  if (rotor.hub.outside.si() > 0) return mm(rotor.hub.outside) / 2;
  if (station.outside.si() > 0) return mm(station.outside) / 2;
  return 0.75 * mm(rotor.bearing.outside);
}

Shape station_shape(const Station& station, const Shaft& shaft, double arm_mm) {
  const double length = mm(station.length.nominal);
  const double radius = radius_mm(station, shaft);
  switch (station.kind) {
    case StationKind::nut:
      return nut_shape(length, radius);
    case StationKind::hanger:
      return hanger_shape(length, radius, arm_mm);
    case StationKind::pulley:
      return pulley_shape(length, radius);
    case StationKind::other:
      return own_shape(length, radius);
    case StationKind::washer:
    case StationKind::spacer:
    case StationKind::rotor:
    case StationKind::shoulder:
      break;
  }
  return round_body(length, radius);
}

Shape rotor_shape(const Station& station, const Rotor& rotor, const Axis& lean) {
  const double length = mm(station.length.nominal);
  const double hub = hub_radius_mm(station, rotor);
  const double seat = 0.62 * mm(rotor.bearing.bore);
  const double drop = seat == 0 ? 0 : std::tan(lean.lean_rad) * std::cos(lean.azimuth_rad) * length / 2;
  Shape shape;
  // The halves: their seat leans, their outer faces stand square because they are clamped.
  shape.pieces.push_back({.outline = {{-length / 2, -seat + drop},
                                      {length / 2, -seat - drop},
                                      {length / 2, seat - drop},
                                      {-length / 2, seat + drop}}});
  add_tines(shape, rotor, hub, lean);
  shape.pieces.push_back(
      {.outline = silhouette({hub, -kHubShare * length / 2, kHubShare * length / 2}, lean), .hub = true});
  for (Piece& piece : shape.pieces)
    for (Point& p : piece.outline) p.x += length / 2;
  for (const Piece& piece : shape.pieces) {
    for (const Point p : piece.outline) {
      shape.top = std::min(shape.top, p.y);
      shape.bottom = std::max(shape.bottom, p.y);
    }
  }
  return shape;
}

}  // namespace flatwise::drawing
