// suspects.h: which rotors and hangers to look at first, from what booking in found, each with its reasons. A list to look at, never a
// verdict.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "job/judge.h"
#include "job/store.h"

namespace flatwise::job {

struct Suspect {
  Where part;                    ///< A rotor, or the station of a hanger.
  std::vector<Message> reasons;  ///< The strongest first.
  bool stands_apart = false;     ///< Something was found at it; false: only doubt or age speak against it.
};
struct Suspects {
  std::vector<Suspect> ranked;    ///< Those with a reason; those that stand apart first.
  std::vector<int> not_measured;  ///< Rotors whose side play nobody read.
  std::vector<Message> says;      ///< What the order does not rest on yet.
};

/// Ranks what was found at booking in and finding.
///
/// Order      Play that no new bearing has, roughness, noise, heat, grease past the seal, in this order of weight and adding up;
///            then play that cannot be told from new, hours beyond those at which one failed on this machine, and the same
///            hours as a rotor that stands apart. Equal weight: the wider swing against new, then from end A. Said to be
///            sound takes doubt and age away, never what was found.
/// Inputs     lives: bearings of this machine by the workshop's log, running ones with no end; hours: of the machine now. Without
///            either, age says nothing.
[[nodiscard]] Suspects suspects(const Facts& facts, std::span<const BearingLife> lives = {},
                                std::optional<double> hours = std::nullopt);

/// The suspects that stand apart, rotors only, by number: what a plan opens unless somebody says otherwise.
[[nodiscard]] std::vector<int> rotors_that_stand_apart(const Suspects& suspects);

}  // namespace flatwise::job
