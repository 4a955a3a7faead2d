// check.h: guards shared by the kernels of this folder. Not for other folders.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "core/units/problem.h"

namespace flatwise::metrology {

/// A problem unless the value is finite and above nought.
[[nodiscard]] inline std::optional<Problem> not_above_nought(std::string_view field, AnyQuantity value) {
  if (value.si > 0 && std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"metrology.not_above_nought"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}

/// A problem unless the value is finite and nought or more.
[[nodiscard]] inline std::optional<Problem> negative(std::string_view field, AnyQuantity value) {
  if (value.si >= 0 && std::isfinite(value.si)) return std::nullopt;
  return Problem{Code{"metrology.negative"}, std::string{field}, {}, {{"value", value}}, std::nullopt};
}

/// A problem unless least <= value <= greatest.
[[nodiscard]] inline std::optional<Problem> outside(std::string_view field, AnyQuantity value, double least_si,
                                                    double greatest_si) {
  if (value.si >= least_si && value.si <= greatest_si) return std::nullopt;
  Args args{{"value", value},
            {"least", AnyQuantity{least_si, value.kind}},
            {"greatest", AnyQuantity{greatest_si, value.kind}}};
  return Problem{Code{"metrology.outside"}, std::string{field}, {}, std::move(args), std::nullopt};
}

/// A problem where fewer or more were given than the model can use.
[[nodiscard]] inline std::optional<Problem> count_outside(std::string_view field, std::size_t count, int least,
                                                          int greatest) {
  if (count >= static_cast<std::size_t>(least) && count <= static_cast<std::size_t>(greatest)) return std::nullopt;
  Args args{{"count", static_cast<std::int64_t>(count)}, {"least", least}, {"greatest", greatest}};
  return Problem{Code{"metrology.count"}, std::string{field}, {}, std::move(args), std::nullopt};
}

}  // namespace flatwise::metrology
