// shop_rules.h: what may be noted of the workshop itself, outside any job: a calibration of a gauge, pieces moved on the shelf.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/shaft/shaft.h"
#include "job/store.h"

namespace flatwise::job {

/// What is wrong with a calibration that is to be noted.
///
/// Inputs     `noted`: what was noted before, of all gauges, in any order; `c` itself may be among it (sent once more).
/// Returns    All there is, by field: "day", "until", "corrects".
/// Refuses    A day still to come; a date it runs out on that is not after its day; a day before the last certificate of this
///            gauge, unless it corrects that one; a correction of what was never noted of this gauge.
[[nodiscard]] std::vector<Problem> problems_of(const Calibration& c, std::span<const Calibration> noted, Day today);

/// What is wrong with a move in itself: a count says how many lie there, an order changes what is on order, what came adds to
/// the shelf and takes no more than that off the order, scrap takes away. Moves of jobs follow from entries alone.
[[nodiscard]] std::optional<Problem> problem_of(const StockMove& move);

/// What is wrong with a move of what is there: no such part, or less than nothing left; then a count comes first.
[[nodiscard]] std::optional<Problem> problem_of_level(const Workshop& workshop, const StockMove& move);

/// Why somebody cannot leave: nobody of his role would be at work here, and what takes that role could not be signed any more.
[[nodiscard]] std::optional<Problem> problem_of_leaving(std::span<const Person> people, const Person& leaves);

}  // namespace flatwise::job
