// refusal.h: what a refusal must be: status 2, the problem named, nothing written, no crash.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <regex>
#include <string>
#include <vector>

#include "tests/end_to_end/process.h"
#include "tests/end_to_end/schema.h"

namespace flatwise::end_to_end {

/// What one of the problems told must hold. Empty or 0: not looked at.
struct Expected {
  std::string field;      ///< Exactly.
  std::string read;       ///< Somewhere in what was read, or the value as given.
  std::string allowed;    ///< Somewhere in what is allowed.
  std::string mend = {};  ///< Somewhere in the mend.
  int line = 0;
};

/// No-break spaces as common ones, so that what is wanted can be written plainly.
inline std::string plain(std::string text) {
  for (const std::string space : {"\u00A0", "\u202F"})
    for (std::size_t at = 0; (at = text.find(space, at)) != std::string::npos; ++at)
      text.replace(at, space.size(), " ");
  return text;
}

inline bool holds(const nlohmann::json& problem, const Expected& expected) {
  const auto has = [&](const char* key, const std::string& part) {
    return plain(problem[key].get<std::string>()).find(part) != std::string::npos;
  };
  return problem["field"] == expected.field && (has("read", expected.read) || has("given", expected.read)) &&
         has("allowed", expected.allowed) && has("mend", expected.mend) &&
         (expected.line == 0 || (problem.contains("place") && problem["place"]["line"] == expected.line));
}

/// Runs it as a table and as JSON and checks that both refuse, and say so alike.
inline void expect_refused(const std::vector<std::string>& words, const Expected& expected, const Start& start = {}) {
  SCOPED_TRACE(typed(words));
  const Ran table = flatwise(words, start);
  EXPECT_EQ(table.status, 2) << table.out.substr(0, 600) << table.err;
  EXPECT_EQ(table.signal, 0);
  EXPECT_FALSE(table.late);
  EXPECT_TRUE(table.out.empty()) << "a refusal goes to the error stream";
  EXPECT_NE(table.err.find(expected.field), std::string::npos) << table.err;
  std::vector<std::string> in_json = words;
  in_json.emplace_back("--json");
  const Ran ran = flatwise(in_json, start);
  ASSERT_EQ(ran.status, 2) << ran.out.substr(0, 600) << ran.err;
  EXPECT_EQ(ran.err, "");
  const nlohmann::json json = parsed(ran.out);
  EXPECT_EQ(faults_against("problems", json), "");
  const bool told = std::ranges::any_of(json["problems"], [&](const auto& p) { return holds(p, expected); });
  EXPECT_TRUE(told) << "wanted " << expected.field << " | " << expected.read << " | " << expected.allowed << " | "
                    << expected.mend << " | line " << expected.line << "\n"
                    << table.err;
}

/// A file of ours with one line changed.
struct Changed {
  std::string file;
  std::string from, to;  ///< `from` is a regular expression.
  Expected expected;     ///< `line` 0: the line that was changed.
};

/// The text with the first thing like `from` (a regular expression) replaced by `to`; `line` becomes the line it stood on,
/// from 1.
inline std::string changed(const std::string& text, const std::string& from, const std::string& to, int& line) {
  std::smatch match;
  if (!std::regex_search(text, match, std::regex{from})) throw std::runtime_error("not in the file: " + from);
  const std::string before = match.prefix();
  line = static_cast<int>(std::ranges::count(before, '\n')) + 1;
  return before + to + match.suffix().str();
}

}  // namespace flatwise::end_to_end
