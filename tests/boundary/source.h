// source.h: C++ files as the boundary checks see them: lines, and the same lines without comments and literals.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace boundary {

struct Source {
  std::string path;                   ///< From the root, with '/'.
  std::vector<std::string> lines;     ///< As written.
  std::vector<std::string> code;      ///< Comments and the insides of literals blanked; same columns.
  std::vector<std::string> literals;  ///< Insides of string literals, with the line they begin on beside them.
  std::vector<int> literal_lines;

  [[nodiscard]] bool is_test() const;
  [[nodiscard]] std::string folder() const;  ///< "core/units" for core/units/a.h, so for store/; else the first part.
};

[[nodiscard]] Source read_source(std::string path, std::string_view text);
/// All .h and .cc files below the root, sorted by path; build folders and hidden folders left out.
[[nodiscard]] std::vector<Source> read_sources(const std::filesystem::path& root);
[[nodiscard]] std::string read_text(const std::filesystem::path& file);

/// A function or test at namespace level: its head (up to the brace), name, and the lines of its body, from 0.
struct Function {
  std::string head, name;
  int first_line = 0, body_line = 0, last_line = 0;
};
/// What stands at namespace level: functions, and statements that end in ';' there.
struct Outline {
  struct Statement {
    std::string text;
    int line = 0;
  };
  std::vector<Function> functions;
  std::vector<Statement> statements;
};
[[nodiscard]] Outline outline(const Source& source);

}  // namespace boundary
