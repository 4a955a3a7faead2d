// format.h: a quantity to text in either unit system. Deterministic, locale-free; value and unit are joined by a
// no-break space, minus is U+2212 on paper and page and in tables.
#pragma once

#include <optional>
#include <string>

#include "core/units/any_quantity.h"

namespace flatwise {

enum class UnitSystem { metric, inch };

/// How a quantity is to be shown. Default: as many digits as its kind and size are worth (lengths under 0.5 mm in µm
/// or thou; other lengths to 0.001 mm or 0.0001 in, from 500 mm to 0.01 mm or 0.001 in; torque, force, stress and stiffness
/// to four figures; angles to 0.1° or in minutes of arc under 1°; times in minutes under 10 h).
struct Shown {
  UnitSystem system = UnitSystem::metric;
  std::optional<int> decimals;      ///< Fixed decimals in the chosen unit.
  std::optional<std::string> unit;  ///< A spelling of parse.h's units to force ("mm", "ft·lb").
  std::string currency;             ///< For money; empty shows the bare figure.
};
[[nodiscard]] std::string format_quantity(AnyQuantity value, const Shown& shown = {});
/// The same in the other system: what stands small below a figure.
[[nodiscard]] UnitSystem other(UnitSystem system);
/// Value and expanded uncertainty with the same decimals: "99.984 ± 0.004 mm".
[[nodiscard]] std::string format_with_uncertainty(AnyQuantity value, double expanded_si, const Shown& shown = {});
/// Plain decimal of a double, shortest that reads back to the same bits; for JSON-like output in C locale.
[[nodiscard]] std::string format_exact(double value);
/// Lengths as integer nanometres to an exact decimal: 38100000, metric → "38.1 mm"; inch → "1.5 in".
[[nodiscard]] std::string format_exact_length(std::int64_t nm, UnitSystem system);

}  // namespace flatwise
