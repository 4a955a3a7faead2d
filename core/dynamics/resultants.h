// resultants.h: what a whole shaft of wobbling rotors leaves: one rotating force, one rotating couple, and what the
// hangers feel of both. Small enough to be asked for every arrangement of a search.
#pragma once

#include <span>
#include <vector>

#include "core/dynamics/wobble.h"
#include "core/shaft/shaft.h"

namespace flatwise::dynamics {

/// One rotor, or a pulley's unbalance, as it acts on the shaft.
struct RotatingSet {
  Length position;  ///< z of the wobble centre from end A.
  Angle azimuth;    ///< Of the tilt, or of the unbalance.
  Force force;      ///< Signed, out at the azimuth.
  Torque couple;    ///< Signed, in the plane of the azimuth.
};

/// Two planes across the shaft, as a balancing machine has them: here the outermost hangers.
struct Planes {
  Length a, b;
  bool hangers = true;  ///< False: fewer than two hangers, so the ends of the shaft.
};

/// How far each rotor may be from what was said: half widths, rectangular. Both assumed.
struct StatedErrors {
  double share = 0.02;           ///< Of its force and couple.
  Angle azimuth = degrees(0.5);  ///< Play of the halves on the profile.
};

struct RotatingForce {
  Force size;
  Angle azimuth;
};
struct RotatingCouple {
  Torque size;
  Angle azimuth;
};
struct Resultants {
  RotatingForce force;
  RotatingCouple couple;      ///< About the middle between the planes.
  RotatingForce at_a, at_b;   ///< What the rotors press with in each plane.
  Force larger;               ///< Of the two: how an arrangement is judged.
  Force root_sum_of_squares;  ///< Of the two.
  Force floor_rms;            ///< What stated errors alone leave in the worse plane: root mean square ...
  Force floor_worst;          ///< ... and every error at its limit in the worst direction.
};

/// Sums F e^{j phi} and [C + F (z - z0)] e^{j phi}, and shares them between the planes.
///
/// Model      Rigid shaft, steady turning; the couple depends on z0 unless the force sums to nought, which is why the
///            planes judge. Shaft bending, and hangers that give, are another computation.
/// Returns    Sizes >= 0, exactly nought under 32 eps of the sum of sizes; the azimuth of a vector of no size is nought.
/// Refuses    Bug (CORE_CHECK): planes at one place. Inputs are checked by who makes the sets.
/// Accuracy   32 eps of the sum of sizes.
/// Source     [Balance-planes]; worked two-plane example W28.
[[nodiscard]] Resultants resultants(std::span<const RotatingSet> sets, const Planes& planes,
                                    const StatedErrors& errors = {});

/// The outermost hangers; the shaft's own ends where there are fewer than two.
[[nodiscard]] Planes planes_of(const Shaft& shaft);
/// How this shaft's rotors turn: rolling where travel and rolling radius are given, else held.
[[nodiscard]] Spinning spinning_of(const Shaft& shaft);
[[nodiscard]] AngularSpeed spin_of(const Shaft& shaft, int rotor);

/// Rotors with these tilt azimuths, one a rotor from end A, then the fixed unbalances. A mispaired rotor has no axis of
/// its own: the caller passes the mean of its halves and says so.
[[nodiscard]] std::vector<RotatingSet> rotating_sets(const Shaft& shaft, std::span<const Angle> tilt);
/// The couple of each of the first sets about the middle of the planes: its own, and its force's by its arm. Signed.
[[nodiscard]] std::vector<Torque> couples_about_middle(std::span<const RotatingSet> sets, const Planes& planes,
                                                       int count);
[[nodiscard]] Resultants resultants(const Shaft& shaft, std::span<const Angle> tilt, const StatedErrors& errors = {});

}  // namespace flatwise::dynamics
