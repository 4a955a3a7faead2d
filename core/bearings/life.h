// life.h: how long nine bearings in ten outlive, from the ratings or from the loads of the balls; with lubricant and dirt.
//
//   const double million_turns = basic_life(ratings.dynamic, p.load);
//   const BallRatings q = ball_ratings(bearing, ratings.dynamic);
//   const double reference = reference_life(q, {rest.inner_cubes, rest.outer_powers});
#pragma once

#include "core/bearings/load_distribution.h"
#include "core/bearings/ratings.h"
#include "core/shaft/shaft.h"

namespace flatwise::bearings {

/// (C/P)³ in millions of turns of one ring against the other. Both > 0, else CORE_CHECK. Source [ISO281].
[[nodiscard]] double basic_life(Force dynamic_rating, Force load);

/// a_1: 0.05 + 0.95 (ln(1/R) / ln(1/0.9))^(1/1.5); 1 at 0.9. R in 0.9 to 0.9995, else CORE_CHECK.
/// Source [ISO1281-2], from memory; rounds to every row of [ISO281] table 12 that was read.
[[nodiscard]] double reliability_factor(double reliability);

/// nu_1 in mm²/s that a bearing needs: 45000 n^-0.83 d_m^-0.5 under 1000 turns a minute, 4500 (n d_m)^-0.5 from there (mm). The two do
/// not meet (2.3 % at 85 mm). Source [ISO281] eqs. for nu_1. n > 0, d_m > 0, else CORE_CHECK.
[[nodiscard]] double reference_viscosity(AngularSpeed speed, Length pitch);

/// a_ISO of radial ball bearings, at most 50: 0.1 (1 - (2.5671 - c2 / kappa^c3)^0.83 (e_C C_u / P)^(1/3))^-9.3.
///
/// Inputs     kappa 0.1 to 4 (the caller caps at 4 and says so); load = e_C C_u / P >= 0. Else CORE_CHECK.
/// Source     [ISO281] eqs. for a_ISO, radial ball bearings.
[[nodiscard]] double life_factor(double viscosity_ratio, double load);

using flatwise::Cleanliness;

struct Lubrication {
  std::optional<Viscosity> viscosity = std::nullopt;  ///< Of the oil, or the grease's base oil, as warm as it runs.
  double viscosity_ratio = 1;                         ///< kappa: that over nu_1. Counts where no viscosity is known.
  Cleanliness cleanliness = Cleanliness::typical;
};
/// kappa of a lubricant in rings that turn against each other at `relative` (either way).
///
/// Refuses    A ratio under 0.1, where a_ISO ends, or over 100; a viscosity under 0.1 nu_1: field "viscosity_ratio" or "viscosity".
/// Source     [ISO281] kappa = nu / nu_1.
[[nodiscard]] Result<double> viscosity_ratio(const Lubrication& oil, AngularSpeed relative, Length pitch);
inline constexpr double kLeastViscosity = 0.1,
                        kMostViscosity = 4;  ///< Under it there is no a_ISO; over it kappa counts as 4.

/// Least and greatest e_C of a class, by whether d_m is under 100 mm. Source [ISO281] table 13.
struct Contamination {
  double least = 0, greatest = 0;
};
[[nodiscard]] Contamination contamination(Cleanliness cleanliness, Length pitch);

/// Ball load at which each ring lives a million turns: Q_ci, Q_ce.
struct BallRatings {
  Force inner, outer;
};
/// Source     [ISO16281-code] eqs. 19 and 20, read in two implementations that have no code in common.
[[nodiscard]] BallRatings ball_ratings(const BallBearing& bearing, Force dynamic_rating);

/// What the rings feel, in powers: the inner ring's mean of load³ (every point sees every load in turn), the outer ring's mean of
/// load^(10/3) (a point sees its own load only). For a load that moves otherwise see turn.h.
struct RingWear {
  double inner_cubes = 0, outer_powers = 0;
};
/// L_10r = ((Q_ci/Q_ei)^(-10/3) + (Q_ce/Q_ee)^(-10/3))^(-9/10), in millions of turns.
///
/// Source     [ISO16281-code] eqs. 25, 27 and 29, as ball_ratings().
[[nodiscard]] double reference_life(const BallRatings& ratings, const RingWear& wear);
/// C / L^(1/3): the one radial load that would end it as soon.
[[nodiscard]] Force reference_load(Force dynamic_rating, double million_turns);

/// Hours from millions of turns of one ring against the other. speed > 0, else CORE_CHECK.
[[nodiscard]] Time running_time(double million_turns, AngularSpeed relative_speed);

/// G = 0.005 D B grams in millimetres: first fill when relubricated, and each time after. Source: common practice.
[[nodiscard]] Mass grease_quantity(Length outside, Length width);
/// Free space in the bearing: the ring's room (pi/4 (D² - d²) B) less the steel in it, told from its mass.
///
/// Refuses    Steel that weighs more than the room would hold: bearings.too_heavy, field "mass". Sizes as estimated_bearing().
/// Source     Geometry; density of steel 7850 kg/m³ (common practice).
struct BearingRoom {
  Length bore, outside, width;
  Mass mass;
};
[[nodiscard]] Result<double> free_space(const BearingRoom& room);  ///< m³

}  // namespace flatwise::bearings
