#include "core/units/typed.h"

#include <array>
#include <cstdint>

namespace flatwise {
namespace {

struct Decoded {
  char32_t point = 0;
  std::size_t bytes = 0;  ///< 0: not UTF-8 here.
};

/// Strict: no overlong forms, no surrogates, nothing above U+10FFFF.
Decoded decode(std::string_view s) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return {first, 1};
  const std::size_t n = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || s.size() < n) return {};
  char32_t point = first & (0x7FU >> n);
  for (std::size_t i = 1; i < n; ++i) {
    if ((byte(i) & 0xC0U) != 0x80U) return {};
    point = point << 6 | (byte(i) & 0x3FU);
  }
  constexpr std::array<char32_t, 5> kLeast{0, 0, 0x80, 0x800, 0x10000};
  if (point < kLeast[n] || point > 0x10FFFF || (point >= 0xD800 && point <= 0xDFFF)) return {};
  return {point, n};
}

bool is_control(char32_t c) { return (c < 0x20 && c != U'\t') || (c >= 0x7F && c < 0xA0); }

struct Fold {
  char32_t from;
  std::string_view to;
};
constexpr std::array kFolds{
    // Spaces: tab, no-break, figure, thin, narrow no-break.
    Fold{U'\t', " "},
    Fold{0x00A0, " "},
    Fold{0x2007, " "},
    Fold{0x2009, " "},
    Fold{0x202F, " "},
    // Minus, non-breaking hyphen, hyphen.
    Fold{0x2212, "-"},
    Fold{0x2011, "-"},
    Fold{0x2010, "-"},
    // Micro sign and Greek mu.
    Fold{0x00B5, "u"},
    Fold{0x03BC, "u"},
    // Multiplication: middle dot, dot operator, bullet, times. Never '.', which is the decimal point.
    Fold{0x00B7, "*"},
    Fold{0x22C5, "*"},
    Fold{0x2022, "*"},
    Fold{0x00D7, "*"},
    // Division: fraction slash, division slash.
    Fold{0x2044, "/"},
    Fold{0x2215, "/"},
    // Superscripts. Kept apart from digits by '^', or "5² mm" would read as 52.
    Fold{0x00B9, "^1"},
    Fold{0x00B2, "^2"},
    Fold{0x00B3, "^3"},
    Fold{0x2074, "^4"},
    Fold{0x207B, "^-"},
    // Degree signs, primes and the quotes typed for them.
    Fold{0x00B0, "\x01"},
    Fold{0x00BA, "\x01"},
    Fold{0x2032, "'"},
    Fold{0x2019, "'"},
    Fold{0x2033, "\""},
    Fold{0x201D, "\""},
};
/// Vulgar fractions. A closing space keeps a digit that follows from joining the lower number.
constexpr std::array kVulgar{
    Fold{0x00BC, "1/4 "}, Fold{0x00BD, "1/2 "}, Fold{0x00BE, "3/4 "}, Fold{0x215B, "1/8 "}, Fold{0x215C, "3/8 "},
    Fold{0x215D, "5/8 "}, Fold{0x215E, "7/8 "}, Fold{0x2153, "1/3 "}, Fold{0x2154, "2/3 "},
};

template <std::size_t N>
std::string_view look_up(const std::array<Fold, N>& folds, char32_t point) {
  for (const Fold& fold : folds)
    if (fold.from == point) return fold.to;
  return {};
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

std::optional<Folded> fold_typed(std::string_view typed) {
  Folded folded;
  const auto add = [&](std::string_view piece, std::size_t from) {
    folded.text += piece;
    folded.from.resize(folded.text.size(), from);
  };
  for (std::size_t i = 0; i < typed.size();) {
    const auto [point, bytes] = decode(typed.substr(i));
    if (bytes == 0 || is_control(point)) return std::nullopt;
    if (const std::string_view vulgar = look_up(kVulgar, point); !vulgar.empty()) {
      if (!folded.text.empty() && is_digit(folded.text.back())) add(" ", i);
      add(vulgar, i);
    } else if (const std::string_view plain = look_up(kFolds, point); !plain.empty()) {
      const bool after_superscript_minus = folded.text.size() > 1 && folded.text.ends_with("^-") && plain[0] == '^';
      add(after_superscript_minus ? plain.substr(1) : plain, i);
    } else {
      add(typed.substr(i, bytes), i);
    }
    i += bytes;
  }
  folded.from.push_back(typed.size());
  return folded;
}

std::string showable(std::string_view typed) {
  std::string shown;
  for (std::size_t i = 0; i < typed.size();) {
    const auto [point, bytes] = decode(typed.substr(i));
    const bool good = bytes != 0 && !is_control(point);
    shown += good ? typed.substr(i, bytes) : std::string_view{"\xEF\xBF\xBD"};
    i += bytes == 0 ? 1 : bytes;
  }
  return shown;
}

}  // namespace flatwise
