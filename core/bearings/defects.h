// defects.h: how often a spot on a ring or a ball is met, with both rings turning.
//
//   const DefectRates r = *defect_rates({.bearing = bearing, .inner = turns_per_minute(540), .outer = turns_per_minute(30)});
#pragma once

#include "core/bearings/rim_play.h"
#include "core/units/angle.h"

namespace flatwise::bearings {

struct DefectTask {
  BallBearing bearing;
  Angle contact = {};       ///< Of the balls in their grooves; 0 under radial load alone.
  AngularSpeed inner = {};  ///< Of each ring about the bearing's axis, the same way counted.
  AngularSpeed outer = {};
};
struct DefectRates {
  Frequency outer;      ///< Balls that pass one place of the outer ring.
  Frequency inner;      ///< Balls that pass one place of the inner ring.
  Frequency cage;       ///< The cage's own turning, seen from the housing.
  Frequency ball;       ///< A ball's turning about itself.
  Frequency ball_spot;  ///< A spot on a ball meets a ring: twice its turning.
};

/// Model      Balls that roll without slip between the grooves: share = D_w cos b / d_m; outer Z/2 |n_i - n_o| (1 - share), inner with
///            (1 + share), cage |n_i (1 - share) + n_o (1 + share)| / 2, ball d_m/(2 D_w) |n_i - n_o| (1 - share²).
/// Inputs     Bearing as problem_with(); contact 0 to 45°; speeds finite.
/// Refuses    As problem_with(); balls_overlap(); field "contact"; rings that stand against each other: bearings.rings_alike, field "outer".
/// Accuracy   Rounding. Balls slip a little under light load: one or two per cent less is common practice.
/// Source     Kinematics of rolling; published orders in tests/data/bearings_orders.csv.
[[nodiscard]] Result<DefectRates> defect_rates(const DefectTask& task);

}  // namespace flatwise::bearings
