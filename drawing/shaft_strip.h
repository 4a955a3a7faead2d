// shaft_strip.h: the whole shaft side on, to scale from its definition: the drawing that everything else hangs on.
//
//   StripDrawing strip = shaft_strip(shaft, states, marks, {.width = 186, .greatest_height = 36});
//   append(page, strip.list, {12, 62});
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "drawing/display_list.h"

namespace flatwise::drawing {

enum class Body { on, off };  ///< Where the part is: solid, or outline with the shaft through.
enum class Flag { none, done, stopped, waits, unknown };  ///< What is to be said about it, above the tips.

struct StationState {
  Body body = Body::on;
  Flag flag = Flag::none;
  bool renew = false;   ///< Hatched at 60°; of a rotor its hub.
  bool chosen = false;  ///< In the marking-out blue.
};

/// Azimuth of the mark of each half of a rotor; none: not read, not drawn. The rotor leans to the mark of half A.
struct RotorMarks {
  std::optional<Angle> a, b;
};

struct StripOptions {
  double width = 186;              ///< Of the whole drawing, with the letters A and B.
  double greatest_height = 0;      ///< Of shaft and rotors; 0: as high as it comes. Else tines are broken off first.
  double least_tine_share = 0.45;  ///< No tine is broken off shorter than this share of its tip radius.
  bool from_behind = false;        ///< Seen from the other side: end A right, flat 1 still up.
  bool numbers = true;             ///< Rotor numbers below.
  bool draw_marks = true;          ///< Marks of the halves beside the hubs; else they only say how a rotor leans.
  std::vector<int> stop_before{};  ///< A stop bar on the A side of these stations (station count: at end B).
  std::string stop_words{};        ///< Said beside the first stop bar.
};

struct StationExtent {
  double from = 0, to = 0;  ///< On the page, from < to.
};

struct StripDrawing {
  DisplayList list;
  double scale = 0;  ///< Millimetres of paper a millimetre of shaft, the same for everything.
  double axis_y = 0;
  std::vector<StationExtent> stations;
};

/// The strip.
///
/// Model      Side view square to the shaft, parallel projection, end A left and flat 1 up. Rotors lean by the
///            definition's inclination towards the mark of half A, so a rotor that leans towards the eye shows less tilt and the
///            ellipse of its rim. Every length and diameter is the definition's at one scale. What the definition does
///            not say is drawn in proportion to what it does say and means nothing: width of the hub (0.82 of the
///            station), shape of a tine, height of a hanger's arm, count of a pulley's grooves, thread beyond a nut.
/// Inputs     states and marks: one a station and one a rotor, in order; shorter means the rest are on, without marks.
/// Returns    Items with ids "station-<index>" for taps; height follows from the scale.
[[nodiscard]] StripDrawing shaft_strip(const Shaft& shaft, std::span<const StationState> states,
                                       std::span<const RotorMarks> marks, const StripOptions& options);

/// A flag by itself, its foot at `foot`, `size` high.
void draw_flag(DisplayList& list, Flag flag, Point foot, double size);

}  // namespace flatwise::drawing
