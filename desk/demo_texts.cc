#include "desk/demo_texts.h"

#include <charconv>
#include <chrono>

#include "definition/tree.h"
#include "record/instant.h"

namespace flatwise::desk {
namespace {

std::vector<std::string_view> parts(std::string_view line, char between) {
  std::vector<std::string_view> out;
  for (;;) {
    const std::size_t at = line.find(between);
    out.push_back(line.substr(0, at));
    if (at == std::string_view::npos) return out;
    line.remove_prefix(at + 1);
  }
}

wire::Json json_of(const toml::node& node) {
  if (const auto* table = node.as_table()) {
    wire::Json json = wire::Json::object();
    for (const auto& [key, value] : *table) json[std::string{key.str()}] = json_of(value);
    return json;
  }
  if (const auto* array = node.as_array()) {
    wire::Json json = wire::Json::array();
    for (const toml::node& item : *array) json.push_back(json_of(item));
    return json;
  }
  if (const auto* text = node.as_string()) return text->get();
  if (const auto* whole = node.as_integer()) return whole->get();
  if (const auto* flag = node.as_boolean()) return flag->get();
  if (const auto* day = node.as_date()) return record::text_of(Day{day->get().year, day->get().month, day->get().day});
  if (const auto* time = node.as_date_time()) {
    const toml::date_time& t = time->get();
    return record::text_of(instant_of({t.date.year, t.date.month, t.date.day}, t.time.hour, t.time.minute));
  }
  return nullptr;
}

}  // namespace

std::vector<CsvRow> csv_rows(std::string_view text) {
  std::vector<CsvRow> rows;
  std::vector<std::string_view> head;
  for (std::string_view line : parts(text, '\n')) {
    if (line.ends_with('\r')) line.remove_suffix(1);
    if (line.empty()) continue;
    const std::vector<std::string_view> cells = parts(line, ',');
    if (head.empty()) {
      head = cells;
      continue;
    }
    CsvRow row;
    for (std::size_t i = 0; i < head.size(); ++i)
      row[std::string{head[i]}] = i < cells.size() ? std::string{cells[i]} : std::string{};
    rows.push_back(std::move(row));
  }
  return rows;
}

std::optional<double> number_in(const CsvRow& row, std::string_view column) {
  const auto it = row.find(column);
  double value = 0;
  if (it == row.end() || it->second.empty()) return std::nullopt;
  const char* end = it->second.data() + it->second.size();
  const auto [at, error] = std::from_chars(it->second.data(), end, value);
  return error == std::errc{} && at == end ? std::optional{value} : std::nullopt;
}

Day day_in(const CsvRow& row, std::string_view column) {
  const auto it = row.find(column);
  return it == row.end() ? Day{} : record::day_of(it->second).value_or(Day{});
}

job::Instant instant_of(Day day, int hour, int minute) {
  const std::chrono::year_month_day date{std::chrono::year{day.year},
                                         std::chrono::month{static_cast<unsigned>(day.month)},
                                         std::chrono::day{static_cast<unsigned>(day.day)}};
  const std::int64_t days = std::chrono::sys_days{date}.time_since_epoch().count();
  return {((days * 24 + hour) * 60 + minute) * 60'000};
}

Results<wire::Json> record_json(std::string_view toml_text) {
  const toml::parse_result read = toml::parse(toml_text);
  if (read) return json_of(read.table());
  const auto at = read.error().source().begin;
  const Place where{"record.toml", static_cast<int>(at.line), static_cast<int>(at.column), {}};
  return tl::unexpected(std::vector<Problem>{
      Problem{Code{"definition.syntax"}, "file", {}, {{"detail", std::string{read.error().description()}}}, where}});
}

}  // namespace flatwise::desk
