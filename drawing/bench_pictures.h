// bench_pictures.h: pictures of the bench: a rotor's tray with what lies on it, the press right and wrong in section, and
// what a torque takes on a bar, to scale.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "drawing/display_list.h"

namespace flatwise::drawing {

enum class TrayPart { hub, half, seal, ring, bearing };
/// fresh: new (hatched). reused: the old one may go back (outline). wanted: not there (dash-dots in blue).
enum class TrayState { fresh, reused, wanted };

struct TrayPiece {
  TrayPart part = TrayPart::hub;
  TrayState state = TrayState::reused;
  std::string id{};
  std::string name{};  ///< Below it.
};
/// The pieces side by side at one scale, as seen along the shaft: hub outside, bearing, halves and bore from the definition.
/// What the definition does not say means nothing here: width of a seal's lip, wire of a snap ring, size of a ball.
struct TrayDrawing {
  DisplayList list;
  double scale = 0;  ///< Millimetres of drawing a millimetre of part.
};
[[nodiscard]] TrayDrawing tray(const Shaft& shaft, int rotor, const std::vector<TrayPiece>& pieces, double width);

/// The press in section: hub on its support, first snap ring in as a stop, bearing half way home, the tool above it.
struct PressSection {
  bool on_outer = true;  ///< The tool on the outer ring, in blue; else on the inner, in red, with the way of the force.
  std::string tool_words{}, ring_words{}, support_words{};
};
/// Model   Boundary dimensions of bearing and hub to scale; the tool ring lies on the bearing ring it bears on. Support, base
///         and depth of the grooves are drawn, not known.
/// Ids     "tool", "hub", "outer-ring", "inner-ring", "stop-ring", "support".
[[nodiscard]] DisplayList press_section(const Station& station, const Rotor& rotor, const PressSection& is,
                                        double width);

/// Diameters between which a press tool must lie to bear on the outer ring only.
struct ToolRing {
  Length inside, outside;
};
[[nodiscard]] ToolRing tool_ring(const Rotor& rotor);

/// One way to pull a nut.
struct TorqueWay {
  Length bar;                         ///< Nut or multiplier to the hand; with an extension: drive to hand.
  std::optional<Length> extension{};  ///< Before the bar.
  double multiplier = 1;
  Force pull;
  bool too_much = false, advised = false;
  std::string bar_words{}, extension_words{}, pull_words{}, multiplier_words{};
};
/// Drawings of the ways under each other at one scale for length and one for force. `one_person` is a dashed line across
/// every arrow. Ids "bar", "extension", "multiplier", "pull", "one-person".
struct TorqueWays {
  std::vector<DisplayList> ways;
  double length_scale = 0;  ///< Millimetres a metre.
  double force_scale = 0;   ///< Millimetres a newton.
};
[[nodiscard]] TorqueWays torque_ways(const std::vector<TorqueWay>& ways, Force one_person,
                                     const std::string& one_person_words, double width);

}  // namespace flatwise::drawing
