// doubts.h: what is said at the shell of figures of a shaft that are doubted.
#pragma once

#include <span>
#include <string>

#include "cli/context.h"
#include "core/doubt/of_shaft.h"

namespace flatwise::cli {

/// A line each, and what to measure better once for each field; empty where there is none.
[[nodiscard]] std::string doubts_text(const Context& context, std::span<const doubt::ToldDoubt> told);

/// A value as shown, with its ± where `key` is among those told.
[[nodiscard]] std::string with_doubt(const Context& context, AnyQuantity value, std::span<const doubt::ToldDoubt> told,
                                     std::string_view key);

}  // namespace flatwise::cli
