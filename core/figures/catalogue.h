// catalogue.h: every computation of the core in one list: an explicit list of the folders' lists.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/working/figure.h"

namespace flatwise {

/// All figures, in the order of the bench.
[[nodiscard]] std::span<const FigureSpec* const> catalogue();
/// By name; nullptr when there is none.
[[nodiscard]] const FigureSpec* find_figure(std::string_view name);
/// The name nearest to a mistyped one, for 'did you mean'; empty when nothing is near.
[[nodiscard]] std::string_view nearest_figure(std::string_view name);

}  // namespace flatwise
