#include "cli/typed_entry.h"

#include <charconv>
#include <nlohmann/json.hpp>

#include "job/entry_fields.h"
#include "record/entry_json.h"

namespace flatwise::cli {
namespace {

using wire::Json;

Json number_or_text(const std::string& typed) {
  long value = 0;
  const auto read = std::from_chars(typed.data(), typed.data() + typed.size(), value);
  return read.ec == std::errc{} && read.ptr == typed.data() + typed.size() ? Json(value) : Json(typed);
}

/// "rotor:4", "station:3", "shaft".
Json place(const std::string& typed) {
  const std::size_t colon = typed.find(':');
  Json json{{"part", typed.substr(0, colon)}};
  json["number"] = colon == std::string::npos ? Json(0) : number_or_text(typed.substr(colon + 1));
  return json;
}

Json list(const std::string& typed) {
  Json all = Json::array();
  for (std::size_t at = 0; at <= typed.size();) {
    const std::size_t comma = std::min(typed.find(',', at), typed.size());
    all.push_back(number_or_text(typed.substr(at, comma - at)));
    at = comma + 1;
  }
  return all;
}

/// What was typed, in the form that the field has in JSON; what does not fit stays text, and the reader says so.
struct AsJson {
  const std::string& name;
  const std::string& typed;
  Json value;
  template <class T>
  void operator()(const job::FieldSpec& spec, const std::optional<T>&) {
    (*this)(spec, T{});
  }
  template <class T>
  void operator()(const job::FieldSpec& spec, const T&) {
    if (spec.name != name) return;
    if constexpr (std::is_same_v<T, int>) {
      value = number_or_text(typed);
    } else if constexpr (std::is_same_v<T, double>) {
      value = Json::parse(typed, nullptr, false);
      if (!value.is_number()) value = typed;
    } else if constexpr (std::is_same_v<T, bool>) {
      value = typed == "true" || typed == "yes"   ? Json(true)
              : typed == "false" || typed == "no" ? Json(false)
                                                  : Json(typed);
    } else if constexpr (std::is_same_v<T, Where>) {
      value = place(typed);
    } else if constexpr (std::is_same_v<T, std::vector<int>>) {
      value = list(typed);
    }
  }
};

Json value_of(const std::string& kind, const std::string& name, const std::string& typed) {
  AsJson as{name, typed, typed};
  job::each_kind([&](const auto& body) {
    if (job::kind_of(body) == kind) job::each_field(body, as);
  });
  return as.value;
}

}  // namespace

std::vector<std::string> entry_kinds() {
  std::vector<std::string> kinds;
  job::each_kind([&](const auto& body) { kinds.emplace_back(job::kind_of(body)); });
  return kinds;
}

Results<job::EntryBody> typed_entry(const std::vector<std::string>& words) {
  std::vector<Problem> problems;
  Json body{{"kind", words.empty() ? std::string{} : words.front()}};
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::size_t equals = words[i].find('=');
    const std::string name = words[i].substr(0, equals);
    if (equals == std::string::npos || equals == 0)
      problems.push_back({Code{"cli.field_form"}, "ENTRY", words[i], {}, std::nullopt});
    else if (body.contains(name))
      problems.push_back({Code{"record.key_twice"}, name, words[i], {}, std::nullopt});
    else
      body[name] = value_of(words.front(), name, words[i].substr(equals + 1));
  }
  Results<job::EntryBody> read = record::read_body(body, {});
  if (!read) problems.insert(problems.end(), read.error().begin(), read.error().end());
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return read;
}

}  // namespace flatwise::cli
