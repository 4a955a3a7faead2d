// rim_play.h: how far a rotor can be rocked at its rim on one ball bearing, from the clearance inside it; and back.
//
//   const BallBearing b = *estimated_bearing(millimetres(55), millimetres(100));
//   const TiltFactor k = tilt_factor(b.balls);
//   const Angle free = *free_tilt(b, micrometres(30), k.mean);          // to one side
//   const Length swing = 2 * free.radians() * millimetres(117.5) * dial_factor(Hub::centred, b, micrometres(30), radius);
#pragma once

#include <optional>

#include "core/shaft/shaft.h"
#include "core/units/angle.h"
#include "core/units/any_quantity.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::bearings {

/// Inside of a deep groove ball bearing.
struct BallBearing {
  int balls = 0;
  Length ball;          ///< Ball diameter D_w.
  Length pitch;         ///< Pitch diameter d_m.
  Length inner_groove;  ///< Groove radius of the inner ring, r_i.
  Length outer_groove;  ///< Groove radius of the outer ring, r_e.
};

inline constexpr int kFewestBalls = 6, kMostBalls = 20;
inline constexpr double kBallShare = 0.305;     ///< D_w / (D - d), +- 5 % over series 60, 62 and 63.
inline constexpr double kGrooveShare = 0.52;    ///< r / D_w.
inline constexpr double kFillingDegrees = 188;  ///< Arc that the balls fill when the rings lie eccentric.

/// The inside of a bearing: what is known of it, and for the rest what follows from the boundary dimensions.
///
/// Model      Pitch (d + D)/2; ball 0.305 (D - d); as many balls as fill 188 degrees of arc when the rings are put together
///            eccentric; both grooves 0.52 of the ball.
/// Inputs     0 < bore < outside.
/// Refuses    Anything else: bearings.no_such_ring; a count of balls outside 6 to 20: bearings.balls_out_of_range; what problem_with()
///            and balls_overlap() name; balls that reach into bore or outside: bearings.balls_reach_out, field "ball".
/// Accuracy   Ball within 5 %, count exact for the eight published bearings of tests/data/bearings_orders.csv.
/// Source     common practice (ISO 15 gives the boundary dimensions only).
[[nodiscard]] Result<BallBearing> estimated_bearing(Length bore, Length outside, const BearingInside& known = {});

/// Diameter of the outer ring at the bottom of its groove, estimated like the rest of the inside: pitch and ball.
///
/// Inputs     0 < bore < outside.
/// Source     common practice, as estimated_bearing().
[[nodiscard]] Length estimated_ring_inside(Length bore, Length outside);

/// Names the first field that cannot be: 6 to 20 balls, 0 < ball < pitch / 2, grooves over ball / 2 and under ball. Fields
/// "balls", "ball", "pitch", "inner_groove", "outer_groove".
[[nodiscard]] std::optional<Problem> problem_with(const BallBearing& bearing);

/// Names what keeps the rings from going together: balls that overlap or touch. Field "balls".
[[nodiscard]] std::optional<Problem> balls_overlap(const BallBearing& bearing);

/// Distance of the groove centres when a ball is squeezed between them: A = r_i + r_e - D_w.
[[nodiscard]] Length groove_reach(const BallBearing& bearing);

/// Axial clearance of a bearing with radial clearance: G_a = 2 A sin a0, cos a0 = 1 - G_r / 2A.
///
/// Inputs     A sound bearing (problem_with); 0 <= radial < 2 A.
/// Refuses    Other clearances, NaN: bearings.clearance_impossible, field "clearance".
/// Source     [Harris5] free endplay of deep groove ball bearings.
[[nodiscard]] Result<Length> axial_clearance(const BallBearing& bearing, Length radial);

/// Radius of the circle of the inner groove's centres: R_i = d_m / 2 + (r_i - D_w / 2) cos a0.
[[nodiscard]] Length groove_circle(const BallBearing& bearing, Length radial);

/// By how much finitely many balls let the ring tilt further than a full ring of them; it depends on where the cage stands.
struct TiltFactor {
  double least = 1, mean = 1, greatest = 1;
};
/// Model      Least, mean and greatest over all positions of the cage, ring free to shift. Even counts reach from 1 to
///            1 / cos(pi / Z).
/// Inputs     6 to 20 balls; else CORE_CHECK.
/// Accuracy   1e-4 for clearances up to a tenth of A (tests/data/bearings_tilt.csv, a search that linearises nothing).
[[nodiscard]] TiltFactor tilt_factor(int balls);
/// Where the count is an estimate: over one ball fewer and one more too.
[[nodiscard]] TiltFactor tilt_factor_about(int balls);

/// Free tilt of one ring in the other, to one side of the middle.
///
/// Model      theta = (G_a / 2) / R_i (1 + A cos a0 / 2 R_i) k, k a tilt factor.
/// Inputs     As axial_clearance(); factor >= 1.
/// Accuracy   2e-4 relative against the search of tests/data/bearings_tilt.csv. No load: what the rings bend is not in it.
/// Source     [Harris5] free angle of misalignment; the second bracket and k from the search.
[[nodiscard]] Result<Angle> free_tilt(const BallBearing& bearing, Length radial, double factor);

/// Radial clearance that allows a free tilt: free_tilt() the other way round, by bisection to a picometre.
///
/// Refuses    A tilt under nought, NaN, or more than the grooves allow: bearings.tilt_impossible, field "swing".
[[nodiscard]] Result<Length> clearance_of(const BallBearing& bearing, Angle tilt, double factor);

/// How the hub is held along the shaft while the rotor is rocked. One dial on a free hub also sees the hub move along the shaft.
enum class Hub { centred, free };
/// What one dial at radius R shows over 2 theta R: 1, or sqrt(1 + (R_i / R)^2).
[[nodiscard]] double dial_factor(Hub hub, const BallBearing& bearing, Length radial, Length radius);

/// What bears the rotor's weight while it is rocked: sling or hands, or the bearing itself.
enum class Held { carried, hanging };
/// A rotor that hangs on its bearing, and what it is pushed with at the dial, one way and the other.
struct Hanging {
  double push_over_weight = 0;
  Length radius;  ///< Of push and dial.
};
/// What a hanging rotor tilts of what a carried one does: cos b.
///
/// Model      Sunk by (G/2) sin 2b the ring has G/2 (1 + sin 2b) at one ball and G/2 (1 - sin 2b) at the opposite one, which leaves
///            cos b of the tilt. It comes to rest where weight and push have given most: W G cos 2b = P R theta sin b.
/// Inputs     radial > 0, tilt >= 0: that of the carried rotor at this clearance; push_over_weight >= 0, radius > 0.
/// Accuracy   The root to 1e-15. 1/sqrt 2 without a push. Against a search with single balls (tests/data/bearings_hanging.csv), as a
///            mean over the cage's position, from a twentieth of the weight on: 1 % where the rim moves at top and bottom, 6 % at
///            the sides (2 % from a fifth of the weight on).
///            Weight square to the bearing's axis: one that leans 10 degrees up or down is not in it.
/// Source     derived: greatest of W u + P R theta over all b.
[[nodiscard]] double hanging_share(const Hanging& hanging, Length radial, Angle tilt);
/// Clearance of a hanging rotor that tilts so far: clearance_of() with the share in it, by bisection to a picometre.
///
/// Refuses    As clearance_of().
[[nodiscard]] Result<Length> clearance_of_hanging(const BallBearing& bearing, Angle tilt, double factor,
                                                  const Hanging& hanging);

}  // namespace flatwise::bearings
