#include "tests/boundary/boundary.h"

#include <algorithm>
#include <regex>
#include <sstream>

namespace boundary {
namespace {

using Violations = std::vector<Violation>;

std::string at(const std::vector<std::string>& lines, int i) { return lines[static_cast<std::size_t>(i)]; }

bool starts_with_any(std::string_view text, const std::vector<std::string>& starts) {
  return std::ranges::any_of(starts, [&](const std::string& start) { return text.starts_with(start); });
}

// --- The order -------------------------------------------------------------------------------------------------------

/// One word of the table: a library, a folder, or 'folder<' for all that it may use.
void allow(Order& order, Order::Allowed& allowed, const std::string& word) {
  if (word.starts_with("<")) {
    allowed.libraries.push_back(word.substr(1, word.size() - (word.ends_with(">") ? 2 : 1)));
    return;
  }
  const bool with_all = word.ends_with("<");
  const std::string folder = with_all ? word.substr(0, word.size() - 1) : word;
  allowed.folders.insert(folder);
  if (!with_all) return;
  const auto below = order.folders.find(folder);
  if (below == order.folders.end()) {
    order.mistakes.push_back({"tests/boundary/order.txt", 0, folder + " is used before it is listed: not an order"});
    return;
  }
  allowed.folders.insert(below->second.folders.begin(), below->second.folders.end());
  const auto& libraries = below->second.libraries;
  allowed.libraries.insert(allowed.libraries.end(), libraries.begin(), libraries.end());
}

const std::set<std::string> kImpureHeaders{"iostream", "fstream", "ostream",    "istream",      "sstream",
                                           "iomanip",  "cstdio",  "syncstream", "print",        "chrono",
                                           "ctime",    "thread",  "mutex",      "atomic",       "future",
                                           "random",   "regex",   "locale",     "clocale",      "filesystem",
                                           "format",   "ranges",  "csignal",    "shared_mutex", "condition_variable"};

const std::set<std::string> kSystemHeaders{"fcntl.h", "unistd.h", "poll.h", "signal.h", "spawn.h", "termios.h"};

bool is_system(const std::string& header) { return kSystemHeaders.contains(header) || header.starts_with("sys/"); }
bool is_standard(const std::string& header) {
  return header.find('/') == std::string::npos && !header.ends_with(".h") && header.find('-') == std::string::npos;
}

/// What is wrong with one include of one file; empty: nothing.
std::string wrong_include(const Order& order, const Source& source, const std::string& header, bool quoted) {
  const std::string folder = source.folder();
  const auto found = order.folders.find(folder);
  Order::Allowed allowed = found == order.folders.end() ? Order::Allowed{} : found->second;
  if (source.is_test()) {
    allowed.folders.insert(order.tests.folders.begin(), order.tests.folders.end());
    allowed.libraries.insert(allowed.libraries.end(), order.tests.libraries.begin(), order.tests.libraries.end());
  }
  if (starts_with_any(header, allowed.libraries)) return {};
  if (!quoted) {
    if (!is_standard(header) && !is_system(header))
      return "<" + header + "> is not a library that " + folder + " may use";
    if (folder.starts_with("core/") && !source.is_test() && (kImpureHeaders.contains(header) || is_system(header)))
      return "<" + header + "> has no place in a pure core";
    return {};
  }
  const std::string from = read_source(header, "").folder();
  if (from.empty()) return "\"" + header + "\" is not a path from the root";
  if (from == folder || allowed.folders.contains(from)) return {};
  return folder + " may not use " + from + " (\"" + header + "\")";
}

// --- Purity ----------------------------------------------------------------------------------------------------------

struct Banned {
  std::regex pattern;
  const char* what;
};
const std::vector<Banned>& banned_in_core() {
  static const std::vector<Banned> list = [] {
    std::vector<Banned> made;
    const auto add = [&](const char* pattern, const char* what) { made.push_back({std::regex{pattern}, what}); };
    add(R"(\bthrow\b)", "throw: an error is a Result, a bug is a CORE_CHECK");
    add(R"(\b(try|catch)\b)", "try and catch: nothing in the core throws");
    add(R"(\bstd::c(out|err|log|in)\b)", "the core neither reads nor prints");
    add(R"(\b(f|s|sn|v)?printf\s*\()", "the core does not print");
    add(R"(\bgetenv\b)", "the core does not read its surroundings");
    add(R"(\bstd::(time|clock)\b|\btime\s*\(\s*(nullptr|NULL|0|&)|\b(localtime|gmtime)\b)", "the core has no clock");
    add(R"(\bstd::chrono\b)", "the core has no clock");
    add(R"(\b(s?rand)\s*\()", "a seed is an argument");
    add(R"(\bsetlocale\b)", "the core has no locale");
    add(R"(\b(std::sto[a-z]+|ato[fil]|strto[a-z]+)\s*\()", "reads numbers by the locale, or throws");
    add(R"(\bstd::(ranges::)?views\b)", "std::views does not compile everywhere this must");
    add(R"(\bstd::format\b)", "std::format does not compile everywhere this must");
    add(R"(\bthread_local\b)", "no state beside the arguments");
    return made;
  }();
  return list;
}

/// Static variables that can change, wherever they stand.
bool is_mutable_static(const std::string& line) {
  static const std::regex start{R"(\bstatic\s+(?!constexpr\b|const\b|consteval\b|inline constexpr\b|_assert))"};
  std::smatch match;
  if (!std::regex_search(line, match, start)) return false;
  const std::string rest = match.suffix();
  const auto end = rest.find_first_of(";={");
  const std::string declared = rest.substr(0, end);
  return declared.find('(') == std::string::npos && declared.find(" const ") == std::string::npos &&
         declared.find("operator") == std::string::npos && end != std::string::npos;
}

/// A variable at namespace level that can change.
bool is_mutable_global(const std::string& statement) {
  static const std::regex other{
      R"(^(using|typedef|namespace|struct|class|enum|union|template|extern|friend|static_assert|concept|static)\b)"};
  if (std::regex_search(statement, other)) return false;
  const std::string declared = statement.substr(0, statement.find('='));
  if (declared.find('(') != std::string::npos) return false;
  static const std::regex constant{R"(\b(const|constexpr)\b)"};
  static const std::regex variable{R"(^[A-Za-z_][\w:<>,\s*&]*\s[A-Za-z_]\w*\s*(\{\})?\s*$)"};
  return !std::regex_search(declared, constant) && std::regex_search(declared, variable);
}

/// CORE_CHECK's one throw, in the function that the macro calls.
bool is_core_check(const Outline& shape, int line) {
  return std::ranges::any_of(shape.functions, [&](const Function& f) {
    return f.name == "core_check_failed" && line >= f.first_line && line <= f.last_line;
  });
}

void check_pure(const Source& source, Violations& out) {
  const Outline shape = outline(source);
  for (int i = 0; i < static_cast<int>(source.code.size()); ++i) {
    const std::string line = at(source.code, i);
    if (line.starts_with("#")) continue;
    if (is_mutable_static(line)) out.push_back({source.path, i + 1, "static state that can change"});
    for (const auto& banned : banned_in_core()) {
      if (std::regex_search(line, banned.pattern) && !is_core_check(shape, i))
        out.push_back({source.path, i + 1, banned.what});
    }
  }
  for (const auto& statement : shape.statements) {
    if (is_mutable_global(statement.text))
      out.push_back({source.path, statement.line + 1, "a global that can change: " + statement.text});
  }
}

// --- Numeric tests ---------------------------------------------------------------------------------------------------

const std::regex& near_pattern() {
  static const std::regex pattern{R"(\b(EXPECT_NEAR|ASSERT_NEAR|DoubleNear|FloatNear)\b)"};
  return pattern;
}

bool body_matches(const Source& source, const Function& f, const std::regex& pattern) {
  for (int i = f.body_line; i <= f.last_line; ++i) {
    if (std::regex_search(at(source.code, i), pattern)) return true;
  }
  return false;
}

/// The unbroken block of comment lines that ends just above a line.
std::string comment_above(const Source& source, int line) {
  std::string block;
  for (int i = line - 1; i >= 0; --i) {
    const std::string text = at(source.lines, i);
    const auto first = text.find_first_not_of(' ');
    if (first == std::string::npos || text.compare(first, 2, "//") != 0) break;
    block = text + "\n" + block;
  }
  return block;
}

bool names_both(const std::string& comment) {
  return comment.find("Source:") != std::string::npos && comment.find("Tolerance:") != std::string::npos;
}

std::string comment_of_fixture(const Source& source, const Function& test) {
  static const std::regex fixture_name{R"(^TEST_[FP]\(\s*(\w+))"};
  std::smatch match;
  if (!std::regex_search(test.head, match, fixture_name)) return {};
  const std::regex declared{R"(^\s*(class|struct|using)\s+)" + match[1].str() + R"(\b)"};
  for (int i = 0; i < static_cast<int>(source.code.size()); ++i) {
    if (std::regex_search(at(source.code, i), declared)) return comment_above(source, i);
  }
  return {};
}

bool is_test_case(const Function& f) { return f.name.starts_with("TEST") || f.name.starts_with("RC_GTEST"); }

/// Helpers of the file that compare numbers: a test that calls one is a numeric test too.
std::string near_helpers(const Source& source, const Outline& shape) {
  std::string names;
  for (const auto& f : shape.functions) {
    if (!is_test_case(f) && !f.name.empty() && body_matches(source, f, near_pattern())) names += "|" + f.name;
  }
  return names;
}

void check_numeric(const Source& source, Violations& out) {
  const Outline shape = outline(source);
  const std::regex near{R"(\b(EXPECT_NEAR|ASSERT_NEAR|DoubleNear|FloatNear)" + near_helpers(source, shape) + R"()\b)"};
  for (const auto& f : shape.functions) {
    if (!is_test_case(f) || !body_matches(source, f, near)) continue;
    if (names_both(comment_above(source, f.first_line)) || names_both(comment_of_fixture(source, f))) continue;
    out.push_back({source.path, f.first_line + 1, "compares numbers but names no 'Source:' and 'Tolerance:' above it"});
  }
}

}  // namespace

Order read_order(std::string_view text) {
  Order order;
  std::istringstream in{std::string{text}};
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line.starts_with("#")) continue;
    const auto colon = line.find(':');
    const std::string folder = line.substr(0, colon);
    Order::Allowed allowed;
    std::istringstream words{colon == std::string::npos ? "" : line.substr(colon + 1)};
    for (std::string word; words >> word;) allow(order, allowed, word);
    if (folder == "[tests]") {
      order.tests = allowed;
    } else if (!order.folders.emplace(folder, allowed).second) {
      order.mistakes.push_back({"tests/boundary/order.txt", 0, folder + " is listed twice"});
    }
  }
  return order;
}

