// pieces.h: how many pieces can have been counted, and how many can have come in. Internal to check_entry.
#pragma once

#include <optional>
#include <string_view>

#include "job/job_state.h"

namespace flatwise::job::check_detail {

/// Double of what the rotor takes: a tray with a piece too many is recorded and judged, a slip of the finger by a digit is not.
[[nodiscard]] int most_pieces(const Rotor& rotor, std::string_view item);

/// What is wrong with an entry about parts that come: more of a part comes in than this job or the stock list has on order, or an
/// order is made smaller than what came in of it.
[[nodiscard]] std::optional<Problem> problem_of_orders(const Workshop& workshop, const JobState& state,
                                                       const Entry& entry);

}  // namespace flatwise::job::check_detail
