#include <string>
#include <vector>

#include "core/fasteners/clamped.h"
#include "core/fasteners/figures_parts.h"

namespace flatwise::fasteners {
namespace {

std::vector<InputSpec> springs_inputs() {
  return {between("flats", "n", Kind::count, 3, 24),
          above_nought("across", "s", Kind::length, kMostDiameter),
          assumed(between("youngs-modulus", "E_s", Kind::pressure, 1e9, 1e12), any(kSteelModulus),
                  "steel, common practice"),
          repeated(above_nought("length", "l", Kind::length, kMostLength)),
          repeated(above_nought("outside", "D", Kind::length, 10)),
          optional(repeated(from_nought("bore", "d", Kind::length, 10))),
          optional(repeated(between("part-modulus", "E_p", Kind::pressure, 1e9, 1e12)))};
}

Problem uneven(std::string_view field, std::size_t lengths) {
  return {
      Code{"fasteners.sleeves_uneven"}, std::string{field}, {}, {{"lengths", static_cast<int>(lengths)}}, std::nullopt};
}

Result<std::vector<ClampedPart>> parts_from(const Given& in) {
  const auto lengths = in.all_si("length");
  const auto outsides = one_each(in, "outside", lengths.size());
  const auto bores = one_each(in, "bore", lengths.size(), 0);
  const auto moduli = one_each(in, "part-modulus", lengths.size(), kSteelModulus.si());
  if (!outsides) return tl::unexpected(uneven("outside", lengths.size()));
  if (!bores) return tl::unexpected(uneven("bore", lengths.size()));
  if (!moduli) return tl::unexpected(uneven("part-modulus", lengths.size()));
  std::vector<ClampedPart> parts;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    ClampedPart part{metres(lengths[i]), metres((*outsides)[i]), std::nullopt, Pressure::from_si((*moduli)[i])};
    if ((*bores)[i] > 0) part.bore = metres((*bores)[i]);
    parts.push_back(part);
  }
  return parts;
}

Result<Computed> compute_springs(const Given& in) {
  const auto parts = parts_from(in);
  if (!parts) return tl::unexpected(parts.error());
  const PolygonBar bar{static_cast<int>(in.si("flats")), length_of(in, "across"),
                       Pressure::from_si(in.si("youngs-modulus"))};
  const auto springs = clamped_springs(bar, *parts);
  if (!springs) return tl::unexpected(springs.error());
  Length length;
  for (const ClampedPart& part : *parts) length = length + part.length;
  return Computed{.values = {any(springs->shaft), any(springs->stack), any(length)}};
}

FigureSpec springs_figure() {
  return {.name = "clamped-stiffness",
          .formula =
              "A_s = n/4 s² tan(π/n); k_s = E_s A_s / Σ l; k_p = 1 / Σ l / (E_p (π/4 D² − hole)), hole = π/4 d² or A_s",
          .inputs = springs_inputs(),
          .outputs = {{"shaft-stiffness", "k_s", Kind::stiffness},
                      {"stack-stiffness", "k_p", Kind::stiffness},
                      {"clamped-length", "Σ l", Kind::length}},
          .sources = {"Shigley"},
          .compute = compute_springs,
          .example = {{"flats=6", "across=38.1 mm", "length=2 m", "outside=55 mm"}, "shaft-stiffness=130.1 kN/mm"}};
}

TurnAsked asked_from(const Given& in, NutFactor factor) {
  TurnAsked asked{
      .torque = Torque::from_si(in.si("torque")),
      .torque_u = Torque::from_si(in.si("torque-u")),
      .snug = Torque::from_si(in.si("snug")),
      .snug_u = in.si("snug-u"),
      .diameter = length_of(in, "diameter"),
      .pitch = length_of(in, "pitch"),
      .factor = factor,
      .before = {},
      .springs = {Stiffness::from_si(in.si("shaft-stiffness")), Stiffness::from_si(in.si("stack-stiffness"))},
      .stiffness_u = in.si("stiffness-u")};
  asked.before = {Force::from_si(in.si("before-least")), Force::from_si(in.si("before-greatest"))};
  return asked;
}

void say_turned(Computed& out, const TurnExpected& band, const TurnJudged& judged, const Given& in) {
  out.answer = judged.answer;
  const Args args{{"turned", any(radians(in.si("turned")))},
                  {"u", any(radians(in.si("turned-u")))},
                  {"least", any(band.least)},
                  {"greatest", any(band.greatest)}};
  const auto say = [&](Code code, Severity severity, std::optional<Message> instruct) {
    out.findings.push_back({code, severity, args, {}, std::move(instruct)});
  };
  switch (judged.state) {
    case TurnedState::explained:
      return say(Code{"fasteners.turn_explained"}, Severity::note, std::nullopt);
    case TurnedState::too_much:
      return say(Code{"fasteners.turn_too_much"}, Severity::out, Message{Code{"fasteners.turn_look_at_stack"}, {}});
    case TurnedState::too_little:
      return say(Code{"fasteners.turn_too_little"}, Severity::out, Message{Code{"fasteners.turn_look_at_thread"}, {}});
    case TurnedState::cannot_tell:
      return say(Code{"fasteners.turn_unsure"}, Severity::cannot_tell, Message{Code{"fasteners.turn_settle_it"}, {}});
  }
}

Result<Computed> compute_expected(const Given& in) {
  const auto factor = factor_from(in);
  if (!factor) return tl::unexpected(factor.error());
  const auto band = turn_expected(asked_from(in, *factor));
  if (!band) return tl::unexpected(band.error());
  Computed out{.values = {any(band->expected), any(band->least), any(band->greatest)}};
  if (!in.has("turned")) return out;
  const auto judged = judge_turned(*band, radians(in.si("turned")), radians(in.si("turned-u")));
  if (!judged) return tl::unexpected(judged.error());
  say_turned(out, *band, *judged, in);
  return out;
}

FigureSpec expected_figure() {
  return {
      .name = "turn-expected",
      .formula =
          "θ = 360°/P (T/(K d) − F_0) (1/k_s + 1/k_p), F_0 the greater of T_s/(K d) and what is clamped before; least "
          "with "
          "K2, T − U_T, T_s (1 + U_s), k (1 + U_k), greatest likewise",
      .inputs = joined(
          {{above_nought("torque", "T", Kind::torque, kMostTorque),
            assumed(from_nought("torque-u", "U_T", Kind::torque, kMostTorque), any(Torque{}), "the torque as stated"),
            above_nought("snug", "T_s", Kind::torque, kMostTorque),
            assumed(from_nought("snug-u", "U_s", Kind::ratio, 1), any_ratio(0.3), kCommonPractice),
            above_nought("diameter", "d", Kind::length, kMostDiameter), pitch_input()},
           factor_inputs(),
           {assumed(from_nought("before-least", "F_b1", Kind::force, kMostForce), any(Force{}),
                    "this nut is the first"),
            assumed(from_nought("before-greatest", "F_b2", Kind::force, kMostForce), any(Force{}),
                    "this nut is the first")},
           stiffness_inputs(),
           {assumed(from_nought("stiffness-u", "U_k", Kind::ratio, 0.5), any_ratio(0.15), kOwnRule),
            optional(from_nought("turned", "θ_read", Kind::angle, kMostTurned)),
            assumed(from_nought("turned-u", "U_θ", Kind::angle, degrees(90).radians()), any(degrees(5)),
                    kCommonPractice)}}),
      .outputs = {{"turn", "θ", Kind::angle}, {"turn-least", "θ1", Kind::angle}, {"turn-greatest", "θ2", Kind::angle}},
      .sources = {"Shigley", "VDI2230", "NutFactors"},
      .compute = compute_expected,
      .example = {{"torque=1200 N·m", "snug=120 N·m", "diameter=36 mm", "pitch=3 mm", "nut-factor-least=0.15",
                   "nut-factor-greatest=0.15", "shaft-stiffness=252.8 kN/mm", "stack-stiffness=283.14 kN/mm"},
                  "turn=179.7°"}};
}

}  // namespace

std::vector<FigureSpec> clamped_figures() { return {springs_figure(), expected_figure()}; }

}  // namespace flatwise::fasteners