Violations check_includes(const Order& order, const std::vector<Source>& sources) {
  static const std::regex include{R"(^\s*#\s*include\s*([<"])([^>"]+)[>"])"};
  Violations out = order.mistakes;
  for (const auto& source : sources) {
    if (source.path.starts_with("tests/") || source.path.starts_with("reference/")) continue;
    if (!order.folders.contains(source.folder())) {
      out.push_back({source.path, 0, "stands in a folder that order.txt does not list"});
      continue;
    }
    for (int i = 0; i < static_cast<int>(source.code.size()); ++i) {
      std::smatch match;
      const std::string line = at(source.code, i);
      if (!std::regex_search(line, match, include)) continue;
      const std::string what = wrong_include(order, source, match[2], match[1] == "\"");
      if (!what.empty()) out.push_back({source.path, i + 1, what});
    }
  }
  return out;
}

Violations check_core_is_pure(const std::vector<Source>& sources) {
  Violations out;
  for (const auto& source : sources) {
    if (source.path.starts_with("core/") && !source.is_test()) check_pure(source, out);
  }
  return out;
}

Violations check_sentences(const std::vector<Source>& sources) {
  // A capital, three words or more, a full stop: that is speech, and speech belongs to the dictionaries.
  static const std::regex sentence{R"(^[A-Z][a-z]+( [^ ]+){2,}\.$)"};
  Violations out;
  for (const auto& source : sources) {
    const bool pure =
        source.path.starts_with("core/") || source.path.starts_with("drawing/") || source.path.starts_with("job/");
    if (!pure || source.is_test()) continue;
    for (std::size_t i = 0; i < source.literals.size(); ++i) {
      if (std::regex_search(source.literals[i], sentence))
        out.push_back({source.path, source.literal_lines[i] + 1, "a sentence outside words/: " + source.literals[i]});
    }
  }
  return out;
}

