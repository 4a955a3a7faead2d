// creep.h: whether a load that goes round with respect to a ring may roll it along its seat, below the torque that would
// turn it at once (ring_creep() of press.h).
#pragma once

#include <optional>

#include "core/units/problem.h"
#include "core/units/quantity.h"
#include "core/units/temperature.h"
#include "core/working/working.h"

namespace flatwise::fits {

struct CreepLoad {
  Length diameter;                          ///< Of the seat.
  Length width;                             ///< Of the ring.
  Force radial;                             ///< Turning against the ring; the greatest.
  Torque couple = {};                       ///< Likewise, about an axis square to the shaft: the wobble's.
  std::optional<Force> static_rating = {};  ///< C0: over 0.3 of it the loss grows faster. None: taken as under.
  TemperatureRise temperature_rise =
      {};  ///< Of the inner ring over what it sits on, in work; nought for an outer ring.
  Length interference_least, interference_greatest;  ///< After flattening.
};
struct CreepMargin {
  Length loss_by_load, loss_by_heat, wanted;  ///< On diameter: wanted = both.
  Force equivalent;                           ///< Radial load that counts: with the couple's.
  double margin = 0.0;                        ///< interference_least / wanted.
  Answer answer = Answer::cannot_tell;
};
/// Interference that a load going round takes off a seat, against what is there.
///
/// Model      Loss 0.08 sqrt(d F / B) up to 0.3 C0, 0.02 F / B over it (um; mm and N), and 1.5e-3 d dT (um): common practice
///            of bearing catalogues for a ring under a turning load. The couple counts as the radial load that makes the
///            same line load at the ring's edge, 6 M / B: own derivation, on the safe side. In: the least interference
///            is over what is wanted; out: the greatest is under.
/// Refuses    Sizes not above nought, loads or rise negative or not finite, interferences reversed.
/// Accuracy   A rule of catalogues, not a law: a factor of 1.5 either way is usual.
/// Source     [CreepRule]; worked in docs/worked/W32-creep-margin.md.
[[nodiscard]] Result<CreepMargin> creep_margin(const CreepLoad& load);

}  // namespace flatwise::fits
