// boundary.h: the checks that keep the house in order: who includes whom (order.txt), what a pure core may not do, and
// that a numeric test names its source and its tolerance.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "tests/boundary/source.h"

namespace boundary {

struct Violation {
  std::string path;
  int line = 0;  ///< From 1; 0: the file or folder as a whole.
  std::string what;
};

/// The table of order.txt with its shorthands resolved.
struct Order {
  struct Allowed {
    std::set<std::string> folders;
    std::vector<std::string> libraries;  ///< Starts of include paths.
  };
  std::map<std::string, Allowed> folders;
  Allowed tests;
  std::vector<Violation> mistakes;  ///< Of the table itself.
};
[[nodiscard]] Order read_order(std::string_view text);

[[nodiscard]] std::vector<Violation> check_includes(const Order& order, const std::vector<Source>& sources);
[[nodiscard]] std::vector<Violation> check_core_is_pure(const std::vector<Source>& sources);
[[nodiscard]] std::vector<Violation> check_sentences(const std::vector<Source>& sources);
[[nodiscard]] std::vector<Violation> check_numeric_tests(const std::vector<Source>& sources);
[[nodiscard]] std::vector<Violation> check_no_test_is_off(const std::vector<Source>& sources);
[[nodiscard]] std::vector<Violation> check_readmes(const std::filesystem::path& root,
                                                   const std::vector<Source>& sources);
/// Long functions and files: told, never a failure.
[[nodiscard]] std::vector<Violation> long_ones(const std::vector<Source>& sources);

[[nodiscard]] std::string told(const std::vector<Violation>& violations);

}  // namespace boundary
