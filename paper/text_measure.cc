#include "paper/text_measure.h"

#include <algorithm>
#include <array>

namespace flatwise::paper {
namespace {

// End of the character that begins at `from`: one code point, not one byte.
std::size_t next_character(std::string_view text, std::size_t from) {
  std::size_t to = from + 1;
  while (to < text.size() && (static_cast<unsigned char>(text[to]) & 0xC0) == 0x80) ++to;
  return to;
}

// As many characters as fit, at least one.
std::size_t fitting(const TextMeasure& measure, std::string_view word, const Setting& setting) {
  std::size_t end = next_character(word, 0);
  while (end < word.size()) {
    const std::size_t next = next_character(word, end);
    if (measure.width(word.substr(0, next), setting.size, setting.bold) > setting.width) break;
    end = next;
  }
  return end;
}

constexpr std::string_view kLineEndShown = "↵";
constexpr std::size_t kMostLineEnds = 12;

/// How many bytes the line end at `at` takes; 0: there is none.
std::size_t line_end_at(std::string_view text, std::size_t at) {
  constexpr std::array<std::string_view, 8> kEnds{"\r\n", "\n",       "\r",           "\v",
                                                  "\f",   "\xC2\x85", "\xE2\x80\xA8", "\xE2\x80\xA9"};
  for (const std::string_view end : kEnds)
    if (text.substr(at).starts_with(end)) return end.size();
  return 0;
}

/// What stands between line ends, tabs as spaces; the empty ones at the end of the text are left out.
std::vector<std::string> paragraphs(std::string_view text) {
  std::vector<std::string> out(1);
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = line_end_at(text, at);
    if (end > 0)
      out.emplace_back();
    else
      out.back() += text[at] == '\t' ? ' ' : text[at];
    at += std::max<std::size_t>(end, 1);
  }
  while (out.size() > 1 && out.back().empty()) out.pop_back();
  return out;
}

void break_paragraph(const TextMeasure& measure, std::string_view text, const Setting& setting,
                     std::vector<std::string>& lines) {
  std::string line;
  const auto fits = [&](std::string_view words) {
    return measure.width(words, setting.size, setting.bold) <= setting.width;
  };
  const auto flush = [&] {
    lines.push_back(line);
    line.clear();
  };
  std::size_t at = 0;
  while (at <= text.size()) {
    const std::size_t space = std::min(text.find(' ', at), text.size());
    std::string_view word = text.substr(at, space - at);
    at = space + 1;
    const std::string with = line.empty() ? std::string{word} : line + ' ' + std::string{word};
    if (fits(with)) {
      line = with;
      continue;
    }
    if (!line.empty()) flush();
    while (!word.empty() && !fits(word)) {
      const std::size_t end = fitting(measure, word, setting);
      line = word.substr(0, end);
      word.remove_prefix(end);
      if (!word.empty()) flush();
    }
    if (!word.empty()) line = word;
  }
  flush();
}

}  // namespace

std::string in_one_line(std::string_view text) {
  std::string out;
  for (const std::string& paragraph : paragraphs(text)) {
    if (!out.empty()) out += (out.back() == ' ' ? "" : " ") + std::string{kLineEndShown} + " ";
    out += paragraph;
  }
  return out;
}

std::vector<std::string> break_lines(const TextMeasure& measure, std::string_view text, const Setting& setting) {
  std::vector<std::string> lines;
  const std::vector<std::string> parts = paragraphs(text);
  if (parts.size() > kMostLineEnds + 1) {
    break_paragraph(measure, in_one_line(text), setting, lines);
    return lines;
  }
  for (const std::string& part : parts) break_paragraph(measure, part, setting, lines);
  return lines;
}

double size_to_fit(const TextMeasure& measure, std::string_view text, const Setting& setting, double least) {
  const double width = measure.width(text, setting.size, setting.bold);
  if (width <= setting.width) return setting.size;
  return std::max(least, setting.size * setting.width / width);
}

}  // namespace flatwise::paper
