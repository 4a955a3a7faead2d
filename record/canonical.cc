#include "record/canonical.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <vector>

namespace flatwise::record {
namespace {

/// UTF-8 to UTF-16 code units, for the order of keys only.
std::u16string utf16(std::string_view utf8) {
  std::u16string out;
  for (std::size_t i = 0; i < utf8.size();) {
    const auto lead = static_cast<unsigned char>(utf8[i]);
    const std::size_t length = lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
    char32_t code = length == 1 ? lead : lead & (0xffu >> (length + 1));
    for (std::size_t k = 1; k < length && i + k < utf8.size(); ++k)
      code = code << 6u | (static_cast<unsigned char>(utf8[i + k]) & 0x3fu);
    i += length;
    if (code >= 0x10000) {
      code -= 0x10000;
      out += static_cast<char16_t>(0xd800u + (code >> 10u));
      out += static_cast<char16_t>(0xdc00u + (code & 0x3ffu));
    } else {
      out += static_cast<char16_t>(code);
    }
  }
  return out;
}

void append(std::string& out, const wire::Json& json);

void append_object(std::string& out, const wire::Json& json) {
  std::vector<std::pair<std::u16string, wire::Json::const_iterator>> members;
  for (auto it = json.begin(); it != json.end(); ++it) members.emplace_back(utf16(it.key()), it);
  std::ranges::sort(members, {}, [](const auto& m) -> const std::u16string& { return m.first; });
  out += '{';
  for (std::size_t i = 0; i < members.size(); ++i) {
    if (i > 0) out += ',';
    out += canonical_string(members[i].second.key()) + ':';
    append(out, members[i].second.value());
  }
  out += '}';
}

void append_array(std::string& out, const wire::Json& json) {
  out += '[';
  for (std::size_t i = 0; i < json.size(); ++i) {
    if (i > 0) out += ',';
    append(out, json[i]);
  }
  out += ']';
}

void append(std::string& out, const wire::Json& json) {
  constexpr std::int64_t kMost = (std::int64_t{1} << 53) - 1;
  switch (json.type()) {
    case wire::Json::value_t::null:
      out += "null";
      return;
    case wire::Json::value_t::boolean:
      out += json.get<bool>() ? "true" : "false";
      return;
    case wire::Json::value_t::number_integer:
      CORE_CHECK(std::abs(json.get<std::int64_t>()) <= kMost);
      out += std::to_string(json.get<std::int64_t>());
      return;
    case wire::Json::value_t::number_unsigned:
      CORE_CHECK(json.get<std::uint64_t>() <= static_cast<std::uint64_t>(kMost));
      out += std::to_string(json.get<std::uint64_t>());
      return;
    case wire::Json::value_t::number_float:
      out += canonical_number(json.get<double>());
      return;
    case wire::Json::value_t::string:
      out += canonical_string(json.get_ref<const std::string&>());
      return;
    case wire::Json::value_t::object:
      return append_object(out, json);
    case wire::Json::value_t::array:
      return append_array(out, json);
    default:
      core_check_failed("json is text", __FILE__, __LINE__);
  }
}

}  // namespace

std::string canonical(const wire::Json& json) {
  std::string out;
  append(out, json);
  return out;
}

std::string canonical_string(std::string_view utf8) {
  constexpr std::string_view kHex = "0123456789abcdef";
  constexpr std::string_view kShort = "\b\t\n\f\r\"\\", kLetters = "btnfr\"\\";
  std::string out = "\"";
  for (const char c : utf8) {
    const auto byte = static_cast<unsigned char>(c);
    if (const std::size_t at = kShort.find(c); at != std::string_view::npos)
      out += {'\\', kLetters[at]};
    else if (byte < 0x20)
      out += {'\\', 'u', '0', '0', kHex[byte >> 4u], kHex[byte & 15u]};
    else
      out += c;
  }
  return out + '"';
}

std::string canonical_number(double value) {
  CORE_CHECK(std::isfinite(value));
  if (value == 0) return "0";  // Minus nought too.
  std::array<char, 32> buffer{};
  const auto end =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), std::abs(value), std::chars_format::scientific).ptr;
  const std::string_view text{buffer.data(), static_cast<std::size_t>(end - buffer.data())};
  const std::size_t e = text.find('e');
  std::string digits{text.substr(0, 1)};
  if (e > 2) digits += text.substr(2, e - 2);
  const int n = std::stoi(std::string{text.substr(e + 1)}) + 1;  // The point stands after n digits.
  const int k = static_cast<int>(digits.size());
  const std::string sign = value < 0 ? "-" : "";
  const auto zeros = [](int count) { return std::string(static_cast<std::size_t>(count), '0'); };
  if (k <= n && n <= 21) return sign + digits + zeros(n - k);
  if (0 < n && n <= 21)
    return sign + digits.substr(0, static_cast<std::size_t>(n)) + "." + digits.substr(static_cast<std::size_t>(n));
  if (-6 < n && n <= 0) return sign + "0." + zeros(-n) + digits;
  const std::string exponent = (n - 1 < 0 ? "e-" : "e+") + std::to_string(std::abs(n - 1));
  return sign + digits.substr(0, 1) + (k > 1 ? "." + digits.substr(1) : "") + exponent;
}

}  // namespace flatwise::record
