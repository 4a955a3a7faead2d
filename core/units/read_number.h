// read_number.h: one typed number to an exact ratio. Internal to core/units.
#pragma once

#include <string_view>

#include "core/units/exact.h"

namespace flatwise {

/// Why a number could not be read. The caller makes the Problem.
enum class NumberFault {
  none,
  no_number,        ///< Nothing there that begins a number.
  comma,            ///< A comma in it: a decimal mark or a thousands mark, nobody can tell.
  spaced_digits,    ///< Digits parted by a space.
  too_many_digits,  ///< Over 15.
  zero_denominator,
  improper_fraction,  ///< "1 3/2": a slip of the hand more often than not.
  out_of_range,       ///< Over 1e30, or finer than 1e-45.
};

struct ReadNumber {
  NumberFault fault = NumberFault::none;
  exact::Ratio value;
  bool plain_whole = false;  ///< Only digits.
  std::size_t end = 0;       ///< Where the number ends in the text.
};

/// Reads an unsigned number at `at` in folded text: "12", "1.5", ".5", "1e-3", "5/64", "1 1/2", "1-1/2".
[[nodiscard]] ReadNumber read_number(std::string_view text, std::size_t at);

}  // namespace flatwise
