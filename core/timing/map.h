// map.h: where every mark belongs.
#pragma once

#include <optional>
#include <vector>

#include "core/shaft/shaft.h"

namespace flatwise::timing {

/// What a whole shaft can be turned by: the flat of half A of rotor 1, and its hand (false: mirrored).
struct Reference {
  int first_flat = 1;
  bool as_listed = true;  ///< False: the steps run the other way round.
  friend bool operator==(const Reference&, const Reference&) = default;
};

/// Flats of rotor `number`, from the pattern alone. The pattern's offsets are those of half A from rotor 1, clockwise.
[[nodiscard]] int pattern_offset(const Pattern& pattern, int flats, int number);
[[nodiscard]] int wanted_flat(const Pattern& pattern, int flats, const Reference& reference, int number, Half half);

struct RotorMarks {
  int rotor = 0;
  int flat_a = 0, flat_b = 0;                  ///< Numbers on the shaft: the same from either end.
  int place_a_from_b = 0, place_b_from_b = 0;  ///< Place on a drawing seen from end B, flat 1 up (from A place = flat).
};

struct Map {
  Reference reference;
  bool turn_free = true;   ///< The whole shaft may be turned: any other first flat is as right.
  bool hand_free = false;  ///< Mirrored is as right (step patterns with nothing fixed).
  std::vector<RotorMarks> rotors;
  std::vector<Message> rule;  ///< The rule in words: odd and even rotors, groups on the same flat, or a line a rotor.
};

/// Map of the marks.
///
/// Model      Pattern of the definition from a reference: the one given, else the definition's first flat, the list's
/// own
///            flats, or flat 1.
/// Refuses    An odd number of flats; a reference flat outside 1..n, one that differs from the definition's first flat,
/// or
///            a mirrored one where the hand is fixed.
/// Source     common practice (pairing).
[[nodiscard]] Result<Map> map(const Shaft& shaft, std::optional<Reference> reference = std::nullopt);

/// Where each rotor's bore tilts to, from rotor 1: the azimuths of their halves A.
[[nodiscard]] std::vector<Angle> tilt_azimuths(const Map& map, int flats);

/// What of a shaft's timing is free when nothing on it is fixed.
[[nodiscard]] bool turn_is_free(const Shaft& shaft);
[[nodiscard]] bool hand_is_free(const Shaft& shaft);

}  // namespace flatwise::timing
