#include "core/dynamics/wobble.h"

#include <cmath>
#include <utility>

#include "core/dynamics/check.h"
#include "core/units/guards.h"

namespace flatwise::dynamics {

AngularSpeed spin_of(Spinning spinning, AngularSpeed speed, Angle lean, AngularSpeed rolling) {
  const double speed_rad_s = speed.radians_per_second();
  switch (spinning) {
    case Spinning::rolling:
      return rolling;
    case Spinning::held: {
      const double half = std::sin(0.5 * lean.radians());  // 1 - cos a without losing digits at small a.
      return radians_per_second(-2 * speed_rad_s * half * half);
    }
    case Spinning::with_shaft:
      return radians_per_second(speed_rad_s * std::cos(lean.radians()));
  }
  CORE_CHECK(false);
}

Result<Torque> rotating_couple(const CoupleOf& of) {
  if (auto p = not_finite("speed", any(of.speed))) return tl::unexpected(*std::move(p));
  if (auto p = not_finite("spin", any(of.spin))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_lean(of.lean)) return tl::unexpected(*std::move(p));
  if (auto p = negative("across", any(of.across))) return tl::unexpected(*std::move(p));
  if (auto p = negative("along", any(of.along))) return tl::unexpected(*std::move(p));
  if (!(of.along <= 2.0000001 * of.across))
    return tl::unexpected(Problem{
        Code{"dynamics.inertias"}, "along", {}, {{"along", any(of.along)}, {"across", any(of.across)}}, std::nullopt});
  const double w = of.speed.radians_per_second(), s = of.spin.radians_per_second(), a = of.lean.radians();
  return Torque::from_si(of.across.si() * w * w * std::sin(a) * std::cos(a) - of.along.si() * s * w * std::sin(a));
}

Result<Force> rotating_force(const ForceOf& of) {
  if (auto p = not_finite("speed", any(of.speed))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_lean(of.lean)) return tl::unexpected(*std::move(p));
  if (auto p = negative("mass", any(of.mass))) return tl::unexpected(*std::move(p));
  if (auto p = not_finite("mass-offset", any(of.mass_offset))) return tl::unexpected(*std::move(p));
  const double w = of.speed.radians_per_second();
  return Force::from_si(of.mass.si() * of.mass_offset.si() * std::sin(of.lean.radians()) * w * w);
}

Result<TineSwing> tine_swing(const TineOf& of) {
  if (auto p = not_above_nought("tip-radius", any(of.tip_radius))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_lean(of.lean)) return tl::unexpected(*std::move(p));
  if (auto p = negative("speed", any(of.speed))) return tl::unexpected(*std::move(p));
  const double w = of.speed.radians_per_second(), a = of.lean.radians(), r = of.tip_radius.si();
  const double cosine = std::cos(a), sine = std::sin(a);
  return TineSwing{Length::from_si(r * sine), Speed::from_si(r * w * std::tan(a)),
                   Acceleration::from_si(r * w * w * sine * cosine * cosine), hertz(w / (2 * std::numbers::pi))};
}

Frequency riding_frequency(AngularSpeed speed, Angle lean, AngularSpeed spin) {
  const double relative = speed.radians_per_second() * std::cos(lean.radians()) - spin.radians_per_second();
  return hertz(std::abs(relative) / (2 * std::numbers::pi));
}

Length tine_place(Length tip_radius, Angle lean, Angle psi) {
  const double slope = std::tan(lean.radians()) * std::cos(psi.radians());
  return -(tip_radius * (slope / std::sqrt(1 + slope * slope)));
}

}  // namespace flatwise::dynamics
