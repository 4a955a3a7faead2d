// canonical.h: JSON in one form only, so that the same content has the same bytes and the same hash. RFC 8785 (JSON
// Canonicalization Scheme): no space, keys in the order of their UTF-16 code units, strings with the fewest escapes, numbers
// as ECMAScript writes them.
#pragma once

#include <string>
#include <string_view>

#include "wire/json.h"

namespace flatwise::record {

/// Canonical text. Whole numbers beyond +-(2^53 - 1) cannot be held by RFC 8785's numbers and are a bug here; so are numbers that
/// are not finite and text that is not UTF-8.
[[nodiscard]] std::string canonical(const wire::Json& json);
/// A string with its quotes.
[[nodiscard]] std::string canonical_string(std::string_view utf8);
/// ECMA-262 Number::toString: shortest digits that read back; 1e21 and above and below 1e-6 with an exponent.
[[nodiscard]] std::string canonical_number(double value);

}  // namespace flatwise::record
