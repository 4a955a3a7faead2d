// hours.h: the hour meter of a machine: which readings count, the last of them, and what may be noted.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "job/store.h"

namespace flatwise::job {

/// Some other reading says that it takes its place.
[[nodiscard]] bool is_corrected(const HourReading& reading, std::span<const HourReading> noted);

/// Those that count: by day, within it in the order noted. Corrected ones are left out.
///
/// Inputs     `noted`: all of one machine, in any order.
[[nodiscard]] std::vector<HourReading> standing_hours(std::span<const HourReading> noted);

/// What the meter showed last; none where nobody read it.
[[nodiscard]] std::optional<HourReading> last_hours(std::span<const HourReading> noted);

/// What is wrong with a reading that is to be noted.
///
/// Model      A meter counts up, and no more than 24 h a day, from the start of the first day to the end of the second. A reading
///            is held against its neighbours by day among those that count without it and without the one it corrects.
/// Inputs     `noted`: all of this machine, in any order; `fresh` itself may be among it (sent once more). `sure`: it reads so all
///            the same (another meter was fitted): only its day and what it corrects are looked at.
/// Returns    All there is, by field: "day", "hours", "corrects".
/// Refuses    A day still to come; less than before or more than after; more hours than have passed; a correction of what was never
///            noted of this machine, or is corrected already.
struct HoursAsked {
  Day today;
  bool sure = false;
};
[[nodiscard]] std::vector<Problem> problems_of(const HourReading& fresh, std::span<const HourReading> noted,
                                               const HoursAsked& asked);

}  // namespace flatwise::job
