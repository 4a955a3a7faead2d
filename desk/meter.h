// meter.h: what a booking brings into the log of its machine's hour meter. Internal to the desk.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "job/entry.h"
#include "job/store.h"

namespace flatwise::desk {

struct MeterRead {
  std::optional<job::HourReading> reading;  ///< None where nobody read it, or the log has just that.
  std::vector<Problem> problems;            ///< Field "body.hour_meter".
};
/// The hour meter as it was typed at booking in, as a reading of the machine's log: on the day of the entry, by its author.
///
/// Model      Held against the log as any other reading is (job/hours.h). A corrected booking corrects the reading that the earlier
///            one brought, and keeps its day. Its id follows from the entry's: sent twice, noted once. Where the log has the same hours of
///            that day already, nothing is added.
/// Inputs     `entry` a booking; `before` the entries of the job so far; `noted` the log of the booked machine.
[[nodiscard]] MeterRead meter_read(const job::Entry& entry, std::span<const job::Entry> before,
                                   std::span<const job::HourReading> noted);

}  // namespace flatwise::desk
