// check.h: the guard of this folder beside those of core/units/guards.h. Not for other folders.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise::metrology {

/// A problem where fewer or more were given than the model can use.
[[nodiscard]] inline std::optional<Problem> count_outside(std::string_view field, std::size_t count, int least,
                                                          int greatest) {
  if (count >= static_cast<std::size_t>(least) && count <= static_cast<std::size_t>(greatest)) return std::nullopt;
  Args args{{"count", static_cast<std::int64_t>(count)}, {"least", least}, {"greatest", greatest}};
  return Problem{Code{"metrology.count"}, std::string{field}, {}, std::move(args), std::nullopt};
}

}  // namespace flatwise::metrology
