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

double distance(const Box& box, const std::vector<Point>& points) {
  double least = 1e9;
  for (const Point& p : points) least = std::min(least, distance(box, p));
  return least;
}
double distance(const Box& box, const std::vector<Box>& boxes) {
  double least = 1e9;
  for (const Box& other : boxes) least = std::min(least, distance(box, other));
  return least;
}

/// A box as a place for a name: how far from its own curve, and how much room it has.
struct Tried {
  Box box;
  double away = 1e9, room = -1;
  bool own = false;  ///< Nothing drawn is nearer than its own curve.
};

Tried tried(const Box& box, const std::vector<Point>& curve, const Crowd& crowd) {
  const double drawn = distance(box, crowd.points), words = distance(box, crowd.boxes);
  Tried out{.box = box, .away = distance(box, curve), .room = std::min(drawn, words)};
  out.own = std::min(out.room, out.away) >= kCrowded && out.away <= drawn + crowd.slack + 1e-9;
  return out;
}

/// The free place that is nearest to the curve, and nearer to it than to anything else; else the free place that is nearest to it.
std::optional<Tried> free_place(const std::vector<Point>& curve, const Box& size, const Box& area, const Crowd& crowd) {
  std::optional<Tried> best;
  for (double y = area.y; y + size.height <= area.y + area.height; y += size.height / 4)
    for (double x = area.x; x + size.width <= area.x + area.width; x += size.height / 2) {
      const Tried here = tried({x, y, size.width, size.height}, curve, crowd);
      if (std::min(here.room, here.away) < kCrowded) continue;
      if (!best || here.own > best->own || (here.own == best->own && here.away < best->away)) best = here;
    }
  return best;
}

}  // namespace

double words_width(const std::string& words, double size) {
  std::size_t letters = 0;
  for (const char c : words) letters += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
  return 0.56 * size * static_cast<double>(letters);
}

NamePlace place_beside(const std::vector<Point>& curve, const Box& size, const Box& area, const Crowd& crowd) {
  constexpr double kAway = 1.6;
  Tried best{.box = {area.x, area.y, size.width, size.height}};
  const auto offer = [&](double x, double y) {
    const Box box{x, y, size.width, size.height};
    if (!lies_in(box, area)) return;
    Tried here = tried(box, curve, crowd);
    here.room = std::min(here.room, 2 * kAway);
    if (here.own > best.own || (here.own == best.own && here.room > best.room + 1e-9)) best = here;
  };
  for (const Point& p : curve) {
    for (const double side : {-1.0, -0.75, -0.5, -0.25, 0.0}) {
      offer(p.x + side * size.width, p.y - kAway - size.height);
      offer(p.x + side * size.width, p.y + kAway);
    }
    // A steep curve has room beside it only.
    offer(p.x - 2 * kAway - size.width, p.y - size.height);
    offer(p.x + 2 * kAway, p.y - size.height / 2);
  }
  if (!best.own) best = free_place(curve, size, area, crowd).value_or(best);
  return {best.box, best.own, std::min(best.room, best.away) >= kCrowded};
}

}  // namespace flatwise::drawing
