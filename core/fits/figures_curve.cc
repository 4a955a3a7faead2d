#include <algorithm>
#include <string>

#include "core/fits/figures_parts.h"
#include "core/fits/press_curve.h"

namespace flatwise::fits {
namespace {

std::vector<InputSpec> path_inputs() {
  return joined(
      {{between("interference-least", "δ_min", Kind::length, -1e-2, 1e-2),
        between("interference-greatest", "δ_max", Kind::length, -1e-2, 1e-2),
        from_nought("roughness-loss", "loss", Kind::length, 1e-3), above_nought("width", "L", Kind::length, 2),
        assumed(from_nought("lead", "e", Kind::length, 1), any(millimetres(2)), kCommonPractice),
        assumed(between("bore-taper", "t", Kind::length, -1e-3, 1e-3), any(Length{}), kOwnRule),
        assumed(one_of("hub-fails", "", kHubFails), std::string{"yields"}, kOwnRule)},
       joint_inputs(),
       friction_inputs()});
}

Result<PressPath> path_from(const Given& in, std::vector<Finding>& findings) {
  const auto joint = joint_from(in, findings);
  if (!joint) return tl::unexpected(joint.error());
  return PressPath{.pressing = {.joint = *joint,
                                .width = length_of(in, "width"),
                                .roughness_loss = length_of(in, "roughness-loss"),
                                .interference = {.least = length_of(in, "interference-least"),
                                                 .greatest = length_of(in, "interference-greatest")},
                                .friction = friction_from(in),
                                .hub_yield = pascals(in.si("hub-yield"))},
                   .lead = length_of(in, "lead"),
                   .bore_taper = length_of(in, "bore-taper"),
                   .hub_may_yield = in.text("hub-fails") == "yields"};
}

Result<Computed> compute_press_curve(const Given& in) {
  Computed out;
  const auto path = path_from(in, out.findings);
  if (!path) return as_input(path.error());
  const Length travels[] = {length_of(in, "travel"), path->lead + path->pressing.width};
  const auto curve = press_curve(*path, travels);
  if (!curve) return as_input(curve.error());
  const auto work = press_work(*path);
  CORE_CHECK(work);
  out.values = {any((*curve)[0].least),    any((*curve)[0].greatest), any((*curve)[1].least),
                any((*curve)[1].greatest), any(travels[1]),           any_energy(work->si())};
  const bool from_nought = !((*curve)[1].least > Force{});
  if (in.text("friction-from") == "books" || from_nought) out.findings.push_back(band_hides(from_nought));
  return out;
}

FigureSpec press_curve_figure() {
  return {
      .name = "press-curve",
      .formula =
          "F(x) = µ π d ∫ p(δ(s)) ds over the engaged x − e ≤ L; p by Lamé, or partly yielded; least with δ_min and "
          "µ1, greatest with δ_max and µ2",
      .inputs = joined({{from_nought("travel", "x", Kind::length, 3)}, path_inputs()}),
      .outputs = {{"force-least", "F1(x)", Kind::force},
                  {"force-greatest", "F2(x)", Kind::force},
                  {"home-least", "F1", Kind::force},
                  {"home-greatest", "F2", Kind::force},
                  {"home-at", "e + L", Kind::length},
                  {"work", "W", Kind::energy}},
      .sources = {"Shigley9", "Hill", "FrictionBooks"},
      .compute = compute_press_curve,
      .example = {{"travel=14.5 mm", "interference-least=15 µm", "interference-greatest=50 µm", "roughness-loss=5 µm",
                   "width=25 mm", "joint-diameter=120 mm", "ring-inside=107 mm", "hub-outside=180 mm",
                   "hub-modulus=110 GPa", "hub-poisson=0.26", "hub-yield=250 MPa"},
                  "force-least=469.8 N"}};
}

std::string said_name(CurveSaid said) {
  constexpr const char* kNames[] = {"inside", "below", "above", "sudden drop", "bends down", "bends up", "not home"};
  return kNames[static_cast<int>(said)];
}

Finding curve_finding(CurveSaid said, const CurveRead& read) {
  Args args{{"force", any(read.home)}, {"bend", any_ratio(read.bend)}};
  if (read.first_outside) args.emplace_back("travel", any(*read.first_outside));
  const auto out = [&](Code code, Code mend) { return Finding{code, Severity::out, args, {}, Message{mend, {}}}; };
  switch (said) {
    case CurveSaid::below:
      return out(Code{"fits.curve_below"}, Code{"fits.look_low"});
    case CurveSaid::above:
      return out(Code{"fits.curve_above"}, Code{"fits.look_high"});
    case CurveSaid::sudden_drop:
      return out(Code{"fits.curve_drops"}, Code{"fits.look_for_crack"});
    case CurveSaid::bends_down:
      return out(Code{"fits.curve_bends_down"}, Code{"fits.gauge_bore_again"});
    case CurveSaid::bends_up:
      return out(Code{"fits.curve_bends_up"}, Code{"fits.look_high"});
    case CurveSaid::not_home:
      return out(Code{"fits.curve_not_home"}, Code{"fits.press_home"});
    case CurveSaid::inside:
      break;
  }
  const bool sure = read.answer == Answer::in;
  return {sure ? Code{"fits.curve_inside"} : Code{"fits.curve_near"},
          sure ? Severity::note : Severity::cannot_tell,
          std::move(args),
          {},
          sure ? std::nullopt : std::optional{Message{Code{"fits.use_finer_gauge"}, {}}}};
}

Result<CurveReading> reading_from(const Given& in) {
  const auto travels = in.all_si("travel"), forces = in.all_si("force");
  if (travels.size() != forces.size())
    return tl::unexpected(Problem{
        Code{"fits.curve_uneven"},
        "force",
        {},
        {{"forces", static_cast<std::int64_t>(forces.size())}, {"travels", static_cast<std::int64_t>(travels.size())}},
        std::nullopt});
  CurveReading reading{.points = {}, .expanded = newtons(in.si("force-uncertainty"))};
  for (std::size_t i = 0; i < travels.size(); ++i) reading.points.push_back({metres(travels[i]), newtons(forces[i])});
  return reading;
}

Result<Computed> compute_curve_read(const Given& in) {
  Computed out;
  const auto path = path_from(in, out.findings);
  if (!path) return as_input(path.error());
  const auto reading = reading_from(in);
  if (!reading) return tl::unexpected(reading.error());
  const auto read = read_curve(*reading, *path);
  if (!read) return as_input(read.error());
  out.values = {any(read->interference), said_name(read->said.front()), any(read->home), any_ratio(read->bend),
                std::string{read->stop_felt ? "yes" : "no"}};
  out.u = {Uncertainty{read->expanded.si() / 2, std::nullopt, read->expanded.si()}, std::nullopt, std::nullopt,
           std::nullopt, std::nullopt};
  out.answer = read->answer;
  for (const CurveSaid said : read->said) out.findings.push_back(curve_finding(said, *read));
  return out;
}

FigureSpec curve_read_figure() {
  return {.name = "press-curve-read",
          .formula =
              "F(x) ± U against the band of press-curve; drop over U and a tenth of the greatest; slope of the later "
              "half over the earlier's: 1.5 or 1/1.5; a last step three times as steep: the stop; δ from the force "
              "at home with µ2 … µ1",
          .inputs = joined({{repeated(from_nought("travel", "x", Kind::length, 3)),
                             repeated(from_nought("force", "F", Kind::force, kMostForce)),
                             from_nought("force-uncertainty", "U", Kind::force, kMostForce)},
                            path_inputs()}),
          .outputs = {{"interference", "δ", Kind::length},
                      {"said", "", Kind::ratio, true},
                      {"home", "F", Kind::force},
                      {"bend", "slope later/earlier", Kind::ratio},
                      {"stop-felt", "", Kind::ratio, true}},
          .sources = {"Shigley9", "ISO14253-1", "FrictionBooks", "common practice"},
          .compute = compute_curve_read,
          .example = {{"travel=7 mm",
                       "travel=12 mm",
                       "travel=17 mm",
                       "travel=22 mm",
                       "travel=27 mm",
                       "force=0.8 kN",
                       "force=1.7 kN",
                       "force=2.5 kN",
                       "force=3.4 kN",
                       "force=4.2 kN",
                       "force-uncertainty=100 N",
                       "interference-least=15 µm",
                       "interference-greatest=50 µm",
                       "roughness-loss=5 µm",
                       "width=25 mm",
                       "joint-diameter=120 mm",
                       "ring-inside=107 mm",
                       "hub-outside=180 mm",
                       "hub-modulus=110 GPa",
                       "hub-poisson=0.26",
                       "hub-yield=250 MPa"},
                      "interference=37.6 µm"}};
}

}  // namespace

std::vector<FigureSpec> curve_figures() { return {press_curve_figure(), curve_read_figure()}; }

}  // namespace flatwise::fits
