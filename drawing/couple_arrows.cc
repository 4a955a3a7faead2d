#include "drawing/couple_arrows.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/pen.h"

namespace flatwise::drawing {
namespace {

constexpr double kText = 3.4, kHead = 2.4, kBeside = 1.5, kMargin = 6;

Point direction(double azimuth) {
  const double radians = azimuth * std::numbers::pi / 180;
  return {std::sin(radians), -std::cos(radians)};
}
Point plus(Point a, Point b, double scale = 1) { return {a.x + scale * b.x, a.y + scale * b.y}; }
double length_of(Point a) { return std::hypot(a.x, a.y); }

void arrow(Pen pen, Point from, Point to, Look look, const std::string& id) {
  const Point along{to.x - from.x, to.y - from.y};
  const double size = length_of(along);
  if (!(size > 0)) return;
  const Point unit{along.x / size, along.y / size};
  const Point across{-unit.y, unit.x};
  const double head = std::min(kHead, 0.6 * size) * (look.stroke == Stroke::heavy ? 1.5 : 1);
  const Point neck = plus(to, unit, -head);
  pen.open_path({from, neck}, look, id);
  pen.polygon({to, plus(neck, across, 0.45 * head), plus(neck, across, -0.45 * head)},
              {.stroke = Stroke::none, .fill = Fill::ink, .ink = look.ink}, id);
}

/// Tails and heads in the unit of the couples, first tail at the origin.
std::vector<Point> corners_of(const std::vector<CoupleArrow>& rotors) {
  std::vector<Point> corners{{0, 0}};
  for (const CoupleArrow& r : rotors) corners.push_back(plus(corners.back(), direction(r.azimuth), r.size));
  return corners;
}

struct Fit {
  double scale = 1;
  Point shift;
  [[nodiscard]] Point at(Point p) const { return {shift.x + scale * p.x, shift.y + scale * p.y}; }
};
Fit fitted(const std::vector<Point>& corners, double width, double height) {
  const auto [left, right] = std::ranges::minmax(corners, {}, &Point::x);
  const auto [top, bottom] = std::ranges::minmax(corners, {}, &Point::y);
  const double wide = right.x - left.x, high = bottom.y - top.y;
  Fit fit;
  fit.scale = std::min((width - 2 * kMargin) / std::max(wide, 1e-12), (height - 2 * kMargin) / std::max(high, 1e-12));
  fit.shift = {width / 2 - fit.scale * (left.x + right.x) / 2, height / 2 - fit.scale * (top.y + bottom.y) / 2};
  return fit;
}

/// How many arrows before this one run along the same line, either way: each steps aside by as much.
int doubled_before(const std::vector<Point>& corners, std::size_t i) {
  const auto near = [&](Point a, Point b) { return length_of({a.x - b.x, a.y - b.y}) < 1e-6 * (1 + length_of(a)); };
  int count = 0;
  for (std::size_t k = 0; k < i; ++k)
    if ((near(corners[k], corners[i]) && near(corners[k + 1], corners[i + 1])) ||
        (near(corners[k], corners[i + 1]) && near(corners[k + 1], corners[i])))
      ++count;
  return count;
}

}  // namespace

DisplayList couple_arrows(const CoupleArrows& of, double width, double height) {
  DisplayList list;
  list.width = width;
  list.height = height;
  Pen pen{list};
  const std::vector<Point> corners = corners_of(of.rotors);
  const Fit fit = fitted(corners, width, height);
  for (std::size_t i = 0; i < of.rotors.size(); ++i) {
    const Point unit = direction(of.rotors[i].azimuth);
    const Point across{-unit.y, unit.x};
    const double aside = kBeside * doubled_before(corners, i);
    const Point from = plus(fit.at(corners[i]), across, aside), to = plus(fit.at(corners[i + 1]), across, aside);
    const std::string id = "rotor-" + std::to_string(of.rotors[i].rotor);
    arrow(pen, from, to, {.stroke = Stroke::wide, .ink = Ink::second}, id);
    const Point middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
    const Point label = plus(middle, across, -2.6 - aside);
    pen.text({label.x, label.y + 0.36 * kText}, std::to_string(of.rotors[i].rotor),
             {.size = kText, .bold = true, .anchor = Anchor::middle}, id);
  }
  const double left = length_of(corners.back());
  if (left > of.floor)
    arrow(pen, fit.at(corners.front()), fit.at(corners.back()), kHeavy, "left-over");
  else
    pen.circle(fit.at(corners.front()), 1.6, {.stroke = Stroke::heavy, .fill = Fill::sheet}, "left-over");
  return list;
}

DisplayList ball_loads(const BallLoads& of, double side) {
  DisplayList list;
  list.width = side;
  list.height = side;
  Pen pen{list};
  const Point centre{side / 2, side / 2};
  const double pitch = 0.26 * side;  // Radius; as much again and a margin for the longest bar.
  const double ball = std::min(
      of.ball_share * pitch, pitch * std::numbers::pi / static_cast<double>(std::max<std::size_t>(3, of.balls.size())));
  const double longest = side / 2 - pitch - ball - kText - 1;
  double greatest = 0;
  for (const BallLoad& b : of.balls) greatest = std::max(greatest, b.load);
  pen.circle(centre, pitch, kAxis);
  pen.circle(centre, pitch - ball, kNarrow);
  pen.circle(centre, pitch + ball, kNarrow);
  bool named = false;
  for (std::size_t i = 0; i < of.balls.size(); ++i) {
    const BallLoad& b = of.balls[i];
    const Point out = direction(b.azimuth);
    const std::string id = "ball-" + std::to_string(i + 1);
    pen.circle(plus(centre, out, pitch), ball,
               {.stroke = Stroke::narrow, .fill = b.load > 0 ? Fill::solid : Fill::sheet}, id);
    if (!(b.load > 0)) continue;
    const bool most = b.load == greatest && !named;
    const Point from = plus(centre, out, pitch + ball), to = plus(from, out, longest * b.load / greatest);
    pen.open_path({from, to}, most ? kHeavy : kWide, most ? "greatest" : id);
    if (!most) continue;
    named = true;
    const Anchor anchor = out.x > 0.3 ? Anchor::end : out.x < -0.3 ? Anchor::start : Anchor::middle;
    pen.text({to.x, to.y + (out.y > 0 ? kText : -1)}, of.greatest_words,
             {.size = kText, .bold = true, .anchor = anchor}, "greatest");
  }
  return list;
}

}  // namespace flatwise::drawing
