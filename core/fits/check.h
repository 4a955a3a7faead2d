// check.h: the guards every kernel of this folder uses. Each gives the Problem, or nothing when the value is good.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise::fits {

inline constexpr double kEndless = std::numeric_limits<double>::infinity();

/// Finite and > 0; NaN is refused.
[[nodiscard]] inline std::optional<Problem> check_positive(std::string_view field, AnyQuantity value) {
  if (value.si > 0 && value.si < kEndless) return std::nullopt;
  return Problem{Code{"fits.not_positive"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}

/// Finite and >= 0; NaN is refused.
[[nodiscard]] inline std::optional<Problem> check_not_negative(std::string_view field, AnyQuantity value) {
  if (value.si >= 0 && value.si < kEndless) return std::nullopt;
  return Problem{Code{"fits.below_zero"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}

/// Inner size below outer size.
[[nodiscard]] inline std::optional<Problem> check_inside(std::string_view field, Length inside, Length outside) {
  if (inside < outside) return std::nullopt;
  return Problem{Code{"fits.not_inside"},
                 std::string{field},
                 {},
                 {{"inside", any(inside)}, {"outside", any(outside)}},
                 std::nullopt};
}

}  // namespace flatwise::fits
