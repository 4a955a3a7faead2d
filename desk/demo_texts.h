// demo_texts.h: the demo's files as plain values. Internal to the demo.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "job/store.h"
#include "wire/json.h"

namespace flatwise::desk {

/// A line of a CSV file by the names of its head. No quoting: the demo's fields hold no comma.
using CsvRow = std::map<std::string, std::string, std::less<>>;
[[nodiscard]] std::vector<CsvRow> csv_rows(std::string_view text);
/// Nothing where it is empty.
[[nodiscard]] std::optional<double> number_in(const CsvRow& row, std::string_view column);
/// "1 2 3".
[[nodiscard]] Day day_in(const CsvRow& row, std::string_view column);
[[nodiscard]] job::Instant instant_of(Day day, int hour = 0, int minute = 0);

/// demo/record.toml as JSON: tables and lists as they stand, days and times as text.
[[nodiscard]] Results<wire::Json> record_json(std::string_view toml);

}  // namespace flatwise::desk
