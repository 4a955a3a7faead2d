// csv.h: a cell of a table for programs.
#pragma once

#include <string>
#include <string_view>

namespace flatwise {

/// A cell of text by RFC 4180: in quotes, with its own quotes doubled.
[[nodiscard]] std::string csv_text(std::string_view text);

}  // namespace flatwise
