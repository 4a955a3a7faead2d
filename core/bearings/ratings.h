// ratings.h: load ratings of a deep groove ball bearing from its inside, and the loads that count as much as a combined one.
//
//   const Ratings r = *ratings_of(bearing);
//   const Equivalent p = *equivalent_load({newtons(8000), newtons(3000)}, static_factor(share), r.static_load);
#pragma once

#include "core/bearings/contact.h"

namespace flatwise::bearings {

struct Ratings {
  Force dynamic;      ///< C: a million turns that nine in ten outlive.
  Force static_load;  ///< C0: dents of a ten-thousandth of the ball.
  Force fatigue;      ///< C_u: no fatigue under it in a clean, well oiled bearing.
};

/// f_c of single row radial contact groove bearings, in N and mm; share = D_w / d_m, 0.01 to 0.40.
///
/// Model      Published table, straight lines between its rows.
/// Returns    0 outside the table.
/// Source     [ISO281] table 2; read in an open implementation's table, every fifth row confirmed by the formula below.
[[nodiscard]] double dynamic_factor(double share);
/// The formula behind the table: 0.41 lambda A {1 + [1.04 ((1-g)/(1+g))^1.72 (r_i/r_e (2r_e-D_w)/(2r_i-D_w))^0.41]^(10/3)}^(-3/10)
/// g^0.3 (1-g)^1.39/(1+g)^(1/3) (2r_i/(2r_i-D_w))^0.41, A 98.0665, lambda 0.95; grooves as shares of the ball.
/// Source     [ISO1281-1], from memory; within 0.5 % of the table at both grooves 0.52.
[[nodiscard]] double dynamic_factor_formula(double share, double inner_groove, double outer_groove);
/// f_0 of radial contact groove bearings; share 0 to 0.40, else 0. Source [ISO76] table 1, as dynamic_factor().
[[nodiscard]] double static_factor(double share);

inline constexpr double kGrooveFactor = 1.3;  ///< b_m of deep groove ball bearings, [ISO281] table 1.

/// Ratings from geometry.
///
/// Model      C = b_m f_c Z^(2/3) D_w^1.8 (over 25.4 mm: 3.647 D_w^1.4); C0 = f_0 Z D_w²; C_u = C0/22, over d_m 100 mm times
///            (100/d_m)^0.5. Grooves wider than 0.52 (inner) or 0.53 (outer) take off what the formula of f_c says, and of C0 what the
///            stress of 4200 MPa says that defines it; narrower ones add nothing.
/// Inputs     A sound bearing; balls that fit side by side on the pitch circle.
/// Refuses    Unsound bearings as problem_with(); balls that overlap: bearings.balls_overlap, field "balls"; a share outside the tables:
///            bearings.no_published_factor, field "ball".
/// Accuracy   Catalogue ratings differ by some per cent to 20 %: makers rate their own steel and finish.
/// Source     [ISO281] 5.1, [ISO76] 5.1, [ISO281] B.3.3 (C_u); clause numbers from memory.
[[nodiscard]] Result<Ratings> ratings_of(const BallBearing& bearing);

/// The same with what a catalogue states in place of what geometry gives; with both stated the tables are not asked. C_u follows C0.
[[nodiscard]] Result<Ratings> ratings_of(const BallBearing& bearing, std::optional<Force> dynamic,
                                         std::optional<Force> static_load);

/// C_u = C0/22, over d_m 100 mm times (100/d_m)^0.5. Source [ISO281] B.3.3.
[[nodiscard]] Force fatigue_limit(Force static_load, Length pitch);

struct Combined {
  Force radial, axial;  ///< Sizes, >= 0.
};
struct Equivalent {
  Force load;
  double share = 0;   ///< f_0 F_a / C0.
  double limit = 0;   ///< e: F_a / F_r up to which the axial load costs nothing.
  double radial = 1;  ///< X
  double axial = 0;   ///< Y
};
/// The two columns of factors there are.
enum class AxialColumn {
  normal,  ///< CN: the balls touch in the middle of their grooves. X 0.56.
  c3       ///< C3: wider play lets the balls climb, so an axial load costs less. X 0.46.
};
/// P = X F_r + Y F_a.
///
/// Model      e and Y by straight lines in f_0 F_a / C0; below the table its first row.
/// Refuses    Negative or NaN loads; no load; f_0 F_a / C0 over 6.89, the last row: bearings.axial_beyond_table, field "axial".
/// Source     [ISO281] table 3: radial contact; C3 has the column of 10° contact, [LargerClearance].
[[nodiscard]] Result<Equivalent> equivalent_load(const Combined& load, double static_factor, Force static_rating,
                                                 AxialColumn column = AxialColumn::normal);
/// P0 = max(F_r, 0.6 F_r + 0.5 F_a). Source [ISO76] table 2. Inputs as equivalent_load(); same refusals but the table's.
[[nodiscard]] Result<Force> equivalent_static_load(const Combined& load);

}  // namespace flatwise::bearings
