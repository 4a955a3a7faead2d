// checks.h: what an option takes, said as a problem of ours where it does not.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/units/problem.h"

namespace flatwise::cli {

/// Keeps the problem of the word that an option did not take, since the library carries only a text.
struct Refusing {
  std::optional<Problem> refused;
};

/// The known word nearest to `typed` as an argument, where there is one.
void add_near(Args& args, const std::string& typed, const std::vector<std::string>& known);
[[nodiscard]] Problem not_a_choice(const std::string& typed, const std::vector<std::string>& words);
/// Takes what `problem_of` finds nothing wrong with.
[[nodiscard]] CLI::Validator taking(Refusing& line,
                                    std::function<std::optional<Problem>(const std::string&)> problem_of);
[[nodiscard]] CLI::Validator one_of(Refusing& line, std::vector<std::string> words);
[[nodiscard]] CLI::Validator not_empty(Refusing& line, std::string option);
/// Digits only, up to six of them; with `many`, several such with a comma between two.
[[nodiscard]] CLI::Validator whole_numbers(Refusing& line, std::string option, bool many);
[[nodiscard]] CLI::Validator port_number(Refusing& line);
/// What whole_numbers() took.
[[nodiscard]] std::vector<int> numbers_of(const std::vector<std::string>& lists);

}  // namespace flatwise::cli
