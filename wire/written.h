// written.h: JSON as text on one line, and values that are text already. A picture is hundreds of points that nobody looks at before
// the page does: made into a tree of values first, it takes most of the time of a screen.
#pragma once

#include <string>
#include <string_view>

#include "wire/json.h"

namespace flatwise::wire {

/// A value that is JSON text already. Only text_of() can write it: no reader of JSON makes such a value, so nothing that a person
/// typed can come out as one.
[[nodiscard]] Json written(std::string_view json);

/// As Json::dump() without spaces, bytes that are not UTF-8 replaced; written values as they stand.
[[nodiscard]] std::string text_of(const Json& json);

/// Puts `text` between quotes, escaped as RFC 8259 section 7 asks; bytes that are not UTF-8 are replaced.
void add_text(std::string& out, std::string_view text);

}  // namespace flatwise::wire
