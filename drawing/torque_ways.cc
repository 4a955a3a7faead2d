// What a torque takes on a bar: lengths at one scale, forces at one scale, what one person can hold across every arrow.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/bench_pictures.h"
#include "drawing/pen.h"
#include "drawing/plot_labels.h"

namespace flatwise::drawing {
namespace {

constexpr double kWords = 4, kBar = 2, kNut = 4, kLeft = 7, kRight = 26;
constexpr double kHighestArrow = 22;

struct Frame {
  double length_scale = 0, force_scale = 0, width = 0, axis = 0;
};

void draw_nut(Pen pen, Point at) {
  std::vector<Point> corners;
  for (int i = 0; i < 6; ++i) {
    const double turn = std::numbers::pi * i / 3 + std::numbers::pi / 6;
    corners.push_back({at.x + kNut * std::sin(turn), at.y + kNut * std::cos(turn)});
  }
  pen.polygon(std::move(corners), {.stroke = Stroke::wide, .fill = Fill::sheet}, "nut");
  pen.circle(at, 0.5 * kNut, {.stroke = Stroke::narrow, .fill = Fill::sheet});
}

void draw_multiplier(Pen pen, Point at, const std::string& words) {
  pen.circle(at, 1.3 * kNut, {.stroke = Stroke::none, .fill = Fill::solid}, "multiplier");
  pen.text({at.x, at.y + 1.1}, words, {.size = 3.2, .bold = true, .anchor = Anchor::middle, .on_solid = true});
}

void draw_arrow(Pen pen, const Frame& frame, double x, const TorqueWay& way) {
  const Ink ink = way.too_much ? Ink::out : (way.advised ? Ink::next : Ink::ink);
  const double length = way.pull.si() * frame.force_scale;
  const double foot = frame.axis - kBar / 2, tip = foot - length;
  const double head = std::min(3.0, 0.8 * length);
  pen.open_path({{x, foot}, {x, tip}}, {.stroke = Stroke::wide, .ink = ink}, "pull");
  pen.polygon({{x, tip}, {x - 0.45 * head, tip + head}, {x + 0.45 * head, tip + head}},
              {.stroke = Stroke::none, .fill = Fill::ink, .ink = ink});
  // Beside the arrow, on the other side where the drawing ends.
  constexpr double kPull = 4.6, kBeside = 2.5;
  const bool left = x + kBeside + 1.1 * words_width(way.pull_words, kPull) > frame.width;
  pen.text({left ? x - kBeside : x + kBeside, std::min(tip + kWords, foot - 1)}, way.pull_words,
           {.size = kPull, .bold = true, .anchor = left ? Anchor::end : Anchor::start, .ink = ink});
}

void draw_lever(Pen pen, const Frame& frame, const TorqueWay& way) {
  const double start = kLeft;
  const double extension = way.extension ? way.extension->si() * frame.length_scale : 0;
  const double end = start + extension + way.bar.si() * frame.length_scale;
  const double top = frame.axis - kBar / 2;
  if (way.extension) {
    pen.box({start, top, extension, kBar}, {.stroke = Stroke::narrow, .fill = Fill::sheet}, "extension");
    pen.text({start + extension / 2, frame.axis + kWords + 2}, way.extension_words,
             {.size = kWords, .anchor = Anchor::middle});
  }
  pen.box({start + extension, top, end - start - extension, kBar}, {.stroke = Stroke::none, .fill = Fill::solid},
          "bar");
  pen.text({(start + extension + end) / 2, frame.axis + kWords + 2}, way.bar_words,
           {.size = kWords, .anchor = Anchor::middle});
  if (way.multiplier > 1)
    draw_multiplier(pen, {start, frame.axis}, way.multiplier_words);
  else
    draw_nut(pen, {start, frame.axis});
  draw_arrow(pen, frame, end - 1, way);
}

void draw_one_person(Pen pen, const Frame& frame, const TorqueWay& way, Force one, const std::string& words) {
  const double extension = way.extension ? way.extension->si() * frame.length_scale : 0;
  const double x = kLeft + extension + way.bar.si() * frame.length_scale - 1;
  const double y = frame.axis - kBar / 2 - one.si() * frame.force_scale;
  pen.open_path({{x - 9, y}, {x + 9, y}}, kHidden, "one-person");
  pen.text({x - 10, y + 0.36 * kWords}, words, {.size = kWords, .anchor = Anchor::end, .ink = Ink::second});
}

}  // namespace

TorqueWays torque_ways(const std::vector<TorqueWay>& ways, Force one_person, const std::string& one_person_words,
                       double width) {
  double longest = 0, strongest = one_person.si();
  for (const TorqueWay& way : ways) {
    longest = std::max(longest, way.bar.si() + (way.extension ? way.extension->si() : 0.0));
    strongest = std::max(strongest, way.pull.si());
  }
  TorqueWays out;
  if (ways.empty() || longest <= 0) return out;
  out.length_scale = (width - kLeft - kRight) / longest;
  out.force_scale = kHighestArrow / strongest;
  const Frame frame{out.length_scale, out.force_scale, width, kHighestArrow + 4};
  for (const TorqueWay& way : ways) {
    DisplayList list;
    list.width = width;
    list.height = frame.axis + kWords + 3.5;
    Pen pen{list};
    draw_lever(pen, frame, way);
    draw_one_person(pen, frame, way, one_person, one_person_words);
    out.ways.push_back(std::move(list));
  }
  return out;
}

}  // namespace flatwise::drawing
