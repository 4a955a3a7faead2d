// section.h: a hub and its pair cut open: where the bore gauge goes, and why the two marks stand half a turn apart.
#pragma once

#include <string>

#include "core/shaft/shaft.h"
#include "drawing/display_list.h"

namespace flatwise::drawing {

/// Half section of a hub with the bearing in thin dash-dots and the two planes to be gauged at the bearing's edges.
///
/// Model      To scale from the bearing's boundary dimensions and the hub's outside diameter. Hub width (0.82 of the
///            station), depth of the snap ring grooves and the recess beside them are drawn, not known.
/// Inputs     `width` of the drawing on the page; height follows.
[[nodiscard]] DisplayList hub_section(const Station& station, const Rotor& rotor, double width);

/// Circle with the gauging directions, `count` diameters evenly spread clockwise from the top, numbered.
[[nodiscard]] DisplayList direction_circle(int count, double size);

/// A pair on the shaft in section: halves, bearing, the axis of the seat through both. `flats_out` turns half B out of
/// its place, seen in the plane of half A's lean: a good pair (0) has one straight bore, a wrong one a kink.
[[nodiscard]] DisplayList pair_section(const Shaft& shaft, int rotor, int flats_out, double width);

}  // namespace flatwise::drawing
