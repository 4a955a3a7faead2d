#include "drawing/end_view.h"

#include <cmath>
#include <numbers>
#include <vector>

#include "drawing/pen.h"

namespace flatwise::drawing {
namespace {

constexpr double kRadiansInDegrees = 180.0 / std::numbers::pi;

struct View {
  const PairSize& pair;
  const EndViewOptions& options;
  Point centre;
  double scale = 0;
  double rim = 0;     // Page.
  double offset = 0;  // Page.
  double way = 0;     // Radius of the arrow to the wanted place.

  /// Turn on the page, clockwise from up.
  [[nodiscard]] double turn(double flat) const {
    const double azimuth = 2 * std::numbers::pi * (flat - 1) / pair.flats;
    return options.seen_from == End::a ? azimuth : -azimuth;
  }
  [[nodiscard]] Point at(double radius, double angle) const {
    return {centre.x + radius * std::sin(angle), centre.y - radius * std::cos(angle)};
  }
  [[nodiscard]] double flat_radius() const { return pair.across_flats.si() * 1e3 / 2 * scale; }
  [[nodiscard]] bool near(Half half) const { return (half == Half::a) == (options.seen_from == End::a); }
};

void draw_rim(const View& view, Pen pen, Half half, std::optional<int> flat, bool near) {
  Point centre = view.centre;
  if (flat) centre = view.at(-view.offset, view.turn(*flat));
  const Look look = near ? Look{.stroke = Stroke::wide, .fill = Fill::tone} : kHidden;
  pen.circle(centre, view.rim, look, view.options.id + (half == Half::a ? "-half-a" : "-half-b"));
}

void draw_polygon(const View& view, Pen pen) {
  std::vector<Point> corners;
  const double corner = view.flat_radius() / std::cos(std::numbers::pi / view.pair.flats);
  for (int i = 0; i < view.pair.flats; ++i) corners.push_back(view.at(corner, view.turn(1.5 + i)));
  pen.polygon(std::move(corners), {.stroke = Stroke::wide, .fill = Fill::sheet});
  pen.circle(view.centre, 0.012 * view.options.size, kBlack);
}

// Two marks on one flat stand side by side.
double shifted_turn(const View& view, Half half, int flat, const PairMarks& marks) {
  const bool both = marks.flat_a && marks.flat_b && *marks.flat_a == *marks.flat_b;
  return view.turn(flat) + (both ? (half == Half::a ? -0.30 : 0.30) : 0.0);
}

bool differs(const PairMarks& marks) {
  return (marks.wanted_a && marks.wanted_a != marks.flat_a) || (marks.wanted_b && marks.wanted_b != marks.flat_b);
}

struct MarkPlace {
  double turn = 0;
  Half half = Half::a;
  Look look;
  bool on_solid = false;
};

void draw_mark(const View& view, Pen pen, const MarkPlace& mark) {
  const double outer = view.rim * 0.985 - view.offset;
  const double depth = 0.38 * view.rim;
  const double half_width = 0.6 * depth;
  const double c = std::cos(mark.turn);
  const double s = std::sin(mark.turn);
  const auto place = [&](double across, double out) {
    return Point{view.centre.x + out * s + across * c, view.centre.y - out * c + across * s};
  };
  const std::string id = view.options.id + (mark.half == Half::a ? "-mark-a" : "-mark-b");
  std::vector<Point> points{place(-half_width, outer), place(half_width, outer), place(0, outer - depth)};
  if (!mark.on_solid) pen.polygon(points, kGround, id);
  pen.polygon(points, mark.look, id);
  const double size = 0.6 * depth;
  const Point middle = place(0, outer - 0.34 * depth);
  pen.text({middle.x, middle.y + 0.36 * size}, mark.half == Half::a ? "A" : "B",
           {.size = size, .bold = true, .anchor = Anchor::middle, .on_solid = mark.on_solid, .ink = mark.look.ink});
}

void draw_marks(const View& view, Pen pen, const PairMarks& marks) {
  for (const bool near : {false, true}) {
    for (const Half half : {Half::a, Half::b}) {
      const std::optional<int> flat = half == Half::a ? marks.flat_a : marks.flat_b;
      if (view.near(half) != near || !flat) continue;
      const std::optional<int> wanted = half == Half::a ? marks.wanted_a : marks.wanted_b;
      Look look = near ? kBlack : kHidden;
      if (view.options.colour && wanted && *wanted != *flat) look.ink = Ink::out;
      draw_mark(view, pen, {shifted_turn(view, half, *flat, marks), half, look, near});
    }
  }
}

// Arrow outside the rim, the shorter way from the flat that was read to the one that is wanted.
void draw_way(const View& view, Pen pen, int from, int to) {
  const int out = flats_out(to, from, view.pair.flats);  // Clockwise seen from A.
  const double start = view.turn(from);
  const double step = 2 * std::numbers::pi * out / view.pair.flats * (view.options.seen_from == End::a ? 1 : -1);
  const double radius = view.way;
  const double head = 0.05 * view.options.size;
  const double end = start + step - std::copysign(head / radius, step);
  const double a = start + std::copysign(0.08, step);
  pen.list().items.emplace_back(Arc{view.centre,
                                    radius,
                                    std::min(a, end) * kRadiansInDegrees,
                                    std::max(a, end) * kRadiansInDegrees,
                                    {.stroke = Stroke::wide, .ink = Ink::next},
                                    {}});
  pen.polygon({view.at(radius - 0.45 * head, end), view.at(radius + 0.45 * head, end), view.at(radius, start + step)},
              {.stroke = Stroke::none, .fill = Fill::next, .ink = Ink::next});
}

void draw_wanted(const View& view, Pen pen, const PairMarks& marks) {
  for (const Half half : {Half::a, Half::b}) {
    const std::optional<int> read = half == Half::a ? marks.flat_a : marks.flat_b;
    const std::optional<int> wanted = half == Half::a ? marks.wanted_a : marks.wanted_b;
    if (!wanted || (read && *read == *wanted)) continue;
    draw_mark(view, pen, {view.turn(*wanted), half, {.stroke = Stroke::wanted, .ink = Ink::next}, false});
    if (read) draw_way(view, pen, *read, *wanted);
  }
}

void draw_numbers(const View& view, Pen pen, const PairMarks& marks, double ring) {
  const EndViewOptions& options = view.options;
  for (int flat = 1; flat <= view.pair.flats; ++flat) {
    const std::string id = options.id + "-flat-" + std::to_string(flat);
    const double out = options.circle > 0 ? options.circle + 0.4 : 0.62 * options.number_size;
    const Point p = view.at(ring + out, view.turn(flat));
    const bool wanted = (marks.wanted_a == flat && marks.flat_a && marks.flat_a != flat) ||
                        (marks.wanted_b == flat && marks.flat_b && marks.flat_b != flat);
    const bool read = marks.flat_a == flat || marks.flat_b == flat;
    Look look{.stroke = read ? Stroke::wide : Stroke::narrow, .fill = Fill::sheet};
    if (wanted) look = {.stroke = Stroke::wanted, .fill = Fill::sheet, .ink = Ink::next};
    if (options.circle > 0) pen.circle(p, options.circle, look, id);
    pen.text({p.x, p.y + 0.36 * options.number_size}, std::to_string(flat),
             {.size = options.number_size, .bold = true, .anchor = Anchor::middle}, id);
  }
}

}  // namespace

PairSize pair_of(const Shaft& shaft, int rotor) {
  const Rotor& r = shaft.rotor(rotor);
  return {.flats = shaft.flats(),
          .across_flats = shaft.spec().profile.across_flats,
          .half_length = r.half.nominal,
          .rim_diameter = r.bearing.bore + 0.25 * (r.bearing.outside - r.bearing.bore),
          .lean = r.lean};
}

Length rim_offset(const PairSize& pair) { return std::tan(pair.lean.radians()) * pair.half_length; }

DisplayList end_view(const PairSize& pair, const PairMarks& marks, const EndViewOptions& options) {
  DisplayList list;
  list.width = options.size;
  list.height = options.size;
  Pen pen{list};
  const double reach = (pair.rim_diameter / 2.0 + rim_offset(pair)).si() * 1e3;
  // Inside the numbers.
  const double ring = options.size / 2 - (options.circle > 0 ? 2 * options.circle + 0.9 : 1.1 * options.number_size);
  View view{.pair = pair, .options = options, .centre = {options.size / 2, options.size / 2}};
  view.way = ring - 0.03 * options.size;
  view.scale = (differs(marks) ? view.way - 0.04 * options.size : ring) / reach;
  view.rim = pair.rim_diameter.si() * 1e3 / 2 * view.scale;
  view.offset = rim_offset(pair).si() * 1e3 * view.scale;

  const double cross = ring + (pair.flats % 4 == 0 ? 0.0 : 0.9 * options.number_size);  // Never through a number.
  pen.line({view.centre.x - cross, view.centre.y}, {view.centre.x + cross, view.centre.y}, kAxis);
  pen.line({view.centre.x, view.centre.y - ring}, {view.centre.x, view.centre.y + ring}, kAxis);
  for (const bool near : {true, false})
    for (const Half half : {Half::a, Half::b})
      if (view.near(half) == near) draw_rim(view, pen, half, half == Half::a ? marks.flat_a : marks.flat_b, near);
  draw_polygon(view, pen);
  draw_numbers(view, pen, marks, ring);
  draw_marks(view, pen, marks);
  draw_wanted(view, pen, marks);
  return list;
}

}  // namespace flatwise::drawing
