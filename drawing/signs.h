// signs.h: the small signs: three answers, gauge bar, caution, boxes to tick and to write a figure in.
#pragma once

#include <optional>
#include <string>

#include "core/working/working.h"
#include "drawing/pen.h"

namespace flatwise::drawing {

/// Two stops of a gauge and a dot: between (in), outside (out), half-filled on the stop with its whisker (cannot tell).
/// `height` of the stops; the sign is 1.7 times as wide, left edge and top at `at`.
void draw_answer(DisplayList& list, Answer answer, Point at, double height);

/// A reading against its limits, to scale. All in one unit.
struct GaugeBar {
  double least = 0, greatest = 0;  ///< Limits, least < greatest.
  std::optional<double> value;
  double expanded = 0;                          ///< U, half the whisker.
  std::string least_words{}, greatest_words{};  ///< Said under the limits.
};
/// Bar of the given box: what lies outside the limits is hatched; a value further out than half the tolerance stands at
/// the edge with an arrow, never inside the drawn range.
void draw_gauge_bar(DisplayList& list, const GaugeBar& bar, const Box& at);

/// Triangle with exclamation mark, `side` wide.
void draw_caution(DisplayList& list, Point at, double side);
/// Empty box for a tick. `done` puts the tick in.
void draw_tick_box(DisplayList& list, Point at, double side, bool done = false);
/// Boxes for the digits still to be written, behind what is known ("3.9"): returns the width used.
double draw_digit_boxes(DisplayList& list, Point at, const std::string& known, double known_width, int digits);
/// Arrow along the shaft to the end named by its letter.
void draw_end_arrow(DisplayList& list, const std::string& letter, const Box& at);

inline constexpr double kDigitWidth = 5.6, kDigitHeight = 10, kDigitPitch = 6.2;  ///< A carpenter's pencil.
inline constexpr double kTickSide = 4.6;

}  // namespace flatwise::drawing
