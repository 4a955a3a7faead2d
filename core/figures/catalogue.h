// catalogue.h: every computation of the core in one list: an explicit list of the folders' lists.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "core/working/figure.h"

namespace flatwise {

/// The figures of one folder. What it is about is the word "section.<name>".
struct FigureSection {
  std::string_view name;  ///< "fits".
  std::span<const FigureSpec> figures;
};
/// In the order of the bench.
[[nodiscard]] std::span<const FigureSection> figure_sections();
/// Where a figure of the catalogue belongs.
[[nodiscard]] std::string_view section_of(const FigureSpec& figure);

/// All figures, in the order of the bench.
[[nodiscard]] std::span<const FigureSpec* const> catalogue();
/// By name; nullptr when there is none.
[[nodiscard]] const FigureSpec* find_figure(std::string_view name);
/// The name nearest to a mistyped one, for 'did you mean'; empty when nothing is near.
[[nodiscard]] std::string_view nearest_figure(std::string_view name);

}  // namespace flatwise
