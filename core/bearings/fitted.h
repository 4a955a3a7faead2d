// fitted.h: clearance that is left when both rings are on their seats and one runs warmer than the other.
//
//   const Result<ClearanceLeft> left = clearance_left({.group = group, .outer = hub_joint, .outer_interference = {...}, ...});
#pragma once

#include <optional>

#include "core/fits/interference.h"
#include "core/fits/lame.h"

namespace flatwise::bearings {

/// One pressed joint with how much bigger its inner part may be; negative is clearance.
struct Pressed {
  fits::PressedJoint joint;
  Length least, greatest;  ///< Interference on diameter, before flattening.
  Length flattened;        ///< Lost by flattening, on diameter.
};

struct FittedTask {
  Limits group;   ///< Of the clearance before fitting.
  Pressed outer;  ///< Outer ring in the hub: ring_inside is its raceway.
  std::optional<Pressed>
      inner;               ///< Inner ring on its seat: `ring` is the seat (hollow or solid), hub_outside the raceway.
  Limits inner_loss = {};  ///< What the inner ring loses where it is known otherwise.
  TemperatureRise warmer = {};  ///< Inner ring and balls over the outer ring; negative: colder.
  double expansion = 11.5e-6;   ///< Of the bearing, 1/K.
};

struct ClearanceLeft {
  Length least, mean, greatest;
  Length outer_loss, inner_loss;  ///< The most that each fit takes.
  Length warm_loss;               ///< What the warmth takes; negative: it gives.
};

/// Model      G = group - what the hub closes the outer raceway by - what the seat opens the inner raceway by - expansion times warmth
///            times the outer raceway. Rings and hub as plain thick rings (fits::outer_raceway_change, inner_raceway_change), elastic.
///            Inner ring and balls grow together: alpha dT ((d_m - D_w) + 2 D_w) = alpha dT times the outer raceway.
/// Inputs     Joints that fits::check_joint() passes; least <= greatest everywhere; expansion 0 to 1e-4.
/// Refuses    Reversed ranges: bearings.range_reversed; joints as check_joint(), the inner's fields with "seat." before them.
/// Source     [Shigley9]; docs/worked/W2-raceway.md, W41-fitted-clearance.md.
[[nodiscard]] Result<ClearanceLeft> clearance_left(const FittedTask& task);

}  // namespace flatwise::bearings
