// check.h: guards shared by the kernels of this folder. Not for other folders.
#pragma once

#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise::dynamics {

inline constexpr double kMostLean = std::numbers::pi / 4;

[[nodiscard]] inline std::optional<Problem> not_finite(std::string_view field, AnyQuantity value) {
  if (std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"dynamics.not_finite"}, std::string{field}, {}, {}, std::nullopt};
}
[[nodiscard]] inline std::optional<Problem> negative(std::string_view field, AnyQuantity value) {
  if (value.si >= 0 && std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"dynamics.negative"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}
[[nodiscard]] inline std::optional<Problem> not_above_nought(std::string_view field, AnyQuantity value) {
  if (value.si > 0 && std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"dynamics.not_above_nought"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}
[[nodiscard]] inline std::optional<Problem> wrong_lean(Angle lean, std::string_view field = "lean") {
  if (lean.radians() >= 0 && lean.radians() <= kMostLean) return std::nullopt;
  return Problem{Code{"dynamics.lean"},
                 std::string{field},
                 {},
                 {{"value", any(lean)}, {"greatest", any(radians(kMostLean))}},
                 std::nullopt};
}

}  // namespace flatwise::dynamics
