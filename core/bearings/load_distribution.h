// load_distribution.h: how the balls of a deep groove bearing share any load: five unknowns, or three where the tilt is given.
//
//   const LoadedBearing b = *loaded_bearing({bearing, micrometres(12)}, *point_contacts(bearing, kBearingSteel), degrees(0));
//   const Rest rest = *rest_under(b, {.x = newtons(2000), .z = newtons(300), .about_y = newton_metres(8)});
#pragma once

#include <span>
#include <vector>

#include "core/bearings/balance_kernel.h"
#include "core/bearings/contact.h"

namespace flatwise::bearings {

/// What pushes the inner ring, outer ring held: z along the bearing's axis, x and y across it, couples about the ring's own middle.
struct RingLoad {
  Force x = {}, y = {}, z = {};
  Torque about_x = {}, about_y = {};
};
/// Where the inner ring stands from the middle of the outer ring's play.
struct RingShift {
  Length x = {}, y = {}, z = {};
  Angle about_x = {}, about_y = {};
};

struct BearingAtWork {
  BallBearing bearing;
  Length clearance;  ///< Radial, on diameter, as it runs; negative: preload.
};

/// A bearing ready to be loaded: what does not depend on the load, worked out once.
struct LoadedBearing {
  BearingAtWork at;
  PointContacts contacts;
  BallRing ring{};
  double reach = 0;      ///< m, A: distance of the groove centres.
  double circle = 0;     ///< m, R_i: radius of the circle of the inner groove's centres; also the arm of the couples.
  double unit = 0;       ///< N, c A^1.5.
  double unit_root = 0;  ///< Its cube root.
  double gap = 0;        ///< Half the clearance over A.
  double stress_limit = 0;  ///< Greatest deflection over A that the model stands.
};

inline constexpr double kMostContactAngle =
    45;  ///< Degrees: about where the shoulders of deep grooves begin (common practice).
inline constexpr double kMostStress =
    6e9;  ///< Pa: steel yields far below; no elastic sum says anything beyond (own rule).
inline constexpr double kMostMisfit = 1e-9;  ///< Of the load.

/// Inputs     A sound bearing; clearance under 2 A, and preload no more than A / 10; cage: azimuth of a ball, from x towards y.
/// Refuses    Unsound bearings as problem_with(); clearance: bearings.clearance_impossible, field "clearance".
[[nodiscard]] Result<LoadedBearing> loaded_bearing(const BearingAtWork& at, const PointContacts& contacts, Angle cage);

/// How the ring comes to rest.
struct Rest {
  RingShift shift;
  RingLoad held;            ///< What the balls push back with; with the tilt given, the couples needed to hold it.
  Force greatest;           ///< Load of the hardest pressed ball.
  double inner_cubes = 0;   ///< N³: mean over the balls of load³.
  double outer_powers = 0;  ///< N^(10/3): mean over the balls of load^(10/3).
  double misfit = 0;        ///< Greatest part of the load that is not held, as a share of the load.
  int steps = 0;
};

/// Where the ring comes to rest under a load, free to shift and to tilt.
///
/// Model      Rigid rings, balls as springs Q = c delta^1.5 along the line of the groove centres (Hertz), no friction, no centrifugal
///            force. Small tilt: the groove's lift along the axis is R_i times the tilt; what the ring's own turning brings the grooves
///            together by is left out (under 2 % of the play's tilt). The energy is convex in all five unknowns, so there is one
///            pattern of ball loads and Newton's steps go downhill to it.
/// Inputs     Any direction of force and couple.
/// Returns    Misfit <= 1e-9 of the load. Where a direction is not resisted (one ball on the load line with play beside it) some
///            place of the flat is returned: ball loads are the same all over it.
/// Refuses    Not finite: input.not_finite. No load at all: bearings.no_load (the ring lies anywhere in its play). A contact angle
///            over 45° at a ball that carries a twentieth of the greatest: bearings.ball_climbs_out. A contact stress over 6000 MPa: bearings.beyond_elastic. bearings.did_not_settle: a
///            bug, please report.
/// Accuracy   Against scipy's root on the same equations 1e-9 (tests/data/bearings_balance.csv).
/// Source     [Harris5] ch. 7, [ISO16281-code] eqs. 12 to 18; couples with the arm R_i (the standard's code: D_pw / 2, 1 % longer).
[[nodiscard]] Result<Rest> rest_under(const LoadedBearing& bearing, const RingLoad& load);
/// The same, begun where a load like it came to rest: quicker, the same answer.
[[nodiscard]] Result<Rest> rest_under(const LoadedBearing& bearing, const RingLoad& load, const RingShift& from);

struct RingTilt {
  Angle about_x, about_y;
};
/// The same with the tilt held by whatever couples it takes: three unknowns. Couples in `load` are not looked at.
[[nodiscard]] Result<Rest> rest_tilted(const LoadedBearing& bearing, const RingLoad& load, const RingTilt& tilt);

struct BallLoad {
  Angle azimuth;
  Force load;
  Angle contact;  ///< From the plane across the axis; minus where the ball is pressed the other way along.
};
[[nodiscard]] std::vector<BallLoad> ball_loads(const LoadedBearing& bearing, const RingShift& shift);
/// Load that a ball would carry at any azimuth.
[[nodiscard]] Force load_at(const LoadedBearing& bearing, const RingShift& shift, Angle azimuth);

/// Azimuths by their cosines and sines, as many of the one as of the other.
struct Round {
  std::vector<double> cosine, sine;
};
/// load_at() of many places: `loads` has one for each of them.
void loads_round(const LoadedBearing& bearing, const RingShift& shift, const Round& places, std::span<Force> loads);

}  // namespace flatwise::bearings
