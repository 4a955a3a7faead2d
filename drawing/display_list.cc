#include "drawing/display_list.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "drawing/pen.h"

namespace flatwise::drawing {
namespace {

struct Mover {
  Point at;
  double scale;

  [[nodiscard]] Point operator()(Point p) const { return {at.x + p.x * scale, at.y + p.y * scale}; }
  void move(Path& path) const {
    for (Point& p : path.points) p = (*this)(p);
  }
  void move(Arc& arc) const {
    arc.centre = (*this)(arc.centre);
    arc.radius *= scale;
  }
  void move(Text& text) const {
    text.at = (*this)(text.at);
    text.size *= scale;
    text.width *= scale;
  }
  void move(Code& code) const {
    code.at = (*this)(code.at);
    code.side *= scale;
  }
};

}  // namespace

void append(DisplayList& to, const DisplayList& from, Point at, double scale) {
  const Mover mover{at, scale};
  to.items.reserve(to.items.size() + from.items.size());
  for (Item item : from.items) {
    std::visit([&](auto& shape) { mover.move(shape); }, item);
    to.items.push_back(std::move(item));
  }
}

void Pen::line(Point from, Point to, Look look) { list_->items.emplace_back(Path{{from, to}, false, look, {}}); }

void Pen::box(const Box& at, Look look, std::string id) {
  polygon({{at.x, at.y}, {at.x + at.width, at.y}, {at.x + at.width, at.y + at.height}, {at.x, at.y + at.height}}, look,
          std::move(id));
}

void Pen::polygon(std::vector<Point> points, Look look, std::string id) {
  if (points.size() < 3) return;  // What a clip left of a shape may be nothing.
  list_->items.emplace_back(Path{std::move(points), true, look, std::move(id)});
}

void Pen::open_path(std::vector<Point> points, Look look, std::string id) {
  list_->items.emplace_back(Path{std::move(points), false, look, std::move(id)});
}

void Pen::circle(Point centre, double radius, Look look, std::string id) {
  list_->items.emplace_back(Arc{centre, radius, 0, 360, look, std::move(id)});
}

void Pen::text(Point at, std::string words, Type type, std::string id) {
  Text text{};
  text.at = at;
  text.text = std::move(words);
  text.size = type.size;
  text.bold = type.bold;
  text.anchor = type.anchor;
  text.ink = type.ink;
  text.on_solid = type.on_solid;
  text.id = std::move(id);
  list_->items.emplace_back(std::move(text));
}

void Pen::letter_square(Point at, double side, const std::string& letter, std::string id) {
  box({at.x - side / 2, at.y - side / 2, side, side}, kBlack, std::move(id));
  const double size = side * 0.85;
  text({at.x, at.y + size * 0.36}, letter, {.size = size, .bold = true, .anchor = Anchor::middle, .on_solid = true});
}

void Pen::wave(Point at, double width) {
  constexpr int kPieces = 12;
  std::vector<Point> points;
  for (int i = 0; i <= kPieces; ++i) {
    const double along = static_cast<double>(i) / kPieces;
    points.push_back(
        {at.x + (along - 0.5) * width, at.y - std::min(0.14 * width, 0.9) * std::sin(2 * std::numbers::pi * along)});
  }
  open_path(std::move(points), kNarrow);
}

}  // namespace flatwise::drawing
