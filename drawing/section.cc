#include "drawing/section.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "drawing/pen.h"
#include "drawing/station_shapes.h"

namespace flatwise::drawing {
namespace {

constexpr Look kPart{.stroke = Stroke::part};

double mm(Length length) { return length.si() * 1e3; }

/// Millimetres of the hub, x from its middle and y from the axis up, to the page.
struct HubPage {
  Point origin;
  double scale = 0;
  [[nodiscard]] Point operator()(double x, double y) const { return {origin.x + x * scale, origin.y - y * scale}; }
};

struct HubSize {
  double bore = 0, outside = 0, half_width = 0;  // Radii, and half the hub's width.
  double ring = 0, ring_depth = 0;               // Width of a snap ring's groove, its depth.
  double bearing_half = 0, bearing_bore = 0;
  double web = 0, top = 0;  // Half the width of a tine's foot, how far it is drawn.
};

HubSize size_of(const Station& station, const Rotor& rotor) {
  HubSize s;
  s.bore = mm(rotor.bearing.outside) / 2;
  s.outside = hub_radius_mm(station, rotor);
  s.half_width = std::max(kHubShare * mm(station.length.nominal) / 2, 0.8 * mm(rotor.bearing.width));
  s.bearing_half = mm(rotor.bearing.width) / 2;
  s.bearing_bore = mm(rotor.bearing.bore) / 2;
  s.ring = 0.12 * mm(rotor.bearing.width);
  s.ring_depth = 0.03 * mm(rotor.bearing.outside);
  s.web = 0.35 * s.half_width;
  s.top = s.outside + 0.75 * (s.outside - s.bore);
  return s;
}

std::vector<Point> hub_outline(const HubSize& s, const HubPage& page, SnapRings rings) {
  const double w = s.half_width;
  const double groove0 = s.bearing_half;
  const double groove1 = s.bearing_half + s.ring;
  const double left_depth = rings == SnapRings::two ? s.ring_depth : 0.0;
  const double right_depth = rings == SnapRings::none ? 0.0 : s.ring_depth;
  const double seat = std::min(w * 0.98, groove1 + 2.0 * s.ring);
  const double recess = s.bore + 0.6 * s.ring_depth;
  return {page(-w, recess),
          page(-seat, recess),
          page(-seat, s.bore),
          page(-groove1, s.bore),
          page(-groove1, s.bore + left_depth),
          page(-groove0, s.bore + left_depth),
          page(-groove0, s.bore),
          page(groove0, s.bore),
          page(groove0, s.bore + right_depth),
          page(groove1, s.bore + right_depth),
          page(groove1, s.bore),
          page(seat, s.bore),
          page(seat, recess),
          page(w, recess),
          page(w, s.outside),
          page(s.web, s.outside),
          page(s.web, s.top),
          page(-s.web, s.top),
          page(-s.web, s.outside),
          page(-w, s.outside)};
}

void draw_plane(Pen pen, const HubPage& page, double x, double bore, const std::string& letter) {
  const Point tip = page(x, bore);
  const Point foot = page(x, bore * 0.42);
  constexpr double kRadius = 3;
  const std::string id = "plane-" + letter;  // The arrow belongs to it: chosen, it is blue with its letter.
  pen.open_path({{tip.x, tip.y + 2.2}, {foot.x, foot.y - kRadius}}, kNarrow, id + "-arrow");
  pen.polygon({tip, {tip.x - 0.95, tip.y + 2.5}, {tip.x + 0.95, tip.y + 2.5}}, kBlack, id + "-arrow");
  pen.circle(foot, kRadius, {.stroke = Stroke::wide, .fill = Fill::sheet}, id);
  pen.text({foot.x, foot.y + 1.5}, letter, {.size = 4.2, .bold = true, .anchor = Anchor::middle});
}

// A half of a pair cut in the plane of half A's lean. Frame: shaft straight, x from the joint outwards (towards A for
// half A), y up. The seat leans; the bore is the shaft.
struct HalfCut {
  double lean_rad = 0;  // Of the seat in this plane, positive: rises with x on the page.
  double from = 0, to = 0;
  double bore = 0, seat = 0, rim = 0;
};

void draw_half(Pen pen, const HubPage& page, const HalfCut& half, Fill fill) {
  const double slope = std::tan(half.lean_rad);
  const double c = std::cos(half.lean_rad);
  const double s = std::sin(half.lean_rad);
  const double inner = half.from + 0.42 * (half.to - half.from);  // The rim of the half begins here.
  const double in = std::min(std::abs(half.from), std::abs(half.to)) == std::abs(half.from) ? half.from : half.to;
  const double out = in == half.from ? half.to : half.from;
  const double edge = in == half.from ? inner : half.to - 0.42 * (half.to - half.from);
  for (const double side : {1.0, -1.0}) {
    const auto on_face = [&](double x, double radius) { return page(x, side * radius / c + slope * x); };
    const auto on_seat = [&](double along, double radius) {
      return page(along * c - side * radius * s, along * s + side * radius * c);
    };
    pen.polygon({page(in, side * half.bore), on_face(in, half.seat), on_seat(edge, half.seat), on_seat(edge, half.rim),
                 on_face(out, half.rim), page(out, side * half.bore)},
                {.stroke = Stroke::wide, .fill = fill});
  }
}

void draw_bearing_cut(Pen pen, const HubPage& page, const Rotor& rotor, double slope) {
  const double d = mm(rotor.bearing.bore) / 2;
  const double outer = mm(rotor.bearing.outside) / 2;
  const double half = mm(rotor.bearing.width) / 2;
  const double ring = 0.3 * (outer - d);
  const double c = std::cos(std::atan(slope));
  const double s = std::sin(std::atan(slope));
  const auto at = [&](double along, double out) { return page(along * c - out * s, along * s + out * c); };
  for (const double side : {1.0, -1.0}) {
    for (const auto& [r0, r1] : {std::pair{d, d + ring}, std::pair{outer - ring, outer}})
      pen.polygon({at(-half, side * r0), at(half, side * r0), at(half, side * r1), at(-half, side * r1)},
                  {.stroke = Stroke::wide, .fill = Fill::cut_next});
    pen.circle(at(0, side * (d + outer) / 2), 0.30 * (outer - d) * page.scale,
               {.stroke = Stroke::wide, .fill = Fill::sheet});
  }
}

}  // namespace

DisplayList hub_section(const Station& station, const Rotor& rotor, double width) {
  const HubSize s = size_of(station, rotor);
  const double overhang = 0.13 * width;
  const double scale = (width - 2 * overhang) / (2 * s.half_width);
  DisplayList list;
  list.width = width;
  list.height = s.top * scale + 2.5;
  Pen pen{list};
  const HubPage page{{width / 2, 1.5 + s.top * scale}, scale};
  const auto outline = hub_outline(s, page, rotor.snap_rings);
  pen.polygon(outline, {.stroke = Stroke::none, .fill = Fill::cut});
  pen.polygon(outline, kWide, "hub");
  const Point top = page(0, s.top);
  pen.box({top.x - s.web * scale - 0.5, top.y - 0.5, 2 * s.web * scale + 1, 1.4}, kGround);  // Broken, not ended.
  pen.wave({top.x, top.y + 0.6}, 2 * s.web * scale + 3);
  for (const double x : {-s.half_width, s.half_width}) pen.line(page(x, s.bore), page(x, 0));
  pen.line({0, page(0, 0).y}, {width, page(0, 0).y}, kAxis);
  const Point corner = page(-s.bearing_half, s.bore);
  pen.box({corner.x, corner.y, 2 * s.bearing_half * scale, (s.bore - s.bearing_bore) * scale}, kPart, "bearing");
  pen.circle(page(0, (s.bore + s.bearing_bore) / 2), 0.3 * (s.bore - s.bearing_bore) * scale, kPart);
  // The planes stand just inside the edges, clear of the ring's rounded corner.
  const double plane = 0.86 * s.bearing_half;
  draw_plane(pen, page, -plane, s.bore, "A");
  draw_plane(pen, page, plane, s.bore, "B");
  return list;
}

DisplayList direction_circle(int count, double size) {
  DisplayList list;
  list.width = size;
  list.height = size;
  Pen pen{list};
  constexpr double kNumber = 4.6;
  const double radius = size / 2 - 1.5 * kNumber;
  const Point centre{size / 2, size / 2};
  pen.circle(centre, radius, kWide);
  for (int i = 0; i < count; ++i) {
    const double turn = std::numbers::pi * i / count;
    const double s = std::sin(turn);
    const double c = std::cos(turn);
    const std::string id = "direction-" + std::to_string(i + 1);
    pen.open_path({{centre.x - radius * s, centre.y + radius * c}, {centre.x + radius * s, centre.y - radius * c}},
                  kNarrow, id + "-line");
    const double out = radius + 0.8 * kNumber;
    pen.text({centre.x + out * s, centre.y - out * c + 0.36 * kNumber}, std::to_string(i + 1),
             {.size = kNumber, .bold = true, .anchor = Anchor::middle}, id);
  }
  return list;
}

DisplayList pair_section(const Shaft& shaft, int rotor, int flats_out, double width) {
  const Rotor& r = shaft.rotor(rotor);
  const double length = mm(r.half.nominal);
  const double scale = width / (2.6 * length);
  const double outer = mm(r.bearing.outside) / 2;
  DisplayList list;
  list.width = width;
  list.height = 2.3 * outer * scale;
  Pen pen{list};
  const HubPage page{{width / 2, list.height / 2}, scale};
  const double bore = mm(shaft.spec().profile.across_flats) / 2;
  const double seat = mm(r.bearing.bore) / 2;
  const double rim = seat + 0.125 * mm(r.bearing.outside - r.bearing.bore);
  const double lean = r.lean.radians();
  // Half B turned by k flats leans less in this plane: its part along half A's lean.
  const double turn = 2 * std::numbers::pi * flats_out / shaft.flats();
  const double lean_b = std::atan(std::tan(lean) * std::cos(turn));
  pen.box({page(-1.2 * length, bore).x, page(0, bore).y, 2.4 * length * scale, 2 * bore * scale},
          {.stroke = Stroke::narrow, .fill = Fill::tone});
  draw_half(pen, page, {.lean_rad = lean, .from = -length, .to = 0, .bore = bore, .seat = seat, .rim = rim}, Fill::cut);
  draw_half(pen, page, {.lean_rad = lean_b, .from = 0, .to = length, .bore = bore, .seat = seat, .rim = rim},
            Fill::cut_next);
  if (flats_out == 0) draw_bearing_cut(pen, page, r, std::tan(lean));
  pen.line(page(-1.28 * length, 0), page(1.28 * length, 0), kAxis);
  const Look seat_axis{.stroke = Stroke::axis, .ink = Ink::next};
  pen.line(page(-1.25 * length, -1.25 * length * std::tan(lean)), page(0, 0), seat_axis);
  pen.line(page(0, 0), page(1.25 * length, 1.25 * length * std::tan(lean_b)), seat_axis);
  return list;
}

}  // namespace flatwise::drawing
