// Seating: the measured stack against the sum of its parts: seated, not seated, contradiction or cannot tell; and the joint
// to look at first.
#include <algorithm>
#include <cmath>

#include "core/metrology/figures.h"
#include "core/stack/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"
#include "job/stack_length.h"

namespace flatwise::job::rules {
namespace {

/// One part of the clamped stack, in the order from end A: a rotor station is its two halves.
struct Part {
  std::string name;
  int station = 0;
  std::optional<Half> half;
  Toleranced length;
  bool changed = false;  ///< It left the shaft, or is new.
};

std::vector<Part> parts_of(const Facts& facts) {
  const std::vector<bool> off = stations_off(facts.shaft, facts.bench);
  std::vector<Part> parts;
  for (int i = 0; i < static_cast<int>(off.size()); ++i) {
    const Station& station = facts.shaft.stations()[static_cast<std::size_t>(i)];
    const bool changed = off[static_cast<std::size_t>(i)];
    if (station.kind == StationKind::nut) continue;
    if (station.kind != StationKind::rotor) {
      parts.push_back({station.label, i, std::nullopt, station.length, changed});
      continue;
    }
    const Toleranced& half = facts.shaft.rotor(station.number).half;
    parts.push_back({station.label + "A", i, Half::a, half, changed});
    parts.push_back({station.label + "B", i, Half::b, half, changed});
  }
  return parts;
}

const PartLength* measured_length(const Bench& bench, const Part& part) {
  const auto it = std::ranges::find_if(
      bench.part_lengths, [&](const PartLength& p) { return p.station == part.station && p.half == part.half; });
  return it == bench.part_lengths.end() ? nullptr : &*it;
}

/// Expanded uncertainty of one length reading: certificate and resolution.
WorkingPtr reading_uncertainty(const Gauge& gauge) {
  Results<Working> working = use(metrology::figures(), "expanded-uncertainty",
                                 {gauge_input("u", {gauge.calibration_expanded_si / 2, Kind::length}, gauge),
                                  gauge_input("u", {gauge.resolution_si / std::sqrt(12.0), Kind::length}, gauge)});
  CORE_CHECK(working.has_value());
  return std::make_shared<const Working>(*std::move(working));
}

std::string length_field(const Part& part) {
  return part.half ? "rotor.half" : "stations[" + std::to_string(part.station) + "].length";
}

std::vector<Input> part_inputs(const Facts& facts, const std::vector<Part>& parts) {
  std::vector<Input> in;
  for (const Part& part : parts) {
    if (const PartLength* read = measured_length(facts.bench, part)) {
      in.push_back(measured("measured-part", read->length.value.value, part.name + ", " + text_of(read->length.place),
                            read->length.typed));
      if (const Gauge* gauge = find_gauge(facts.workshop, read->gauge))
        in.push_back(computed("measured-part-u", "expanded", reading_uncertainty(*gauge)));
      continue;
    }
    Origin origin = facts.shaft.origin(length_field(part));
    origin.where = part.name + ", " + origin.where;
    in.push_back(given("length", any(part.length.nominal), origin));
    in.push_back(given("above", any(part.length.above), origin));
    in.push_back(given("below", any(part.length.below), origin));
  }
  return in;
}

std::vector<Input> joint_inputs(const Facts& facts, const std::vector<Part>& parts) {
  std::vector<Input> in = part_inputs(facts, parts);
  for (std::size_t j = 0; j + 1 < parts.size(); ++j)
    if (parts[j].changed || parts[j + 1].changed)
      in.push_back(given("joint-changed", any_count(static_cast<std::int64_t>(j) + 1)));
  for (const FeelerReading& f : facts.bench.feelers)
    in.push_back(measured(f.passed ? "feeler-in" : "feeler-not", any_count(f.joint), text_of(f.place)));
  const Policies& policy = facts.shaft.spec().policies;
  in.push_back(given("step", any(policy.open_joint_step), facts.shaft.origin("policy.open_joint_step")));
  in.push_back(given("least-gap", any(policy.least_open_gap), facts.shaft.origin("policy.least_open_gap")));
  return in;
}

/// A joint is named by the parts that meet in it.
void take_joint_findings(const Working& working, const std::vector<Part>& parts, StageReport& report) {
  const std::size_t before = report.findings.size();
  take_findings(report, {}, working);
  for (std::size_t i = before; i < report.findings.size(); ++i) {
    Finding& finding = report.findings[i];
    const auto joint = std::ranges::find(finding.args, std::string_view{"joint"}, &Arg::name);
    if (joint == finding.args.end()) continue;
    const auto j = static_cast<std::size_t>(std::get<std::int64_t>(joint->value));
    const Args names{{"left", parts[j - 1].name}, {"right", parts[j].name}};
    finding.args.insert(finding.args.end(), names.begin(), names.end());
    if (finding.instruction)
      finding.instruction->args.insert(finding.instruction->args.end(), names.begin(), names.end());
  }
}

/// Every gauge behind the judgement, once: that of the stack, and those that measured parts.
std::vector<const Gauge*> gauges_of(const Facts& facts, const Gauge& stack, const std::vector<Part>& parts) {
  std::vector<const Gauge*> out{&stack};
  for (const Part& part : parts) {
    const PartLength* read = measured_length(facts.bench, part);
    const Gauge* gauge = read == nullptr ? nullptr : find_gauge(facts.workshop, read->gauge);
    if (gauge != nullptr && std::ranges::find(out, gauge) == out.end()) out.push_back(gauge);
  }
  return out;
}

/// A feeler past its date is said to be; the joint it names is only a place to look first.
void judge_feelers(const Facts& facts, StageReport& report) {
  std::vector<const Gauge*> said;
  for (const FeelerReading& f : facts.bench.feelers) {
    const Gauge* gauge = find_gauge(facts.workshop, f.gauge);
    if (gauge == nullptr || std::ranges::find(said, gauge) != said.end()) continue;
    said.push_back(gauge);
    (void)answer_with(*gauge, facts.bench.date, Answer::cannot_tell, {}, report);
  }
}

/// Spacers counted too many or too few as they went back: the length then says nothing about the joints.
void say_spacers_counted(const Facts& facts, StageReport& report) {
  int more = 0;
  Length change;
  for (const SpacerSeen& seen : facts.bench.spacers_seen) {
    if (seen.phase != Phase::assembly) continue;
    more += seen.count.value - 1;
    change =
        change + facts.shaft.stations()[static_cast<std::size_t>(seen.station)].length.nominal * (seen.count.value - 1);
  }
  if (more == 0) return;
  const Args args{{"count", std::abs(more)}, {"change", any(metres(std::abs(change.si())))}};
  report.findings.push_back({more > 0 ? Code{"stack.parts_more"} : Code{"stack.parts_fewer"},
                             Severity::note,
                             args,
                             {},
                             Message{Code{"stack.count_first"}, {}}});
}

/// The spacers among the parts that a story of the figure names, by their labels.
std::vector<std::string> spacers_named(const Facts& facts, const std::vector<Part>& parts, const Finding& story) {
  std::vector<std::string> names;
  const auto it = std::ranges::find(story.args, std::string_view{"parts"}, &Arg::name);
  if (it == story.args.end()) return names;
  for (const std::int64_t number : std::get<std::vector<std::int64_t>>(it->value)) {
    const Part& part = parts[static_cast<std::size_t>(number) - 1];
    if (facts.shaft.stations()[static_cast<std::size_t>(part.station)].kind == StationKind::spacer)
      names.push_back(part.name);
  }
  return names;
}

/// Nobody counted, and the length is off by just one spacer: that is looked at before the joints.
void offer_spacer_slip(const Facts& facts, const std::vector<Part>& parts, Length difference, Length within,
                       StageReport& report) {
  if (std::abs(difference.si()) <= within.si() || !facts.bench.spacers_seen.empty()) return;
  std::vector<Input> in;
  for (const Part& part : parts) in.push_back(given("length", any(part.length.nominal)));
  in.push_back(computed_input("difference", any(difference)));
  in.push_back(computed_input("within", any(within)));
  const WorkingPtr slip = show(report, {}, {}, stack::figures(), "stack-slip", std::move(in));
  if (slip == nullptr) return;
  for (const Finding& story : slip->findings) {
    const bool more = story.code == Code{"stack.may_be_doubled"}, less = story.code == Code{"stack.may_be_missing"};
    std::vector<std::string> names = more || less ? spacers_named(facts, parts, story) : std::vector<std::string>{};
    if (names.empty()) continue;
    const Args args{{"parts", std::move(names)}, {"change", any(metres(std::abs(difference.si())))}};
    report.findings.push_back({more ? Code{"stack.as_with_one_more"} : Code{"stack.as_with_one_less"},
                               Severity::note,
                               args,
                               {},
                               Message{Code{"stack.count_the_spacers"}, {}}});
    return;
  }
}

void judge_reading(const Facts& facts, const StackReading& reading, const std::vector<Part>& parts,
                   StageReport& report) {
  const Gauge* gauge = find_gauge(facts.workshop, reading.gauge);
  CORE_CHECK(gauge != nullptr);
  const WorkingPtr length = show(report, {}, {}, stack::figures(), "stack-length", part_inputs(facts, parts));
  if (length == nullptr) return;
  const WorkingPtr u = reading_uncertainty(*gauge);
  const Input measured_input =
      measured("measured", reading.length.value.value, text_of(reading.length.place), reading.length.typed);
  const Policies& policy = facts.shaft.spec().policies;
  const WorkingPtr seat =
      show(report, {}, {}, stack::figures(), "seated",
           {measured_input, computed("measured-u", "expanded", u), computed("band-least", "band-least", length),
            computed("band-greatest", "band-greatest", length),
            given("least-gap", any(policy.least_open_gap), facts.shaft.origin("policy.least_open_gap"))});
  if (seat == nullptr) return;
  say_spacers_counted(facts, report);
  if (seat->answer != Answer::in)
    offer_spacer_slip(facts, parts, metres(reading.length.value.value.si - length->si("nominal")),
                      metres((length->si("band-greatest") - length->si("band-least")) / 2 + u->si("expanded")), report);
  take_judged(report, {}, *seat, gauges_of(facts, *gauge, parts), facts.bench.date);
  if (seat->answer == Answer::in) return;
  judge_feelers(facts, report);
  offer_unit_slip(reading.length.value.value, {length->si("nominal"), Kind::length}, 0.01, reading.length.typed, {},
                  report);
  std::vector<Input> in = joint_inputs(facts, parts);
  in.push_back(measured_input);
  in.push_back(computed("measured-u", "expanded", u));
  const WorkingPtr joint = show(report, {}, {}, stack::figures(), "open-joint", std::move(in));
  if (joint != nullptr) take_joint_findings(*joint, parts, report);
}

}  // namespace

void seating(const Facts& facts, StageReport& report) {
  const std::vector<Part> parts = parts_of(facts);
  if (std::ranges::none_of(parts, &Part::changed)) return;
  if (!facts.bench.stack.empty()) return judge_reading(facts, facts.bench.stack.back(), parts, report);
  report.findings.push_back(
      {Code{"stack.not_measured"}, Severity::unanswered, {}, {}, Message{Code{"stack.measure_stack"}, {}}});
}

}  // namespace flatwise::job::rules

namespace flatwise::job {

WorkingPtr stack_length(const Facts& facts) {
  Results<Working> length = use(stack::figures(), "stack-length", rules::part_inputs(facts, rules::parts_of(facts)));
  return length ? std::make_shared<const Working>(*std::move(length)) : nullptr;
}

}  // namespace flatwise::job
