// check.h: the marks as read against the pattern: which half is out, by how many flats, and the least work to put it
// right.
//
//   const auto check = timing::check(shaft, {.rotors = marks, .state = teardown::all_on(shaft)});
//   check->answer, check->rotors[3].verdict, check->plan.turns
#pragma once

#include <optional>
#include <vector>

#include "core/timing/mend.h"
#include "core/timing/pairing.h"
#include "core/working/working.h"

namespace flatwise::timing {

enum class Verdict {
  right,
  half_a_out,
  half_b_out,
  indexed_wrong,  ///< The pair is right; the whole rotor is out by the same flats.
  both_out,       ///< The pair is wrong and neither half is where it belongs.
  unread,         ///< A half was not read.
  unsure,         ///< Read, but which half is out hangs on a half that was not read.
};

struct RotorVerdict {
  int rotor = 0;
  Verdict verdict = Verdict::right;
  std::optional<int> flats_a, flats_b;  ///< Out by, clockwise seen from A, shorter way; none: not read.
  std::optional<int> wanted_a, wanted_b;
  std::optional<int> pair_out;  ///< Pairing error; none: not both read.
  std::optional<Kink> kink;     ///< Where the pair is out.
};

/// Another way to tell how the marks came to be so. The halves to turn are what counts.
struct Story {
  enum class Kind {
    halves_swapped,  ///< One half each of two rotors changed places.
    rotors_swapped,  ///< Both halves of two rotors changed places.
    other_pattern,   ///< Built to `step_flats` (n/2: facing; 0: all alike) instead of the definition's pattern.
    no_pattern,      ///< Pairs right, most rotors out, and no simple pattern fits.
    mirrored,        ///< The definition's pattern the other way round.
    whole_turned,    ///< The definition's pattern, the whole shaft turned against its first flat.
  } kind = Kind::halves_swapped;
  std::vector<int> rotors;                    ///< Swapped: the two.
  Half half = Half::a, other_half = Half::a;  ///< Halves swapped: of the first and of the second rotor.
  int step_flats = 0;                         ///< Other pattern: clockwise, -n/2 + 1 .. n/2.
  int turned = 0;                             ///< Whole shaft turned: clockwise, -n/2 + 1 .. n/2.
};

struct Check {
  Answer answer = Answer::in;  ///< cannot_tell as long as a half is not read.
  bool certainly_out = false;  ///< Whatever the unread halves show, something is wrong.
  std::vector<RotorVerdict> rotors;
  Mend plan;                       ///< The least work, by `plan.reference`; empty when nothing is out.
  int equal_plans = 1;             ///< Different sets of halves that are all the least work.
  std::vector<Mend> references;    ///< Where fixed rotors contradict: every possible reference with its plan.
  std::vector<int> contradicting;  ///< Fixed rotors outside the largest agreeing group; all of them in a tie.
  int unread_halves = 0;
  Time look_time;  ///< To go and look at the halves not read.
  std::vector<Story> stories;
  std::vector<Finding> findings;  ///< In the order to be said: fixed rotors first.
};

/// Check of the marks as read.
///
/// Model      Free are a turn of the whole shaft and, for step patterns, its hand; nothing where the definition names a
/// first
///            flat. Rotors that never left the shaft set the reference. See mends() for the least work.
/// Inputs     One Marks a rotor; flats 1..n; state and prices as for teardown.
/// Returns    A verdict a rotor, one plan, the number of equal plans, stories, findings with their instructions.
/// Refuses    Odd flats; marks not one a rotor; a flat outside 1..n; a state that is not of this shaft; a fixed rotor
/// that is
///            off the shaft or has a new set; a rate under nought.
/// Accuracy   Whole numbers but for the cost; costs within 1e-9 relative count as equal.
[[nodiscard]] Result<Check> check(const Shaft& shaft, const Reading& reading);

/// A finding's sentence or instruction with its directions as seen from the end where the mechanic stands; from end A as check() makes
/// them. What has no direction stays as it is.
[[nodiscard]] Message seen_from(Message message, End end);

}  // namespace flatwise::timing
