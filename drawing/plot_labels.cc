#include "drawing/plot_labels.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace flatwise::drawing {
namespace {

constexpr double kCrowded = 0.6;  ///< Nearer than this, words run into what stands there.

double gap_between(double a_from, double a_to, double b_from, double b_to) {
  return std::max({0.0, a_from - b_to, b_from - a_to});
}

double distance(const Box& box, Point p) {
  return std::hypot(gap_between(box.x, box.x + box.width, p.x, p.x), gap_between(box.y, box.y + box.height, p.y, p.y));
}
double distance(const Box& a, const Box& b) {
  return std::hypot(gap_between(a.x, a.x + a.width, b.x, b.x + b.width),
                    gap_between(a.y, a.y + a.height, b.y, b.y + b.height));
}

bool lies_in(const Box& box, const Box& area) {
  return box.x >= area.x && box.y >= area.y && box.x + box.width <= area.x + area.width &&
         box.y + box.height <= area.y + area.height;
}

double room(const Box& box, const Crowd& crowd) {
  double least = 1e9;
  for (const Point& p : crowd.points) least = std::min(least, distance(box, p));
  for (const Box& other : crowd.boxes) least = std::min(least, distance(box, other));
  return least;
}

/// The free place that is nearest to the curve, and nearer to it than to anything else; else the free place that is nearest to it.
std::optional<Box> free_place(const std::vector<Point>& curve, const Box& size, const Box& area, const Crowd& crowd) {
  std::optional<Box> own, any;
  double own_away = 1e9, any_away = 1e9;
  for (double y = area.y; y + size.height <= area.y + area.height; y += size.height / 4)
    for (double x = area.x; x + size.width <= area.x + area.width; x += size.height / 2) {
      const Box box{x, y, size.width, size.height};
      const double to_all = room(box, crowd);
      if (to_all < kCrowded) continue;
      double away = 1e9;
      for (const Point& p : curve) away = std::min(away, distance(box, p));
      if (away < any_away) any = box, any_away = away;
      if (away < own_away && away <= to_all + 1e-9) own = box, own_away = away;
    }
  return own ? own : any;
}

}  // namespace

double words_width(const std::string& words, double size) {
  std::size_t letters = 0;
  for (const char c : words) letters += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
  return 0.56 * size * static_cast<double>(letters);
}

Box place_beside(const std::vector<Point>& curve, const Box& size, const Box& area, const Crowd& crowd) {
  constexpr double kAway = 1.6;
  Box best{area.x, area.y, size.width, size.height};
  double best_room = -1;
  const auto offer = [&](double x, double y) {
    const Box box{x, y, size.width, size.height};
    if (!lies_in(box, area)) return;
    const double here = std::min(room(box, crowd), 2 * kAway);
    if (here <= best_room + 1e-9) return;
    best_room = here;
    best = box;
  };
  for (const Point& p : curve) {
    for (const double side : {-1.0, -0.5, 0.0}) {
      offer(p.x + side * size.width, p.y - kAway - size.height);
      offer(p.x + side * size.width, p.y + kAway);
    }
    // A steep curve has room beside it only.
    offer(p.x - 2 * kAway - size.width, p.y - size.height);
    offer(p.x + 2 * kAway, p.y - size.height / 2);
  }
  if (best_room >= kCrowded) return best;
  return free_place(curve, size, area, crowd).value_or(best);
}

}  // namespace flatwise::drawing
