// end_view.h: a rotor's pair seen along the shaft: the polygon with its numbered flats, both halves' rims off centre by
// the true amount, and the marks.
//
//   DisplayList view = end_view(pair_of(shaft, 4), {.flat_a = 4, .flat_b = 2, .wanted_b = 1}, {.seen_from = End::a});
#pragma once

#include <optional>
#include <string>

#include "core/shaft/shaft.h"
#include "drawing/display_list.h"

namespace flatwise::drawing {

struct PairSize {
  int flats = 6;
  Length across_flats;
  Length half_length;
  Length rim_diameter;  ///< Of the halves.
  Angle lean;
};
/// From the definition. The rim is not in it: drawn as the ring's bore and a quarter of the ring's height all round.
[[nodiscard]] PairSize pair_of(const Shaft& shaft, int rotor);

struct PairMarks {
  std::optional<int> flat_a{}, flat_b{};      ///< As read or as the map wants them.
  std::optional<int> wanted_a{}, wanted_b{};  ///< Where they should be; drawn where it differs, with the shorter way.
};

struct EndViewOptions {
  End seen_from = End::a;
  double size = 30;  ///< Width and height of the whole view.
  double number_size = 3.4;
  double circle = 0;  ///< Radius of a circle round each flat's number, to be tapped; 0: none, as on paper.
  bool colour =
      false;  ///< A mark that is read where it should not be in the look's 'out', with the wanted circle in blue.
  std::string id{};  ///< Prefix of the ids: "rotor-4" gives "rotor-4-flat-1", "rotor-4-half-b".
};

/// How far the rim of a half stands off the shaft's axis: tan(lean) x its length, away from its own mark.
[[nodiscard]] Length rim_offset(const PairSize& pair);

/// Model      Seen along the shaft from the chosen end, flat 1 up. Flats count clockwise seen from end A, so
///            anticlockwise from end B. The near half's rim is solid with a filled mark, the far half's dashed with a dashed mark.
/// Accuracy   Rims, offset and polygon are the definition's at one scale; marks and figures are signs.
[[nodiscard]] DisplayList end_view(const PairSize& pair, const PairMarks& marks, const EndViewOptions& options);

}  // namespace flatwise::drawing
