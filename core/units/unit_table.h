// unit_table.h: every unit that can be typed or shown, with its exact factor to SI. Internal to core/units.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "core/units/any_quantity.h"
#include "core/units/exact.h"

namespace flatwise {

/// One unit: SI = (value + zero) * num / den, times pi where `turns`.
struct Unit {
  Kind kind;
  std::string_view shown;      ///< As it is printed: "µm", "ft·lb".
  std::string_view spellings;  ///< As normal_unit() leaves what is typed, the variants parted by '|'.
  std::uint64_t num = 1;
  std::uint64_t den = 1;
  bool turns = false;            ///< The factor is num/den times pi.
  std::uint64_t zero_cents = 0;  ///< Hundredths of this unit from absolute zero to its own zero (°C, °F).

  [[nodiscard]] exact::Ratio factor() const;
  [[nodiscard]] double factor_as_double() const;
};

[[nodiscard]] std::span<const Unit> all_units();
/// `spelling` as normal_unit() leaves it. nullptr when the kind has no such unit.
[[nodiscard]] const Unit* find_unit(Kind kind, std::string_view spelling);
/// The unit of any other kind that is spelled so; nullptr when there is none.
[[nodiscard]] const Unit* find_unit_elsewhere(Kind not_this, std::string_view spelling);

/// Folds the ways of writing one unit into one: separators between letters (space, hyphen, full stop, middle dot) to
/// '*', no '^', no space round '/', '*' and brackets, no closing full stop. Text is as typed.h leaves it.
[[nodiscard]] std::string normal_unit(std::string_view text);

}  // namespace flatwise
