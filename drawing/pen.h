// pen.h: short ways to put lines, boxes and words into a display list. Nothing here decides anything.
#pragma once

#include <string>
#include <vector>

#include "drawing/display_list.h"

namespace flatwise::drawing {

inline constexpr Look kNarrow{.stroke = Stroke::narrow};
inline constexpr Look kWide{.stroke = Stroke::wide};
inline constexpr Look kHeavy{.stroke = Stroke::heavy};
inline constexpr Look kHidden{.stroke = Stroke::hidden};
inline constexpr Look kAxis{.stroke = Stroke::axis};
inline constexpr Look kBlack{.stroke = Stroke::none, .fill = Fill::ink};
inline constexpr Look kGround{.stroke = Stroke::none, .fill = Fill::sheet};

struct Box {
  double x = 0, y = 0, width = 0, height = 0;
};

/// How a line of text is set; `Text` without its place and words.
struct Type {
  double size = 3.5;
  bool bold = false;
  Anchor anchor = Anchor::start;
  bool on_solid = false;
  Ink ink = Ink::ink;
};

class Pen {
 public:
  explicit Pen(DisplayList& list) : list_{&list} {}

  void line(Point from, Point to, Look look = kNarrow);
  void box(const Box& at, Look look, std::string id = {});
  void polygon(std::vector<Point> points, Look look, std::string id = {});
  void open_path(std::vector<Point> points, Look look, std::string id = {});
  void circle(Point centre, double radius, Look look, std::string id = {});
  void text(Point at, std::string words, Type type, std::string id = {});
  /// The heavy letter of an end or half in a black square, `side` wide, centred at `at`.
  void letter_square(Point at, double side, const std::string& letter, std::string id = {});
  /// Wave line of a break, centred at `at`, `width` long.
  void wave(Point at, double width);
  [[nodiscard]] DisplayList& list() { return *list_; }

 private:
  DisplayList* list_;
};

}  // namespace flatwise::drawing
