// Ratings, static safety, life by the standard's simple way, and grease.
#include <algorithm>
#include <cmath>

#include "core/bearings/figures_parts.h"

namespace flatwise::bearings {
namespace {

constexpr std::string_view kRunning[] = {"smooth", "normal", "shock"};
constexpr std::string_view kQuiet[] = {"unimportant", "normal", "high"};
constexpr std::string_view kColumns[] = {"CN", "C3"};                        // As AxialColumn.
constexpr double kWanted[3][3] = {{0.5, 1, 2}, {0.5, 1, 2}, {1.5, 1.5, 2}};  // By running, by quiet.

std::size_t place_of(std::string_view word, std::span<const std::string_view> words) {
  return static_cast<std::size_t>(std::ranges::find(words, word) - words.begin());
}

Result<Computed> compute_ratings(const Given& in) {
  const auto b = inside_from(in);
  if (!b) return tl::unexpected(b.error());
  const auto r = ratings_of(*b);
  if (!r) return as_input(r.error());
  const double share = b->ball / b->pitch;
  return Computed{.values = {any(r->dynamic), any(r->static_load), any(r->fatigue), any_ratio(dynamic_factor(share)),
                             any_ratio(static_factor(share))}};
}

Combined combined_from(const Given& in) { return {newtons(in.si("radial")), newtons(in.si("axial"))}; }

Result<Computed> compute_safety(const Given& in) {
  const auto p = equivalent_static_load(combined_from(in));
  if (!p) return as_input(p.error());
  const double safety = newtons(in.si("static-rating")) / *p;
  const double wanted = kWanted[place_of(in.text("running"), kRunning)][place_of(in.text("quiet"), kQuiet)];
  Computed out{.values = {any_ratio(safety), any(*p), any_ratio(wanted)}};
  out.answer = safety >= wanted ? Answer::in : Answer::out;
  if (safety < wanted)
    out.findings.push_back({Code{"bearings.static_safety_low"},
                            Severity::out,
                            {{"safety", any_ratio(safety)}, {"wanted", any_ratio(wanted)}},
                            {},
                            Message{Code{"bearings.less_load_or_bigger"}, {}}});
  return out;
}

Result<Computed> compute_life(const Given& in) {
  const Force c = newtons(in.si("dynamic-rating")), c0 = newtons(in.si("static-rating"));
  const auto column = static_cast<AxialColumn>(place_of(in.text("clearance"), kColumns));
  const auto p = equivalent_load(combined_from(in), in.si("static-factor"), c0, column);
  if (!p) return as_input(p.error());
  const double turns = basic_life(c, p->load);
  const Time basic = running_time(turns, radians_per_second(in.si("relative-speed")));
  const double a1 = reliability_factor(in.si("reliability"));
  const Length pitch = length_of(in, "pitch-diameter");
  const auto ratio = viscosity_ratio(lubrication_from(in), radians_per_second(in.si("relative-speed")), pitch);
  if (!ratio) return as_input(ratio.error());
  const Contamination dirt = contamination(lubrication_from(in).cleanliness, pitch);
  const Force fatigue = fatigue_limit(c0, pitch);
  const double kappa = std::min(kMostViscosity, *ratio);
  const Time least = a1 * life_factor(kappa, dirt.least * (fatigue / p->load)) * basic;
  const Time greatest = a1 * life_factor(kappa, dirt.greatest * (fatigue / p->load)) * basic;
  Computed out{.values = {any(basic), any_ratio(turns), any(p->load), any(least), any(greatest), any_ratio(a1),
                          any_ratio(least.si() / in.si("season-hours")), any_ratio(*ratio)}};
  say_viscosity_capped(*ratio, out.findings);
  return out;
}

Result<Computed> compute_grease(const Given& in) {
  const Length outside = length_of(in, "bearing-outside"), width = length_of(in, "width");
  const auto space = free_space({length_of(in, "bearing-bore"), outside, width, kilograms(in.si("bearing-mass"))});
  if (!space) {
    Problem problem = space.error();
    if (problem.field == "mass") problem.field = "bearing-mass";
    if (problem.field == "outside") problem.field = "bearing-outside";
    return as_input(std::move(problem));
  }
  const double grease = in.si("grease-density") * *space;
  return Computed{.values = {any(grease_quantity(outside, width)), any(kilograms(grease)), any(kilograms(0.3 * grease)),
                             any(kilograms(0.5 * grease))}};
}

std::vector<InputSpec> combined_inputs() {
  return {from_nought("radial", "F_r", Kind::force, kMostForce), from_nought("axial", "F_a", Kind::force, kMostForce)};
}

}  // namespace

std::vector<InputSpec> rating_inputs() {
  return {optional(above_nought("dynamic-rating", "C", Kind::force, kMostForce)),
          optional(above_nought("static-rating", "C_0", Kind::force, kMostForce))};
}

Result<Ratings> ratings_from(const Given& in, const BallBearing& b, std::vector<Finding>& findings) {
  const auto stated = [&](std::string_view name) {
    return in.has(name) ? std::optional{newtons(in.si(name))} : std::nullopt;
  };
  const auto dynamic = stated("dynamic-rating"), static_load = stated("static-rating");
  const Result<Ratings> r = ratings_of(b, dynamic, static_load);
  if (!r) return as_input(r.error());
  if (!dynamic || !static_load)
    findings.push_back({Code{"bearings.rated_from_geometry"},
                        Severity::note,
                        {{"dynamic", any(r->dynamic)}, {"static", any(r->static_load)}},
                        {},
                        std::nullopt});
  return *r;
}

std::vector<InputSpec> lubrication_inputs() {
  return {optional(above_nought("viscosity", "ν", Kind::viscosity, 1)),
          instead_of(assumed(between("viscosity-ratio", "κ", Kind::ratio, kLeastViscosity, 100), any_ratio(1),
                             kCommonPractice),
                     "viscosity"),
          assumed(one_of("cleanliness", "clean", kCleanlinesses), std::string{"typical"}, kCommonPractice),
          assumed(between("reliability", "R", Kind::ratio, 0.9, 0.9995), any_ratio(0.9), "ISO281")};
}

Lubrication lubrication_from(const Given& in) {
  Lubrication oil;
  if (in.has("viscosity"))
    oil.viscosity = Viscosity::from_si(in.si("viscosity"));
  else
    oil.viscosity_ratio = in.si("viscosity-ratio");
  oil.cleanliness = static_cast<Cleanliness>(place_of(in.text("cleanliness"), kCleanlinesses));
  return oil;
}

void say_viscosity_capped(double ratio, std::vector<Finding>& findings) {
  if (ratio > kMostViscosity)
    findings.push_back(
        {Code{"bearings.viscosity_counts_as_four"}, Severity::note, {{"ratio", any_ratio(ratio)}}, {}, std::nullopt});
}

InputSpec season_input() {
  return assumed(above_nought("season-hours", "h", Kind::time, 3.2e7), any(seconds(300 * 3600.0)), kOwnRule);
}

FigureSpec bearing_ratings_figure() {
  return {.name = "bearing-ratings",
          .formula =
              "C = 1.3 f_c Z^(2/3) D_w^1.8 (over 25.4 mm: 3.647 D_w^1.4); C_0 = f_0 Z D_w²; C_u = C_0/22, over "
              "d_m 100 mm times √(100/d_m); N and mm",
          .inputs = inside_inputs(),
          .outputs = {{"dynamic-rating", "C", Kind::force},
                      {"static-rating", "C_0", Kind::force},
                      {"fatigue-limit", "C_u", Kind::force},
                      {"dynamic-factor", "f_c", Kind::ratio},
                      {"static-factor", "f_0", Kind::ratio}},
          .sources = {"ISO281", "ISO76", "ISO1281-1"},
          .compute = compute_ratings,
          .example = {{"balls=9", "ball-diameter=7.94 mm", "pitch-diameter=39.04 mm", "inner-groove=4.129 mm",
                       "outer-groove=4.208 mm"},
                      "dynamic-rating=14.0 kN"}};
}

FigureSpec static_safety_figure() {
  return {.name = "static-safety",
          .formula = "S_0 = C_0/P_0; P_0 = max(F_r, 0.6 F_r + 0.5 F_a)",
          .inputs = joined({combined_inputs(),
                            {above_nought("static-rating", "C_0", Kind::force, kMostForce),
                             assumed(one_of("running", "running", kRunning), std::string{"shock"}, kCommonPractice),
                             assumed(one_of("quiet", "quiet", kQuiet), std::string{"normal"}, kCommonPractice)}}),
          .outputs = {{"safety", "S_0", Kind::ratio},
                      {"equivalent-static", "P_0", Kind::force},
                      {"wanted", "S_w", Kind::ratio}},
          .sources = {"ISO76", "StaticGuide"},
          .compute = compute_safety,
          .example = {{"radial=8 kN", "axial=3 kN", "static-rating=38 kN"}, "safety=4.75"}};
}

FigureSpec bearing_life_figure() {
  return {.name = "bearing-life",
          .formula =
              "L = (C/P)³ 10⁶/n; P = F_r, or X F_r + Y F_a where F_a > e F_r, X = 0.56 (C3: 0.46), e and Y by f_0 "
              "F_a/C_0; L_m = a_1 "
              "a_ISO L; "
              "a_ISO = 0.1 (1 − (2.5671 − c_2/κ^c_3)^0.83 (e_C C_u/P)^(1/3))^−9.3 ≤ 50; κ = ν/ν_1; ν_1 = 45000 n^−0.83 "
              "d_m^−0.5, from 1000 r/min 4500 (n d_m)^−0.5 (mm²/s, r/min, mm); seasons = L_m/h",
          .inputs = joined({combined_inputs(),
                            {above_nought("dynamic-rating", "C", Kind::force, kMostForce),
                             above_nought("static-rating", "C_0", Kind::force, kMostForce),
                             between("static-factor", "f_0", Kind::ratio, 5, 20),
                             assumed(one_of("clearance", "group", kColumns), std::string{"CN"}, kCommonPractice),
                             above_nought("relative-speed", "n", Kind::angular_speed, 1e4),
                             above_nought("pitch-diameter", "d_m", Kind::length, 2)},
                            lubrication_inputs(),
                            {season_input()}}),
          .outputs = {{"life", "L", Kind::time},
                      {"million-turns", "L_10", Kind::ratio},
                      {"equivalent", "P", Kind::force},
                      {"modified-least", "L_m1", Kind::time},
                      {"modified-greatest", "L_m2", Kind::time},
                      {"reliability-factor", "a_1", Kind::ratio},
                      {"seasons", "seasons", Kind::ratio},
                      {"viscosity-ratio", "κ", Kind::ratio}},
          .sources = {"ISO281", "ISO1281-2", "LargerClearance"},
          .compute = compute_life,
          .example = {{"radial=8 kN", "axial=3 kN", "dynamic-rating=65 kN", "static-rating=38 kN", "static-factor=13.2",
                       "relative-speed=540 rpm", "pitch-diameter=85 mm"},
                      "life=11175.4 h"}};
}

FigureSpec bearing_grease_figure() {
  return {
      .name = "bearing-grease",
      .formula = "G = 0.005 D B (g, mm); m = ρ (π/4 (D² − d²) B − m_b/7850 kg/m³); 30 % to 50 % of m for a first fill",
      .inputs = {above_nought("bearing-bore", "d", Kind::length, 2),
                 above_nought("bearing-outside", "D", Kind::length, 2), above_nought("width", "B", Kind::length, 1),
                 above_nought("bearing-mass", "m_b", Kind::mass, 1e3),
                 assumed(between("grease-density", "ρ", Kind::density, 500, 2000), AnyQuantity{900, Kind::density},
                         kCommonPractice)},
      .outputs = {{"quantity", "G", Kind::mass},
                  {"full", "m", Kind::mass},
                  {"fill-least", "m1", Kind::mass},
                  {"fill-greatest", "m2", Kind::mass}},
      .sources = {"common practice"},
      .compute = compute_grease,
      .example = {{"bearing-bore=50 mm", "bearing-outside=110 mm", "width=27 mm", "bearing-mass=1.06 kg"},
                  "quantity=14.85 g"}};
}

}  // namespace flatwise::bearings
