#include <string>

#include "core/fits/figures_parts.h"
#include "core/fits/heating.h"

namespace flatwise::fits {
namespace {

constexpr std::string_view kHeated[] = {"hub", "bearing"};
constexpr double kColdestCelsius = -40;  // Below, seals and grease suffer: common practice.

Finding side_finding(const Readback& back, const ForceReading& reading, const ForceBand& band) {
  using Side = Readback::Side;
  const Args args{{"force", any(reading.force)},
                  {"u", any(back.expanded)},
                  {"least", any(band.least)},
                  {"greatest", any(band.greatest)}};
  const auto finding = [&args](Code code, Severity severity, std::optional<Message> instruction) {
    return Finding{code, severity, args, {}, std::move(instruction)};
  };
  switch (back.side) {
    case Side::low:
      return finding(Code{"fits.force_low"}, Severity::out, Message{Code{"fits.look_low"}, {}});
    case Side::high:
      return finding(Code{"fits.force_high"}, Severity::out, Message{Code{"fits.look_high"}, {}});
    case Side::near_low:
      return finding(Code{"fits.force_near_low"}, Severity::cannot_tell, Message{Code{"fits.settle_low"}, {}});
    case Side::near_high:
      return finding(Code{"fits.force_near_high"}, Severity::cannot_tell, Message{Code{"fits.look_high"}, {}});
    case Side::near_both:
      return finding(Code{"fits.force_near_both"}, Severity::cannot_tell, Message{Code{"fits.use_finer_gauge"}, {}});
    case Side::inside:
      break;
  }
  return finding(Code{"fits.force_inside"}, Severity::note, std::nullopt);
}

Result<Computed> compute_press_readback(const Given& in) {
  Computed out;
  const auto joint = joint_from(in, out.findings);
  if (!joint) return as_input(joint.error());
  const ForceReading reading{.force = newtons(in.si("force")),
                             .calibration_expanded = newtons(in.si("force-uncertainty")),
                             .resolution = newtons(in.si("force-resolution"))};
  const ForceBand band{.least = newtons(in.si("band-least")), .greatest = newtons(in.si("band-greatest"))};
  const auto back = read_back(reading, band,
                              {.joint = *joint,
                               .width = length_of(in, "width"),
                               .roughness_loss = length_of(in, "roughness-loss"),
                               .interference = {},
                               .friction = friction_from(in),
                               .hub_yield = pascals(in.si("hub-yield"))});
  if (!back) return as_input(back.error());
  out.values = {any(back->interference_least), any(back->interference_greatest), any(back->expanded)};
  out.answer = back->answer;
  out.findings.push_back(side_finding(*back, reading, band));
  if (back->hub_yields)
    out.findings.push_back(
        {Code{"fits.readback_yields"}, Severity::note, {}, {}, Message{Code{"fits.use_hub_yielding"}, {}}});
  if (back->no_lower_side || in.text("friction-from") == "books")
    out.findings.push_back(band_hides(back->no_lower_side));
  return out;
}

FigureSpec press_readback_figure() {
  return {.name = "press-readback",
          .formula =
              "in: [F − U, F + U] within [F1, F2]; out: beyond by U; U = √(U_cal² + (2 res/√12)²); δ_min from F − U "
              "with µ2, δ_max from F + U with µ1, each with the flattening added",
          .inputs = joined(
              {{from_nought("force", "F", Kind::force, kMostForce),
                from_nought("force-uncertainty", "U_cal", Kind::force, kMostForce),
                from_nought("force-resolution", "res", Kind::force, kMostForce),
                from_nought("band-least", "F1", Kind::force, kMostForce),
                from_nought("band-greatest", "F2", Kind::force, kMostForce),
                from_nought("roughness-loss", "loss", Kind::length, 1e-3), above_nought("width", "L", Kind::length, 2)},
               joint_inputs(),
               friction_inputs()}),
          .outputs = {{"interference-least", "δ_min", Kind::length},
                      {"interference-greatest", "δ_max", Kind::length},
                      {"force-expanded", "U", Kind::force}},
          .sources = {"Shigley9", "ISO14253-1", "GUM", "FrictionBooks"},
          .compute = compute_press_readback,
          .example = {{"force=6 kN", "force-uncertainty=200 N", "force-resolution=100 N", "band-least=940 N",
                       "band-greatest=9.51 kN", "roughness-loss=5 µm", "width=25 mm", "joint-diameter=120 mm",
                       "ring-inside=107 mm", "hub-outside=180 mm", "hub-modulus=110 GPa", "hub-poisson=0.26",
                       "hub-yield=250 MPa"},
                      "interference-least=32.4 µm"}};
}

Message way_out(const Given& in, const HeatingResult& result) {
  if (result.other_temperature < celsius(kColdestCelsius)) return {Code{"fits.press_instead"}, {}};
  const Args args{{"limit", any(kelvin(in.si("limit")))}, {"other", any(result.other_temperature)}};
  if (in.text("heated") == "hub") return {Code{"fits.cool_bearing"}, args};
  return {Code{"fits.cool_seat"}, args};
}

Result<Computed> compute_heating(const Given& in) {
  const auto result = heating({.diameter = length_of(in, "joint-diameter"),
                               .interference = length_of(in, "interference"),
                               .clearance = length_of(in, "clearance"),
                               .heated_expansion = in.si("heated-expansion"),
                               .cooled_expansion = in.si("other-expansion"),
                               .room = kelvin(in.si("room")),
                               .greatest = kelvin(in.si("limit"))});
  if (!result) {
    Problem problem = result.error();
    if (problem.field == "greatest") problem.field = "limit";
    return tl::unexpected(std::move(problem));
  }
  Computed out{.values = {any(result->temperature), any(result->rise), any(result->other_temperature)}};
  // A caution stands before the step.
  if (result->rise > TemperatureRise{})
    out.findings.push_back({Code{"fits.heat_caution"}, Severity::note, {}, {}, std::nullopt});
  if (result->too_hot)
    out.findings.push_back({Code{"fits.heat_too_hot"},
                            Severity::out,
                            {{"temperature", any(result->temperature)}, {"limit", any(kelvin(in.si("limit")))}},
                            {},
                            way_out(in, *result)});
  return out;
}

FigureSpec heating_figure() {
  const InputSpec room = between("room", "T0", Kind::temperature, 223.15, 333.15);
  const InputSpec limit = between("limit", "T_lim", Kind::temperature, 273.15, 573.15);
  return {
      .name = "heating",
      .formula = "T = T0 + (δ + gap)/(d α1); over T_lim the other part goes to T0 − ((δ + gap)/d − α1 (T_lim − T0))/α2",
      .inputs = {above_nought("joint-diameter", "d", Kind::length, 2),
                 between("interference", "δ", Kind::length, -1e-2, 1e-2),
                 assumed(from_nought("clearance", "gap", Kind::length, 1e-3), any(micrometres(30)), kCommonPractice),
                 assumed(one_of("heated", "heated", kHeated), std::string{"hub"}, kCommonPractice),
                 above_nought("heated-expansion", "α1", Kind::expansion, 1e-3),
                 assumed(above_nought("other-expansion", "α2", Kind::expansion, 1e-3), any_expansion(11.5e-6),
                         kCommonPractice),
                 assumed(room, any(celsius(20)), "ISO1"), assumed(limit, any(celsius(110)), kCommonPractice)},
      .outputs = {{"temperature", "T", Kind::temperature},
                  {"rise", "ΔT", Kind::temperature_rise},
                  {"other-temperature", "T2", Kind::temperature}},
      .sources = {"LinearExpansion", "ISO1"},
      .compute = compute_heating,
      .example = {{"joint-diameter=120 mm", "interference=45 µm", "clearance=30 µm", "heated-expansion=10.5e-6 /K"},
                  "temperature=79.5 °C"}};
}

Result<Computed> compute_ring_creep(const Given& in) {
  const auto creep = ring_creep({.diameter = length_of(in, "joint-diameter"),
                                 .width = length_of(in, "width"),
                                 .pressure_least = pascals(in.si("pressure-least")),
                                 .pressure_greatest = pascals(in.si("pressure-greatest")),
                                 .friction = friction_from(in),
                                 .couple = newton_metres(in.si("couple"))});
  if (!creep) return as_input(creep.error());
  Computed out{.values = {any(creep->holding_least), any(creep->holding_greatest), any_ratio(creep->margin)}};
  out.answer = creep->answer;
  const Args args{{"least", any(creep->holding_least)},
                  {"greatest", any(creep->holding_greatest)},
                  {"couple", any(newton_metres(in.si("couple")))}};
  if (creep->answer == Answer::out)
    out.findings.push_back({Code{"fits.ring_creeps"}, Severity::out, args, {}, Message{Code{"fits.tighter_fit"}, {}}});
  if (creep->answer == Answer::cannot_tell)
    out.findings.push_back(
        {Code{"fits.ring_may_creep"}, Severity::cannot_tell, args, {}, Message{Code{"fits.measure_ring"}, {}}});
  return out;
}

FigureSpec ring_creep_figure() {
  auto friction = friction_inputs();
  friction.pop_back();  // Where it came from changes nothing here.
  return {
      .name = "ring-creep",
      .formula = "M = µ p π d² L / 2; in: M_min > couple; out: M_max < couple",
      .inputs = joined({{from_nought("pressure-least", "p1", Kind::pressure, 1e10),
                         from_nought("pressure-greatest", "p2", Kind::pressure, 1e10),
                         above_nought("joint-diameter", "d", Kind::length, 2),
                         above_nought("width", "L", Kind::length, 2), above_nought("couple", "M", Kind::torque, 1e9)},
                        friction}),
      .outputs = {{"holding-least", "M_min", Kind::torque},
                  {"holding-greatest", "M_max", Kind::torque},
                  {"margin", "M_min/M", Kind::ratio}},
      .sources = {"Shigley9", "FrictionBooks"},
      .compute = compute_ring_creep,
      .example = {{"pressure-least=1.246 MPa", "pressure-greatest=5.608 MPa", "joint-diameter=120 mm", "width=25 mm",
                   "couple=50 N·m"},
                  "holding-least=56.4 N·m"}};
}

}  // namespace

std::vector<FigureSpec> after_figures() { return {press_readback_figure(), heating_figure(), ring_creep_figure()}; }

}  // namespace flatwise::fits
