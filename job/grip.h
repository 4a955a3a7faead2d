// grip.h: whether a ring that is pressed in holds: against the load and couple that turn against it, and what its hub makes of it.
#pragma once

#include "core/bearings/turn.h"
#include "job/fitted_bearing.h"

namespace flatwise::job {

/// What the ground does to one rotor: the loads at every rotor and those at its own station.
[[nodiscard]] bearings::GroundLoad ground_on(const Shaft& shaft, int rotor);

/// Figure creep-load of the outer ring in its hub: the ground's load, which the rolling rotor turns against, and the rotating couple of the
/// wobble. A rule of catalogues, a factor of 1.5 either way: advice, no verdict.
///
/// Inputs     rotor from 1 to the shaft's count; the fit before flattening.
[[nodiscard]] Results<WorkingPtr> creep_load(const Shaft& shaft, int rotor, const FitInputs& fit);

/// Figure hub-yielding at the greatest interference of the fit. Refuses a loose ring: it presses on nothing.
[[nodiscard]] Results<WorkingPtr> hub_yielding(const Shaft& shaft, int rotor, const FitInputs& fit);

}  // namespace flatwise::job
