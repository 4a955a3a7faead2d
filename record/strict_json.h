// strict_json.h: JSON text as RFC 8259 has it and no looser: UTF-8, no duplicate keys, not nested beyond measure.
#pragma once

#include <string_view>

#include "core/units/problem.h"
#include "wire/json.h"

namespace flatwise::record {

inline constexpr int kDeepest = 64;  ///< Objects and arrays within each other.

/// Reads one JSON text.
///
/// Refuses    Text that is not JSON or not UTF-8 (with the byte), numbers beyond doubles, nesting beyond kDeepest, a key that
///            stands twice in one object (the first such problem only).
[[nodiscard]] Result<wire::Json> strict_json(std::string_view text);

}  // namespace flatwise::record
