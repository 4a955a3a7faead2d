// text.h: the text of a file, checked as text before anybody parses it, and its places.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/problem.h"

namespace flatwise::definition {

inline constexpr std::size_t kMostBytes = 4u << 20;  ///< 4 MiB: a hundred times the longest shaft.
inline constexpr int kDeepest = 16;                  ///< Brackets in brackets, and dots in one key.
inline constexpr std::size_t kLongestText = 400;     ///< Bytes of one string.

class Text {
 public:
  /// A byte order mark at the start is left out; lines may end in LF or CRLF.
  Text(std::string_view bytes, std::string_view file);

  /// Too long, not UTF-8, nested deeper than any shaft, or with letters like µ outside quotes: what a parser should
  /// not be handed.
  [[nodiscard]] std::optional<Problem> unfit() const;

  [[nodiscard]] std::string_view bytes() const { return bytes_; }
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] Place whole() const { return {file_, 0, 0, {}}; }
  /// Line and column count from 1; columns count characters, not bytes.
  [[nodiscard]] Place at(int line, int column) const;
  /// What stands between two places of one line; to the end of the line when they are on different lines.
  [[nodiscard]] std::string between(int line, int column, int end_line, int end_column) const;

 private:
  [[nodiscard]] Place at_byte(std::size_t byte) const;
  [[nodiscard]] std::string_view line_text(int line) const;
  [[nodiscard]] std::optional<std::size_t> first_bad_byte() const;
  [[nodiscard]] std::optional<std::size_t> first_too_deep() const;
  [[nodiscard]] std::optional<std::size_t> first_not_quoted() const;

  std::string_view bytes_;
  std::string file_;
  std::vector<std::size_t> starts_;
};

}  // namespace flatwise::definition
