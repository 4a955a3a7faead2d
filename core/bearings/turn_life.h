// turn_life.h: how long the bearing of a wobbling rotor lasts, and which of its inputs say most about that.
//
//   const TurnLife life = *turn_life(task);
//   for (const Influence& i : influences(task, life)) ...   // the strongest first
#pragma once

#include <vector>

#include "core/bearings/turn.h"

namespace flatwise::bearings {

struct TurnLifeTask {
  TurnTask turn;
  Ratings ratings;
  AngularSpeed shaft;
  AngularSpeed spin;  ///< Of the rotor about its own axis (dynamics::spin_of).
  Lubrication lubrication;
  double reliability = 0.9;  ///< Share of such bearings that outlive the modified life.
};

struct TurnLife {
  Turn turn;
  AngularSpeed relative;     ///< Of the rings about the bearing's axis.
  double million_turns = 0;  ///< L_10r, of the rings against each other.
  Force reference;           ///< P_ref: the one radial load that would end it as soon.
  Time basic;
  double viscosity_ratio = 1;                    ///< kappa.
  double reliability_factor = 1;                 ///< a_1
  Contamination contamination;                   ///< e_C of the class, at its ends.
  double least_factor = 1, greatest_factor = 1;  ///< a_ISO with them.
  Time least, greatest;                          ///< Modified life with them: a_1 a_ISO times the basic one.
};
/// Inputs     As one_turn(); ratings > 0; viscosity ratio 0.1 upwards, over 4 counts as 4; reliability 0.9 to 0.9995, else CORE_CHECK.
/// Refuses    As one_turn(); rings that do not turn against each other: bearings.rings_stand, field "spin"; rings faster against each
///            other than a million r/min times mm of pitch: bearings.beyond_speed, field "shaft"; viscosity_ratio().
/// Source     [ISO16281-code], [ISO281].
[[nodiscard]] Result<TurnLife> turn_life(const TurnLifeTask& task);

/// What was changed to see what it does.
enum class Influenced { speed, lean, clearance, ground, viscosity, cleanliness };
struct Influence {
  Influenced of;
  double factor = 1;  ///< Life in hours with the change, over life without.
};
/// Changes one input at a time: 10 % more speed (force and couple with its square), a degree more lean (couple with sin cos, force with
/// sin), 10 µm more clearance, 10 % more load from the ground, half the viscosity, one class dirtier (none beyond severe).
///
/// Inputs     The task and its own turn_life().
/// Returns    The strongest first, by the size of the logarithm. An input whose change has no answer is left out. The life is the modified
///            one in the middle of its class.
[[nodiscard]] std::vector<Influence> influences(const TurnLifeTask& task, const TurnLife& as_given);

}  // namespace flatwise::bearings
