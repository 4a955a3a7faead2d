// mend.h: of all the ways to put the marks right, the one of least work. Exact: every way that ends in a right shaft
// belongs to one reference (a turn and a hand), and each reference has one set of halves to turn.
#pragma once

#include <optional>
#include <vector>

#include "core/teardown/split.h"
#include "core/timing/map.h"

namespace flatwise::timing {

/// Marks of one rotor as read. Flats 1..n counted from end A; none: not read.
struct Marks {
  std::optional<int> a = {}, b = {};
  bool fixed = false;  ///< The rotor never left the shaft: it sets the reference.
};

struct Reading {
  std::vector<Marks> rotors;  ///< One a rotor, in order.
  teardown::State state;
  teardown::Prices prices;
  /// Whether resultants and gaps of the mirrored shaft are the same within the floor; none: nobody has worked it out.
  std::optional<bool> mirror_is_same = {};
};

/// One half to turn.
struct Turn {
  int rotor = 0;
  Half half = Half::a;
  int from = 0, to = 0;  ///< Flats.
  int by = 0;            ///< Flats to turn it, the shorter way; positive clockwise seen from end A; n/2 either way.
  std::optional<End> reached_from;  ///< None: in hand already.
};

/// All that puts the marks right by one reference.
struct Mend {
  Reference reference;
  std::vector<Turn> turns;
  bool reachable = true;  ///< False: obstacles hold a rotor that must come off.
  teardown::Cost off;     ///< What comes off to reach them.
  Time time;              ///< To reach, to turn and to put back.
  std::optional<double> money;
  std::vector<int> half_right;    ///< Fixed rotors of which one half alone is right by this reference.
  std::vector<int> fixed_rotors;  ///< Fixed rotors that are right by this reference.
};

/// Every reference that the shaft may be set by.
struct Mends {
  std::vector<Mend> allowed;   ///< The least work first.
  std::vector<Mend> possible;  ///< With unread halves: those that could still turn out the least; else the least ones.
  std::vector<Mend> others;    ///< With a first flat that fixed rotors go against: what setting by them would take.
  int equal = 1;               ///< Different sets of halves to turn that are all the least work.
};

/// Model      Allowed are: the definition's first flat alone, where it has one; else references that some half of a
/// fixed
///            rotor is right by; else all turns, and both hands where free. Cost: teardown::Reach to free the rotors
///            that have a half to turn, and policies.turn_a_half a half. Unread halves count as right (the least it can
///            be). Equal work: fewer minutes, then fewer halves, then fewer flats, then half B before half A and the
///            rotor nearer end A, so that adding a turn to all marks changes nothing.
/// Refuses    See check().
[[nodiscard]] Result<Mends> mends(const Shaft& shaft, const Reading& reading);

}  // namespace flatwise::timing
