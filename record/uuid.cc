#include "record/uuid.h"

#include <algorithm>

namespace flatwise::record {
namespace {
constexpr std::string_view kHex = "0123456789abcdef";
}

bool is_uuid(std::string_view text) {
  if (text.size() != 36) return false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const bool hyphen = i == 8 || i == 13 || i == 18 || i == 23;
    if (hyphen ? text[i] != '-' : kHex.find(text[i]) == std::string_view::npos) return false;
  }
  return true;
}

bool is_uuid7(std::string_view text) {
  return is_uuid(text) && text[14] == '7' && std::string_view{"89ab"}.find(text[19]) != std::string_view::npos;
}

job::Id uuid7(job::Instant at, const std::array<std::uint8_t, 10>& random) {
  std::array<std::uint8_t, 16> bytes{};
  const auto ms = static_cast<std::uint64_t>(at.ms);
  for (std::size_t i = 0; i < 6; ++i) bytes[i] = static_cast<std::uint8_t>(ms >> (8 * (5 - i)));
  std::ranges::copy(random, bytes.begin() + 6);
  bytes[6] = static_cast<std::uint8_t>(0x70u | (bytes[6] & 0x0fu));  // Version 7.
  bytes[8] = static_cast<std::uint8_t>(0x80u | (bytes[8] & 0x3fu));  // Variant of RFC 9562.
  job::Id id;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (i == 4 || i == 6 || i == 8 || i == 10) id += '-';
    id += kHex[bytes[i] >> 4u];
    id += kHex[bytes[i] & 15u];
  }
  return id;
}

}  // namespace flatwise::record
