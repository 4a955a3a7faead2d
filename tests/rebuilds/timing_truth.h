// timing_truth.h: which marks are wrong, by the directions in which the bores lean. The truth model's own: it knows axes in
// space, allowed turns of the whole shaft, and nothing of the check that is being tested.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "tests/rebuilds/truth.h"

namespace rebuilds {

[[nodiscard]] int turned(int flat, int by, int flats);
/// Flat of half A by the pattern, with rotor 1 on `first`.
[[nodiscard]] int flat_of(const Drawing& drawing, int first, bool other_hand, int rotor);

struct HalfAt {
  int rotor = 0;
  char half = 'a';
  friend auto operator<=>(const HalfAt&, const HalfAt&) = default;
};
using Halves = std::map<HalfAt, int>;  ///< Wrong halves with the flat each belongs on.

/// What the checks said about the marks, taken out of their findings.
struct TimingTold {
  Halves halves;                     ///< To be turned, and where to.
  std::vector<std::string> stories;  ///< "timing.built_step 2 way.clockwise", "timing.mirrored" ...
  std::set<int> mispaired;
  std::string contradiction;  ///< Code, empty where none.
  std::set<int> contradicting;
  std::set<HalfAt> unread;
  bool all_right = false;
};

struct TimingVerdict {
  bool halves_right =
      false;             ///< The halves named are exactly those that are wrong by an allowed reference of least work.
  bool as_made = false;  ///< ... and it is the mistake that was put in, not another story of the same marks.
  bool mend_right = false;   ///< After the turns proposed every bore is straight and the pattern is there.
  bool fixed_right = false;  ///< Rotors that never left the shaft and contradict are named as they should be.
  bool story_right = false;  ///< Another pattern or the other hand is named where that is the shorter story.
  std::string why;
};
[[nodiscard]] TimingVerdict judge_timing(const Rebuild& rebuild, const TimingTold& told);

/// True where the marks are wrong by every allowed reference (some mistakes leave a shaft that is right another way).
[[nodiscard]] bool marks_are_wrong(const Rebuild& rebuild);
/// True where rotors that stayed contradict each other, the first flat, or one is mispaired.
[[nodiscard]] bool fixed_contradict(const Rebuild& rebuild);
/// Fewest rotor mistakes that explain the marks by the definition's pattern.
[[nodiscard]] int fewest_mistakes(const Rebuild& rebuild);

}  // namespace rebuilds
