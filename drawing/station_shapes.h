// station_shapes.h: the shape of each kind of station, in millimetres of the shaft: x from its own start towards B,
// y downwards from the shaft's axis. Inside drawing/ only.
#pragma once

#include <vector>

#include "core/shaft/shaft.h"
#include "drawing/outline.h"

namespace flatwise::drawing {

/// One closed outline of a part.
struct Piece {
  std::vector<Point> outline;
  bool hub = false;   ///< Hatched when a rotor's set is to be renewed.
  bool tine = false;  ///< Broken off in a low strip.
};

struct Shape {
  std::vector<Piece> pieces;              ///< Painted in this order.
  std::vector<std::vector<Point>> lines;  ///< Thin edges on top.
  double top = 0, bottom = 0;             ///< Extent, y downwards.
};

/// Everything but rotors. `arm_mm`: how far up a hanger's arm reaches.
[[nodiscard]] Shape station_shape(const Station& station, const Shaft& shaft, double arm_mm);
[[nodiscard]] Shape rotor_shape(const Station& station, const Rotor& rotor, const Axis& lean);
[[nodiscard]] double hub_radius_mm(const Station& station, const Rotor& rotor);
/// Outer radius of a station in mm; where the definition has none, one and a half times the shaft.
[[nodiscard]] double radius_mm(const Station& station, const Shaft& shaft);

inline constexpr double kHubShare = 0.82;  ///< Hub width as a share of the station's length: drawn, not known.

}  // namespace flatwise::drawing
