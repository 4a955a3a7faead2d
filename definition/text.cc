#include "definition/text.h"

#include <algorithm>

namespace flatwise::definition {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::size_t kLongestQuote = 240;  // A quoted line is for reading; a megabyte on one line is not.

bool continues(unsigned char c) { return (c & 0xC0u) == 0x80u; }

// Length of the UTF-8 sequence that starts here; 0 when it is not one (overlong, surrogate and out of range included).
std::size_t sequence(std::string_view s) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return 1;
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || s.size() < length) return 0;
  for (std::size_t i = 1; i < length; ++i)
    if (!continues(byte(i))) return 0;
  if (first == 0xE0 && byte(1) < 0xA0) return 0;
  if (first == 0xED && byte(1) > 0x9F) return 0;
  if (first == 0xF0 && byte(1) < 0x90) return 0;
  if (first == 0xF4 && byte(1) > 0x8F) return 0;
  return length;
}

// Byte offset of the nth character (from 0) of a line.
std::size_t offset_of(std::string_view line, int characters) {
  std::size_t at = 0;
  for (; characters > 0 && at < line.size(); --characters) {
    ++at;
    while (at < line.size() && continues(static_cast<unsigned char>(line[at]))) ++at;
  }
  return at;
}

// Skips a string or a comment that starts at `at`; gives the byte behind it. Anything else: `at` itself.
std::size_t skip_quiet(std::string_view s, std::size_t at) {
  if (s[at] == '#') return std::min(s.find('\n', at), s.size());
  if (s[at] != '"' && s[at] != '\'') return at;
  const char quote = s[at];
  const std::string_view triple = quote == '"' ? "\"\"\"" : "'''";
  const bool many_lines = s.substr(at, 3) == triple;
  for (std::size_t i = at + (many_lines ? 3 : 1); i < s.size(); ++i) {
    if (s[i] == '\\' && quote == '"') {
      ++i;
    } else if (many_lines ? s.substr(i, 3) == triple : s[i] == quote) {
      return i + (many_lines ? 3 : 1);
    } else if (!many_lines && s[i] == '\n') {
      return i;
    }
  }
  return s.size();
}

}  // namespace

Text::Text(std::string_view bytes, std::string_view file) : bytes_{bytes}, file_{file} {
  if (bytes_.starts_with(kByteOrderMark)) bytes_.remove_prefix(kByteOrderMark.size());
  if (bytes_.size() > kMostBytes) return;
  starts_.push_back(0);
  for (std::size_t i = 0; i < bytes_.size(); ++i)
    if (bytes_[i] == '\n') starts_.push_back(i + 1);
}

std::optional<Problem> Text::unfit() const {
  if (bytes_.size() > kMostBytes) {
    Args args{{"bytes", static_cast<std::int64_t>(bytes_.size())}, {"greatest", static_cast<std::int64_t>(kMostBytes)}};
    return Problem{Code{"definition.too_long"}, "file", {}, std::move(args), whole()};
  }
  if (const auto bad = first_bad_byte()) return Problem{Code{"definition.not_utf8"}, "file", {}, {}, at_byte(*bad)};
  if (const auto deep = first_too_deep())
    return Problem{Code{"definition.too_deep"}, "file", {}, {{"greatest", kDeepest}}, at_byte(*deep)};
  if (const auto bare = first_not_quoted()) {
    std::string letter{bytes_.substr(*bare, sequence(bytes_.substr(*bare)))};
    return Problem{Code{"definition.not_quoted"}, "file", std::move(letter), {}, at_byte(*bare)};
  }
  return std::nullopt;
}

std::optional<std::size_t> Text::first_bad_byte() const {
  for (std::size_t i = 0; i < bytes_.size();) {
    const std::size_t length = sequence(bytes_.substr(i));
    if (length == 0 || bytes_[i] == '\0') return i;
    i += length;
  }
  return std::nullopt;
}

// The parser walks tables and frees them by recursion, and a dotted key of a million parts is a million tables deep: so
// depth is counted here, by brackets and by dots since the last mark that ends a key.
std::optional<std::size_t> Text::first_too_deep() const {
  int brackets = 0, dots = 0;
  for (std::size_t i = 0; i < bytes_.size();) {
    const std::size_t behind = skip_quiet(bytes_, i);
    if (behind > i) {
      i = behind;
      continue;
    }
    const char c = bytes_[i];
    if (c == '[' || c == '{') ++brackets;
    if (c == ']' || c == '}') brackets = std::max(0, brackets - 1);
    if (c == '.') ++dots;
    if (std::string_view{"[]{}=,\n"}.find(c) != std::string_view::npos) dots = 0;
    if (brackets > kDeepest || dots > kDeepest) return i;
    ++i;
  }
  return std::nullopt;
}

// Outside quotes and comments TOML knows only ASCII. Version 3.3 of the parser runs into undefined behaviour on some
// letters there, and who forgot the quotes round "12 µm" is better told just that.
std::optional<std::size_t> Text::first_not_quoted() const {
  for (std::size_t i = 0; i < bytes_.size();) {
    const std::size_t behind = skip_quiet(bytes_, i);
    if (behind == i && static_cast<unsigned char>(bytes_[i]) >= 0x80) return i;
    i = std::max(behind, i + 1);
  }
  return std::nullopt;
}

std::string_view Text::line_text(int line) const {
  if (line < 1 || static_cast<std::size_t>(line) > starts_.size()) return {};
  const std::size_t from = starts_[static_cast<std::size_t>(line) - 1];
  std::string_view text = bytes_.substr(from, std::min(bytes_.find('\n', from), bytes_.size()) - from);
  if (text.ends_with('\r')) text.remove_suffix(1);
  return text;
}

Place Text::at(int line, int column) const {
  std::string_view quoted = line_text(line);
  std::size_t most = std::min(quoted.size(), kLongestQuote);
  while (most > 0 && most < quoted.size() && continues(static_cast<unsigned char>(quoted[most]))) --most;
  return {file_, line, column, std::string{quoted.substr(0, most)}};
}

std::string Text::between(int line, int column, int end_line, int end_column) const {
  const std::string_view text = line_text(line);
  const std::size_t from = offset_of(text, column - 1);
  const std::size_t to = end_line == line ? offset_of(text, end_column - 1) : text.size();
  if (to <= from) return {};
  std::string_view part = text.substr(from, to - from);
  while (!part.empty() && (part.back() == ' ' || part.back() == '\t')) part.remove_suffix(1);
  if (part.size() <= kLongestText) return std::string{part};
  return std::string{part.substr(0, offset_of(part, static_cast<int>(kLongestText / 4)))};
}

Place Text::at_byte(std::size_t byte) const {
  const auto next = std::ranges::upper_bound(starts_, byte);
  const auto line = static_cast<int>(next - starts_.begin());
  const std::string_view before = bytes_.substr(*(next - 1), byte - *(next - 1));
  const auto characters =
      std::ranges::count_if(before, [](char c) { return !continues(static_cast<unsigned char>(c)); });
  Place place = at(line, static_cast<int>(characters) + 1);
  // What is not text cannot be quoted: up to the bad byte it can.
  if (place.quoted.size() > before.size()) place.quoted = std::string{before.substr(0, kLongestQuote)};
  return place;
}

}  // namespace flatwise::definition
