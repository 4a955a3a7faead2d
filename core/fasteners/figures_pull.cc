#include <string>
#include <utility>

#include "core/fasteners/figures_parts.h"

namespace flatwise::fasteners {

Multiplier multiplier_from(const Given& in) {
  const double ratio = in.si("multiplier");
  // Without a multiplier there is no efficiency to be unsure of.
  return {ratio, ratio == 1 ? 0 : in.si("multiplier-u")};
}

namespace {

constexpr std::string_view kWays[] = {"wrench", "bar"};

std::vector<InputSpec> multiplier_inputs() {
  return {assumed(between("multiplier", "m", Kind::ratio, 1, 200), any_ratio(1), "no multiplier"),
          assumed(from_nought("multiplier-u", "U_m", Kind::ratio, 0.5), any_ratio(0.05), kCommonPractice)};
}
InputSpec pull_angle_input() {
  return assumed(above_nought("pull-angle", "β", Kind::angle, degrees(180).radians()), any(degrees(90)),
                 "pulled square");
}
std::vector<InputSpec> lever_inputs() {
  return {above_nought("length", "L", Kind::length, kMostLength),
          assumed(from_nought("extension", "E", Kind::length, kMostLength), any(Length{}), "no extension"),
          assumed(between("extension-angle", "ε", Kind::angle, -degrees(180).radians(), degrees(180).radians()),
                  any(Angle{}), "straight on")};
}
InputSpec one_person_input() {
  return assumed(above_nought("one-person", "F_1", Kind::force, 5000), any(newtons(400)), kCommonPractice);
}
Lever lever_from(const Given& in) {
  return {Length::from_si(in.si("length")), Length::from_si(in.si("extension")), radians(in.si("extension-angle")),
          radians(in.si("pull-angle"))};
}

// Longer bars are not carried about, and nobody stands well at their end.
constexpr Length kLongestBar = metres(2);

Finding too_much(Force pull, Force limit, const BetterWay& better) {
  const Args args{{"length", any(better.length)}, {"ratio", any_ratio(better.ratio)}};
  const bool bar = better.length <= kLongestBar;
  return {Code{"fasteners.pull_too_much"},
          Severity::out,
          {{"pull", any(pull)}, {"limit", any(limit)}},
          {},
          bar ? Message{Code{"fasteners.pull_better"}, args} : Message{Code{"fasteners.pull_by_multiplier"}, args}};
}
void say_reaction(Computed& out, Torque torque, double ratio) {
  if (ratio > 1)
    out.findings.push_back({Code{"fasteners.multiplier_foot"},
                            Severity::note,
                            {{"torque", any(multiplier_reaction(torque, ratio))}},
                            {},
                            std::nullopt});
}

Result<Computed> compute_bar_pull(const Given& in) {
  const BarPull bar{Torque::from_si(in.si("torque")),
                    {.length = Length::from_si(in.si("length")), .pull_angle = radians(in.si("pull-angle"))},
                    multiplier_from(in)};
  const Force limit = Force::from_si(in.si("one-person"));
  const auto band = bar_pull(bar);
  if (!band) return tl::unexpected(band.error());
  const auto better = for_one_person(bar, limit);
  if (!better) return tl::unexpected(better.error());
  Computed out{.values = {any(band->pull), any(band->greatest), any(better->length), any_ratio(better->ratio)}};
  if (band->greatest > limit) out.findings.push_back(too_much(band->greatest, limit, *better));
  say_reaction(out, bar.torque, bar.multiplier.ratio);
  return out;
}

FigureSpec bar_pull_figure() {
  return {.name = "bar-pull",
          .formula = "F = T / (m L sin β)",
          .inputs = joined({{above_nought("torque", "T", Kind::torque, kMostTorque),
                             above_nought("length", "L", Kind::length, kMostLength), pull_angle_input()},
                            multiplier_inputs(),
                            {one_person_input()}}),
          .outputs = {{"pull", "F", Kind::force},
                      {"pull-greatest", "F / (1 − U_m)", Kind::force},
                      {"length-for-one", "L_1", Kind::length},
                      {"multiplier-for-one", "m_1", Kind::ratio}},
          .sources = {"common practice"},
          .compute = compute_bar_pull,
          .example = {{"torque=1000 ft·lb", "length=5 ft"}, "pull=200 lbf"}};
}

Result<Computed> compute_wrench_setting(const Given& in) {
  const Torque torque = Torque::from_si(in.si("torque"));
  const Lever lever{.length = Length::from_si(in.si("length")),
                    .extension = Length::from_si(in.si("extension")),
                    .extension_angle = radians(in.si("extension-angle"))};
  const Multiplier multiplier{in.si("multiplier"), 0};
  const auto setting = wrench_setting(torque, lever, multiplier);
  if (!setting) return tl::unexpected(setting.error());
  const Force pull = *setting / lever.length;
  Computed out{.values = {any(*setting), any(pull)}};
  const Force limit = Force::from_si(in.si("one-person"));
  if (pull > limit) {
    // A longer wrench alone: what a straight one of that length would need.
    const BetterWay better{torque / (multiplier.ratio * limit), multiplier.ratio * (pull / limit)};
    out.findings.push_back(too_much(pull, limit, better));
  }
  say_reaction(out, torque, multiplier.ratio);
  return out;
}

FigureSpec wrench_setting_figure() {
  std::vector<InputSpec> inputs = joined({{above_nought("torque", "T", Kind::torque, kMostTorque)},
                                          lever_inputs(),
                                          multiplier_inputs(),
                                          {one_person_input()}});
  std::erase_if(inputs, [](const InputSpec& spec) { return spec.name == "multiplier-u"; });
  return {.name = "wrench-setting",
          .formula = "T_w = T L / (m (L + E cos ε))",
          .inputs = std::move(inputs),
          .outputs = {{"setting", "T_w", Kind::torque}, {"pull", "F", Kind::force}},
          .sources = {"Statics"},
          .compute = compute_wrench_setting,
          .example = {{"torque=900 ft·lb", "length=4 ft", "extension=2 ft"}, "setting=600 ft·lb"}};
}

Result<Computed> compute_multiplier(const Given& in) {
  const auto multiplier =
      multiplier_ratio(in.si("gear-ratio"), in.si("efficiency-least"), in.si("efficiency-greatest"));
  if (!multiplier) return tl::unexpected(multiplier.error());
  return Computed{.values = {any_ratio(multiplier->ratio), any_ratio(multiplier->relative_u)}};
}

FigureSpec multiplier_figure() {
  return {.name = "multiplier-ratio",
          .formula = "m = i (η1 + η2)/2, U_m = (η2 − η1)/(η1 + η2)",
          .inputs = {between("gear-ratio", "i", Kind::ratio, 1, 200),
                     between("efficiency-least", "η1", Kind::ratio, 0.5, 1),
                     between("efficiency-greatest", "η2", Kind::ratio, 0.5, 1)},
          .outputs = {{"multiplier", "m", Kind::ratio}, {"multiplier-u", "U_m", Kind::ratio}},
          .sources = {"Statics"},
          .compute = compute_multiplier,
          .example = {{"gear-ratio=4.5", "efficiency-least=0.85", "efficiency-greatest=0.95"}, "multiplier=4.05"}};
}

std::optional<Problem> wrong_reading(const Given& in, bool wrench) {
  const std::string_view wanted = wrench ? "shown" : "pulled", other = wrench ? "pulled" : "shown";
  if (in.has(wanted) && !in.has(other)) return std::nullopt;
  return Problem{wrench ? Code{"fasteners.reading_of_wrench"} : Code{"fasteners.reading_of_bar"},
                 std::string{wanted},
                 {},
                 {},
                 std::nullopt};
}

Finding torque_finding(const TorqueReached& reached, const TorqueJudged& judged, const Pulled& pulled, Torque target) {
  Args args{{"torque", any(reached.torque)},
            {"u", any(reached.expanded)},
            {"least", any(judged.least)},
            {"greatest", any(judged.greatest)}};
  const AnyQuantity shown = pulled.with == PulledWith::wrench ? any(pulled.reading) : any(pulled.pull);
  const AnyQuantity at_target{shown.si * (target / reached.torque), shown.kind};
  const Message pull_on{Code{"fasteners.pull_on"}, {{"reading", at_target}}};
  switch (judged.state) {
    case TorqueState::below:
      return {Code{"fasteners.torque_below"}, Severity::out, std::move(args), {}, pull_on};
    case TorqueState::above:
      return {Code{"fasteners.torque_above"},
              Severity::out,
              std::move(args),
              {},
              Message{Code{"fasteners.slacken_again"}, {{"reading", at_target}}}};
    case TorqueState::inside:
      return {Code{"fasteners.torque_inside"}, Severity::note, std::move(args), {}, std::nullopt};
    case TorqueState::cannot_tell:
      break;
  }
  const AnyQuantity wanted = any(0.5 * (judged.greatest - judged.least));
  std::optional<Message> mend = Message{Code{"fasteners.finer_tool"}, {{"u", wanted}}};
  if (judged.tool_can_tell && reached.torque < target) mend = pull_on;
  if (judged.tool_can_tell && reached.torque > target)
    mend = Message{Code{"fasteners.slacken_again"}, {{"reading", at_target}}};
  return {Code{"fasteners.torque_cannot_tell"}, Severity::cannot_tell, std::move(args), {}, std::move(mend)};
}

std::string state_name(TorqueState state) {
  constexpr const char* kNames[] = {"below", "inside", "above", "cannot_tell"};
  return kNames[static_cast<int>(state)];
}

Pulled pulled_from(const Given& in, bool wrench) {
  Pulled pulled{.with = wrench ? PulledWith::wrench : PulledWith::bar,
                .lever = lever_from(in),
                .multiplier = multiplier_from(in)};
  if (wrench)
    pulled.reading = Torque::from_si(in.si("shown"));
  else
    pulled.pull = Force::from_si(in.si("pulled"));
  pulled.calibration_u = in.si("calibration");
  const std::string_view resolution = wrench ? "resolution" : "pull-resolution";
  if (in.has(resolution)) pulled.resolution_si = in.si(resolution);
  pulled.pull_angle_half_width = radians(in.si("pull-angle-width"));
  return pulled;
}

Result<Computed> compute_reached(const Given& in) {
  const bool wrench = in.text("with") == "wrench";
  if (auto p = wrong_reading(in, wrench)) return tl::unexpected(*std::move(p));
  const Pulled pulled = pulled_from(in, wrench);
  const auto reached = torque_reached(pulled);
  if (!reached) return tl::unexpected(reached.error());
  const Torque target = Torque::from_si(in.si("target"));
  const auto judged = judge_torque(*reached, {target, in.si("tolerance")});
  if (!judged) return tl::unexpected(judged.error());
  Computed out{.values = {any(reached->torque), any(reached->expanded), any(judged->least), any(judged->greatest),
                          state_name(judged->state)}};
  out.u = {Uncertainty{reached->standard.si(), std::nullopt, reached->expanded.si()}};
  out.findings.push_back(torque_finding(*reached, *judged, pulled, target));
  out.answer = judged->state == TorqueState::inside        ? Answer::in
               : judged->state == TorqueState::cannot_tell ? Answer::cannot_tell
                                                           : Answer::out;
  return out;
}

FigureSpec torque_reached_figure() {
  return {.name = "torque-reached",
          .formula =
              "wrench: T = m T_w (L + E cos ε)/L; bar: T = m F (L sin β + E sin(β − ε)); inside when T ± U lies in the "
              "target's band",
          .inputs = joined(
              {{one_of("with", "with", kWays), optional(above_nought("shown", "T_w", Kind::torque, kMostTorque)),
                optional(above_nought("pulled", "F", Kind::force, kMostForce))},
               lever_inputs(),
               {pull_angle_input(), assumed(from_nought("pull-angle-width", "a", Kind::angle, degrees(30).radians()),
                                            any(degrees(10)), kCommonPractice)},
               multiplier_inputs(),
               {from_nought("calibration", "U_c", Kind::ratio, 0.5),
                optional(from_nought("resolution", "r", Kind::torque, kMostTorque)),
                optional(from_nought("pull-resolution", "r_F", Kind::force, kMostForce)),
                above_nought("target", "T_0", Kind::torque, kMostTorque),
                assumed(between("tolerance", "t", Kind::ratio, 0.001, 0.5), any_ratio(0.10), kCommonPractice)}}),
          .outputs = {{"torque", "T", Kind::torque},
                      {"torque-u", "U", Kind::torque},
                      {"least", "T_0 (1 − t)", Kind::torque},
                      {"greatest", "T_0 (1 + t)", Kind::torque},
                      {"state", "", Kind::ratio, true}},
          .sources = {"GUM", "ISO14253-1", "Statics"},
          .compute = compute_reached,
          .example = {
              {"with=wrench", "shown=225 ft·lb", "length=5 ft", "multiplier=4", "calibration=4 %", "target=900 ft·lb"},
              "torque=900 ft·lb"}};
}

}  // namespace

std::vector<FigureSpec> pull_figures() {
  return {bar_pull_figure(), wrench_setting_figure(), multiplier_figure(), torque_reached_figure()};
}

}  // namespace flatwise::fasteners
