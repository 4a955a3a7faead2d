// play.h: side play at the rim of one rotor: what a new bearing would show there, and the clearance that the swing means.
#pragma once

#include <optional>
#include <vector>

#include "core/working/figure.h"
#include "job/judge.h"

namespace flatwise::job {

/// How the swing stands beside a new bearing. Never a verdict.
enum class PlayStands { past_new, may_be_new, as_new, not_possible };

struct Play {
  const PlayReading* reading = nullptr;
  WorkingPtr fresh;   ///< Figure rim-play; none where the bearing is in no table.
  WorkingPtr behind;  ///< Figure clearance-from-play; none where no bearing can swing so far.
  PlayStands stands = PlayStands::may_be_new;
  std::vector<Problem> problems;  ///< Why `behind` is not there.
};

/// What a new bearing in this rotor would show with the dial `radius` from the axis: figure rim-play, with its clearance
/// group, what the hub's limits take of it, and the inside estimated. None where the bearing is in no table. `held`: inputs "held",
/// "push", "weight"; none: taken as carried.
[[nodiscard]] WorkingPtr new_bearing_play(const Facts& facts, int rotor, const Input& radius,
                                          const std::vector<Input>& held = {});

/// What bears on the bearing of a rotor that hangs on it.
[[nodiscard]] Force weight_of(const Rotor& rotor);
/// How hard a hanging rotor is pushed at the dial for its swing to tell nearly as much as a carried one's: a fifth of its weight.
[[nodiscard]] Force push_wanted(const Rotor& rotor);

/// A swing as it was read, with the way where the rotor hung: "1.6 mm, hanging, pushed 30 N".
[[nodiscard]] Message swing_as_read(const PlayReading& reading);

/// The last swing read at a rotor, with what follows from it; none where nobody read one. Without a radius the dial is taken to
/// stand at the tine tips, without how it was held the rotor to be carried, and without a gauge that the workshop has the doubt is 0.05 mm; all are marked assumed.
[[nodiscard]] std::optional<Play> play_of(const Facts& facts, int rotor);

}  // namespace flatwise::job
