// json_text.h: JSON written straight into a string, for the replies that must be quick. Everything else goes through wire/.
#pragma once

#include <charconv>
#include <cstdint>
#include <string>
#include <string_view>

namespace flatwise::server {

/// Puts `text` between quotes, escaped as RFC 8259 section 7 asks.
inline void quote(std::string& out, std::string_view text) {
  static constexpr std::string_view kHex = "0123456789abcdef";
  const auto plain = [](char c) { return static_cast<unsigned char>(c) >= 0x20 && c != '"' && c != '\\'; };
  out += '"';
  std::size_t from = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (plain(text[at])) continue;
    out.append(text, from, at - from);  // What needs no escape goes in one piece.
    from = at + 1;
    const auto byte = static_cast<unsigned char>(text[at]);
    if (byte >= 0x20) {
      (out += '\\') += text[at];
    } else {
      out += "\\u00";
      (out += kHex[byte >> 4U]) += kHex[byte & 15U];
    }
  }
  out.append(text, from);
  out += '"';
}

inline void number(std::string& out, std::int64_t value) {
  char digits[24];
  const auto end = std::to_chars(digits, digits + sizeof digits, value);
  out.append(digits, end.ptr);
}

}  // namespace flatwise::server
