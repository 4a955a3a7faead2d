#include "core/dynamics/resultants.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>

namespace flatwise::dynamics {
namespace {

using Phasor = std::complex<double>;

/// What is left of a sum that cancels is rounding, not balance: nought, so that its direction is not read as one.
Phasor cleaned(Phasor v, double sum_of_sizes) {
  return std::abs(v) <= 32 * std::numeric_limits<double>::epsilon() * sum_of_sizes ? Phasor{} : v;
}
Angle azimuth_of(Phasor v) { return radians(v == Phasor{} ? 0.0 : std::arg(v)); }
RotatingForce as_force(Phasor v) { return {Force::from_si(std::abs(v)), azimuth_of(v)}; }

}  // namespace

Resultants resultants(std::span<const RotatingSet> sets, const Planes& planes, const StatedErrors& errors) {
  const double a_m = planes.a.si(), apart_m = (planes.b - planes.a).si();
  CORE_CHECK(apart_m != 0);
  const double middle_m = a_m + 0.5 * apart_m;
  const double error = std::hypot(errors.share, errors.azimuth.radians());
  Phasor force, couple, at_b;
  double squares_a = 0, squares_b = 0, sum_a = 0, sum_b = 0, sum_force = 0, sum_couple = 0;
  for (const RotatingSet& set : sets) {
    const Phasor direction = std::polar(1.0, set.azimuth.radians());
    const double f = set.force.si(), c = set.couple.si(), z_m = set.position.si();
    force += f * direction;
    couple += (c + f * (z_m - middle_m)) * direction;
    const double own_b = (c + f * (z_m - a_m)) / apart_m, own_a = f - own_b;
    at_b += own_b * direction;
    squares_a += own_a * own_a;
    squares_b += own_b * own_b;
    sum_force += std::abs(f);
    sum_couple += std::abs(c) + std::abs(f * (z_m - middle_m));
    sum_a += std::abs(own_a);
    sum_b += std::abs(own_b);
  }
  Resultants out;
  couple = cleaned(couple, sum_couple);
  out.force = as_force(cleaned(force, sum_force));
  out.couple = {Torque::from_si(std::abs(couple)), azimuth_of(couple)};
  out.at_a = as_force(cleaned(force - at_b, sum_a + sum_b));
  out.at_b = as_force(cleaned(at_b, sum_b));
  out.larger = std::max(out.at_a.size, out.at_b.size);
  out.root_sum_of_squares = Force::from_si(std::hypot(out.at_a.size.si(), out.at_b.size.si()));
  // Along and across the vector the errors are rectangular and independent: variance is a third of the half width squared.
  out.floor_rms = Force::from_si(error / std::sqrt(3.0) * std::sqrt(std::max(squares_a, squares_b)));
  out.floor_worst = Force::from_si(error * std::max(sum_a, sum_b));
  return out;
}

Planes planes_of(const Shaft& shaft) {
  std::vector<Length> hangers;
  for (std::size_t i = 0; i < shaft.stations().size(); ++i)
    if (shaft.stations()[i].kind == StationKind::hanger) hangers.push_back(shaft.middle_of(static_cast<int>(i)));
  if (hangers.size() < 2) return {Length{}, shaft.total_length(), false};
  return {hangers.front(), hangers.back(), true};
}

Spinning spinning_of(const Shaft& shaft) {
  return shaft.spec().travel && shaft.spec().rolling_radius ? Spinning::rolling : Spinning::held;
}

AngularSpeed spin_of(const Shaft& shaft, int rotor) {
  const ShaftSpec& spec = shaft.spec();
  const Spinning spinning = spinning_of(shaft);
  AngularSpeed rolling;
  if (spinning == Spinning::rolling) rolling = radians_per_second(spec.travel->si() / spec.rolling_radius->si());
  return spin_of(spinning, spec.speed, shaft.rotor(rotor).lean, rolling);
}

std::vector<RotatingSet> rotating_sets(const Shaft& shaft, std::span<const Angle> tilt) {
  CORE_CHECK(static_cast<int>(tilt.size()) == shaft.rotor_count());
  const ShaftSpec& spec = shaft.spec();
  std::vector<RotatingSet> sets;
  for (int number = 1; number <= shaft.rotor_count(); ++number) {
    const Rotor& rotor = shaft.rotor(number);
    const auto force = rotating_force({spec.speed, rotor.lean, rotor.mass, rotor.mass_offset});
    const auto couple = rotating_couple({spec.speed, rotor.lean, rotor.across, rotor.along, spin_of(shaft, number)});
    CORE_CHECK(force && couple);  // A Shaft's rotors were checked when it was made.
    sets.push_back({shaft.rotor_position(number), tilt[static_cast<std::size_t>(number - 1)], *force, *couple});
  }
  const double w = spec.speed.radians_per_second();
  for (const FixedUnbalance& fixed : spec.unbalances)
    sets.push_back({shaft.middle_of(fixed.station), azimuth_of_flat(fixed.flat, shaft.flats()),
                    Force::from_si(fixed.amount.si() * w * w), Torque{}});
  return sets;
}

std::vector<Torque> couples_about_middle(std::span<const RotatingSet> sets, const Planes& planes, int count) {
  const Length middle = 0.5 * (planes.a + planes.b);
  std::vector<Torque> couples;
  for (const RotatingSet& set : sets.first(static_cast<std::size_t>(count)))
    couples.push_back(set.couple + set.force * (set.position - middle));
  return couples;
}

Resultants resultants(const Shaft& shaft, std::span<const Angle> tilt, const StatedErrors& errors) {
  return resultants(rotating_sets(shaft, tilt), planes_of(shaft), errors);
}

}  // namespace flatwise::dynamics
