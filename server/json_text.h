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
  out += '"';
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20) {
      out += "\\u00";
      out += kHex[byte >> 4U];
      out += kHex[byte & 15U];
    } else {
      out += c;
    }
  }
  out += '"';
}

inline void number(std::string& out, std::int64_t value) {
  char digits[24];
  const auto end = std::to_chars(digits, digits + sizeof digits, value);
  out.append(digits, end.ptr);
}

}  // namespace flatwise::server
