// near.h: 'did you mean'.
#pragma once

#include <span>
#include <string_view>

namespace flatwise {

/// The name nearest to a mistyped one by edits (insert, drop, change, swap of neighbours), when it is near enough to be
/// meant: at most a third of its letters, and two at least for names over four letters. Empty when none is.
[[nodiscard]] std::string_view nearest(std::string_view typed, std::span<const std::string_view> names);

}  // namespace flatwise
