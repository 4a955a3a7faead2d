#include "core/fasteners/figures.h"

#include <string>
#include <utility>
#include <vector>

#include "core/fasteners/figures_parts.h"
#include "core/fasteners/strength.h"
#include "core/fasteners/thread.h"

namespace flatwise::fasteners {

Result<NutFactor> factor_from(const Given& in) {
  const bool least = in.has("nut-factor-least"), greatest = in.has("nut-factor-greatest");
  if (least && greatest) return NutFactor{in.si("nut-factor-least"), in.si("nut-factor-greatest")};
  if (least != greatest)
    return tl::unexpected(Problem{
        Code{"fasteners.nut_factor_half"}, least ? "nut-factor-greatest" : "nut-factor-least", {}, {}, std::nullopt});
  if (!in.has("lubrication")) {
    std::vector<std::string> choices(std::begin(kLubricationChoices), std::end(kLubricationChoices));
    return tl::unexpected(Problem{
        Code{"fasteners.nut_factor_missing"}, "lubrication", {}, {{"choices", std::move(choices)}}, std::nullopt});
  }
  const std::string& word = in.text("lubrication");
  for (int i = 0; i < 5; ++i)
    if (word == kLubricationChoices[i]) return nut_factor(static_cast<Lubrication>(i)).range;
  CORE_CHECK(false);
}

std::vector<InputSpec> factor_inputs() {
  return {optional(one_of("lubrication", "lubrication", kLubricationChoices)),
          optional(above_nought("nut-factor-least", "K1", Kind::ratio, 2)),
          optional(above_nought("nut-factor-greatest", "K2", Kind::ratio, 2))};
}

std::vector<InputSpec> sleeve_inputs() {
  return {repeated(above_nought("length", "l", Kind::length, kMostLength)),
          repeated(above_nought("outside", "D", Kind::length, 10)),
          repeated(from_nought("bore", "d", Kind::length, 10)),
          assumed(between("youngs-modulus", "E", Kind::pressure, 1e9, 1e12), any(gigapascals(206)),
                  "steel, common practice")};
}

Result<std::vector<Sleeve>> sleeves_from(const Given& in) {
  const auto lengths = in.all_si("length"), outsides = in.all_si("outside"), bores = in.all_si("bore");
  if (outsides.size() != lengths.size() || bores.size() != lengths.size())
    return tl::unexpected(Problem{Code{"fasteners.sleeves_uneven"},
                                  outsides.size() != lengths.size() ? "outside" : "bore",
                                  {},
                                  {{"lengths", static_cast<int>(lengths.size())}},
                                  std::nullopt});
  std::vector<Sleeve> sleeves;
  for (std::size_t i = 0; i < lengths.size(); ++i)
    sleeves.push_back({metres(lengths[i]), metres(outsides[i]), metres(bores[i])});
  return sleeves;
}

namespace {

InputSpec thread_input() { return free_text("thread", "thread"); }
Result<Computed> compute_stress_area(const Given& in) {
  const auto thread = read_thread(in.text("thread"), "thread");
  if (!thread) return tl::unexpected(thread.error());
  Computed out{
      .values = {any(stress_area(*thread)), any(thread->major), any(thread->pitch), any(pitch_diameter(*thread))}};
  if (thread->left_hand) out.findings.push_back({Code{"fasteners.left_hand"}, Severity::note, {}, {}, std::nullopt});
  return out;
}

FigureSpec stress_area_figure() {
  return {.name = "stress-area",
          .formula = "inch: A = π/4 (D − 0.9743/n)²; metric: A = π/4 ((d2 + d3)/2)²",
          .inputs = {thread_input()},
          .outputs = {{"stress-area", "A", Kind::area},
                      {"diameter", "d", Kind::length},
                      {"pitch", "P", Kind::length},
                      {"pitch-diameter", "d2", Kind::length}},
          .sources = {"B1.1", "ISO898-1", "ISO724", "ISO261"},
          .compute = compute_stress_area,
          .example = {{"thread=M36x3"}, "stress-area=864.9 mm²"}};
}

Result<Computed> compute_proof_load(const Given& in) {
  const auto thread = read_thread(in.text("thread"), "thread");
  if (!thread) return tl::unexpected(thread.error());
  const bool by_class = in.has("class"), by_material = in.has("proof-strength");
  if (by_class == by_material)
    return tl::unexpected(
        Problem{Code{"fasteners.strength_once"}, "class", {}, {{"none", by_class ? 2 : 1}}, std::nullopt});
  Pressure proof = by_material ? Pressure::from_si(in.si("proof-strength")) : Pressure{};
  if (by_class) {
    const auto strength = strength_of(in.text("class"), *thread, "class");
    if (!strength) return tl::unexpected(strength.error());
    proof = strength->proof;
  }
  const Area area = stress_area(*thread);
  return Computed{.values = {any(proof_load(proof, area)), any(proof), any(area)}};
}

FigureSpec proof_load_figure() {
  return {.name = "proof-load",
          .formula = "F_p = S_p A",
          .inputs = {thread_input(), optional(free_text("class", "class")),
                     optional(above_nought("proof-strength", "S_p", Kind::pressure, 1e10))},
          .outputs = {{"proof-load", "F_p", Kind::force},
                      {"proof-strength", "S_p", Kind::pressure},
                      {"stress-area", "A", Kind::area}},
          .sources = {"J429", "ISO898-1", "B1.1"},
          .compute = compute_proof_load,
          .example = {{"thread=M30", "class=8.8"}, "proof-load=336.4 kN"}};
}

Result<Computed> compute_preload(const Given& in) {
  const auto factor = factor_from(in);
  if (!factor) return tl::unexpected(factor.error());
  const Torque u = Torque::from_si(in.has("torque-u") ? in.si("torque-u") : 0);
  const auto band =
      preload_from_torque({Torque::from_si(in.si("torque")), u, Length::from_si(in.si("diameter")), *factor});
  if (!band) return tl::unexpected(band.error());
  Computed out{
      .values = {any(band->least), any(band->greatest), any_ratio(factor->least), any_ratio(factor->greatest)}};
  if (in.has("proof-load") && band->greatest.si() > in.si("proof-load")) {
    const AnyQuantity proof{in.si("proof-load"), Kind::force};
    const bool surely = band->least.si() > proof.si;
    out.findings.push_back({Code{"fasteners.preload_over_proof"},
                            surely ? Severity::out : Severity::cannot_tell,
                            {{"greatest", any(band->greatest)}, {"least", any(band->least)}, {"proof", proof}},
                            {},
                            Message{Code{"fasteners.check_torque"}, {}}});
  }
  return out;
}

FigureSpec torque_preload_figure() {
  return {.name = "torque-preload",
          .formula = "F1 = (T − U) / (K2 d), F2 = (T + U) / (K1 d)",
          .inputs = joined({{above_nought("torque", "T", Kind::torque, kMostTorque),
                             above_nought("diameter", "d", Kind::length, kMostDiameter)},
                            factor_inputs(),
                            {optional(from_nought("torque-u", "U", Kind::torque, kMostTorque)),
                             optional(above_nought("proof-load", "F_p", Kind::force, kMostForce))}}),
          .outputs = {{"preload-least", "F1", Kind::force},
                      {"preload-greatest", "F2", Kind::force},
                      {"nut-factor-least", "K1", Kind::ratio},
                      {"nut-factor-greatest", "K2", Kind::ratio}},
          .sources = {"Shigley", "NutFactors"},
          .compute = compute_preload,
          .example = {{"torque=900 ft·lb", "diameter=1.5 in", "nut-factor-least=0.15", "nut-factor-greatest=0.20"},
                      "preload-least=36000 lbf"}};
}

Result<Computed> compute_torque_for_preload(const Given& in) {
  const auto factor = factor_from(in);
  if (!factor) return tl::unexpected(factor.error());
  const auto band = torque_for_preload({Force::from_si(in.si("preload")), Length::from_si(in.si("diameter")), *factor});
  if (!band) return tl::unexpected(band.error());
  return Computed{
      .values = {any(band->least), any(band->greatest), any_ratio(factor->least), any_ratio(factor->greatest)}};
}

FigureSpec torque_for_preload_figure() {
  return {.name = "torque-for-preload",
          .formula = "T1 = K1 F d, T2 = K2 F d",
          .inputs = joined({{above_nought("preload", "F", Kind::force, kMostForce),
                             above_nought("diameter", "d", Kind::length, kMostDiameter)},
                            factor_inputs()}),
          .outputs = {{"torque-least", "T1", Kind::torque},
                      {"torque-greatest", "T2", Kind::torque},
                      {"nut-factor-least", "K1", Kind::ratio},
                      {"nut-factor-greatest", "K2", Kind::ratio}},
          .sources = {"Shigley", "NutFactors"},
          .compute = compute_torque_for_preload,
          .example = {{"preload=4940 lbf", "diameter=3/8 in", "nut-factor-least=0.15", "nut-factor-greatest=0.20"},
                      "torque-least=23.156 ft·lb"}};
}

Result<Computed> compute_torque_full(const Given& in) {
  const auto full = torque_full({Force::from_si(in.si("preload")), Length::from_si(in.si("pitch")),
                                 Length::from_si(in.si("pitch-diameter")), Length::from_si(in.si("bearing-diameter")),
                                 in.si("thread-friction"), in.si("bearing-friction")});
  if (!full) return tl::unexpected(full.error());
  return Computed{.values = {any(full->torque), any(full->stretching), any(full->thread), any(full->face)}};
}

FigureSpec torque_full_figure() {
  return {
      .name = "torque-full",
      .formula = "T = F (P/2π + µ_t d2/(2 cos 30°) + µ_b D_k/2)",
      .inputs = {above_nought("preload", "F", Kind::force, kMostForce), above_nought("pitch", "P", Kind::length, 0.1),
                 above_nought("pitch-diameter", "d2", Kind::length, kMostDiameter),
                 above_nought("bearing-diameter", "D_k", Kind::length, kMostDiameter),
                 from_nought("thread-friction", "µ_t", Kind::ratio, 1),
                 from_nought("bearing-friction", "µ_b", Kind::ratio, 1)},
      .outputs = {{"torque", "T", Kind::torque},
                  {"stretching", "T_P", Kind::torque},
                  {"thread", "T_t", Kind::torque},
                  {"face", "T_b", Kind::torque}},
      .sources = {"VDI2230", "Shigley"},
      .compute = compute_torque_full,
      .example = {{"preload=252265.5 N", "pitch=3.5 mm", "pitch-diameter=27.727 mm", "bearing-diameter=40 mm",
                   "thread-friction=0.12", "bearing-friction=0.12"},
                  "torque=1230.56 N·m"}};
}

Result<Computed> compute_compression(const Given& in) {
  const auto sleeves = sleeves_from(in);
  if (!sleeves) return tl::unexpected(sleeves.error());
  const auto shorter = stack_compression(Force::from_si(in.si("force")), pascals(in.si("youngs-modulus")), *sleeves);
  if (!shorter) return tl::unexpected(shorter.error());
  return Computed{.values = {any(*shorter)}};
}

FigureSpec compression_figure() {
  return {.name = "stack-compression",
          .formula = "δ = Σ F l / (E π/4 (D² − d²))",
          .inputs = joined({{above_nought("force", "F", Kind::force, kMostForce)}, sleeve_inputs()}),
          .outputs = {{"compression", "δ", Kind::length}},
          .sources = {"Shigley"},
          .compute = compute_compression,
          .example = {{"force=200 kN", "length=1.6 m", "outside=80 mm", "bore=60 mm"}, "compression=0.7064 mm"}};
}

}  // namespace

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kFigures = [] {
    std::vector<FigureSpec> all{stress_area_figure(),        proof_load_figure(),  torque_preload_figure(),
                                torque_for_preload_figure(), torque_full_figure(), compression_figure()};
    for (auto* more : {&pull_figures, &turn_figures, &clamped_figures})
      for (FigureSpec& figure : more()) all.push_back(std::move(figure));
    return all;
  }();
  return kFigures;
}

}  // namespace flatwise::fasteners
