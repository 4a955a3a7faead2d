// wobble.h: one wobbling rotor: the force and couple it turns with, and how its tines swing.
//
//   auto couple = rotating_couple({.speed = turns_per_minute(480), .lean = degrees(5), .across = ..., .along = ..., .spin = ...});
#pragma once

#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::dynamics {

/// How the rotor's body turns about its own axis while the shaft turns inside its bearing.
enum class Spinning {
  rolling,     ///< Over the ground, at travel / rolling radius, by its sign.
  held,        ///< Not turning at all: it only wobbles.
  with_shaft,  ///< Locked to the shaft: a skewed disk.
};

/// Component s of the body's angular velocity along the rotor axis, positive clockwise seen from end A.
///
/// Model      held: -W (1 - cos a); with the shaft: W cos a; rolling: `rolling` as given. (No slip along the rim gives a
///            mean of (v/R)(1 - a²/4) and a ripple of a²/4 at 2W, left out.)
[[nodiscard]] AngularSpeed spin_of(Spinning spinning, AngularSpeed speed, Angle lean, AngularSpeed rolling = {});

struct CoupleOf {
  AngularSpeed speed;  ///< W, of the shaft.
  Angle lean;          ///< a, bore inclination.
  Inertia across;      ///< About the wobble centre.
  Inertia along;
  AngularSpeed spin;  ///< s.
};
/// Rotating couple C = I_t W² sin a cos a - I_p s W sin a, in the plane of the tilt azimuth.
///
/// Model      Rigid rotor of equal transverse inertias (three or more like arms), steady speed. With two arms the couple
///            swings at 2(s - W cos a). A rotor held by one torque arm has this forward couple exactly, and besides
///            couples at -1W and 3W (1.4 % and 4.3 % of it at 10°) and a 2W torque in the arm (about a third of it).
/// Returns    Signed: positive in the sense of a mass offset towards +z pushed out at the tilt azimuth.
/// Refuses    Not finite; lean outside 0 to 45°; inertias negative, or along over twice across (no body is so flat).
/// Source     [Euler]; particle model of 14,000 points (tests); [Skewed-disk] with s = W cos a.
[[nodiscard]] Result<Torque> rotating_couple(const CoupleOf& of);

struct ForceOf {
  AngularSpeed speed;
  Angle lean;
  Mass mass;
  Length mass_offset;  ///< Centroid from the wobble centre along the rotor axis, positive towards B.
};
/// Rotating force F = m c sin a W² at the tilt azimuth; negative points the other way.
[[nodiscard]] Result<Force> rotating_force(const ForceOf& of);

/// Swing of a tine at a fixed place over the ground.
struct TineSwing {
  Length amplitude;      ///< R sin a.
  Speed speed;           ///< Greatest: R W tan a.
  Acceleration at_ends;  ///< R W² sin a cos² a.
  Frequency frequency;   ///< W / 2 pi.
};
struct TineOf {
  Length tip_radius;
  Angle lean;
  AngularSpeed speed;
};
[[nodiscard]] Result<TineSwing> tine_swing(const TineOf& of);
/// Frequency of one tine that rides on the body: |W cos a - s| / 2 pi.
[[nodiscard]] Frequency riding_frequency(AngularSpeed speed, Angle lean, AngularSpeed spin);

/// Axial place of the tips from the wobble centre at an angle psi from the tilt azimuth, seen over the ground:
/// -R tan a cos psi / sqrt(1 + tan² a cos² psi), towards end A on the side the axis leans to.
[[nodiscard]] Length tine_place(Length tip_radius, Angle lean, Angle psi);

}  // namespace flatwise::dynamics
