// iso286.h: limits of size of any hole or shaft class of ISO 286, IT5 to IT11, 3 mm to 500 mm.
//
//   Result<Limits> hub_bore = limits_of_fit(millimetres(90), "N7");    // 89.955 mm to 89.990 mm
//   Result<Limits> as_written = limits_of_fit("90 N7");
#pragma once

#include <optional>
#include <string_view>

#include "core/shaft/shaft.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

/// A tolerance class as written on a drawing: "N7", "js6", or with the nominal size in millimetres, "90 N7".
struct FitClass {
  std::optional<Length> nominal;  ///< From the code, in millimetres as on every ISO drawing.
  bool hole = true;               ///< Capitals: hole. Lower case: shaft.
  int letter = 0;                 ///< Index into kLetters.
  int grade = 0;                  ///< 5 to 11.
};

/// Upper and lower limit deviation from the nominal size.
struct Deviations {
  Length upper;  ///< ES or es.
  Length lower;  ///< EI or ei.
};

/// Reads a code.
///
/// Accepts    Letter or letters of one case and a grade, "N7"; before it, where given, the nominal size in millimetres
///            ("90 N7", "90N7", "31.75 h6").
/// Refuses    Anything else: fits.code_unread; mixed case such as "Js7"; a letter ISO 286 does not have (I, L, O, Q,
///            W): fits.letter_unknown; a grade outside 5 to 11: fits.grade_out_of_range.
[[nodiscard]] Result<FitClass> parse_fit_class(std::string_view code);

/// Standard tolerance ITn at a nominal size.
///
/// Inputs     nominal 3 mm to 500 mm; grade 4 to 11.
/// Accuracy   Exact: integers of micrometres as tabulated.
/// Source     [ISO286-1] Table 1.
[[nodiscard]] Result<Length> standard_tolerance(Length nominal, int grade);

/// Limit deviations of a class at a nominal size.
///
/// Model      The tables of fundamental deviations of shafts; holes by the rules of the standard: EI = -es for A to H;
///            ES = -ei + delta for K, M, N to IT8 and P to ZC to IT7, delta = IT(n) - IT(n-1), none up to 3 mm; ES =
///            -ei for coarser grades; M6 over 250 mm to 315 mm has ES = -9 um, not -11 um; N9 to N11 over 3 mm have
///            ES = 0; k over IT7 has ei = 0. JS and js are half the tolerance, not rounded to whole micrometres.
/// Refuses    Sizes outside 3 mm to 500 mm, and classes the standard does not have there: J but in 6, 7, 8; j but in
///            5, 6, 7 (and 8 up to 3 mm); K over IT8 above 3 mm; T, t up to 24 mm; V, v up to 14 mm; Y, y up to 18 mm;
///            CD, EF, FG above 10 mm. Problem fits.class_not_at_size.
/// Accuracy   Exact: whole and half micrometres as tabulated.
/// Source     [ISO286-1] Tables 1 to 5 and their notes.
[[nodiscard]] Result<Deviations> limit_deviations(Length nominal, const FitClass& fit);

/// Limits of size: nominal plus the deviations, rounded to the nanometre so that they equal typed readings exactly.
///
/// Inputs     nominal 3 mm to 500 mm; code as for parse_fit_class.
/// Refuses    What limit_deviations refuses; a size in the code that is not the nominal: fits.two_nominals.
/// Source     [ISO286-1].
[[nodiscard]] Result<Limits> limits_of_fit(Length nominal, std::string_view code);
/// The same where the code carries the size. Refuses one without: fits.nominal_missing.
[[nodiscard]] Result<Limits> limits_of_fit(std::string_view code);

}  // namespace flatwise::fits
