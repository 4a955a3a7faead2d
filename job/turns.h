// turns.h: how far a nut should turn from snug to its torque, what settling takes of it in the run, and what the shaft's
// definition must still say before either can be told. Page, shell and paper ask here.
#pragma once

#include <string>
#include <vector>

#include "job/judge.h"

namespace flatwise::job {

/// What the pulls so far say; all may be missing.
struct PulledSoFar {
  WorkingPtr reached{};        ///< Torque at this nut.
  WorkingPtr preload{};        ///< What this nut clamps with.
  WorkingPtr other_preload{};  ///< What the other nut clamps with.
  const Told<Entered>* turned = nullptr;
};

struct TurnOfNut {
  std::vector<std::string>
      wanted;               ///< Keys of the definition that are missing: "clamped.outside", "nut.snug". Then no more.
  std::vector<int> untold;  ///< Stations that no outside diameter is told of.
  WorkingPtr springs, expected, settled;
  bool after_other =
      false;            ///< The other nut was pulled before and clamps the same parts: this one finds little to turn.
  bool judged = false;  ///< The turn that was told is judged in `expected`.
};
/// The turn to expect by the torque that was reached, else by the target and its tolerance.
[[nodiscard]] TurnOfNut turn_of(const Shaft& shaft, const Nut& nut, const PulledSoFar& so_far = {});

/// What a nut clamps with at its target, over its tolerance and the range of K.
[[nodiscard]] WorkingPtr preload_at_target(const Shaft& shaft, const Nut& nut);
/// What it clamps with at snug.
[[nodiscard]] WorkingPtr preload_at_snug(const Shaft& shaft, const Nut& nut);

/// Most that the second pull may go for settling alone.
[[nodiscard]] Angle most_by_settling(const Working& settled);

/// "Nut A" of the findings about one nut.
[[nodiscard]] inline Word word_of_end(End end) { return Word{end == End::a ? "end.a" : "end.b"}; }
[[nodiscard]] inline std::string letter_of(End end) { return end == End::a ? "A" : "B"; }

}  // namespace flatwise::job
