// balance_kernel.h: where the inner ring comes to rest among its balls, as a kernel. In its own measure: lengths over A, forces over
// c A^1.5, couples over that and R_i. load_distribution.h is what other code calls.
#pragma once

#include "core/lanes/lanes.h"

namespace flatwise::bearings {

inline constexpr int kBallSlots = 24;  ///< Balls go eight at a time; the empty places weigh nothing.

/// Places of the balls round the ring.
struct BallRing {
  alignas(64) double cosine[kBallSlots];
  alignas(64) double sine[kBallSlots];
  alignas(64) double weight[kBallSlots];  ///< 1 for a ball, 0 for an empty place.
  int blocks = 0;                         ///< Of eight places.
};

/// Unknowns: two shifts across (along cosine and sine), the shift along the axis, and how the tilt lifts the groove along the axis
/// in proportion to sine and to cosine.
struct BalanceTask {
  double gap;      ///< Half the radial clearance; negative is preload.
  double load[5];  ///< What the inner ring is pushed with, in the order of the unknowns.
  double enough;   ///< Misfit that is small enough.
  int most_steps;
};

struct Balance {
  double at[5];            ///< Start on entry, rest on return. Three unknowns: the last two are given and stay.
  double misfit;           ///< Greatest component of balls' push less load, at `at`.
  double held[5];          ///< What the balls push back with.
  double inner_sum;        ///< Sum over the balls of deflection^4.5: cubes of the ball loads.
  double outer_sum;        ///< Sum of deflection^5: ball loads to 10/3.
  double greatest;         ///< Greatest deflection.
  double steepest_cosine;  ///< Least cosine of the contact angle among the balls that carry.
  int steps;               ///< Newton steps taken.
};

/// Newton's steps on the energy of the contacts less the work of the load, which is convex; each step is cut back until the slope
/// along it no longer overshoots. Ends when the misfit is small enough, or after most_steps, or where a step cannot be had (no
/// stiffness in some direction): the caller looks at the misfit.
FLATWISE_KERNEL(void balance_three(const BallRing& ring, const BalanceTask& task, Balance& balance))
FLATWISE_KERNEL(void balance_five(const BallRing& ring, const BalanceTask& task, Balance& balance))

/// Push and stiffness at one place, without a step. stiffness: 15 entries, rows of the lower triangle.
FLATWISE_KERNEL(void push_at(const BallRing& ring, const BalanceTask& task, Balance& balance, double* stiffness))

}  // namespace flatwise::bearings
