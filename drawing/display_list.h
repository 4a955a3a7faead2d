// display_list.h: a picture as plain data in millimetres of paper (or of the page's canvas). Made by pure code from a
// shaft and a state; paper/ renders it to SVG and PDF, the page to its own SVG. y grows downwards.
#pragma once

#include <string>
#include <variant>
#include <vector>

namespace flatwise::drawing {

struct Point {
  double x = 0, y = 0;
};

/// Widths 0.25, 0.5, 0.9 mm on paper, then the dash patterns; part: a neighbouring part, thin.
enum class Stroke { none, narrow, wide, heavy, hidden, axis, wanted, part };
enum class Fill {
  none,
  sheet,
  solid,
  tone,
  ink,
  cut,
  cut_next,
  renew,
  next
};  ///< cut: 45°; renew: 60°; ink: in the look's ink.
enum class Ink { ink, second, next, in, out, tell, sheet };  ///< sheet: the ground, for seams between solid parts.
enum class Anchor { start, middle, end };

struct Look {
  Stroke stroke = Stroke::narrow;
  Fill fill = Fill::none;
  Ink ink = Ink::ink;
};
struct Path {  ///< Straight pieces; closed when filled. Arcs are Arc.
  std::vector<Point> points;
  bool closed = false;
  Look look;
  std::string id;  ///< "station-7", "rotor-4", "half-4-b": what a tap on it means; empty: nothing.
};
struct Arc {  ///< Degrees clockwise from 12 o'clock; from == to - 360: a full circle.
  Point centre;
  double radius = 0, from = 0, to = 360;
  Look look;
  std::string id;
};
struct Text {
  Point at;  ///< On the base line.
  std::string text;
  double size = 3.5;  ///< mm, font size
  bool bold = false;
  Anchor anchor = Anchor::start;
  Ink ink = Ink::ink;
  std::string id;
  double width = 0;       ///< > 0: break into lines no wider than this, downwards.
  bool on_solid = false;  ///< White on black.
};
struct Code {  ///< A QR code (ISO/IEC 18004) of `text`, `side` mm wide without its quiet zone.
  Point at;
  double side = 18;
  std::string text;
};

using Item = std::variant<Path, Arc, Text, Code>;
struct DisplayList {
  double width = 0, height = 0;
  std::vector<Item> items;
};

/// `from` moved by (x, y) and scaled about its origin, appended.
void append(DisplayList& to, const DisplayList& from, Point at, double scale = 1.0);

}  // namespace flatwise::drawing
