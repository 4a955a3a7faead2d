#include "cli/checks.h"

#include <algorithm>
#include <charconv>

#include "core/units/near.h"

namespace flatwise::cli {

void add_near(Args& args, const std::string& typed, const std::vector<std::string>& known) {
  const std::vector<std::string_view> views(known.begin(), known.end());
  if (const std::string_view near = nearest(typed, views); !near.empty()) args.emplace_back("near", std::string{near});
}

Problem not_a_choice(const std::string& typed, const std::vector<std::string>& words) {
  Args args{{"words", words}};
  add_near(args, typed, words);
  return {Code{"cli.not_a_choice"}, "command", typed, std::move(args), std::nullopt};
}

CLI::Validator taking(Refusing& line, std::function<std::optional<Problem>(const std::string&)> problem_of) {
  return CLI::Validator{[&line, problem_of = std::move(problem_of)](std::string& typed) {
                          line.refused = problem_of(typed);
                          return std::string{line.refused ? "refused" : ""};
                        },
                        ""};
}

CLI::Validator one_of(Refusing& line, std::vector<std::string> words) {
  return taking(line, [words = std::move(words)](const std::string& typed) -> std::optional<Problem> {
    if (std::ranges::find(words, typed) != words.end()) return std::nullopt;
    return not_a_choice(typed, words);
  });
}

CLI::Validator not_empty(Refusing& line, std::string option) {
  return taking(line, [option = std::move(option)](const std::string& typed) -> std::optional<Problem> {
    if (!typed.empty()) return std::nullopt;
    return Problem{Code{"cli.nothing_named"}, option, typed, {}, std::nullopt};
  });
}

CLI::Validator whole_numbers(Refusing& line, std::string option, bool many) {
  return taking(line, [option = std::move(option), many](const std::string& typed) -> std::optional<Problem> {
    int digits = 0;
    bool right = !typed.empty() && typed.back() != ',';
    for (const char c : typed) {
      const bool comma = c == ',' && many && digits > 0;
      right = right && (comma || (c >= '0' && c <= '9' && digits < 6));
      digits = comma ? 0 : digits + 1;
    }
    if (right) return std::nullopt;
    return Problem{
        many ? Code{"cli.not_whole_numbers"} : Code{"cli.not_a_whole_number"}, option, typed, {}, std::nullopt};
  });
}

CLI::Validator port_number(Refusing& line) {
  constexpr int kGreatest = 65535;
  return taking(line, [](const std::string& typed) -> std::optional<Problem> {
    int port = -1;
    const auto read = std::from_chars(typed.data(), typed.data() + typed.size(), port);
    if (read.ec == std::errc{} && read.ptr == typed.data() + typed.size() && port >= 0 && port <= kGreatest)
      return std::nullopt;
    return Problem{Code{"http.not_a_number"}, "--port", typed, {{"least", 0}, {"greatest", kGreatest}}, std::nullopt};
  });
}

std::vector<int> numbers_of(const std::vector<std::string>& lists) {
  std::vector<int> all;
  for (const std::string& list : lists) {
    all.push_back(0);
    for (const char c : list) {
      if (c == ',')
        all.push_back(0);
      else
        all.back() = all.back() * 10 + (c - '0');
    }
  }
  return all;
}

}  // namespace flatwise::cli
