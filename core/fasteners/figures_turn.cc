#include <string>
#include <vector>

#include "core/fasteners/figures_parts.h"
#include "core/fasteners/turn.h"

namespace flatwise::fasteners {

std::vector<InputSpec> stiffness_inputs() {
  return {above_nought("shaft-stiffness", "k_s", Kind::stiffness, kMostStiffness),
          above_nought("stack-stiffness", "k_p", Kind::stiffness, kMostStiffness)};
}
InputSpec pitch_input() { return above_nought("pitch", "P", Kind::length, 0.1); }

namespace {

constexpr std::string_view kFaceWords[] = {"smooth", "turned", "rough"};

Result<Computed> compute_stiffness(const Given& in) {
  const auto sleeves = sleeves_from(in);
  if (!sleeves) return tl::unexpected(sleeves.error());
  const auto stiffness = stiffness_of(Pressure::from_si(in.si("youngs-modulus")), *sleeves);
  if (!stiffness) return tl::unexpected(stiffness.error());
  return Computed{.values = {any(*stiffness)}};
}

FigureSpec stiffness_figure() {
  return {.name = "sleeve-stiffness",
          .formula = "k = 1 / Σ l / (E π/4 (D² − d²))",
          .inputs = sleeve_inputs(),
          .outputs = {{"stiffness", "k", Kind::stiffness}},
          .sources = {"Shigley"},
          .compute = compute_stiffness,
          .example = {{"length=1.6 m", "outside=80 mm", "bore=60 mm"}, "stiffness=283.1 kN/mm"}};
}

Result<Computed> compute_turn(const Given& in) {
  const Turned turned{.pitch = length_of(in, "pitch"),
                      .turned = radians(in.si("turned")),
                      .turned_u = radians(in.si("turned-u")),
                      .snug = {Force::from_si(in.si("snug-least")), Force::from_si(in.si("snug-greatest"))},
                      .shaft = Stiffness::from_si(in.si("shaft-stiffness")),
                      .stack = Stiffness::from_si(in.si("stack-stiffness")),
                      .stiffness_u = in.si("stiffness-u")};
  const auto preload = preload_from_turn(turned);
  if (!preload) return tl::unexpected(preload.error());
  Computed out{.values = {any(preload->preload), any(preload->least), any(preload->greatest), any(preload->advance),
                          any_ratio(preload->share_of_snug)}};
  if (!in.has("proof-load")) return out;
  const Force proof = Force::from_si(in.si("proof-load"));
  if (preload->greatest > proof)
    out.findings.push_back(
        {Code{"fasteners.preload_over_proof"},
         preload->least > proof ? Severity::out : Severity::cannot_tell,
         {{"least", any(preload->least)}, {"greatest", any(preload->greatest)}, {"proof", any(proof)}},
         {},
         Message{Code{"fasteners.check_turn"}, {}}});
  return out;
}

FigureSpec turn_figure() {
  return {.name = "angle-turn",
          .formula =
              "F = F_snug + P (θ/360°) / (1/k_s + 1/k_p); least with F_snug,1, θ − U_θ and k (1 − U_k), greatest "
              "likewise",
          .inputs = joined({{pitch_input(), above_nought("turned", "θ", Kind::angle, kMostTurned),
                             assumed(from_nought("turned-u", "U_θ", Kind::angle, degrees(90).radians()),
                                     any(degrees(5)), kCommonPractice),
                             from_nought("snug-least", "F_snug,1", Kind::force, kMostForce),
                             from_nought("snug-greatest", "F_snug,2", Kind::force, kMostForce)},
                            stiffness_inputs(),
                            {assumed(from_nought("stiffness-u", "U_k", Kind::ratio, 0.5), any_ratio(0.15), kOwnRule),
                             optional(above_nought("proof-load", "F_p", Kind::force, kMostForce))}}),
          .outputs = {{"preload", "F", Kind::force},
                      {"preload-least", "F1", Kind::force},
                      {"preload-greatest", "F2", Kind::force},
                      {"advance", "P θ/360°", Kind::length},
                      {"share-of-snug", "F_snug/F", Kind::ratio}},
          .sources = {"VDI2230", "Shigley"},
          .compute = compute_turn,
          .example = {{"pitch=3 mm", "turned=60°", "snug-least=25 kN", "snug-greatest=35 kN",
                       "shaft-stiffness=252.8 kN/mm", "stack-stiffness=283.14 kN/mm"},
                      "preload=96.78 kN"}};
}

Result<Computed> compute_settling(const Given& in) {
  Faces faces = Faces::turned;
  for (int i = 0; i < 3; ++i)
    if (in.text("faces") == kFaceWords[i]) faces = static_cast<Faces>(i);
  const auto settled = settling({.faces = faces,
                                 .joints = static_cast<int>(in.si("joints")),
                                 .nut_faces = static_cast<int>(in.si("nut-faces")),
                                 .threads = static_cast<int>(in.si("threads")),
                                 .pitch = length_of(in, "pitch"),
                                 .preload = Force::from_si(in.si("preload")),
                                 .shaft = Stiffness::from_si(in.si("shaft-stiffness")),
                                 .stack = Stiffness::from_si(in.si("stack-stiffness"))});
  if (!settled) return tl::unexpected(settled.error());
  Computed out{.values = {any(settled->loss), any_ratio(settled->left), any(settled->amount), any(settled->turn)}};
  constexpr double kMuch = 0.8;  // Under it the nut wants a second pull before real work: common practice.
  if (settled->left < kMuch)
    out.findings.push_back({Code{"fasteners.settles_much"},
                            Severity::note,
                            {{"left", any_ratio(settled->left)}, {"loss", any(settled->loss)}},
                            {},
                            Message{Code{"fasteners.pull_again_after_run"}, {}}});
  return out;
}

FigureSpec settling_figure() {
  return {.name = "settling",
          .formula = "f_Z = threads + nut faces + joints (table); loss = f_Z / (1/k_s + 1/k_p); turn = 360° f_Z/P",
          .inputs = joined({{assumed(one_of("faces", "", kFaceWords), std::string{"turned"}, kOwnRule),
                             between("joints", "n", Kind::count, 0, 2000),
                             assumed(between("nut-faces", "n_n", Kind::count, 0, 2000), any_count(1), kOwnRule),
                             assumed(between("threads", "n_t", Kind::count, 1, 2), any_count(1), kOwnRule),
                             pitch_input(), above_nought("preload", "F", Kind::force, kMostForce)},
                            stiffness_inputs()}),
          .outputs = {{"loss", "F_Z", Kind::force},
                      {"left", "1 − F_Z/F", Kind::ratio},
                      {"amount", "f_Z", Kind::length},
                      {"turn", "θ_Z", Kind::angle}},
          .sources = {"VDI2230"},
          .compute = compute_settling,
          .example = {{"joints=12", "pitch=3 mm", "preload=96.78 kN", "shaft-stiffness=252.8 kN/mm",
                       "stack-stiffness=283.14 kN/mm"},
                      "loss=4.007 kN"}};
}

Result<Computed> compute_second_pull(const Given& in) {
  const Repulled pulled{.turned = radians(in.si("turned")),
                        .turned_u = radians(in.si("turned-u")),
                        .expected = radians(in.si("expected")),
                        .spread = in.si("spread")};
  const auto judged = judge_repulled(pulled);
  if (!judged) return tl::unexpected(judged.error());
  Computed out{.values = {any(judged->greatest)}};
  out.answer = judged->answer;
  const Args args{{"turned", any(pulled.turned)}, {"u", any(pulled.turned_u)}, {"greatest", any(judged->greatest)}};
  if (judged->state == RepulledState::held)
    out.findings.push_back({Code{"fasteners.nut_held"}, Severity::note, args, {}, std::nullopt});
  if (judged->state == RepulledState::lost)
    out.findings.push_back(
        {Code{"fasteners.nut_lost"}, Severity::out, args, {}, Message{Code{"fasteners.look_along_stack"}, {}}});
  if (judged->state == RepulledState::cannot_tell)
    out.findings.push_back(
        {Code{"fasteners.nut_unsure"}, Severity::cannot_tell, args, {}, Message{Code{"fasteners.run_again"}, {}}});
  return out;
}

FigureSpec second_pull_figure() {
  return {.name = "second-pull",
          .formula = "held: θ + U ≤ θ_Z (1 + s); lost: θ − U over it; else cannot tell",
          .inputs = {from_nought("turned", "θ", Kind::angle, kMostTurned),
                     assumed(from_nought("turned-u", "U", Kind::angle, degrees(90).radians()), any(degrees(2)),
                             kCommonPractice),
                     from_nought("expected", "θ_Z", Kind::angle, kMostTurned),
                     assumed(from_nought("spread", "s", Kind::ratio, 5), any_ratio(0.5), kOwnRule)},
          .outputs = {{"greatest", "θ_Z (1 + s)", Kind::angle}},
          .sources = {"VDI2230", "ISO14253-1", "common practice"},
          .compute = compute_second_pull,
          .example = {{"turned=3°", "expected=3.6°"}, "greatest=5.4°"}};
}

Result<Computed> compute_own_factor(const Given& in) {
  const auto torques = in.all_si("torque"), preloads = in.all_si("preload");
  if (torques.size() != preloads.size())
    return tl::unexpected(Problem{Code{"fasteners.pulls_uneven"},
                                  "preload",
                                  {},
                                  {{"torques", static_cast<std::int64_t>(torques.size())},
                                   {"preloads", static_cast<std::int64_t>(preloads.size())}},
                                  std::nullopt});
  const auto published = factor_from(in);
  if (!published) return tl::unexpected(published.error());
  std::vector<KnownPull> pulls;
  for (std::size_t i = 0; i < torques.size(); ++i)
    pulls.push_back({Torque::from_si(torques[i]), Force::from_si(preloads[i])});
  const auto own = own_nut_factor(pulls, length_of(in, "diameter"), *published);
  if (!own) return tl::unexpected(own.error());
  Computed out{.values = {any_ratio(own->mean), any_ratio(own->range.least), any_ratio(own->range.greatest),
                          any_ratio(own->deviation), any_count(own->pulls)}};
  const Args args{{"pulls", own->pulls}, {"wanted", kPullsToNarrow}};
  out.findings.push_back({own->narrowed ? Code{"fasteners.factor_narrowed"} : Code{"fasteners.factor_published"},
                          Severity::note,
                          args,
                          {},
                          std::nullopt});
  return out;
}

FigureSpec own_factor_figure() {
  return {.name = "own-nut-factor",
          .formula = "K_i = T_i/(F_i d); next nut: mean ∓ t(0.975, n − 1) s √(1 + 1/n), from five pulls",
          .inputs = joined({{repeated(above_nought("torque", "T_i", Kind::torque, kMostTorque)),
                             repeated(above_nought("preload", "F_i", Kind::force, kMostForce)),
                             above_nought("diameter", "d", Kind::length, kMostDiameter)},
                            factor_inputs()}),
          .outputs = {{"mean", "K", Kind::ratio},
                      {"nut-factor-least", "K1", Kind::ratio},
                      {"nut-factor-greatest", "K2", Kind::ratio},
                      {"deviation", "s", Kind::ratio},
                      {"pulls", "n", Kind::count}},
          .sources = {"Shigley", "NutFactors", "PredictionInterval"},
          .compute = compute_own_factor,
          .example = {{"torque=576 N·m", "torque=540 N·m", "torque=612 N·m", "torque=576 N·m", "torque=576 N·m",
                       "preload=100 kN", "preload=100 kN", "preload=100 kN", "preload=100 kN", "preload=100 kN",
                       "diameter=36 mm", "lubrication=oiled"},
                      "mean=0.16"}};
}

}  // namespace

std::vector<FigureSpec> turn_figures() {
  return {stiffness_figure(), turn_figure(), settling_figure(), second_pull_figure(), own_factor_figure()};
}

}  // namespace flatwise::fasteners
