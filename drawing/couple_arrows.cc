#include "drawing/couple_arrows.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/units/problem.h"
#include "drawing/pen.h"
#include "drawing/plot_labels.h"

namespace flatwise::drawing {
namespace {

constexpr double kText = 3.4, kHead = 2.4, kBeside = 1.5, kMargin = 7;
constexpr double kLeftAside = 5.2, kLineApart = 7;

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

bool near(Point a, Point b) { return length_of({a.x - b.x, a.y - b.y}) < 1e-6 * (1 + length_of(a)); }

/// Arrows that run along the same line between the same ends, either way.
bool doubled(Point from, Point to, Point other_from, Point other_to) {
  return (near(from, other_from) && near(to, other_to)) || (near(from, other_to) && near(to, other_from));
}
/// How many arrows before this one lie on its line: each steps aside by as much.
int doubled_before(const std::vector<Point>& corners, std::size_t i) {
  int count = 0;
  for (std::size_t k = 0; k < i; ++k) count += doubled(corners[k], corners[k + 1], corners[i], corners[i + 1]) ? 1 : 0;
  return count;
}

/// All of them along one line: there is no figure that they go round.
bool in_line(const std::vector<CoupleArrow>& rotors) {
  return std::ranges::all_of(rotors, [&](const CoupleArrow& r) {
    return std::abs(std::sin((r.azimuth - rotors.front().azimuth) * std::numbers::pi / 180)) < 1e-6;
  });
}

/// "1, 4": the rotors whose arrows lie on the line of this one, from it on.
std::string names_on_line(const CoupleArrows& of, const std::vector<Point>& corners, std::size_t i) {
  std::string names = std::to_string(of.rotors[i].rotor);
  for (std::size_t k = i + 1; k < of.rotors.size(); ++k)
    if (doubled(corners[k], corners[k + 1], corners[i], corners[i + 1]))
      names += ", " + std::to_string(of.rotors[k].rotor);
  return names;
}

void arrow_of_rotor(Pen pen, const CoupleArrows& of, const std::vector<Point>& corners, const Fit& fit, std::size_t i) {
  const Point unit = direction(of.rotors[i].azimuth);
  const Point across{-unit.y, unit.x};
  const int before = doubled_before(corners, i);
  const Point from = plus(fit.at(corners[i]), across, kBeside * before);
  const Point to = plus(fit.at(corners[i + 1]), across, kBeside * before);
  const std::string id = "rotor-" + std::to_string(of.rotors[i].rotor);
  arrow(pen, from, to, {.stroke = Stroke::wide, .ink = Ink::second}, id);
  if (before > 0) return;  // Its name stands at the first on its line.
  const std::string names = names_on_line(of, corners, i);
  const double away = 2.6 + 0.5 * std::abs(across.x) * (words_width(names, kText) - words_width("1", kText));
  const Point label = plus({(from.x + to.x) / 2, (from.y + to.y) / 2}, across, -away);
  pen.text({label.x, label.y + 0.36 * kText}, names, {.size = kText, .bold = true, .anchor = Anchor::middle}, id);
}

/// What is left: beside an arrow that it would lie on, on the outer side.
void left_over(Pen pen, const std::vector<Point>& corners, const Fit& fit) {
  Point from = fit.at(corners.front()), to = fit.at(corners.back());
  bool on_another = false;
  Point middle{0, 0};
  for (std::size_t k = 0; k + 1 < corners.size(); ++k) {
    on_another = on_another || doubled(corners[k], corners[k + 1], corners.front(), corners.back());
    middle = plus(middle, fit.at(corners[k]), 1.0 / static_cast<double>(corners.size() - 1));
  }
  if (on_another) {
    const Point along{to.x - from.x, to.y - from.y};
    Point across{-along.y / length_of(along), along.x / length_of(along)};
    const Point outwards{(from.x + to.x) / 2 - middle.x, (from.y + to.y) / 2 - middle.y};
    const double side = across.x * outwards.x + across.y * outwards.y < 0 ? -kLeftAside : kLeftAside;
    from = plus(from, across, side);
    to = plus(to, across, side);
  }
  arrow(pen, from, to, kHeavy, "left-over");
}

/// Side by side in their order, each named at its head, and what is left last.
DisplayList arrows_in_line(const CoupleArrows& of, DisplayList list) {
  Pen pen{list};
  const std::vector<Point> corners = corners_of(of.rotors);
  const Point unit = direction(of.rotors.front().azimuth);
  const auto along = [&](Point p) { return p.x * unit.x + p.y * unit.y; };
  const auto [least, most] = std::ranges::minmax(corners, {}, along);
  const Point across{-unit.y, unit.x};
  const double room = std::abs(across.x) * list.width + std::abs(across.y) * list.height - 2 * kMargin;
  const double length = std::abs(unit.x) * list.width + std::abs(unit.y) * list.height - 2 * kMargin - 2 * kText;
  const double apart = std::min(kLineApart, room / static_cast<double>(of.rotors.size()));
  const double scale = length / std::max(along(most) - along(least), 1e-12);
  const double middle = (along(most) + along(least)) / 2;
  const auto at = [&](Point p, std::size_t place) {
    const double aside = (static_cast<double>(place) - 0.5 * static_cast<double>(of.rotors.size())) * apart;
    const Point centre{list.width / 2, list.height / 2};
    return plus(plus(centre, unit, scale * (along(p) - middle)), across, aside);
  };
  for (std::size_t i = 0; i < of.rotors.size(); ++i) {
    const Point from = at(corners[i], i), to = at(corners[i + 1], i);
    const std::string id = "rotor-" + std::to_string(of.rotors[i].rotor);
    arrow(pen, from, to, {.stroke = Stroke::wide, .ink = Ink::second}, id);
    const Point label = plus(to, direction(of.rotors[i].azimuth), 2.6);
    const double size = std::min(kText, 0.9 * apart);
    pen.text({label.x, label.y + 0.36 * size}, std::to_string(of.rotors[i].rotor),
             {.size = size, .bold = true, .anchor = Anchor::middle}, id);
  }
  if (const std::size_t last = of.rotors.size(); length_of(corners.back()) > of.floor)
    arrow(pen, at(corners.front(), last), at(corners.back(), last), kHeavy, "left-over");
  else
    pen.circle(at(corners.front(), last), 1.6, {.stroke = Stroke::heavy, .fill = Fill::sheet}, "left-over");
  return list;
}

}  // namespace

CoupleArrows arrows_of(std::span<const Torque> couples, std::span<const Angle> tilt, bool closes) {
  CORE_CHECK(couples.size() == tilt.size());
  double greatest = 0;
  for (const Torque couple : couples) greatest = std::max(greatest, std::abs(couple.si()));
  CoupleArrows arrows{.rotors = {}, .floor = closes ? 1e300 : 1e-9 * greatest};
  for (std::size_t i = 0; i < couples.size(); ++i) {
    const double couple = couples[i].si();
    arrows.rotors.push_back({static_cast<int>(i) + 1, std::abs(couple), tilt[i].degrees() + (couple < 0 ? 180 : 0)});
  }
  return arrows;
}

DisplayList couple_arrows(const CoupleArrows& of, double width, double height) {
  DisplayList list;
  list.width = width;
  list.height = height;
  if (of.rotors.size() > 1 && in_line(of.rotors)) return arrows_in_line(of, std::move(list));
  Pen pen{list};
  const std::vector<Point> corners = corners_of(of.rotors);
  const Fit fit = fitted(corners, width, height);
  for (std::size_t i = 0; i < of.rotors.size(); ++i) arrow_of_rotor(pen, of, corners, fit, i);
  if (length_of(corners.back()) > of.floor)
    left_over(pen, corners, fit);
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
  const double full = std::max(greatest, of.full_scale);
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
    const Point from = plus(centre, out, pitch + ball), to = plus(from, out, longest * b.load / full);
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
