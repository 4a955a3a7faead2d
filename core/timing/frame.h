// frame.h: the pattern of one shaft as whole numbers, and what of it is free. Inside core/timing only.
#pragma once

#include <optional>
#include <vector>

#include "core/timing/mend.h"

namespace flatwise::timing {

struct Frame {
  int flats = 6;
  std::vector<int> offsets;       ///< Of half A from rotor 1, clockwise, 0..flats-1, one a rotor.
  std::optional<int> first_flat;  ///< Where something fixes it.
  bool hand_free = false;         ///< And mirrored is not the same anyway.

  [[nodiscard]] int rotors() const { return static_cast<int>(offsets.size()); }
  [[nodiscard]] int wanted(const Reference& reference, int number, Half half) const;
  /// Every turn and hand that a free shaft of this pattern has; the fixed one alone where the first flat is fixed.
  [[nodiscard]] std::vector<Reference> references() const;
};
[[nodiscard]] Frame frame_of(const Shaft& shaft);
/// Whether the other hand of these offsets is another arrangement.
[[nodiscard]] bool mirror_differs(const std::vector<int>& offsets, int flats);

[[nodiscard]] inline const Marks& marks_of(const Reading& reading, int number) {
  return reading.rotors[static_cast<std::size_t>(number) - 1];
}
[[nodiscard]] inline const std::optional<int>& mark(const Marks& marks, Half half) {
  return half == Half::a ? marks.a : marks.b;
}
/// Flats by which a read half is out; none: not read.
[[nodiscard]] std::optional<int> out_by(const Frame& frame, const Reading& reading, const Reference& reference,
                                        int number, Half half);
/// Some half of a fixed rotor is right by the reference.
[[nodiscard]] bool set_by_fixed(const Frame& frame, const Reading& reading, const Reference& reference);
/// All read halves of a rotor are right by the reference, and one at least was read.
[[nodiscard]] bool agrees(const Frame& frame, const Reading& reading, const Reference& reference, int number);

/// What makes a reading unusable for a shaft; none when all is well.
[[nodiscard]] std::optional<Problem> problem_with(const Shaft& shaft, const Reading& reading);

}  // namespace flatwise::timing
