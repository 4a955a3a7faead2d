// play_scale.h: side play at the rim: how it is measured, what a swing means, and the hours on every bearing of a shaft.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "drawing/display_list.h"
#include "drawing/shaft_strip.h"

namespace flatwise::drawing {

struct ScaleTick {
  double at = 0;  ///< In the unit of the upper scale, also for the lower one.
  std::string words;
};
/// One bar with two scales: above the swing as it is read, below the clearance it means. Who calls places the ticks of the lower
/// scale, so that its uneven steps show what the one has to do with the other.
struct PlayScale {
  double end = 1;                                 ///< Of the upper scale, which begins at nought.
  std::optional<double> new_least, new_greatest;  ///< What a new bearing would show: a band, not limits.
  std::string new_words{};
  std::optional<double> value;
  double expanded = 0;  ///< U, half the whisker.
  std::string value_words{};
  std::vector<ScaleTick> above{}, below{};
};
/// Ids     "new", "reading", "whisker". A reading beyond the end is an arrow at the edge.
[[nodiscard]] DisplayList play_scale(const PlayScale& scale, double width);

/// How the swing is measured: the rotor in its sling, the dial at a tine, push and pull; with the hands numbered. The rotor, the
/// shaft and the dial's distance from the axis are to scale; sling, dial and its foot are signs.
/// Ids     "hand-1", "hand-2", "hand-3".
[[nodiscard]] DisplayList play_measure(const Shaft& shaft, int rotor, Length dial_radius, double width);

/// One bearing in one rotor, from the hours it was fitted at to the hours it left.
struct BearingBar {
  int rotor = 0;
  double from_hours = 0;
  std::optional<double> to_hours;  ///< None: it runs.
  bool failed = false;
};
struct JobLine {
  double hours = 0;
  std::string words, id;
};
struct Ages {
  double from_hours = 0, now_hours = 0;  ///< Top and bottom edge.
  std::vector<BearingBar> bars;
  std::vector<JobLine> jobs;
  std::vector<int> watch;  ///< Rotors shown in the marking-out blue.
  std::string now_words{}, hours_words{};
};
struct AgesDrawing {
  DisplayList list;
  StripDrawing strip;
};
/// The hours hang from the drawing, each column under its own rotor: hollow is gone, a cross or a circle tells how it ended, a hatched
/// tab was renewed, solid is on the bearing that is in there. The longest solid bar is the oldest bearing.
/// Ids     "rotor-<n>", "job-<id>".
[[nodiscard]] AgesDrawing ages(const Shaft& shaft, const Ages& is, double width, double height);

}  // namespace flatwise::drawing
