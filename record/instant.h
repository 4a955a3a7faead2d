// instant.h: times and days as the record writes them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "job/entry.h"

namespace flatwise::record {

/// RFC 3339 in UTC with milliseconds, and only so: "2026-02-03T09:15:00.000Z". Years 0001 to 9999; no leap seconds.
[[nodiscard]] std::string text_of(job::Instant at);
[[nodiscard]] std::optional<job::Instant> instant_of(std::string_view text);

/// "2026-02-03".
[[nodiscard]] std::string text_of(Day day);
[[nodiscard]] std::optional<Day> day_of(std::string_view text);

}  // namespace flatwise::record
