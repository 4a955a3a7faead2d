// text.h: tables and paragraphs for people on a terminal, by display columns, not bytes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flatwise::cli {

/// Columns a UTF-8 text takes: one a code point, none for combining marks. (Our dictionaries hold no wide characters.)
[[nodiscard]] int columns(std::string_view text);
/// Breaks at spaces (never at no-break spaces) so that no line is wider than `width`; later lines begin with `indent`.
[[nodiscard]] std::string wrap(std::string_view text, int width, std::string_view indent = {});

struct Table {
  std::vector<std::string> head;               ///< May be empty.
  std::vector<std::vector<std::string>> rows;  ///< A row shorter than the head is filled with nothing.
  std::string right;                           ///< One letter a column: 'r' sets it to the right.
};
/// The table with two spaces between columns and a rule under the head.
[[nodiscard]] std::string lay_out(const Table& table, std::string_view indent = "  ");

/// Text typed by a person or read from a file, safe for a terminal: control bytes and broken UTF-8 become '?'.
[[nodiscard]] std::string printable(std::string_view text);

enum class Tone { plain, strong, in, out, tell, faint };
[[nodiscard]] std::string toned(std::string_view text, Tone tone, bool colour);

}  // namespace flatwise::cli
