// One contact, and all the balls under one load.
#include <algorithm>
#include <cmath>

#include "core/bearings/figures_parts.h"

namespace flatwise::bearings {
namespace {

std::vector<InputSpec> steel_inputs() {
  return {assumed(above_nought("modulus", "E", Kind::pressure, 1e12), any(kBearingSteel.youngs_modulus), "ISO76"),
          assumed(from_nought("poisson", "ν", Kind::ratio, 0.5), any_ratio(kBearingSteel.poisson), "ISO76")};
}
Result<PointContacts> contacts_from(const Given& in, const BallBearing& b) {
  auto contacts = point_contacts(b, {pascals(in.si("modulus")), in.si("poisson")});
  if (!contacts) return as_input(contacts.error());
  return contacts;
}

void say_dents(Pressure stress, std::vector<Finding>& findings) {
  if (stress > megapascals(4200))
    findings.push_back({Code{"bearings.balls_dent"}, Severity::note, {{"stress", any(stress)}}, {}, std::nullopt});
}

Result<Computed> compute_contact(const Given& in) {
  const auto b = inside_from(in);
  if (!b) return tl::unexpected(b.error());
  const auto c = contacts_from(in, *b);
  if (!c) return tl::unexpected(c.error());
  const Force load = newtons(in.si("ball-load"));
  const Ellipse inner = contact_ellipse(c->inner, load), outer = contact_ellipse(c->outer, load);
  const Length gives = contact_deflection(c->inner, load) + contact_deflection(c->outer, load);
  const Pressure stress = contact_stress(c->inner, load);
  Computed out{.values = {any(stress), any(contact_stress(c->outer, load)), any(inner.across), any(inner.along),
                          any(outer.across), any(outer.along), any(gives)}};
  say_dents(std::max(stress, contact_stress(c->outer, load)), out.findings);
  return out;
}

struct Shared {
  LoadedBearing bearing;
  Rest rest;
};
Result<Shared> shared_from(const Given& in) {
  const auto b = inside_from(in);
  if (!b) return tl::unexpected(b.error());
  const auto c = contacts_from(in, *b);
  if (!c) return tl::unexpected(c.error());
  const auto as_given = [](Problem problem) {
    std::ranges::replace(problem.field, '_', '-');
    return tl::unexpected(std::move(problem));
  };
  const auto loaded = loaded_bearing({*b, length_of(in, "clearance")}, *c, radians(in.si("cage")));
  if (!loaded) return as_given(loaded.error());
  const auto rest = rest_under(*loaded, {newtons(in.si("x")), newtons(in.si("y")), newtons(in.si("z")),
                                         newton_metres(in.si("about-x")), newton_metres(in.si("about-y"))});
  if (!rest) return as_given(rest.error());
  return Shared{*loaded, *rest};
}

/// A shift that is nought because load and balls are alike on both sides is left as a rounding of the others: far below what
/// the answer is known to. It is said as nought.
RingShift without_roundings(RingShift shift, Length arm) {
  constexpr double kRounding = 1e-12;
  const double greatest =
      std::max({std::abs(shift.x.si()), std::abs(shift.y.si()), std::abs(shift.z.si()),
                std::abs(shift.about_x.radians()) * arm.si(), std::abs(shift.about_y.radians()) * arm.si()});
  const auto below = [&](double si) { return std::abs(si) < kRounding * greatest; };
  for (Length* l : {&shift.x, &shift.y, &shift.z})
    if (below(l->si())) *l = Length{};
  for (Angle* a : {&shift.about_x, &shift.about_y})
    if (below(a->radians() * arm.si())) *a = Angle{};
  return shift;
}

Result<Computed> compute_load(const Given& in) {
  const auto shared = shared_from(in);
  if (!shared) return tl::unexpected(shared.error());
  const Rest& rest = shared->rest;
  const std::vector<BallLoad> balls = ball_loads(shared->bearing, rest.shift);
  const RingShift shift = without_roundings(rest.shift, 0.5 * length_of(in, "pitch-diameter"));
  const auto hardest = std::ranges::max_element(balls, {}, [](const BallLoad& b) { return b.load; });
  const auto carrying = std::ranges::count_if(balls, [](const BallLoad& b) { return b.load > Force{}; });
  const Pressure stress = contact_stress(shared->bearing.contacts.inner, rest.greatest);
  Computed out{.values = {any(rest.greatest), any_count(carrying), any(stress), any(hardest->contact), any(shift.x),
                          any(shift.y), any(shift.z), any(shift.about_x), any(shift.about_y)}};
  say_dents(stress, out.findings);
  for (std::size_t j = 0; j < balls.size(); ++j)
    out.findings.push_back(
        {Code{"bearings.ball_carries"},
         Severity::note,
         {{"ball", static_cast<int>(j) + 1}, {"azimuth", any(balls[j].azimuth)}, {"load", any(balls[j].load)}},
         {},
         std::nullopt});
  return out;
}

std::vector<InputSpec> load_inputs() {
  const auto none = [](std::string_view name, std::string_view symbol, Kind kind, double most) {
    return assumed(between(name, symbol, kind, -most, most), AnyQuantity{0, kind}, kOwnRule);
  };
  return {between("clearance", "G", Kind::length, -1e-3, 1e-2),
          none("cage", "ψ", Kind::angle, 7),
          none("x", "F_x", Kind::force, kMostForce),
          none("y", "F_y", Kind::force, kMostForce),
          none("z", "F_z", Kind::force, kMostForce),
          none("about-x", "M_x", Kind::torque, kMostCouple),
          none("about-y", "M_y", Kind::torque, kMostCouple)};
}

}  // namespace

FigureSpec ball_contact_figure() {
  return {
      .name = "ball-contact",
      .formula =
          "a = (3 k² E(k) Q g/(π Σρ))^(1/3), b = a/k, g = 2 (1 − ν²)/E; σ = 3 Q/(2 π a b); δ = 3 K(k) Q g/(2 π a) at "
          "both "
          "rings; 1 − 2/(k² − 1) (K/E − 1) = F(ρ)",
      .inputs = joined({{above_nought("ball-load", "Q", Kind::force, kMostForce)}, inside_inputs(), steel_inputs()}),
      .outputs = {{"stress-inner", "σ_i", Kind::pressure},
                  {"stress-outer", "σ_e", Kind::pressure},
                  {"inner-across", "a_i", Kind::length},
                  {"inner-along", "b_i", Kind::length},
                  {"outer-across", "a_e", Kind::length},
                  {"outer-along", "b_e", Kind::length},
                  {"deflection", "δ", Kind::length}},
      .sources = {"Hertz", "Harris5", "ISO76"},
      .compute = compute_contact,
      .example = {{"ball-load=1000 N", "balls=9", "ball-diameter=12.7 mm", "pitch-diameter=65 mm",
                   "inner-groove=6.604 mm", "outer-groove=6.604 mm"},
                  "stress-inner=1869 MPa"}};
}

FigureSpec load_distribution_figure() {
  return {.name = "load-distribution",
          .formula =
              "Q_j = c (r_j − A)^1.5; r_j = |(A − G/2 + x cos ψ_j + y sin ψ_j, z + R_i (θ_x sin ψ_j − θ_y cos ψ_j))|; "
              "ΣQ_j and their couples about the ring's middle, with the arm R_i, equal the load",
          .inputs = joined({inside_inputs(), load_inputs(), steel_inputs()}),
          .outputs = {{"greatest", "Q_max", Kind::force},
                      {"carrying", "Z_c", Kind::count},
                      {"stress", "σ", Kind::pressure},
                      {"contact-angle", "α", Kind::angle},
                      {"shift-x", "x", Kind::length},
                      {"shift-y", "y", Kind::length},
                      {"shift-z", "z", Kind::length},
                      {"tilt-x", "θ_x", Kind::angle},
                      {"tilt-y", "θ_y", Kind::angle}},
          .sources = {"Harris5", "ISO16281-code", "Hertz"},
          .compute = compute_load,
          .example = {{"balls=10", "ball-diameter=12.7 mm", "pitch-diameter=65 mm", "inner-groove=6.604 mm",
                       "outer-groove=6.604 mm", "clearance=0 mm", "x=10 kN"},
                      "greatest=4.379 kN"}};
}

}  // namespace flatwise::bearings
