// parse.h: typed text to a quantity, exactly. "1 1/2 in", "38.1 mm", "12 µm", "0.5 thou", "350 ft·lb", "72 °F", "10′".
#pragma once

#include <string_view>

#include "core/units/any_quantity.h"
#include "core/units/problem.h"

namespace flatwise {

/// Reads a quantity of the wanted kind.
///
/// Accepts    Sign, decimal (point only), mixed fraction ("1 1/2", "1-1/2"), plain fraction ("5/64"), exponent
///            ("1e-3"), then a unit of that kind with or without a space before it. Units have several spellings
///            (ft·lb, ft-lb, ft.lb, lbf·ft, lb-ft; µm, um; N·m, N m, Nm; °F, degF; ′, ', arcmin; in, ", inch; /min, rpm).
///            Kinds count and ratio need no unit (ratio also takes "%"); money takes a three-letter currency code.
/// Returns    The value rounded once to the nearest double; a length also as integer nanometres.
/// Refuses    A bare number where a unit is needed, a unit of another kind, a unit that is not known (with a near one
///            named), text left over, more than 15 digits, a zero denominator, anything not finite, bytes that are not
///            UTF-8. Problems carry the accepted forms of that kind as {forms}. `field` is copied into the problem.
[[nodiscard]] Result<Entered> parse_quantity(std::string_view text, Kind kind, std::string_view field);

/// A unit of a kind, for lists, keypads and completion.
struct UnitName {
  std::string_view spelling;  ///< The spelling shown.
  Kind kind;
};
/// Preferred spellings of the units of a kind, the commonest first; empty for count.
[[nodiscard]] std::vector<std::string_view> unit_spellings(Kind kind);
/// Accepted forms of a kind as one example each ("38.1 mm", "1 1/2 in"), for error messages and schemas.
[[nodiscard]] std::vector<std::string> accepted_forms(Kind kind);

}  // namespace flatwise
