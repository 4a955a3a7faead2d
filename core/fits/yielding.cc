#include "core/fits/yielding.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

std::optional<Problem> check_yielding(const YieldingJoint& joint) {
  if (auto bad = check_joint(joint.joint)) return bad;
  return not_above_nought("hub_yield", any(joint.hub_yield));
}

/// The hub in numbers: its outside and the border as multiples of the bore.
struct Hub {
  double yield, modulus, poisson, outside;
};
Hub hub_of(const YieldingJoint& j) {
  return {j.hub_yield.si(), j.joint.hub.youngs_modulus.si(), j.joint.hub.poisson,
          j.joint.hub_outside / j.joint.diameter};
}

double pressure_at(const Hub& hub, double border) {
  const double k = border / hub.outside;
  return hub.yield * (std::log(border) + 0.5 * (1 - k * k));
}
/// Of the bore, as a share of its diameter.
double growth_at(const Hub& hub, double border, double pressure) {
  return (hub.yield * border * border - (1 - hub.poisson) * pressure) / hub.modulus;
}

/// Root of a rising function between two ends, to the last bit.
template <class Function>
double rising_root(double low, double high, const Function& below) {
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    if (middle <= low || middle >= high) break;
    (below(middle) ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

/// Where the pressure would pass Y itself, which no thin ring bears; the outside where it never does.
double widest_border(const Hub& hub) {
  if (pressure_at(hub, hub.outside) <= hub.yield) return hub.outside;
  return rising_root(1, hub.outside, [&](double c) { return pressure_at(hub, c) < hub.yield; });
}

/// Ring's shrinking as a share of the diameter for one pascal.
double ring_share_per_pa(const PressedJoint& joint) {
  const double k = joint.ring_inside / joint.diameter;
  return ((1 + k * k) / (1 - k * k) - joint.ring.poisson) / joint.ring.youngs_modulus.si();
}

HubState elastic_state(const PressedJoint& joint, Pressure pressure) {
  const auto stress = hoop_stress(joint, pressure);
  CORE_CHECK(stress);
  HubState state;
  state.pressure = pressure;
  state.border = joint.diameter;
  state.hub_hoop = stress->hub;
  state.ring_shrink = pressure.si() * ring_share_per_pa(joint) * joint.diameter;
  state.bore_growth = ((stress->hub + joint.hub.poisson * pressure) / joint.hub.youngs_modulus) * joint.diameter;
  return state;
}

HubState plastic_state(const YieldingJoint& joint, const Hub& hub, double border, double widest) {
  const Length d = joint.joint.diameter;
  const double pressure = pressure_at(hub, border), k = 1 / hub.outside;
  const double at_border = 0.5 * (1 - border * border * k * k) * hub.yield;
  HubState state;
  state.zone = border < widest ? HubZone::partly_plastic : HubZone::fully_plastic;
  state.pressure = pascals(pressure);
  state.border = border * d;
  state.hub_hoop = pascals(hub.yield - at_border);
  state.bore_growth = growth_at(hub, border, pressure) * d;
  state.left_over = ((hub.yield * border * border - 2 * pressure / (1 - k * k)) / hub.modulus) * d;
  state.ring_shrink = pressure * ring_share_per_pa(joint.joint) * d;
  return state;
}

}  // namespace

Result<YieldPressures> yield_pressures(const YieldingJoint& joint) {
  if (auto bad = check_yielding(joint)) return tl::unexpected(*bad);
  const Hub hub = hub_of(joint);
  return YieldPressures{.onset = pascals(pressure_at(hub, 1)), .full = pascals(pressure_at(hub, widest_border(hub)))};
}

Result<HubState> press_into_yielding(const YieldingJoint& joint, Length interference) {
  if (auto bad = check_yielding(joint)) return tl::unexpected(*bad);
  if (auto bad = negative("interference", any(interference))) return tl::unexpected(*bad);
  const auto elastic = contact_pressure(joint.joint, interference);
  const auto onset = yield_onset(joint.joint, joint.hub_yield);
  CORE_CHECK(elastic && onset);
  if (*elastic <= *onset) return elastic_state(joint.joint, *elastic);
  const Hub hub = hub_of(joint);
  const double wanted = interference / joint.joint.diameter, ring = ring_share_per_pa(joint.joint);
  const auto taken_up = [&](double border) {
    const double pressure = pressure_at(hub, border);
    return pressure * ring + growth_at(hub, border, pressure);
  };
  const double widest = widest_border(hub);
  if (taken_up(widest) > wanted)
    return plastic_state(joint, hub, rising_root(1, widest, [&](double c) { return taken_up(c) < wanted; }), widest);
  HubState state = plastic_state(joint, hub, widest, widest);
  // What is more than the hub takes up at its full pressure only makes it grow, and stays.
  const Length more = interference - taken_up(widest) * joint.joint.diameter;
  state.bore_growth = state.bore_growth + more;
  state.left_over = state.left_over + more;
  return state;
}

Result<Length> interference_behind_yield(const YieldingJoint& joint, Pressure pressure) {
  if (auto bad = check_yielding(joint)) return tl::unexpected(*bad);
  if (auto bad = negative("pressure", any(pressure))) return tl::unexpected(*bad);
  const auto limits = yield_pressures(joint);
  if (pressure <= limits->onset) return interference_of(joint.joint, pressure);
  if (pressure > limits->full)
    return tl::unexpected(Problem{Code{"fits.pressure_over_full"},
                                  "pressure",
                                  {},
                                  {{"pressure", any(pressure)}, {"full", any(limits->full)}},
                                  std::nullopt});
  const Hub hub = hub_of(joint);
  const double border =
      rising_root(1, widest_border(hub), [&](double c) { return pressure_at(hub, c) < pressure.si(); });
  return (pressure.si() * ring_share_per_pa(joint.joint) + growth_at(hub, border, pressure.si())) *
         joint.joint.diameter;
}

Result<double> share_to_crack(const PressedJoint& joint, Pressure pressure, Pressure tensile) {
  const auto stress = hoop_stress(joint, pressure);
  if (!stress) return tl::unexpected(stress.error());
  if (auto bad = not_above_nought("hub_tensile", any(tensile))) return tl::unexpected(*bad);
  return stress->hub / tensile;
}

}  // namespace flatwise::fits
