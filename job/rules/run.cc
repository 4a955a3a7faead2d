// Test run: how long it ran, every hanger's heat above the room and its vibration, each against the limit of the definition.
// What was read is worked out with or without a limit; what a limit asks for and nobody read is missing.
#include <algorithm>

#include "core/metrology/figures.h"
#include "job/figure_use.h"
#include "job/gauges.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

void add(StageReport& report, Where where, Severity severity, Code code, Message instruction) {
  report.findings.push_back({code, severity, instruction.args, where, std::move(instruction)});
}

const RunReading* reading_of(const Facts& facts, RunQuantity what, int station) {
  const RunReading* last = nullptr;
  for (const RunReading& read : facts.bench.runs)
    if (read.what == what && read.station == station) last = &read;
  return last;
}

std::vector<int> hangers(const Shaft& shaft) {
  std::vector<int> out;
  for (std::size_t i = 0; i < shaft.stations().size(); ++i)
    if (shaft.stations()[i].kind == StationKind::hanger) out.push_back(static_cast<int>(i));
  return out;
}

std::string label_of(const Facts& facts, int station) {
  return station < 0 ? std::string{} : facts.shaft.stations()[static_cast<std::size_t>(station)].label;
}
Args named(const Facts& facts, int station) { return station < 0 ? Args{} : Args{{"part", label_of(facts, station)}}; }
Where place_of(int station) { return station < 0 ? Where{} : at_station(station); }

/// The reading, and what the workshop knows of the instrument; nothing is known where nobody said which it was.
void add_read(const Facts& facts, std::string_view name, const std::string& prefix, const RunReading& read,
              std::vector<Input>& in) {
  const AnyQuantity value = read.value.value.value;
  const std::string place = text_of(read.value.place);
  in.push_back(measured(name, value, read.gauge.empty() ? place : place + ", " + read.gauge, read.value.typed));
  const Gauge* gauge = find_gauge(facts.workshop, read.gauge);
  if (gauge == nullptr) return;
  const Kind step = difference_kind(value.kind);
  in.push_back(gauge_input(prefix + "calibration", {certified_si(*gauge, value.si), step}, *gauge));
  in.push_back(gauge_input(prefix + "resolution", {gauge->resolution_si, step}, *gauge));
  if (!gauge->repeatability_si) return;
  in.push_back(gauge_input(prefix + "repeatability", {*gauge->repeatability_si, step}, *gauge));
  in.push_back(gauge_input(prefix + "repeatability-readings", any_count(gauge->repeatability_readings), *gauge));
}

template <class Limit>
void add_limit(const Facts& facts, const std::optional<Limit>& limit, std::string_view field, std::vector<Input>& in) {
  if (limit) in.push_back(given("greatest", any(*limit), facts.shaft.origin(field)));
  in.push_back(given("rule",
                     facts.shaft.spec().policies.decision == Policies::DecisionRule::guard_u ? "guard_u" : "one_sided",
                     facts.shaft.origin("policy.decision")));
}

void judge_time(const Facts& facts, StageReport& report) {
  const std::optional<Time>& shortest = facts.shaft.spec().test_run.shortest;
  if (!shortest) return;
  Args args{{"shortest", any(*shortest)}};
  const RunReading* ran = reading_of(facts, RunQuantity::minutes, 0);
  if (ran == nullptr)
    return add(report, {}, Severity::unanswered, Code{"job.run_time_not_read"}, {Code{"job.run_so_long"}, args});
  if (ran->value.value.value.si >= shortest->si()) return;
  args.emplace_back("ran", ran->value.typed);
  add(report, {}, Severity::out, Code{"job.run_too_short"}, {Code{"job.run_again"}, args});
}

void judge_heat(const Facts& facts, int station, const RunReading& hanger, const RunReading& room,
                StageReport& report) {
  std::vector<Input> in;
  add_read(facts, "hanger", "hanger-", hanger, in);
  add_read(facts, "room", "room-", room, in);
  add_limit(facts, facts.shaft.spec().test_run.greatest_rise, "test_run.greatest_rise", in);
  const WorkingPtr rise =
      show(report, place_of(station), label_of(facts, station), metrology::figures(), "run-rise", std::move(in));
  if (rise == nullptr || !rise->answer) return;
  const Gauge* of_room = hanger.gauge == room.gauge ? nullptr : find_gauge(facts.workshop, room.gauge);
  take_judged(report, place_of(station), *rise, {find_gauge(facts.workshop, hanger.gauge), of_room}, facts.bench.date,
              named(facts, station));
}

void judge_heats(const Facts& facts, StageReport& report) {
  const std::optional<TemperatureRise>& limit = facts.shaft.spec().test_run.greatest_rise;
  const RunReading* room = reading_of(facts, RunQuantity::room, 0);
  const std::vector<int> all = hangers(facts.shaft);
  if (limit && room == nullptr && !all.empty())
    add(report, {}, Severity::unanswered, Code{"job.run_room_not_read"}, {Code{"job.read_room"}, {}});
  for (const int station : all) {
    const RunReading* hanger = reading_of(facts, RunQuantity::hanger, station + 1);
    if (hanger != nullptr && room != nullptr) judge_heat(facts, station, *hanger, *room, report);
    if (hanger != nullptr || !limit) continue;
    Args args = named(facts, station);
    args.emplace_back("limit", any(*limit));
    add(report, place_of(station), Severity::unanswered, Code{"job.run_heat_not_read"},
        {Code{"job.read_heat"}, std::move(args)});
  }
}

void judge_vibration(const Facts& facts, int station, const RunReading& read, StageReport& report) {
  std::vector<Input> in;
  add_read(facts, "vibration", {}, read, in);
  add_limit(facts, facts.shaft.spec().test_run.greatest_vibration, "test_run.greatest_vibration", in);
  const WorkingPtr level =
      show(report, place_of(station), label_of(facts, station), metrology::figures(), "run-vibration", std::move(in));
  if (level == nullptr) return;
  if (!level->answer) return take_findings(report, place_of(station), *level, named(facts, station));
  take_judged(report, place_of(station), *level, {find_gauge(facts.workshop, read.gauge)}, facts.bench.date,
              named(facts, station));
}

/// Wherever somebody held the meter to; a limit asks for every hanger, or once for a shaft that has none.
void judge_vibrations(const Facts& facts, StageReport& report) {
  const int stations = static_cast<int>(facts.shaft.stations().size());
  for (int station = -1; station < stations; ++station)
    if (const RunReading* read = reading_of(facts, RunQuantity::vibration, station + 1))
      judge_vibration(facts, station, *read, report);
  const std::optional<Speed>& limit = facts.shaft.spec().test_run.greatest_vibration;
  if (!limit) return;
  std::vector<int> wanted = hangers(facts.shaft);
  if (wanted.empty()) wanted.push_back(-1);
  for (const int station : wanted) {
    if (reading_of(facts, RunQuantity::vibration, station + 1) != nullptr) continue;
    Args args = named(facts, station);
    args.emplace_back("limit", any(*limit));
    add(report, place_of(station), Severity::unanswered, Code{"job.run_vibration_not_read"},
        {Code{"job.read_vibration"}, std::move(args)});
  }
}

}  // namespace

void run(const Facts& facts, StageReport& report) {
  judge_time(facts, report);
  judge_heats(facts, report);
  judge_vibrations(facts, report);
}

}  // namespace flatwise::job::rules
