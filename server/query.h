// query.h: the part of an address behind the question mark, checked against what a route knows.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/units/problem.h"

namespace flatwise::server {

/// What a route takes in its query. A name it does not know is refused.
struct QueryRule {
  enum class Kind { choice, number, text, id, instant } kind = Kind::text;
  std::string_view name;
  long least = 0, greatest = 0;   ///< Of a number; of a text the greatest length.
  std::string_view choices = {};  ///< With a bar between two: "a4|letter".
};

class Query {
 public:
  [[nodiscard]] std::optional<std::string_view> find(std::string_view name) const;
  [[nodiscard]] std::optional<int> whole(std::string_view name) const;  ///< Of what a rule said is a number.
  void add(std::string name, std::string value) { values_.emplace_back(std::move(name), std::move(value)); }

 private:
  std::vector<std::pair<std::string, std::string>> values_;
};

/// `text` without its '%xx' and '+'; nullopt for half an escape, and for what is not UTF-8 or holds a zero byte.
[[nodiscard]] std::optional<std::string> decoded(std::string_view text, bool plus_is_space = true);

/// Refuses    A name that no rule has, one given twice, a value that its rule does not allow, broken escapes.
[[nodiscard]] Result<Query> read_query(std::string_view text, const QueryRule* rules, std::size_t count);

[[nodiscard]] bool is_hash(std::string_view text);  ///< 64 hexadecimal digits in lower case.
[[nodiscard]] bool is_utf8(std::string_view text);

}  // namespace flatwise::server
