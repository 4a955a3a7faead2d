// The press in section. Right and wrong have everything alike but the ring under the tool, so that the eye finds just that.
#include <algorithm>

#include "drawing/bench_pictures.h"
#include "drawing/pen.h"
#include "drawing/station_shapes.h"

namespace flatwise::drawing {
namespace {

constexpr double kWords = 4;
constexpr double kClearOfBore = 0.3e-3;  // m, on diameter: a tool that slides into the bore without touching it.

double mm(Length length) { return length.si() * 1e3; }

/// Section in mm of the part: x from the axis, y downwards from the top of the hub.
struct Section {
  double bore = 0, outside = 0, height = 0;          // Hub: radii, height.
  double ring_outer = 0, ring_inner = 0, width = 0;  // Bearing: radii, width.
  double wall_outer = 0, wall_inner = 0;             // Thickness of its rings.
  double tool_in = 0, tool_out = 0;                  // Radii of the tool's ring.
  double seat = 0;                                   // Top of the stop ring.
  double groove = 0, depth = 0;
};

Section section_of(const Station& station, const Rotor& rotor, bool on_outer) {
  Section s;
  s.bore = mm(rotor.bearing.outside) / 2;
  s.outside = std::max(hub_radius_mm(station, rotor), s.bore * 1.15);
  s.width = mm(rotor.bearing.width);
  s.height = std::max(kHubShare * mm(station.length.nominal), 2.2 * s.width);
  s.ring_outer = s.bore;
  s.ring_inner = mm(rotor.bearing.bore) / 2;
  s.wall_outer = s.ring_outer - mm(tool_ring(rotor).inside) / 2;
  s.wall_inner = std::min(s.wall_outer, 0.4 * (s.ring_outer - s.ring_inner));
  s.tool_in = on_outer ? s.ring_outer - s.wall_outer : s.ring_inner;
  s.tool_out = on_outer ? mm(tool_ring(rotor).outside) / 2 : s.ring_inner + s.wall_inner;
  s.groove = 0.14 * s.width;
  s.depth = 0.03 * mm(rotor.bearing.outside);
  s.seat = s.height / 2 + s.width / 2;
  return s;
}

struct Page {
  Point top;  // Axis at the top of the hub.
  double scale = 1;
  [[nodiscard]] Box box(double side, double x0, double x1, double y0, double y1) const {
    const double left = side > 0 ? x0 : -x1;
    return {top.x + left * scale, top.y + y0 * scale, (x1 - x0) * scale, (y1 - y0) * scale};
  }
};

void draw_hub(Pen pen, const Page& page, const Section& s) {
  for (const double side : {-1.0, 1.0}) {
    pen.box(page.box(side, s.bore, s.outside, 0, s.height), {.stroke = Stroke::wide, .fill = Fill::cut}, "hub");
    pen.box(page.box(side, s.bore, s.bore + s.depth, s.seat, s.seat + s.groove),
            {.stroke = Stroke::wide, .fill = Fill::sheet});
    pen.box(page.box(side, s.bore - s.depth, s.bore + s.depth, s.seat, s.seat + s.groove), kBlack, "stop-ring");
    const double upper = s.seat - s.width - s.groove;
    pen.box(page.box(side, s.bore, s.bore + s.depth, upper, upper + s.groove),
            {.stroke = Stroke::wide, .fill = Fill::sheet});
    const double support = s.height + 0.55 * s.width;
    pen.box(page.box(side, s.bore * 1.04, s.outside * 0.9, s.height, support),
            {.stroke = Stroke::wide, .fill = Fill::solid}, "support");
  }
  const double foot = s.height + 0.55 * s.width;
  pen.box(page.box(1, -1.05 * s.outside, 1.05 * s.outside, foot, foot + 0.3 * s.width),
          {.stroke = Stroke::wide, .fill = Fill::solid});
}

/// Half way home: its foot stands above the stop ring by half its width.
void draw_bearing(Pen pen, const Page& page, const Section& s, double head) {
  const double foot = head + s.width;
  for (const double side : {-1.0, 1.0}) {
    pen.box(page.box(side, s.ring_outer - s.wall_outer, s.ring_outer, head, foot),
            {.stroke = Stroke::wide, .fill = Fill::cut_next}, "outer-ring");
    pen.box(page.box(side, s.ring_inner, s.ring_inner + s.wall_inner, head, foot),
            {.stroke = Stroke::wide, .fill = Fill::cut_next}, "inner-ring");
    const double from = s.ring_inner + s.wall_inner, to = s.ring_outer - s.wall_outer;
    const double radius = std::min(0.42 * s.width, 0.62 * (to - from));
    const Point ball{page.top.x + side * (from + to) / 2 * page.scale, page.top.y + (head + s.width / 2) * page.scale};
    pen.circle(ball, radius * page.scale, {.stroke = Stroke::wide, .fill = Fill::sheet});
  }
}

/// Through the ball, from the inner ring to the outer one: what the force does on the wrong ring.
void draw_force_way(Pen pen, const Page& page, const Section& s, double head) {
  const Look red{.stroke = Stroke::hidden, .ink = Ink::out};
  for (const double side : {-1.0, 1.0}) {
    const auto at = [&](double x, double y) {
      return Point{page.top.x + side * x * page.scale, page.top.y + y * page.scale};
    };
    pen.open_path({at(s.ring_inner + 0.5 * s.wall_inner, head), at(s.ring_inner + s.wall_inner, head + 0.3 * s.width),
                   at(s.ring_outer - s.wall_outer, head + 0.7 * s.width), at(s.ring_outer, head + s.width)},
                  red, "force-way");
  }
}

void draw_tool(Pen pen, const Page& page, const Section& s, double head, bool right) {
  const Look look = right ? Look{.stroke = Stroke::none, .fill = Fill::next, .ink = Ink::next}
                          : Look{.stroke = Stroke::none, .fill = Fill::ink, .ink = Ink::out};
  const double top = head - 1.35 * s.width, cap = top - 0.4 * s.width;
  for (const double side : {-1.0, 1.0}) pen.box(page.box(side, s.tool_in, s.tool_out, top, head), look, "tool");
  pen.box(page.box(1, -s.tool_out, s.tool_out, cap, top), look, "tool");
  const Point tip{page.top.x, page.top.y + cap * page.scale};
  const double head_mm = 3;
  pen.polygon({tip, {tip.x - 0.5 * head_mm, tip.y - head_mm}, {tip.x + 0.5 * head_mm, tip.y - head_mm}}, look);
  pen.line({tip.x, tip.y - head_mm}, {tip.x, tip.y - 2.3 * head_mm}, {.stroke = Stroke::wide, .ink = look.ink});
}

void draw_words(Pen pen, const Page& page, const Section& s, double head, const PressSection& is) {
  const double at = page.top.x + 1.12 * s.outside * page.scale;
  const auto leader = [&](double x, double y, const std::string& words, double word_y) {
    if (words.empty()) return;
    pen.line({page.top.x + x * page.scale, page.top.y + y * page.scale}, {at - 1, word_y - 0.35 * kWords});
    Text text{};
    text.at = {at, word_y};
    text.text = words;
    text.size = kWords;
    text.width = pen.list().width - at;
    pen.list().items.emplace_back(std::move(text));
  };
  const double first = page.top.y + (head - 1.0 * s.width) * page.scale;
  leader((s.tool_in + s.tool_out) / 2, head - 0.8 * s.width, is.tool_words, first);
  leader(s.bore, s.seat + s.groove / 2, is.ring_words, page.top.y + s.seat * page.scale);
  leader(0.97 * s.bore + 0.03 * s.outside + 2, s.height + 0.3 * s.width, is.support_words,
         page.top.y + (s.height + 0.5 * s.width) * page.scale);
}

}  // namespace

ToolRing tool_ring(const Rotor& rotor) {
  const Bearing& b = rotor.bearing;
  // Not given: a ring of a sixth of the bearing's height, as the drawing of a pair has it.
  const Length inside = b.outer_ring_inside.si() > 0 ? b.outer_ring_inside : b.outside - (b.outside - b.bore) / 6.0;
  return {inside, b.outside - Length::from_si(kClearOfBore)};
}

DisplayList press_section(const Station& station, const Rotor& rotor, const PressSection& is, double width) {
  const Section s = section_of(station, rotor, is.on_outer);
  const bool words = !is.tool_words.empty() || !is.ring_words.empty() || !is.support_words.empty();
  const double room = words ? 0.62 * width : width;
  Page page{.top = {}, .scale = room / (2.16 * s.outside)};
  const double head = s.seat - 1.6 * s.width;  // Of the bearing, not home yet.
  const double above = 8 + (1.75 * s.width - std::min(0.0, head) - std::max(0.0, head)) * page.scale;
  page.top = {room / 2, std::max(above, 8.0)};
  DisplayList list;
  list.width = width;
  list.height = page.top.y + (s.height + 0.9 * s.width) * page.scale + 1.5;
  Pen pen{list};
  pen.line({page.top.x, 1}, {page.top.x, list.height - 0.5}, kAxis);
  draw_hub(pen, page, s);
  draw_bearing(pen, page, s, head);
  draw_tool(pen, page, s, head, is.on_outer);
  if (!is.on_outer) draw_force_way(pen, page, s, head);
  draw_words(pen, page, s, head, is);
  return list;
}

}  // namespace flatwise::drawing
