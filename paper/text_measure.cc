#include "paper/text_measure.h"

#include <algorithm>

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

}  // namespace

std::vector<std::string> break_lines(const TextMeasure& measure, std::string_view text, const Setting& setting) {
  std::vector<std::string> lines;
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
  return lines;
}

double size_to_fit(const TextMeasure& measure, std::string_view text, const Setting& setting, double least) {
  const double width = measure.width(text, setting.size, setting.bold);
  if (width <= setting.width) return setting.size;
  return std::max(least, setting.size * setting.width / width);
}

}  // namespace flatwise::paper
