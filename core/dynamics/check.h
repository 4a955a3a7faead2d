// check.h: the guard of this folder beside those of core/units/guards.h. Not for other folders.
#pragma once

#include <numbers>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise::dynamics {

inline constexpr double kMostLean = std::numbers::pi / 4;

[[nodiscard]] inline std::optional<Problem> wrong_lean(Angle lean, std::string_view field = "lean") {
  if (lean.radians() >= 0 && lean.radians() <= kMostLean) return std::nullopt;
  return Problem{Code{"dynamics.lean"},
                 std::string{field},
                 {},
                 {{"value", any(lean)}, {"greatest", any(radians(kMostLean))}},
                 std::nullopt};
}

}  // namespace flatwise::dynamics
