// arrange.h: the quietest arrangements of a shaft, why, what a mistake in timing would do to the advised one, and how it goes
// into the definition.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/doubt/of_shaft.h"
#include "core/dynamics/pattern_list.h"
#include "core/dynamics/pattern_mistakes.h"
#include "core/timing/pairing.h"

namespace flatwise::job {

/// One arrangement of the list, as the shop looks at it.
struct ArrangedRow {
  dynamics::PatternRow row;
  dynamics::Resultants left;
  std::vector<Angle> tilt;
  std::vector<Torque> couples;  ///< Of each rotor about the middle of the planes, signed, with its force's share.
  Length least_gap;             ///< Between the tines of neighbours.
  int gap_after = 1;            ///< Between this rotor and the next.
};
struct ArrangedMistake {
  dynamics::TimingMistake what;
  std::optional<timing::Kink> kink;  ///< Inside the bearing, where one half is out.
};
struct Arranged {
  dynamics::PatternList list;
  std::vector<ArrangedRow> rows;  ///< As list.rows.
  std::vector<Message> says;      ///< Why; then how well the figures are known, where the definition has doubts.
  std::vector<ArrangedMistake> mistakes;  ///< Of the advised arrangement.
  std::string definition;                 ///< The lines of [shaft] that keep it: a rule where it is one, else the list.
  bool turn_is_free = true;
  /// What the definition's doubts make of the couple ("rows[0].couple") and of the harder pressed plane ("rows[0].larger") of every row;
  /// those that nothing moves are left out.
  std::vector<doubt::ToldDoubt> doubts = {};
  [[nodiscard]] const doubt::ToldDoubt* doubt_of(std::size_t row, std::string_view figure) const;
};

/// Of a rotor's mistakes of one kind: the one of a flat either way that leaves the most, or the worst of all.
[[nodiscard]] const ArrangedMistake& worst_mistake(const Arranged& arranged, int rotor,
                                                   dynamics::TimingMistake::Kind kind, bool one_flat);

/// Refuses    As dynamics::pattern_task() and list_patterns(); an odd number of flats.
[[nodiscard]] Result<Arranged> arrange(const Shaft& shaft, const dynamics::PatternWish& wish, int rows = 8);

/// What a definition says of an arrangement: `pattern = "facing"`, `pattern = { step = 2 }` or `pattern = { flats = [1, 4, 1] }`,
/// and the first flat where one must be named.
[[nodiscard]] std::string definition_lines(const Shaft& shaft, const dynamics::Places& places, bool turn_is_free);

}  // namespace flatwise::job
