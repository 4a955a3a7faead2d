// Nuts: was each one pulled, and what torque did it get. The last pull of a nut counts; the ones before it are shown.
#include <algorithm>

#include "core/fasteners/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

// A unit slip is offered when the figure lands within a twentieth of the target.
constexpr double kSlipShare = 0.05;

Word end_word(End end) { return Word{end == End::a ? "end.a" : "end.b"}; }
std::string end_letter(End end) { return end == End::a ? "A" : "B"; }

Input told(std::string_view name, const Told<Entered>& reading) {
  return measured(name, reading.value.value, text_of(reading.place), reading.typed);
}

std::vector<Input> inputs_of(const Facts& facts, const Nut& nut, const TorquePull& pull, const Gauge& gauge) {
  const bool wrench = pull.with == TorquePull::With::wrench;
  std::vector<Input> in{given("with", wrench ? "wrench" : "bar", {OriginKind::given, text_of(pull.shown.place)}),
                        told(wrench ? "shown" : "pulled", pull.shown)};
  if (pull.tool_length) in.push_back(told("length", *pull.tool_length));
  // A wrench on the nut itself reads the nut's torque whatever its length.
  else if (wrench && !pull.extension)
    in.push_back(given("length", any(metres(1)), {OriginKind::assumed, "no extension: the length drops out"}));
  if (pull.extension) in.push_back(told("extension", *pull.extension));
  in.push_back(given("extension-angle", any(pull.extension_angle)));
  in.push_back(given("pull-angle", any(pull.pull_angle)));
  in.push_back(given("multiplier", any_ratio(pull.multiplier)));
  in.push_back(relative_calibration(gauge, pull.shown.value.value.si));
  in.push_back(gauge_input(wrench ? "resolution" : "pull-resolution",
                           {gauge.resolution_si, wrench ? Kind::torque : Kind::force}, gauge));
  in.push_back(given("target", any(nut.torque), nut_origin(facts.shaft, nut.end, "torque")));
  in.push_back(given("tolerance", any_ratio(nut.torque_tolerance), nut_origin(facts.shaft, nut.end, "tolerance")));
  return in;
}

void show_preload(const Facts& facts, const Nut& nut, const WorkingPtr& reached, StageReport& report) {
  std::vector<Input> in{
      computed("torque", "torque", reached), computed("torque-u", "torque-u", reached),
      given("diameter", any(nut.thread.major), nut_origin(facts.shaft, nut.end, "thread")),
      given("nut-factor-least", any_ratio(nut.nut_factor_least), nut_origin(facts.shaft, nut.end, "nut_factor")),
      given("nut-factor-greatest", any_ratio(nut.nut_factor_greatest), nut_origin(facts.shaft, nut.end, "nut_factor"))};
  if (!nut.strength_class.empty()) {
    const Results<Working> proof = use(fasteners::figures(), "proof-load",
                                       {given("thread", nut.thread.designation), given("class", nut.strength_class)});
    if (proof) in.push_back(computed("proof-load", "proof-load", std::make_shared<const Working>(*proof)));
  }
  const WorkingPtr preload =
      show(report, {}, end_letter(nut.end), fasteners::figures(), "torque-preload", std::move(in));
  if (preload != nullptr) take_findings(report, {}, *preload, {{"nut", end_word(nut.end)}});
}

void judge_nut(const Facts& facts, int index, StageReport& report) {
  const Nut& nut = facts.shaft.spec().nuts[static_cast<std::size_t>(index)];
  const TorquePull* last = nullptr;
  for (const TorquePull& pull : facts.bench.torques)
    if (pull.nut == nut.end) last = &pull;
  if (last == nullptr) {
    const Args args{{"nut", end_word(nut.end)}, {"torque", any(nut.torque)}};
    return report.findings.push_back(
        {Code{"torque.nut_not_pulled"}, Severity::unanswered, args, {}, Message{Code{"torque.pull_nut"}, args}});
  }
  const Gauge* gauge = find_gauge(facts.workshop, last->gauge);
  if (gauge == nullptr) {  // Only a pull on a bar may come without one: nothing says how sure it is.
    const Args args{{"nut", end_word(nut.end)}, {"torque", any(nut.torque)}};
    return report.findings.push_back({Code{"torque.pull_without_gauge"},
                                      Severity::cannot_tell,
                                      args,
                                      {},
                                      Message{Code{"torque.pull_with_gauge"}, args}});
  }
  const WorkingPtr reached = show(report, {}, end_letter(nut.end), fasteners::figures(), "torque-reached",
                                  inputs_of(facts, nut, *last, *gauge));
  if (reached == nullptr) return;
  take_judged(report, {}, *reached, {gauge}, facts.bench.date, {{"nut", end_word(nut.end)}});
  if (reached->answer != Answer::in) {
    // What this tool should have shown at the target: the wrench with its extension, or the pull on the bar.
    const AnyQuantity shown = last->shown.value.value;
    const AnyQuantity wanted{shown.si * nut.torque.si() / reached->si("torque"), shown.kind};
    offer_unit_slip(shown, wanted, kSlipShare, last->shown.typed, {}, report);
  }
  show_preload(facts, nut, reached, report);
}

}  // namespace

void nuts(const Facts& facts, StageReport& report) {
  for (std::size_t i = 0; i < facts.shaft.spec().nuts.size(); ++i) judge_nut(facts, static_cast<int>(i), report);
}

}  // namespace flatwise::job::rules
