// typed.h: typed text folded to plain ASCII before it is read. Internal to core/units.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace flatwise {

/// Stands for the degree sign in folded text: a control character, which typed text cannot hold.
inline constexpr char kDegree = '\x01';

/// Typed text with one spelling for each sign (the many spaces, minus signs, primes, dots, both micro signs, vulgar
/// fractions, superscripts). Letters of no use to us stay as they are.
struct Folded {
  std::string text;
  std::vector<std::size_t> from;  ///< Byte of the typed text that each byte of `text` came from; one more for the end.
};

/// None where the text is not UTF-8 or holds control characters.
[[nodiscard]] std::optional<Folded> fold_typed(std::string_view typed);

/// The text as it can be shown: bytes that are not UTF-8, and control characters, become U+FFFD.
[[nodiscard]] std::string showable(std::string_view typed);

}  // namespace flatwise
