#include "core/beam/figures.h"

#include <algorithm>
#include <cmath>

#include "core/beam/critical.h"
#include "core/beam/figures_parts.h"
#include "core/beam/stress.h"

namespace flatwise::beam {
namespace {

Result<Computed> compute_section(const Given& in) {
  const double flats = in.si("flats");
  if (flats != std::floor(flats))
    return tl::unexpected(Problem{Code{"beam.whole_flats"}, "flats", {}, {{"flats", any_ratio(flats)}}, std::nullopt});
  const Result<Section> s = polygon_section(static_cast<int>(flats), metres(in.si("across")));
  if (!s) return tl::unexpected(s.error());
  return Computed{.values = {any(s->second_moment), any(s->area), any(s->corner_modulus), any(s->flat_modulus),
                             any(s->torsion_constant), any(s->torsion_modulus),
                             any_ratio(s->shear_factor(in.si("poisson"))), any(2.0 * s->corner_radius)}};
}

FigureSpec make_section() {
  return {.name = "polygon-section",
          .formula =
              "A = n b²/4 tan π/n, I = A (6 R² − a²)/24, Z_corner = I/R, Z_flat = 2 I/b; R = b/(2 cos π/n), a = b tan "
              "π/n; K, W_t "
              "and κ = (1 + ν)/(p + q ν) from the table of n",
          .inputs = {between("flats", "n", Kind::count, 3, kMostFlats), above_nought("across", "b", Kind::length, 2),
                     assumed(from_nought("poisson", "ν", Kind::ratio, 0.499), any_ratio(0.29), kCommonPractice)},
          .outputs = {{"second-moment", "I", Kind::second_moment},
                      {"area", "A", Kind::area},
                      {"corner-modulus", "Z_corner", Kind::section_modulus},
                      {"flat-modulus", "Z_flat", Kind::section_modulus},
                      {"torsion-constant", "K", Kind::second_moment},
                      {"torsion-modulus", "W_t", Kind::section_modulus},
                      {"shear-factor", "κ", Kind::ratio},
                      {"across-corners", "2R", Kind::length}},
          .sources = {"Polygon-torsion", "Cowper"},
          .compute = compute_section,
          .example = {{"flats=6", "across=50 mm"}, "second-moment=375879 mm⁴"}};
}

/// Bent at rest and turning; turning only where something turns.
struct BothBent {
  Mesh mesh;
  Bent at_rest, turning;
};
Result<BothBent> both_bent(const Given& in) {
  const Result<Setup> setup = setup_from(in);
  if (!setup) return tl::unexpected(setup.error());
  const Result<Mesh> mesh = Mesh::make(setup->beam);
  if (!mesh) return tl::unexpected(mesh.error());
  auto rest = bent_at_rest(*mesh, setup->loads);
  if (!rest) return tl::unexpected(rest.error());
  auto turning = bent_turning(*mesh, setup->turning, radians_per_second(in.si("speed")));
  if (!turning) return tl::unexpected(turning.error());
  return BothBent{*mesh, *std::move(rest), *std::move(turning)};
}

Result<Computed> compute_deflection(const Given& in) {
  const Result<BothBent> both = both_bent(in);
  if (!both) return tl::unexpected(both.error());
  const auto stressed = stresses(both->mesh, both->at_rest, both->turning, {}).value();
  const auto worst = std::ranges::max_element(stressed, {}, &StressAt::equivalent);
  const LinePoint &rest = both->at_rest.greatest_out(), &turning = both->turning.greatest_out();
  Computed out{.values = {any(rest.out), any(rest.at), any(turning.out), any(turning.at), any(worst->equivalent),
                          any(worst->at), any(worst->at_rest), any(worst->turning)}};
  const AngularSpeed speed = radians_per_second(in.si("speed"));
  add_near(critical_speeds(both->mesh, Whirl::forward, 1).value().speeds, speed, Word{"whirl.forward"}, out.findings);
  add_stressed(worst->equivalent, out.findings);
  return out;
}

FigureSpec make_deflection() {
  std::vector<InputSpec> inputs = joined({{speed_input()}, shaft_inputs(), lean_inputs(), load_inputs()});
  return {.name = "shaft-deflection",
          .formula =
              "K x = f at rest; (K − Ω² M) x = f turning, with I_t − (s/Ω) I_p for each rotor; Timoshenko elements; σ "
              "= (|M_rest| + "
              "|M_turning|)/Z_corner",
          .inputs = std::move(inputs),
          .outputs = {{"at-rest", "x", Kind::length},
                      {"at-rest-at", "z", Kind::length},
                      {"turning", "x_Ω", Kind::length},
                      {"turning-at", "z", Kind::length},
                      {"stress", "σ", Kind::pressure},
                      {"stress-at", "z", Kind::length},
                      {"stress-at-rest", "σ_rest", Kind::pressure},
                      {"stress-turning", "σ_Ω", Kind::pressure}},
          .sources = {"Timoshenko-beam", "Przemieniecki", "Cowper"},
          .compute = compute_deflection,
          .example = {{"speed=480 /min", "length=1.5 m", "flats=6", "across=38.1 mm", "hanger=0.1 m", "hanger=1.4 m",
                       "position=0.45 m", "position=0.75 m", "position=1.05 m", "mass=11.6 kg"},
                      "at-rest=0.623 mm"}};
}

Result<Computed> compute_reactions(const Given& in) {
  const Result<BothBent> both = both_bent(in);
  if (!both) return tl::unexpected(both.error());
  const auto &rest = both->at_rest.reactions, &turning = both->turning.reactions;
  const auto most = std::ranges::max_element(rest, {}, &Reaction::size);
  const auto most_turning = std::ranges::max_element(turning, {}, &Reaction::size);
  Computed out{.values = {any(most->size), any(most->at), any(most_turning->size), any(most_turning->at)}};
  for (std::size_t i = 0; i < rest.size(); ++i)
    out.findings.push_back({Code{"beam.hanger_feels"},
                            Severity::note,
                            {{"at", any(rest[i].at)},
                             {"rest", any(rest[i].size)},
                             {"direction", any(rest[i].direction)},
                             {"turning", any(turning[i].size)},
                             {"azimuth", any(turning[i].direction)}},
                            {},
                            std::nullopt});
  return out;
}

FigureSpec make_reactions() {
  return {
      .name = "hanger-reactions",
      .formula =
          "K x = f at rest; (K − Ω² M) x = f turning; a hanger feels k x, or what balances its node where it does "
          "not give",
      .inputs = joined({{speed_input()}, shaft_inputs(), lean_inputs(), load_inputs()}),
      .outputs = {{"greatest-at-rest", "R", Kind::force},
                  {"at-rest-at", "z", Kind::length},
                  {"greatest-turning", "R_Ω", Kind::force},
                  {"turning-at", "z", Kind::length}},
      .sources = {"Timoshenko-beam", "Przemieniecki"},
      .compute = compute_reactions,
      .example = {{"speed=480 /min", "length=1.2 m", "diameter=40 mm", "hanger=0 m", "hanger=1.2 m", "position=0.6 m",
                   "mass=10 kg", "inertia-across=0.1 kg·m²", "inertia-along=0.2 kg·m²", "lean=5°", "azimuth=0°"},
                  "greatest-at-rest=107.1 N"}};
}

Result<Computed> compute_critical(const Given& in) {
  const Result<Setup> setup = setup_from(in);
  if (!setup) return tl::unexpected(setup.error());
  const Result<Mesh> mesh = Mesh::make(setup->beam);
  if (!mesh) return tl::unexpected(mesh.error());
  const AngularSpeed speed = radians_per_second(in.si("speed"));
  Computed out;
  for (const bool forward : {true, false}) {
    const auto found = critical_speeds(*mesh, forward ? Whirl::forward : Whirl::backward, kCriticalsTold).value();
    if (found.none_up_to)
      return tl::unexpected(Problem{Code{"beam.fewer_criticals"},
                                    "length",
                                    {},
                                    {{"count", static_cast<std::int64_t>(found.speeds.size())},
                                     {"wanted", kCriticalsTold},
                                     {"greatest", any(*found.none_up_to)}},
                                    std::nullopt});
    for (const AngularSpeed c : found.speeds) out.values.push_back(any(c));
    add_near(found.speeds, speed, forward ? Word{"whirl.forward"} : Word{"whirl.backward"}, out.findings);
  }
  return out;
}

FigureSpec make_critical() {
  std::vector<OutputSpec> outputs;
  for (const std::string_view name : {"forward-1", "forward-2", "forward-3", "forward-4", "forward-5", "forward-6"})
    outputs.push_back({name, "Ω_f", Kind::angular_speed});
  for (const std::string_view name :
       {"backward-1", "backward-2", "backward-3", "backward-4", "backward-5", "backward-6"})
    outputs.push_back({name, "Ω_b", Kind::angular_speed});
  std::vector<InputSpec> inputs = joined({{speed_input()}, shaft_inputs(), lean_inputs()});
  return {.name = "critical-speeds",
          .formula =
              "det (K − Ω² M) = 0, with I_t − (s/Ω) I_p forward and I_t + (s/Ω) I_p backward; counted by the signs of "
              "the pivots, so "
              "that none is missed",
          .inputs = std::move(inputs),
          .outputs = std::move(outputs),
          .sources = {"Timoshenko-beam", "Przemieniecki", "Sylvester", "Wittrick-Williams"},
          .compute = compute_critical,
          .example = {{"speed=540 /min", "length=2 m", "flats=6", "across=50 mm", "youngs-modulus=207 GPa",
                       "hanger=0 m", "hanger=2 m"},
                      "forward-1=1594 /min"}};
}

}  // namespace

const FigureSpec& section_figure() {
  static const FigureSpec kFigure = make_section();
  return kFigure;
}
const FigureSpec& deflection_figure() {
  static const FigureSpec kFigure = make_deflection();
  return kFigure;
}
const FigureSpec& reactions_figure() {
  static const FigureSpec kFigure = make_reactions();
  return kFigure;
}
const FigureSpec& critical_figure() {
  static const FigureSpec kFigure = make_critical();
  return kFigure;
}

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kFigures{section_figure(), deflection_figure(), reactions_figure(),
                                                critical_figure()};
  return kFigures;
}

}  // namespace flatwise::beam
