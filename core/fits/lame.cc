#include "core/fits/lame.h"

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

// (R^2 + r^2) / (R^2 - r^2) of a ring; 1 where it is solid.
double wall_factor(Length inside, Length outside) {
  const double k = inside / outside;
  return (1.0 + k * k) / (1.0 - k * k);
}

std::optional<Problem> check_inside(std::string_view field, Length inside, Length outside) {
  if (inside < outside) return std::nullopt;
  return Problem{Code{"fits.not_inside"},
                 std::string{field},
                 {},
                 {{"inside", any(inside)}, {"outside", any(outside)}},
                 std::nullopt};
}

std::optional<Problem> check_elastic(std::string_view modulus, std::string_view poisson, const Elastic& part) {
  if (auto bad = not_above_nought(modulus, any(part.youngs_modulus))) return bad;
  if (part.poisson > -1.0 && part.poisson <= 0.5) return std::nullopt;
  return Problem{
      Code{"fits.poisson_out_of_range"}, std::string{poisson}, {}, {{"value", any_ratio(part.poisson)}}, std::nullopt};
}

// Interference that one pascal needs, on diameter, in metres.
double compliance_m_per_pa(const PressedJoint& joint) {
  const double hub =
      (wall_factor(joint.diameter, joint.hub_outside) + joint.hub.poisson) / joint.hub.youngs_modulus.si();
  const double ring =
      (wall_factor(joint.ring_inside, joint.diameter) - joint.ring.poisson) / joint.ring.youngs_modulus.si();
  return joint.diameter.si() * (hub + ring);
}

std::optional<Problem> check_joint_and_pressure(const PressedJoint& joint, Pressure pressure) {
  if (auto bad = check_joint(joint)) return bad;
  return negative("pressure", any(pressure));
}

}  // namespace

std::optional<Problem> check_joint(const PressedJoint& joint) {
  if (auto bad = not_above_nought("diameter", any(joint.diameter))) return bad;
  if (auto bad = negative("ring_inside", any(joint.ring_inside))) return bad;
  if (auto bad = check_inside("ring_inside", joint.ring_inside, joint.diameter)) return bad;
  if (auto bad = not_above_nought("hub_outside", any(joint.hub_outside))) return bad;
  if (auto bad = check_inside("hub_outside", joint.diameter, joint.hub_outside)) return bad;
  if (auto bad = check_elastic("ring.youngs_modulus", "ring.poisson", joint.ring)) return bad;
  return check_elastic("hub.youngs_modulus", "hub.poisson", joint.hub);
}

Result<Pressure> contact_pressure(const PressedJoint& joint, Length interference) {
  if (auto bad = check_joint(joint)) return tl::unexpected(*bad);
  if (auto bad = negative("interference", any(interference))) return tl::unexpected(*bad);
  return pascals(interference.si() / compliance_m_per_pa(joint));
}

Result<Length> interference_of(const PressedJoint& joint, Pressure pressure) {
  if (auto bad = check_joint_and_pressure(joint, pressure)) return tl::unexpected(*bad);
  return metres(pressure.si() * compliance_m_per_pa(joint));
}

Result<HoopStress> hoop_stress(const PressedJoint& joint, Pressure pressure) {
  if (auto bad = check_joint_and_pressure(joint, pressure)) return tl::unexpected(*bad);
  const double k = joint.ring_inside / joint.diameter;
  const Pressure ring = -wall_factor(joint.ring_inside, joint.diameter) * pressure;
  // A hole however small doubles the stress at its edge; a part without one has the same stress everywhere.
  const Pressure inside = joint.ring_inside > Length{} ? (-2.0 / (1.0 - k * k)) * pressure : ring;
  return HoopStress{
      .hub = wall_factor(joint.diameter, joint.hub_outside) * pressure, .ring = ring, .ring_inside = inside};
}

Result<Pressure> pressure_for_hub_hoop(const PressedJoint& joint, Pressure hoop) {
  if (auto bad = check_joint(joint)) return tl::unexpected(*bad);
  if (auto bad = negative("hoop", any(hoop))) return tl::unexpected(*bad);
  return hoop / wall_factor(joint.diameter, joint.hub_outside);
}

Result<Pressure> yield_onset(const PressedJoint& joint, Pressure hub_yield) {
  if (auto bad = check_joint(joint)) return tl::unexpected(*bad);
  if (auto bad = not_above_nought("hub_yield", any(hub_yield))) return tl::unexpected(*bad);
  const double k = joint.diameter / joint.hub_outside;
  return 0.5 * (1.0 - k * k) * hub_yield;
}

Result<Length> outer_raceway_change(const PressedJoint& joint, Pressure pressure) {
  if (auto bad = check_joint_and_pressure(joint, pressure)) return tl::unexpected(*bad);
  const double k = joint.ring_inside / joint.diameter;
  return (-2.0 * (pressure / joint.ring.youngs_modulus) / (1.0 - k * k)) * joint.ring_inside;
}

Result<Length> inner_raceway_change(const PressedJoint& joint, Pressure pressure) {
  if (auto bad = check_joint_and_pressure(joint, pressure)) return tl::unexpected(*bad);
  const double k = joint.diameter / joint.hub_outside;
  return (2.0 * (pressure / joint.hub.youngs_modulus) * k * k / (1.0 - k * k)) * joint.hub_outside;
}

Result<Length> estimated_ring_inside(Length bore, Length outside) {
  if (auto bad = not_above_nought("bore", any(bore))) return tl::unexpected(*bad);
  if (auto bad = check_inside("bore", bore, outside)) return tl::unexpected(*bad);
  return 0.2 * (4.0 * outside + bore);
}

}  // namespace flatwise::fits
