#include "cli/text.h"

#include <algorithm>

namespace flatwise::cli {
namespace {

bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// Length of the valid UTF-8 sequence at `i`, or 0.
std::size_t sequence_at(std::string_view s, std::size_t i) {
  const auto lead = static_cast<unsigned char>(s[i]);
  const std::size_t length = lead < 0x80                   ? 1
                             : lead >= 0xC2 && lead < 0xE0 ? 2
                             : (lead & 0xF0U) == 0xE0      ? 3
                             : lead >= 0xF0 && lead < 0xF5 ? 4
                                                           : 0;
  if (length == 0 || i + length > s.size()) return 0;
  for (std::size_t k = 1; k < length; ++k)
    if (!continues(s[i + k])) return 0;
  return length;
}

std::string padded(const std::string& text, int width, bool right) {
  const std::string gap(static_cast<std::size_t>(std::max(0, width - columns(text))), ' ');
  return right ? gap + text : text + gap;
}

std::string trimmed(std::string line) {
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

std::string line_of(const std::vector<std::string>& cells, const std::vector<int>& widths, const Table& table,
                    std::string_view indent) {
  std::string line{indent};
  for (std::size_t c = 0; c < widths.size(); ++c) {
    const bool right = c < table.right.size() && table.right[c] == 'r';
    line += padded(c < cells.size() ? cells[c] : std::string{}, widths[c], right) + "  ";
  }
  return trimmed(std::move(line)) + "\n";
}

}  // namespace

int columns(std::string_view text) {
  int count = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\x1b') {  // A colour takes no room.
      while (i < text.size() && text[i] != 'm') ++i;
      continue;
    }
    const bool combining = static_cast<unsigned char>(text[i]) == 0xCC;  // U+0300 to U+033F: what our tables use.
    if (!continues(text[i]) && !combining) ++count;
  }
  return count;
}

std::string wrap(std::string_view text, int width, std::string_view indent) {
  std::string out, line;
  std::size_t i = 0;
  while (i < text.size()) {
    const std::size_t end = std::min(text.find_first_of(" \n", i), text.size());
    const std::string_view piece = text.substr(i, end - i);
    if (!line.empty() && columns(line) + 1 + columns(piece) > width) {
      out += trimmed(line) + "\n";
      line = indent;
    } else if (!line.empty() && line != indent) {
      line += ' ';
    }
    line += piece;
    if (end < text.size() && text[end] == '\n') {
      out += trimmed(line) + "\n";
      line = indent;
    }
    i = end + 1;
  }
  return out + trimmed(line);
}

std::string lay_out(const Table& table, std::string_view indent) {
  std::size_t count = table.head.size();
  for (const auto& row : table.rows) count = std::max(count, row.size());
  std::vector<int> widths(count, 0);
  const auto widen = [&](const std::vector<std::string>& cells) {
    for (std::size_t c = 0; c < cells.size(); ++c) widths[c] = std::max(widths[c], columns(cells[c]));
  };
  widen(table.head);
  for (const auto& row : table.rows) widen(row);
  std::string out;
  if (!table.head.empty()) {
    out += line_of(table.head, widths, table, indent);
    int total = -2;
    for (const int w : widths) total += w + 2;
    out += indent;
    for (int i = 0; i < total; ++i) out += "─";
    out += '\n';
  }
  for (const auto& row : table.rows) out += line_of(row, widths, table, indent);
  return out;
}

std::string printable(std::string_view text) {
  std::string out;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = sequence_at(text, i);
    const auto byte = static_cast<unsigned char>(text[i]);
    // C1 controls arrive as C2 80..9F and could drive a terminal too.
    const bool control = length <= 1 ? byte < 0x20 || byte == 0x7F
                                     : length == 2 && byte == 0xC2 && static_cast<unsigned char>(text[i + 1]) < 0xA0;
    out += length == 0 || control ? (byte == '\t' ? " " : "?") : text.substr(i, length);
    i += std::max<std::size_t>(length, 1);
  }
  return out;
}

std::string toned(std::string_view text, Tone tone, bool colour) {
  if (!colour || tone == Tone::plain) return std::string{text};
  const std::string_view start = tone == Tone::strong ? "\x1b[1m"
                                 : tone == Tone::in   ? "\x1b[32m"
                                 : tone == Tone::out  ? "\x1b[1;31m"
                                 : tone == Tone::tell ? "\x1b[33m"
                                                      : "\x1b[2m";
  return std::string{start} + std::string{text} + "\x1b[0m";
}

}  // namespace flatwise::cli
