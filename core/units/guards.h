// guards.h: the guards of every kernel: a Problem, or nothing where the value is good. NaN is never good.
//
//   if (auto p = not_above_nought("width", any(width))) return tl::unexpected(*std::move(p));
//
// A folder that can say more than these (a thread, a lean, a number of readings) has its own code beside them.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise {

/// A problem unless the value is finite.
[[nodiscard]] inline std::optional<Problem> not_finite(std::string_view field, AnyQuantity value) {
  if (std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"input.not_finite"}, std::string{field}, {}, {}, std::nullopt};
}

/// A problem unless the value is finite and above nought.
[[nodiscard]] inline std::optional<Problem> not_above_nought(std::string_view field, AnyQuantity value) {
  if (value.si > 0 && std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"input.not_above_nought"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}

/// A problem unless the value is finite and nought or more.
[[nodiscard]] inline std::optional<Problem> negative(std::string_view field, AnyQuantity value) {
  if (value.si >= 0 && std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"input.negative"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}

/// A problem unless least <= value <= greatest.
[[nodiscard]] inline std::optional<Problem> outside(std::string_view field, AnyQuantity value, double least_si,
                                                    double greatest_si) {
  if (value.si >= least_si && value.si <= greatest_si) return std::nullopt;
  Args args{{"value", value},
            {"least", AnyQuantity{least_si, value.kind}},
            {"greatest", AnyQuantity{greatest_si, value.kind}}};
  return Problem{Code{"input.outside"}, std::string{field}, {}, std::move(args), std::nullopt};
}

}  // namespace flatwise
