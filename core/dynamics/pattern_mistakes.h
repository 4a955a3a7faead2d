// pattern_mistakes.h: what each possible timing mistake would do to an arrangement: to what is left, and to the tine gap. The
// kink inside the bearing is core/timing's.
#pragma once

#include <vector>

#include "core/dynamics/pattern_task.h"

namespace flatwise::dynamics {

struct TimingMistake {
  enum class Kind {
    half_out,     ///< One half of the rotor so many flats out. Which of the two makes no difference here.
    rotor_turned  ///< Both halves: paired right, the whole rotor so many flats out.
  } kind = Kind::half_out;
  int rotor = 1;         ///< From 1.
  int flats = 1;         ///< Clockwise seen from end A, the shorter way: -n/2 + 1 .. n/2, not nought.
  Resultants left;       ///< With the mistake.
  Force rise;            ///< Of the larger plane, over what the arrangement leaves without it; may be under nought.
  Length least_gap;      ///< Between this rotor's tines and its neighbours', as they then are.
  int gap_to = 0;        ///< The neighbour.
  bool strikes = false;  ///< The gap is under nought.
};

/// Every mistake of one half or one rotor, rotor by rotor.
///
/// Model      A mispaired rotor has no axis of its own; the middle of its halves' axes is taken: half way between them, leaning by
///            tan a cos(pi k/n). Half a turn out it does not lean at all. What the locked bearing does besides is not counted.
/// Refuses    Bug (CORE_CHECK): places that are not one a rotor; fewer than two rotors.
[[nodiscard]] std::vector<TimingMistake> timing_mistakes(const Shaft& shaft, std::span<const int> places);

}  // namespace flatwise::dynamics
