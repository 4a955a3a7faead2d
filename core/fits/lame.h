// lame.h: two thick-walled rings with interference: pressure, stresses, onset of yield, and what the raceway does.
//
//   const PressedJoint joint{.diameter = millimetres(120), .ring_inside = millimetres(107),
//                            .hub_outside = millimetres(180), .ring = steel, .hub = cast_iron};
//   const Result<Pressure> p = contact_pressure(joint, micrometres(45));
#pragma once

#include <optional>

#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

struct Elastic {
  Pressure youngs_modulus;
  double poisson = 0.3;
};

/// An inner ring (or solid part) in a hub. Diameters at 20 °C.
struct PressedJoint {
  Length diameter;     ///< Of the joint.
  Length ring_inside;  ///< Inside diameter of the inner part; 0 where it is solid.
  Length hub_outside;
  Elastic ring;  ///< Of the inner part.
  Elastic hub;
};

/// Names the first field that cannot be: diameters with 0 <= ring_inside < diameter < hub_outside, Young's moduli > 0,
/// Poisson's ratios over -1 and at most 0.5. Fields "diameter", "ring_inside", "hub_outside", "ring.youngs_modulus" ...
[[nodiscard]] std::optional<Problem> check_joint(const PressedJoint& joint);

/// Mean pressure between ring and hub.
///
/// Model      Thick-walled cylinders of equal length, plane stress, elastic, smooth, not turning.
/// Inputs     interference >= 0, on diameter; for pressing after_flattening(), for heating in full.
/// Returns    Pressure >= 0. Zero interference gives exactly zero; proportional to interference.
/// Refuses    Joints check_joint() refuses; negative or NaN interference: input.negative, field "interference".
///            Does not check yield: compare with yield_onset(), beyond it the true pressure is lower.
/// Accuracy   32 eps relative against the closed form. The model error (a ring longer or shorter than the hub, grooves,
///            ribs) is larger.
/// Source     [Shigley9] eq. 7-39; worked by hand in docs/worked/W1-ring-in-hub.md.
[[nodiscard]] Result<Pressure> contact_pressure(const PressedJoint& joint, Length interference);

/// Interference on diameter that gives a pressure: the same relation the other way round. pressure >= 0.
[[nodiscard]] Result<Length> interference_of(const PressedJoint& joint, Pressure pressure);

/// Hoop stresses, tension positive. Source [Shigley9] eqs. 7-44 and 7-45.
struct HoopStress {
  Pressure hub;          ///< At the hub's bore, where it is greatest.
  Pressure ring;         ///< At the ring's outer surface (the joint).
  Pressure ring_inside;  ///< At the ring's inside, where it is greatest; equal to `ring` where the part is solid.
};
[[nodiscard]] Result<HoopStress> hoop_stress(const PressedJoint& joint, Pressure pressure);

/// Pressure that gives a hoop stress at the hub's bore. Source [Shigley9] eq. 7-45 turned round.
[[nodiscard]] Result<Pressure> pressure_for_hub_hoop(const PressedJoint& joint, Pressure hoop);

/// Pressure at which the hub's bore begins to yield.
///
/// Model      Tresca: hoop stress less radial stress reaches the yield strength; Y/2 (1 - d^2/D^2). The axial stress is
///            nil and lies between the two.
/// Inputs     hub_yield > 0. For grey iron, which breaks instead, give its tensile strength.
/// Source     [Shigley9] eqs. 5-3 (maximum shear stress) and 7-45; worked in docs/worked/W1-ring-in-hub.md.
[[nodiscard]] Result<Pressure> yield_onset(const PressedJoint& joint, Pressure hub_yield);

/// How much the raceway of a pressed ring moves, on diameter: < 0 smaller (outer ring in a hub), > 0 bigger.
///
/// Model      The ring as a plain tube up to its raceway diameter, elastic, plane stress.
/// Source     Lame; checked against the closed forms delta d/d_i in docs/worked/W2-raceway.md.
[[nodiscard]] Result<Length> outer_raceway_change(const PressedJoint& joint, Pressure pressure);
/// The same for an inner ring pushed on a seat: there `ring` is the seat and `hub` the inner ring,
/// hub_outside its raceway.
[[nodiscard]] Result<Length> inner_raceway_change(const PressedJoint& joint, Pressure pressure);

/// Raceway-side diameter of an outer ring that nobody measured: (4 D + d) / 5. An assumption: say so beside it.
/// Source: common practice for deep groove ball bearings. Needs 0 < bore < outside.
[[nodiscard]] Result<Length> estimated_ring_inside(Length bore, Length outside);

}  // namespace flatwise::fits
