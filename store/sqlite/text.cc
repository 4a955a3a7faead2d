#include "store/sqlite/text.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <stdexcept>

namespace flatwise::store_sqlite {

using nlohmann::json;

namespace {
constexpr std::array<const char*, 5> kOriginKinds{"given", "measured", "computed", "assumed", "published"};
}

std::string text_of(const Day& day) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", day.year, day.month, day.day);
  return text.data();
}

Day day_of(const std::string& text) {
  Day day;
  std::sscanf(text.c_str(), "%d-%d-%d", &day.year, &day.month, &day.day);
  return day;
}

std::string text_of(const std::vector<std::string>& ids) { return ids.empty() ? std::string{} : json(ids).dump(); }

std::vector<std::string> ids_of(const std::string& text) {
  return text.empty() ? std::vector<std::string>{} : json::parse(text).get<std::vector<std::string>>();
}

std::string text_of(const Place& place) { return json{place.file, place.line, place.column, place.quoted}.dump(); }

Place place_of(const std::string& text) {
  const json all = json::parse(text);
  return {all.at(0).get<std::string>(), all.at(1).get<int>(), all.at(2).get<int>(), all.at(3).get<std::string>()};
}

std::string text_of(const Origins& origins) {
  json all = json::object();
  for (const auto& [name, origin] : origins)
    all[name] = {kOriginKinds.at(static_cast<std::size_t>(origin.kind)), origin.where};
  return all.dump();
}

Origins origins_of(const std::string& text) {
  Origins origins;
  const json all = json::parse(text);
  for (const auto& [name, origin] : all.items()) {
    const auto kind = std::ranges::find(kOriginKinds, origin.at(0).get<std::string>());
    if (kind == kOriginKinds.end()) throw std::runtime_error{"an origin of no kind"};
    origins[name] = {static_cast<OriginKind>(kind - kOriginKinds.begin()), origin.at(1).get<std::string>()};
  }
  return origins;
}

}  // namespace flatwise::store_sqlite
