// text.h: how days, lists, places and origins stand in a column.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/working/working.h"
#include "job/bench.h"

namespace flatwise::store_sqlite {

using Origins = std::map<std::string, Origin, std::less<>>;

/// "2026-11-25". Of a Day as it is, without asking whether the calendar has it.
[[nodiscard]] std::string text_of(const Day& day);
[[nodiscard]] Day day_of(const std::string& text);
/// A list of ids as JSON; an empty list is empty text.
[[nodiscard]] std::string text_of(const std::vector<std::string>& ids);
[[nodiscard]] std::vector<std::string> ids_of(const std::string& text);
[[nodiscard]] std::string text_of(const Place& place);
[[nodiscard]] Place place_of(const std::string& text);
[[nodiscard]] std::string text_of(const Origins& origins);
[[nodiscard]] Origins origins_of(const std::string& text);
/// Empty text means that there is none: a null in a column that points at another table.
[[nodiscard]] inline std::optional<std::string> or_none(const std::string& id) {
  return id.empty() ? std::nullopt : std::optional{id};
}

}  // namespace flatwise::store_sqlite