Violations check_numeric_tests(const std::vector<Source>& sources) {
  Violations out;
  for (const auto& source : sources) {
    if (source.is_test()) check_numeric(source, out);
  }
  return out;
}

Violations check_no_test_is_off(const std::vector<Source>& sources) {
  static const std::regex off{R"(\b(GTEST_SKIP|DISABLED_\w+|RC_SUCCEED)\b)"};
  Violations out;
  for (const auto& source : sources) {
    for (int i = 0; i < static_cast<int>(source.code.size()); ++i) {
      if (std::regex_search(at(source.code, i), off))
        out.push_back({source.path, i + 1, "a test that is switched off"});
    }
  }
  return out;
}

Violations check_readmes(const std::filesystem::path& root, const std::vector<Source>& sources) {
  std::set<std::string> folders;
  for (const auto& source : sources) {
    if (!source.path.starts_with("tests/")) folders.insert(source.folder());
  }
  Violations out;
  for (const auto& folder : folders) {
    if (!std::filesystem::exists(root / folder / "README.md"))
      out.push_back({folder, 0, "has no README.md with its model in one page"});
  }
  return out;
}

Violations long_ones(const std::vector<Source>& sources) {
  Violations out;
  for (const auto& source : sources) {
    if (source.lines.size() > 400)
      out.push_back({source.path, 0, std::to_string(source.lines.size()) + " lines: still one idea?"});
    for (const auto& f : outline(source).functions) {
      const int length = f.last_line - f.first_line + 1;
      if (length > 40)
        out.push_back({source.path, f.first_line + 1, f.name + " has " + std::to_string(length) + " lines"});
    }
  }
  return out;
}

std::string told(const Violations& violations) {
  std::string text;
  for (const auto& v : violations)
    text += v.path + (v.line > 0 ? ":" + std::to_string(v.line) : "") + ": " + v.what + "\n";
  return text;
}

}  // namespace boundary
