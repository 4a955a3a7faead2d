// couple_arrows.h: the couples of all rotors head to tail, and what is left; the loads of all balls round a bearing.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/units/angle.h"
#include "core/units/quantity.h"
#include "drawing/display_list.h"

namespace flatwise::drawing {

/// One rotor's couple, or its force: length in any unit, azimuth in degrees clockwise from 12 o'clock seen from end A.
struct CoupleArrow {
  int rotor = 0;
  double size = 0;
  double azimuth = 0;
};
/// The arrows added head to tail from end A on. What is left is the heavy one from the first tail to the last head; under `floor`
/// they close, and a ring says so. An arrow that would lie on another lies beside it; where all
/// run along one line they stand side by side in their order.
/// Ids     "rotor-<n>", "left-over" (heavy arrow or ring).
struct CoupleArrows {
  std::vector<CoupleArrow> rotors;
  double floor = 0;  ///< Same unit: what the stated errors leave anyway.
};
/// Couples in newton metres, minus turned round, at the tilt azimuths of their rotors. `closes`: what is left is under the floor.
[[nodiscard]] CoupleArrows arrows_of(std::span<const Torque> couples, std::span<const Angle> tilt, bool closes);
[[nodiscard]] DisplayList couple_arrows(const CoupleArrows& of, double width, double height);

/// The load of each ball, seen along the axis from end A: a bar outwards from each ball, all at one scale.
struct BallLoad {
  double azimuth = 0;  ///< Degrees clockwise from 12 o'clock.
  double load = 0;     ///< >= 0, any unit.
};
struct BallLoads {
  std::vector<BallLoad> balls;
  double ball_share = 0.2;     ///< Ball diameter as a share of the pitch diameter.
  std::string greatest_words;  ///< At the most loaded ball.
  double full_scale = 0;       ///< Load of the longest bar there could be; nought: of the most loaded ball here.
};
/// Ids     "ball-<n>", from 1; the most loaded bar "greatest".
[[nodiscard]] DisplayList ball_loads(const BallLoads& of, double side);

}  // namespace flatwise::drawing
