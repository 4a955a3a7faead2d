// uuid.h: ids of entries and of everything else in the record: UUIDs by RFC 9562, in lower case.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "job/entry.h"

namespace flatwise::record {

/// 36 characters, hex digits in lower case, hyphens in their places. Any version.
[[nodiscard]] bool is_uuid(std::string_view text);

/// One of version 7 in the variant of RFC 9562: it sorts by the time it was made.
[[nodiscard]] bool is_uuid7(std::string_view text);

/// Version 7 for a time and 74 random bits: the low 12 bits of the first two bytes, the low 62 of the other eight. Times outside
/// 0 .. 2^48 - 1 ms are cut to 48 bits.
[[nodiscard]] job::Id uuid7(job::Instant at, const std::array<std::uint8_t, 10>& random);

}  // namespace flatwise::record
