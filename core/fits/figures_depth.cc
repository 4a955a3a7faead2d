#include <string>

#include "core/fits/compound.h"
#include "core/fits/creep.h"
#include "core/fits/figures_parts.h"
#include "core/fits/materials.h"
#include "core/fits/yielding.h"

namespace flatwise::fits {
namespace {

std::string zone_name(HubZone zone) {
  constexpr const char* kNames[] = {"elastic", "partly yielded", "fully yielded"};
  return kNames[static_cast<int>(zone)];
}

Finding hub_left_bigger(const HubState& state, const YieldPressures& limits) {
  const Args args{{"pressure", any(state.pressure)},
                  {"onset", any(limits.onset)},
                  {"border", any(state.border)},
                  {"left", any(state.left_over)}};
  if (state.zone == HubZone::fully_plastic)
    return {Code{"fits.hub_yielded_through"}, Severity::out, args, {}, Message{Code{"fits.do_not_press_this"}, {}}};
  return {Code{"fits.hub_yielded_partly"}, Severity::out, args, {}, Message{Code{"fits.gauge_bore_again"}, {}}};
}

constexpr double kCrackShare =
    0.5;  // Of the tensile strength: half is left for shocks and old castings; common practice.

std::optional<Finding> crack_finding(double share, Pressure hoop) {
  if (share <= kCrackShare) return std::nullopt;
  return Finding{share >= 1 ? Code{"fits.hub_cracks"} : Code{"fits.hub_near_crack"},
                 Severity::out,
                 {{"hoop", any(hoop)}, {"share", any_ratio(share)}},
                 {},
                 Message{Code{"fits.do_not_press_this"}, {}}};
}

/// A metal that does not yield: elastic to the end.
Computed brittle_hub(const YieldingJoint& joint, Length interference, std::vector<Finding> findings) {
  const Pressure pressure = *contact_pressure(joint.joint, interference);
  const auto stress = hoop_stress(joint.joint, pressure);
  const double share = *share_to_crack(joint.joint, pressure, joint.hub_yield);
  const Length growth =
      interference.si() > 0
          ? ((stress->hub + joint.joint.hub.poisson * pressure) / joint.joint.hub.youngs_modulus) * joint.joint.diameter
          : Length{};
  const Pressure at_crack = *pressure_for_hub_hoop(joint.joint, joint.hub_yield);
  Computed out{.values = {any(pressure), std::string{share >= 1 ? "cracked" : "elastic"}, any(joint.joint.diameter),
                          any(stress->hub), any(growth), any(Length{}), any(at_crack), any(at_crack)},
               .findings = std::move(findings)};
  if (auto said = crack_finding(share, stress->hub)) out.findings.push_back(*std::move(said));
  return out;
}

Result<Computed> compute_hub_yielding(const Given& in) {
  Computed out;
  const auto joint = joint_from(in, out.findings);
  if (!joint) return as_input(joint.error());
  const YieldingJoint yielding{*joint, pascals(in.si("hub-yield"))};
  const Length left = after_flattening(length_of(in, "interference"), length_of(in, "roughness-loss"));
  if (in.text("hub-fails") == "cracks") return brittle_hub(yielding, left, std::move(out.findings));
  const auto state = press_into_yielding(yielding, left);
  const auto limits = yield_pressures(yielding);
  if (!state) return as_input(state.error());
  out.values = {any(state->pressure),    zone_name(state->zone), any(state->border), any(state->hub_hoop),
                any(state->bore_growth), any(state->left_over),  any(limits->onset), any(limits->full)};
  if (state->zone != HubZone::elastic) out.findings.push_back(hub_left_bigger(*state, *limits));
  return out;
}

FigureSpec hub_yielding_figure() {
  return {.name = "hub-yielding",
          .formula =
              "p = Y ln(c/d) + Y/2 (1 − c²/D²), δ − loss = d [Y/E_o (c/d)² − (1 − ν_o) p/E_o] + ring; left over d/E_o "
              "[Y (c/d)² − 2 p/(1 − d²/D²)]; elastic while p < Y/2 (1 − d²/D²); cracks: p (D² + d²)/(D² − d²) = R_m",
          .inputs = joined({{from_nought("interference", "δ", Kind::length, 1e-2),
                             from_nought("roughness-loss", "loss", Kind::length, 1e-3)},
                            joint_inputs(),
                            {assumed(one_of("hub-fails", "", kHubFails), std::string{"yields"}, kOwnRule)}}),
          .outputs = {{"pressure", "p", Kind::pressure},
                      {"zone", "", Kind::ratio, true},
                      {"border", "c", Kind::length},
                      {"hub-hoop", "σ_o", Kind::pressure},
                      {"bore-growth", "Δd", Kind::length},
                      {"left-over", "Δd_0", Kind::length},
                      {"onset", "p_Y", Kind::pressure},
                      {"full", "p_full", Kind::pressure}},
          .sources = {"Hearn", "Hill", "GamerLance", "Shigley9"},
          .compute = compute_hub_yielding,
          .example = {{"interference=250 µm", "roughness-loss=5 µm", "joint-diameter=120 mm", "ring-inside=107 mm",
                       "hub-outside=180 mm", "hub-modulus=70 GPa", "hub-poisson=0.33", "hub-yield=60 MPa"},
                      "pressure=22.54 MPa"}};
}

Elastic metal_of(const Given& in, std::string_view modulus, std::string_view poisson) {
  return {.youngs_modulus = pascals(in.si(modulus)), .poisson = in.si(poisson)};
}

tl::unexpected<Problem> as_half(Problem problem) {
  constexpr std::pair<std::string_view, std::string_view> kNames[] = {
      {"tubes[1].outside", "shaft"}, {"tubes[2].inside", "half-bore"}, {"tubes[2].outside", "seat"},
      {"tubes[3].inside", "seat"},   {"tubes[3].outside", "raceway"},  {"fits[1]", "fit-shaft"},
      {"fits[2]", "fit-seat"}};
  for (const auto& [kernel, figure] : kNames)
    if (problem.field == kernel) problem.field = figure;
  return tl::unexpected(std::move(problem));
}

Result<Computed> compute_ring_on_half(const Given& in) {
  const Length bore = length_of(in, "half-bore"), seat = length_of(in, "seat");
  const Elastic half = metal_of(in, "half-modulus", "half-poisson");
  const Tube tubes[] = {{length_of(in, "shaft-bore"), bore, metal_of(in, "shaft-modulus", "shaft-poisson")},
                        {bore, seat, half},
                        {seat, length_of(in, "raceway"), metal_of(in, "ring-modulus", "ring-poisson")}};
  const Length fits[] = {-length_of(in, "shaft-clearance"), length_of(in, "fit-seat")};
  const auto all = compound(tubes, fits);
  if (!all) return as_half(all.error());
  Computed out{.values = {any(all->pressure[1]), any(all->outside_change[2]), any(-all->inside_change[1]),
                          any(all->clearance[0]), any(all->pressure[0])}};
  if (all->pressure[0] > Pressure{})
    out.findings.push_back({Code{"fits.half_grips_shaft"},
                            Severity::out,
                            {{"clearance", any(length_of(in, "shaft-clearance"))}, {"pressure", any(all->pressure[0])}},
                            {},
                            Message{Code{"fits.half_first"}, {}}});
  return out;
}

FigureSpec ring_on_half_figure() {
  const auto modulus = [](std::string_view name, std::string_view symbol) {
    return assumed(above_nought(name, symbol, Kind::pressure, 1e12), any(gigapascals(207)), "Shigley9");
  };
  const auto poisson = [](std::string_view name, std::string_view symbol) {
    return assumed(from_nought(name, symbol, Kind::ratio, 0.5), any_ratio(0.3), "Shigley9");
  };
  return {.name = "ring-on-half",
          .formula =
              "Lamé for shaft, half and ring at once: each joint pressed so that nothing overlaps, or open with no "
              "pressure",
          .inputs = {above_nought("half-bore", "d_1", Kind::length, 2), above_nought("seat", "d_2", Kind::length, 2),
                     above_nought("raceway", "d_3", Kind::length, 2),
                     assumed(from_nought("shaft-bore", "d_0", Kind::length, 2), any(Length{}), kCommonPractice),
                     between("fit-seat", "δ_2", Kind::length, -1e-3, 1e-3),
                     between("shaft-clearance", "s_1", Kind::length, -1e-3, 1e-2), modulus("shaft-modulus", "E_0"),
                     poisson("shaft-poisson", "ν_0"), modulus("half-modulus", "E_1"), poisson("half-poisson", "ν_1"),
                     modulus("ring-modulus", "E_2"), poisson("ring-poisson", "ν_2")},
          .outputs = {{"seat-pressure", "p_2", Kind::pressure},
                      {"raceway-growth", "Δd_3", Kind::length},
                      {"bore-closes", "−Δd_1", Kind::length},
                      {"clearance-left", "s", Kind::length},
                      {"shaft-pressure", "p_1", Kind::pressure}},
          .sources = {"Shigley9"},
          .compute = compute_ring_on_half,
          .example = {{"half-bore=50 mm", "seat=65 mm", "raceway=77 mm", "fit-seat=30 µm", "shaft-clearance=30 µm"},
                      "seat-pressure=9.692 MPa"}};
}

constexpr std::string_view kMetalNames[] = {"steel", "bearing steel", "grey iron", "ductile iron", "aluminium"};

Result<Computed> compute_metal(const Given& in) {
  const Metal* metal = find_metal(in.text("metal"));
  CORE_CHECK(metal != nullptr);
  return Computed{.values = {any(metal->elastic.youngs_modulus), any_ratio(metal->elastic.poisson),
                             any(metal->yield.value_or(metal->tensile)),
                             std::string{metal->yield ? "yields" : "cracks"}, any_expansion(metal->expansion_per_k),
                             std::string{metal->designation}}};
}

FigureSpec metal_figure() {
  return {.name = "metal",
          .formula =
              "as published for a common grade: least strength; strength is the yield strength, or the tensile "
              "strength of a metal that cracks",
          .inputs = {one_of("metal", "", kMetalNames)},
          .outputs = {{"modulus", "E", Kind::pressure},
                      {"poisson", "ν", Kind::ratio},
                      {"strength", "Y", Kind::pressure},
                      {"fails", "", Kind::ratio, true},
                      {"expansion", "α", Kind::expansion},
                      {"grade", "", Kind::ratio, true}},
          .sources = {"EN10025-2", "BearingSteel", "EN1561", "EN1563", "EN755-2"},
          .compute = compute_metal,
          .example = {{"metal=grey iron"}, "modulus=110 GPa"}};
}

Result<Computed> compute_creep_load(const Given& in) {
  CreepLoad load{.diameter = length_of(in, "joint-diameter"),
                 .width = length_of(in, "width"),
                 .radial = newtons(in.si("radial")),
                 .couple = newton_metres(in.si("couple")),
                 .temperature_rise = kelvins(in.si("rise")),
                 .interference_least = length_of(in, "interference-least"),
                 .interference_greatest = length_of(in, "interference-greatest")};
  if (in.has("static-rating")) load.static_rating = newtons(in.si("static-rating"));
  const auto margin = creep_margin(load);
  if (!margin) return as_input(margin.error());
  Computed out{.values = {any(margin->wanted), any_ratio(margin->margin), any(margin->loss_by_load),
                          any(margin->loss_by_heat), any(margin->equivalent)}};
  out.answer = margin->answer;
  const Args args{{"wanted", any(margin->wanted)},
                  {"least", any(load.interference_least)},
                  {"greatest", any(load.interference_greatest)}};
  if (margin->answer == Answer::out)
    out.findings.push_back(
        {Code{"fits.load_rolls_ring"}, Severity::out, args, {}, Message{Code{"fits.tighter_fit"}, {}}});
  if (margin->answer == Answer::cannot_tell)
    out.findings.push_back(
        {Code{"fits.load_may_roll_ring"}, Severity::cannot_tell, args, {}, Message{Code{"fits.measure_ring"}, {}}});
  return out;
}

FigureSpec creep_load_figure() {
  return {.name = "creep-load",
          .formula =
              "F = F_r + 6 M/B; wanted = 0.08 √(d F/B) µm (mm, N), over 0.3 C0 at least 0.02 F/B, + 0.0015 d ΔT; in: "
              "δ_min over it; out: δ_max under it",
          .inputs = {above_nought("joint-diameter", "d", Kind::length, 2), above_nought("width", "B", Kind::length, 2),
                     from_nought("radial", "F_r", Kind::force, kMostForce),
                     assumed(from_nought("couple", "M", Kind::torque, 1e9), any(newton_metres(0)), kOwnRule),
                     optional(above_nought("static-rating", "C0", Kind::force, kMostForce)),
                     assumed(between("rise", "ΔT", Kind::temperature_rise, 0, 200), any(kelvins(0)), kOwnRule),
                     between("interference-least", "δ_min", Kind::length, -1e-2, 1e-2),
                     between("interference-greatest", "δ_max", Kind::length, -1e-2, 1e-2)},
          .outputs = {{"wanted", "δ_wanted", Kind::length},
                      {"margin", "δ_min/δ_wanted", Kind::ratio},
                      {"loss-by-load", "Δ_F", Kind::length},
                      {"loss-by-heat", "Δ_T", Kind::length},
                      {"equivalent", "F", Kind::force}},
          .sources = {"CreepRule", "common practice"},
          .compute = compute_creep_load,
          .example = {{"joint-diameter=55 mm", "width=21 mm", "radial=4 kN", "couple=30 N·m", "rise=10 K",
                       "interference-least=18 µm", "interference-greatest=30 µm"},
                      "wanted=15.34 µm"}};
}

}  // namespace

std::vector<FigureSpec> depth_figures() {
  return {hub_yielding_figure(), ring_on_half_figure(), metal_figure(), creep_load_figure()};
}

}  // namespace flatwise::fits
