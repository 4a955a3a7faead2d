// torque_turn.h: on the torque sheet, how far a nut should turn, what settling takes, and what was seen of both. Inside view/ only.
#pragma once

#include "view/bench_parts.h"

namespace flatwise::view {

/// A finding about the turn or the second pull, not about the torque itself.
[[nodiscard]] bool about_turn(const Finding& finding);
/// The turn that was seen, told again with the reading it belongs to, and the second pull after the run.
[[nodiscard]] std::vector<Json> turn_fields(const Subject& subject, const Screen& screen, const Nut& nut,
                                            const job::NutPulled& pulled);
/// For the sheet of the test run: what the second pull on each nut may find. Empty where the definition cannot tell.
[[nodiscard]] std::vector<std::string> second_pulls(const Subject& subject, const Screen& screen);
/// Turn to expect or what the definition still lacks; the answer to what was seen; settling and the second pull.
/// `findings`: those about this nut.
void add_turn(const Subject& subject, const Screen& screen, const Nut& nut, const std::vector<const Finding*>& findings,
              SheetParts& parts);

}  // namespace flatwise::view
