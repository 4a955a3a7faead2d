// press.h: force to press a ring home, the shop's own friction, what a force that was read says about the fit, and
// whether the ring will creep.
#pragma once

#include <span>
#include <vector>

#include "core/fits/interference.h"
#include "core/fits/lame.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"
#include "core/working/working.h"

namespace flatwise::fits {

struct FrictionRange {
  double least = 0.08;  ///< Oiled to dry steel, common practice: assumed where the shop has no own.
  double greatest = 0.18;
};

struct Pressing {
  PressedJoint joint;
  Length width;           ///< Of the contact: the bearing's width less its corners.
  Length roughness_loss;  ///< On diameter.
  Limits interference;    ///< Full, on diameter, before flattening; negative where there is clearance.
  FrictionRange friction;
  Pressure hub_yield;
};

struct PressForce {
  Force least, greatest;
  Pressure pressure_least, pressure_greatest;
  Pressure yield_onset;
  bool hub_yields = false;   ///< The greatest pressure is over the onset: plain Lame, and so the force, is too high.
  bool from_nought = false;  ///< The least force is nil: a ring that is too small goes unseen.
  Torque energy_greatest;    ///< Work of pressing home against the greatest force.
};

/// Force to press the ring home, as a band.
///
/// Model      F = mu p pi d L with the flattened interference; p by contact_pressure(). The force grows from nil to F
///            as the ring goes in, so the work is F L / 2. Least: least interference and friction; greatest likewise.
/// Inputs     width > 0; 0 < friction.least <= friction.greatest <= 1; interference.least <= interference.greatest.
/// Returns    Forces >= 0; clearance gives exactly zero.
/// Refuses    Joints check_joint() refuses; NaN or reversed ranges: fits.range_reversed.
/// Accuracy   Arithmetic to 64 eps. Real forces scatter more than any book range when the ring goes in askew.
/// Source     [Shigley9] eq. 7-39 for the pressure; friction force by definition; worked in
///            docs/worked/W3-press-force.md.
[[nodiscard]] Result<PressForce> press_force(const Pressing& pressing);

/// One finished press of the shop with a measured bore.
struct FinishedPress {
  PressedJoint joint;
  Length interference;  ///< Full, on diameter.
  Length width;
  Force force;
};
inline constexpr int kPressesToNarrow = 8;  ///< Fewer say too little about the scatter.

struct ShopFriction {
  enum class Standing {
    narrowed,       ///< Range from the shop's own presses.
    too_few,        ///< Under kPressesToNarrow: the book's range stands.
    too_scattered,  ///< The interval reaches down to nought: the book's range stands.
  } standing = Standing::too_few;
  int presses = 0;
  int missing = 0;           ///< Presses still needed to narrow.
  FrictionRange range;       ///< What to use.
  double mean = 0.0;         ///< Of the shop's presses; the middle of the book's range when there are none.
  double deviation = 0.0;    ///< Standard deviation; 0 under two presses.
  std::vector<double> each;  ///< One a press, in order.
};

/// Friction of the shop's own press, oil and surfaces.
///
/// Model      mu_i = F_i / (p_i pi d_i L_i), p_i from the measured interference less the flattening. Range for the next
///            press: mean -+ t(0.975, n - 1) s sqrt(1 + 1/n), taken as normal and independent. Scatter of rings nobody
///            measured is in it.
/// Inputs     Each interference over the loss; force > 0; width > 0. book: used until there are eight presses.
/// Refuses    A press with nothing left to press on: fits.press_without_interference, field "presses[i]" from 1.
/// Accuracy   t quantile to 1e-12 relative.
/// Source     [PredictionInterval] prediction interval for one new observation; worked in docs/worked/W4-shop-friction.md.
[[nodiscard]] Result<ShopFriction> shop_friction(std::span<const FinishedPress> presses, Length roughness_loss,
                                                 FrictionRange book);

/// A force read off the press.
struct ForceReading {
  Force force;
  Force calibration_expanded;  ///< U of the certificate, k = 2.
  Force resolution;            ///< Smallest step that can be read; rectangular.
};
struct ForceBand {
  Force least, greatest;
};

struct Readback {
  enum class Side { inside, low, high, near_low, near_high, near_both } side = Side::inside;
  Answer answer = Answer::in;
  Force expanded;                                    ///< U of the reading with its resolution.
  Length interference_least, interference_greatest;  ///< That was really there; on diameter, before flattening.
  bool no_lower_side = false;                        ///< The band starts at nought.
  bool hub_yields = false;  ///< The pressure behind the force may be over the onset: the interference was bigger still.
};

/// What the force says.
///
/// Model      U = sqrt(U_cal^2 + (2 resolution / sqrt 12)^2). In: force -+ U inside the band; out: outside by U; else
///            cannot tell. A band that starts at nought has no lower side. Interference: Lame turned round with the
///            least force and greatest friction to the greatest force and least friction, plus the flattening.
/// Inputs     force >= 0 and finite; 0 <= band.least <= band.greatest.
/// Returns    interference_least 0 where force - U is not above nought: nothing is proven then.
/// Refuses    NaN, negative, reversed: input.negative, fits.range_reversed.
/// Source     [ISO14253-1] for the decision; [GUM] for the resolution.
[[nodiscard]] Result<Readback> read_back(const ForceReading& reading, const ForceBand& band, const Pressing& pressing);

/// A couple that wants to turn the ring in its hub, against what friction holds.
struct RingCreep {
  Torque holding_least, holding_greatest;
  double margin = 0.0;  ///< holding_least / couple.
  Answer answer = Answer::cannot_tell;
};
struct CreepInput {
  Length diameter;
  Length width;
  Pressure pressure_least, pressure_greatest;
  FrictionRange friction;
  Torque couple;
};
/// Holding torque of the joint: mu p pi d^2 L / 2.
///
/// Model      Friction over the whole seat. In: the least holding torque is over the couple; out: the greatest is
///            under.
///            A load that turns against a ring can roll it along by elastic waves below this limit: not covered.
/// Inputs     couple > 0; pressures >= 0.
/// Source     [Shigley9] section 7-8 (torque capacity of an interference fit), the section number from memory.
[[nodiscard]] Result<RingCreep> ring_creep(const CreepInput& input);

}  // namespace flatwise::fits
