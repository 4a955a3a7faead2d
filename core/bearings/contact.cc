#include "core/bearings/contact.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

/// Complete elliptic integrals of the modulus whose complement is 1/k: first and second kind.
struct Elliptic {
  double first = 0, second = 0;
};

// Arithmetic-geometric mean [AS] 17.6: doubles its digits each round; eight rounds are enough for any ratio of axes here.
Elliptic elliptic(double axis_ratio) {
  double a = 1, b = 1 / axis_ratio, c = std::sqrt(1 - b * b), sum = 0.5 * c * c, twice = 1;
  for (int round = 0; round < 12 && std::abs(c) > 1e-17; ++round) {
    const double next = 0.5 * (a + b);
    c = 0.5 * (a - b);
    b = std::sqrt(a * b);
    a = next;
    sum += twice * c * c;
    twice *= 2;
  }
  const double first = 0.5 * std::numbers::pi / a;
  return {first, first * (1 - sum)};
}

/// F of an ellipse. Near a circle the formula is nought by nought; its series there is 3/4 (k - 1) and is off by (k - 1)².
double difference_of(double axis_ratio) {
  if (axis_ratio - 1 < 1e-7) return 0.75 * (axis_ratio - 1);
  const Elliptic e = elliptic(axis_ratio);
  return 1 - 2 / (axis_ratio * axis_ratio - 1) * (e.first / e.second - 1);
}

/// The ratio of axes lies within 3 % of (relative curvature across / along)^0.636 [HamrockBrewe]; from there the secant settles in a few
/// rounds, in a bracket that halves where it would not.
double axis_ratio_of(double difference) {
  if (difference < 1e-7) return 1 + difference / 0.75;
  const double about = std::pow((1 + difference) / (1 - difference), 0.636);
  double low = std::max(1.0, 0.9 * about), high = 1.1 * about + 0.1;
  double at_low = difference_of(low) - difference, at_high = difference_of(high) - difference;
  double k = about;
  for (int round = 0; round < 100 && high - low > 4e-16 * high; ++round) {
    k = round % 4 == 3 ? 0.5 * (low + high) : low - at_low * (high - low) / (at_high - at_low);
    const double at = difference_of(k) - difference;
    if (at == 0) return k;
    (at < 0 ? low : high) = k;
    (at < 0 ? at_low : at_high) = at;
  }
  return k;
}

/// Sum and difference where the ring's own curvature in the plane of rolling is `ring` (minus: hollow).
Curvatures curvatures_of(double ball, double groove, double ring) {
  const double rolling = 2 / ball + ring, along_shaft = 2 / ball - 1 / groove;
  return {rolling + along_shaft, std::abs(rolling - along_shaft) / (rolling + along_shaft)};
}

std::optional<Problem> bad_material(const fits::Elastic& m) {
  if (auto bad = not_above_nought("youngs_modulus", any(m.youngs_modulus))) return bad;
  if (m.poisson > -1 && m.poisson <= 0.5) return std::nullopt;
  return outside("poisson", any_ratio(m.poisson), -1, 0.5);
}

}  // namespace

Result<PointContact> point_contact(const Curvatures& at, const fits::Elastic& material) {
  if (auto bad = bad_material(material)) return tl::unexpected(*std::move(bad));
  if (!(at.sum > 0) || !std::isfinite(at.sum) || !(at.difference >= 0) || !(at.difference < 1))
    return tl::unexpected(Problem{Code{"bearings.no_such_contact"}, "groove", {}, {}, std::nullopt});
  PointContact c;
  c.curvatures = at;
  c.axis_ratio = axis_ratio_of(at.difference);
  const double k = c.axis_ratio;
  const Elliptic e = elliptic(k);
  // Both bodies give: 2 (1 - nu²)/E, here as the one constant of the contact.
  const double gives = 2 * (1 - material.poisson * material.poisson) / material.youngs_modulus.si();
  c.long_axis = std::cbrt(3 * k * k * e.second * gives / (std::numbers::pi * at.sum));
  c.stress = 1.5 * k / (std::numbers::pi * c.long_axis * c.long_axis);
  // Approach 3 K Q gives / (2 pi a), a = long_axis Q^(1/3).
  const double approach = 1.5 * e.first * gives / (std::numbers::pi * c.long_axis);
  c.stiffness = 1 / (approach * std::sqrt(approach));
  return c;
}

Curvatures inner_curvatures(const BallBearing& b) {
  return curvatures_of(b.ball.si(), b.inner_groove.si(), 2 / (b.pitch.si() - b.ball.si()));
}
Curvatures outer_curvatures(const BallBearing& b) {
  return curvatures_of(b.ball.si(), b.outer_groove.si(), -2 / (b.pitch.si() + b.ball.si()));
}

Result<PointContacts> point_contacts(const BallBearing& bearing, const fits::Elastic& material) {
  if (auto bad = problem_with(bearing)) return tl::unexpected(*std::move(bad));
  const auto inner = point_contact(inner_curvatures(bearing), material);
  const auto outer = point_contact(outer_curvatures(bearing), material);
  if (!inner) return tl::unexpected(inner.error());
  if (!outer) return tl::unexpected(outer.error());
  const double softness = std::pow(inner->stiffness, -2.0 / 3.0) + std::pow(outer->stiffness, -2.0 / 3.0);
  return PointContacts{*inner, *outer, std::pow(softness, -1.5)};
}

Ellipse contact_ellipse(const PointContact& c, Force load) {
  const double along_shaft = c.long_axis * std::cbrt(load.si());
  return {metres(along_shaft), metres(along_shaft / c.axis_ratio)};
}
Pressure contact_stress(const PointContact& c, Force load) { return pascals(c.stress * std::cbrt(load.si())); }
Force load_at_stress(const PointContact& c, Pressure stress) { return newtons(std::pow(stress.si() / c.stress, 3)); }
Length contact_deflection(const PointContact& c, Force load) {
  return metres(std::pow(load.si() / c.stiffness, 2.0 / 3.0));
}

}  // namespace flatwise::bearings
