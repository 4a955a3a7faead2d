// of_shaft.h: the beam of a whole shaft: its bar, hangers, rotors, sleeves and pulleys, loads and what turns with it.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "core/beam/critical.h"
#include "core/beam/effects.h"
#include "core/beam/response.h"
#include "core/beam/stress.h"
#include "core/shaft/shaft.h"

namespace flatwise::beam {

/// Whose number something is.
struct Named {
  std::string label;  ///< Of the station.
  int station = 0;    ///< Index.
};

struct ShaftBeam {
  Beam beam;
  std::vector<Turning> turning;   ///< The rotors from end A, then the fixed unbalances.
  std::vector<Load> loads;        ///< At rest; the own weight is not among them.
  std::vector<TorqueAt> torques;  ///< The drive's, less an even share at each rotor; empty where no torque is stated.
  std::vector<Named> hangers;     ///< As beam.hangers.
  std::vector<Named> bodies;      ///< As beam.bodies.
  std::vector<Angle> leans;       ///< As beam.bodies; nought for what does not lean.
  std::vector<Angle> azimuths;    ///< As beam.bodies.
  std::vector<Finding> taken;     ///< What the definition does not say, and what was taken instead.
};

/// The beam of a shaft whose rotors have these tilt azimuths, one a rotor from end A.
///
/// Model      The bar has one section from end to end, threads and the clamped stack not counted as stiffness. Rotors at their
///            wobble centres, with mass and inertia as defined (halves and bearing with them). Spacers, washers, nuts, pulleys:
///            their stated mass, else a steel sleeve as drawn on the bar, turning with it, placed at their middle. Hangers give as
///            stated, else not at all. Rotors roll where travel and radius are given, else they are held.
/// Not here   Fits between stack and bar; how the frame itself gives, unless it is in the hangers' stiffness.
[[nodiscard]] ShaftBeam beam_of(const Shaft& shaft, std::span<const Angle> tilt);

/// Everything about a shaft at its speed, as verb, page and paper show it.
struct ShaftBending {
  ShaftBeam of;
  Bent at_rest, turning;
  std::vector<StressAt> stresses;  ///< One a station of the shaft, at its middle.
  std::vector<LinePoint> rest_of_station, turning_of_station;
  CriticalSpeeds forward, backward;
  Effects effects;
  std::vector<Finding> findings;
};
inline constexpr int kCriticalsTold = 6;
[[nodiscard]] Result<ShaftBending> bending_of(const Shaft& shaft, std::span<const Angle> tilt);

struct SpeedRange {
  AngularSpeed from, to;
  int speeds = 0;  ///< Evenly, both ends counted.
};
/// Response of a shaft over a range of speeds: its hangers, and how far it bends at each rotor.
[[nodiscard]] Result<std::vector<ResponsePoint>> response_of(const Shaft& shaft, const ShaftBeam& of,
                                                             const SpeedRange& range);

}  // namespace flatwise::beam
