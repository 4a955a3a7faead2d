// The test run judged: readings at their limits ± U, gauges that are missing or past their date, and what that does to the release.
// Invented sample shaft (core/shaft/shaft_samples.h).
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "job/former_run.h"
#include "job/job_samples.h"
#include "job/next.h"
#include "job/release.h"

namespace flatwise::job {
namespace {

constexpr double kRoom = 14;
const TestRun kLimits{
    .shortest = minutes(20), .greatest_rise = kelvins(40), .greatest_vibration = Speed::from_si(4.5e-3)};

Entered celsius_read(double c) { return {any(celsius(c)), {}, std::to_string(c) + " °C"}; }
Entered speed_read(double mm_s) { return {any(Speed::from_si(mm_s * 1e-3)), {}, std::to_string(mm_s) + " mm/s"}; }
Entered minutes_read(double min) { return {any(minutes(min)), {}, std::to_string(min) + " min"}; }

/// A job done up to the test run, and what is read on it.
struct RunJob {
  SampleRecord record;
  int hanger_a = 0, hanger_b = 0;

  explicit RunJob(const TestRun& limits = kLimits) : record{{.rotors = 3, .test_run = limits}} {
    Gauge meter;
    meter.id = "V1";
    meter.use = Gauge::Use::vibration_meter;
    meter.kind = Kind::speed;
    meter.relative = true;
    meter.calibration_expanded_si = 0.05;
    meter.resolution_si = 0.1e-3;
    meter.calibrated_until = {2030, 1, 1};
    record.workshop().gauges.push_back(meter);
    hanger_a = record.station("hanger A"), hanger_b = record.station("hanger B");
    record.do_all();
  }
  void time(double min) { record.write(RunRead{RunQuantity::minutes, 0, minutes_read(min), {}}); }
  void room(std::string gauge = "T1") {
    record.write(RunRead{RunQuantity::room, 0, celsius_read(kRoom), std::move(gauge)});
  }
  void heat(int station, double rise, std::string gauge = "T1") {
    record.write(RunRead{RunQuantity::hanger, station, celsius_read(kRoom + rise), std::move(gauge)});
  }
  void shake(int station, double mm_s, std::string gauge = "V1") {
    record.write(RunRead{RunQuantity::vibration, station, speed_read(mm_s), std::move(gauge)});
  }
  void all_in() {
    time(40);
    room();
    for (const int station : {hanger_a, hanger_b}) heat(station, 26), shake(station, 2.3);
  }
  Gauge& gauge(std::string_view id) { return *std::ranges::find(record.workshop().gauges, id, &Gauge::id); }
  [[nodiscard]] StageReport report() const {
    const auto open = record.open();
    return judge(open->facts(), Stage::test_run);
  }
  [[nodiscard]] std::vector<Block> blocks() const {
    const auto open = record.open();
    return standing(*open).blocks;
  }
};

const Finding* found(const StageReport& report, Code code, int station = 0) {
  const Where where{station > 0 ? Where::Part::station : Where::Part::shaft, station};
  const auto it =
      std::ranges::find_if(report.findings, [&](const Finding& f) { return f.code == code && f.where == where; });
  return it == report.findings.end() ? nullptr : &*it;
}
const Working* working_at(const StageReport& report, std::string_view figure, int station) {
  for (const Shown& shown : report.workings)
    if (shown.working->figure == figure && shown.where == Where{Where::Part::station, station})
      return shown.working.get();
  return nullptr;
}
bool blocked_by(const std::vector<Block>& blocks, Code code) {
  return std::ranges::any_of(blocks, [&](const Block& b) { return b.what.code == code; });
}

TEST(Run, AllReadAndInsideIsInOrder) {
  RunJob job;
  job.all_in();
  const StageReport report = job.report();
  EXPECT_EQ(report.worst(), Severity::note);
  EXPECT_TRUE(report.problems.empty());
  for (const int station : {job.hanger_a, job.hanger_b})
    for (const char* figure : {"run-rise", "run-vibration"}) {
      ASSERT_NE(working_at(report, figure, station), nullptr) << figure;
      EXPECT_EQ(working_at(report, figure, station)->answer, Answer::in);
    }
}

// Source: the readings that RunJob::all_in() takes: 26 K above the room, 2.3 mm/s.
// Tolerance: rounding of one difference of temperatures.
TEST(FormerRun, IsGoodWhereAllThatWasReadWasIn) {
  const auto former = [](const RunJob& job) { return former_run("27", JobReport{{job.report()}}); };
  RunJob job;
  EXPECT_FALSE(former(job)) << "nothing was read";
  job.all_in();
  ASSERT_TRUE(former(job));
  EXPECT_TRUE(former(job)->good);
  EXPECT_EQ(former(job)->job, "27");
  EXPECT_NEAR(former(job)->at("run-rise", "hanger A")->si, 26, 1e-9);
  EXPECT_NEAR(former(job)->at("run-vibration", "hanger B")->si, 2.3e-3, 1e-12);
  EXPECT_FALSE(former(job)->at("run-vibration", "hanger C"));
  job.shake(job.hanger_b, 9.0);
  EXPECT_FALSE(former(job)->good) << "one was out";
  RunJob past;
  past.all_in();
  past.gauge("V1").calibrated_until = {2000, 1, 1};
  EXPECT_FALSE(former(past)->good) << "a meter past its date decides nothing";
  RunJob unjudged{TestRun{}};
  unjudged.all_in();
  ASSERT_TRUE(former(unjudged));
  EXPECT_FALSE(former(unjudged)->good) << "without limits nobody can say so";
}

TEST(Run, WithoutLimitsNothingIsAskedAndNothingJudged) {
  RunJob job{TestRun{}};
  EXPECT_TRUE(job.report().findings.empty());
  job.room({});
  job.heat(job.hanger_a, 90, {});
  job.shake(job.hanger_a, 30, {});
  const StageReport report = job.report();
  EXPECT_EQ(report.worst(), Severity::note);
  EXPECT_FALSE(working_at(report, "run-rise", job.hanger_a)->answer);
  ASSERT_NE(found(report, Code{"metrology.vibration_zone"}, job.hanger_a), nullptr) << "advice is given all the same";
}

TEST(Run, EachLimitAsksForItsReadingsAlone) {
  const auto missing = [](const TestRun& limits) {
    const StageReport report = RunJob{limits}.report();
    std::vector<std::string> codes;
    for (const Finding& f : report.findings) {
      EXPECT_EQ(f.severity, Severity::unanswered);
      EXPECT_TRUE(f.instruction);
      codes.emplace_back(f.code.id());
    }
    return codes;
  };
  using Codes = std::vector<std::string>;
  EXPECT_EQ(missing({.shortest = minutes(20)}), Codes{"job.run_time_not_read"});
  EXPECT_EQ(missing({.greatest_rise = kelvins(40)}),
            (Codes{"job.run_room_not_read", "job.run_heat_not_read", "job.run_heat_not_read"}));
  EXPECT_EQ(missing({.greatest_vibration = Speed::from_si(4.5e-3)}),
            (Codes{"job.run_vibration_not_read", "job.run_vibration_not_read"}));
}

TEST(Run, AHangerThatNobodyReadIsNamed) {
  RunJob job;
  job.time(40);
  job.room();
  job.heat(job.hanger_a, 26);
  job.shake(job.hanger_b, 2);
  const StageReport report = job.report();
  EXPECT_EQ(found(report, Code{"job.run_heat_not_read"}, job.hanger_a), nullptr);
  EXPECT_NE(found(report, Code{"job.run_heat_not_read"}, job.hanger_b), nullptr);
  EXPECT_NE(found(report, Code{"job.run_vibration_not_read"}, job.hanger_a), nullptr);
  EXPECT_EQ(found(report, Code{"job.run_vibration_not_read"}, job.hanger_b), nullptr);
}

TEST(Run, TooShortIsOutAndJustLongEnoughIsNot) {
  for (const auto& [ran, out] : {std::pair{19.9, true}, {20.0, false}, {45.0, false}}) {
    RunJob job{TestRun{.shortest = minutes(20)}};
    job.time(ran);
    EXPECT_EQ(found(job.report(), Code{"job.run_too_short"}) != nullptr, out) << ran;
  }
}

// Source: ISO 14253-1 with U by the GUM: two thermometers of U = 0.2 K (k = 2), a step of 0.1 K and s = 0.1 K from 20 readings:
//         u² = 2 (0.01 + 0.1²/12 + 0.01) = 0.0416667 K², ν = u⁴/(2 · 0.1⁴/19) = 164; t = 1.9745 (Student's table), U = 0.4031 K.
//         Meter 5 % (k = 2) and a step of 0.1 mm/s: u² = (0.025 v)² + 0.1²/12; at 4.5 mm/s U = 1.95996 · 0.11613 = 0.2276.
// Tolerance: a fiftieth of U on either side of each edge.
TEST(Run, IsJudgedAtTheLimitsByU) {
  struct Row {
    double of_u;
    Severity severity;
  };
  constexpr Row kRows[] = {{-1.05, Severity::note},
                           {-0.95, Severity::cannot_tell},
                           {0.0, Severity::cannot_tell},
                           {0.95, Severity::cannot_tell},
                           {1.08, Severity::out}};
  for (const Row& row : kRows) {
    RunJob hot{TestRun{.greatest_rise = kelvins(40)}};
    hot.room();
    hot.heat(hot.hanger_a, 40 + row.of_u * 0.4031);
    hot.heat(hot.hanger_b, 10);
    EXPECT_EQ(hot.report().worst(), row.severity) << row.of_u;
    RunJob shaking{TestRun{.greatest_vibration = Speed::from_si(4.5e-3)}};
    shaking.shake(shaking.hanger_a, 4.5 + row.of_u * 0.2276);
    shaking.shake(shaking.hanger_b, 1);
    EXPECT_EQ(shaking.report().worst(), row.severity) << row.of_u;
  }
}

TEST(Run, WithoutAGaugeNothingIsTold) {
  RunJob job;
  job.time(40);
  job.room({});
  for (const int station : {job.hanger_a, job.hanger_b}) job.heat(station, 5), job.shake(station, 0.5, {});
  const StageReport report = job.report();
  EXPECT_EQ(report.worst(), Severity::cannot_tell);
  EXPECT_NE(found(report, Code{"metrology.rise_no_certificate"}, job.hanger_a), nullptr);
  EXPECT_NE(found(report, Code{"metrology.vibration_no_certificate"}, job.hanger_b), nullptr);
}

TEST(Run, AGaugePastItsDateCannotTellUntilSomebodyAcceptsIt) {
  RunJob job;
  job.all_in();
  job.gauge("T1").calibrated_until = {2020, 1, 1};
  StageReport report = job.report();
  EXPECT_EQ(report.worst(), Severity::cannot_tell);
  ASSERT_NE(found(report, Code{"job.gauge_overdue"}, job.hanger_a), nullptr);
  job.gauge("T1").accepted_overdue_by = "Lead";
  report = job.report();
  EXPECT_EQ(report.worst(), Severity::note);
  EXPECT_NE(found(report, Code{"job.gauge_accepted"}, job.hanger_b), nullptr);
}

TEST(Run, WhatIsOutByAGaugePastItsDateIsNotSaidToBeOut) {
  RunJob job;
  job.all_in();
  job.record.write(RunRead{RunQuantity::vibration, job.hanger_a, speed_read(20), "V1"}, "bench",
                   job.record.live(RunRead{RunQuantity::vibration, job.hanger_a, speed_read(20), "V1"}));
  EXPECT_EQ(job.report().worst(), Severity::out);
  job.gauge("V1").calibrated_until = {2020, 1, 1};
  EXPECT_EQ(job.report().worst(), Severity::cannot_tell);
}

TEST(Run, TwoReadingsThatDifferAreNoFact) {
  RunJob job;
  job.all_in();
  job.heat(job.hanger_a, 60);  // By another tablet that had not seen the first: it corrects nothing.
  EXPECT_NE(found(job.report(), Code{"job.run_heat_not_read"}, job.hanger_a), nullptr);
  EXPECT_TRUE(blocked_by(job.blocks(), Code{"job.two_answers"}));
}

// --- the release ------------------------------------------------------------------------------------------------------

TEST(RunRelease, IsBlockedWithTheReasonByWhatIsOutMissingOrCannotBeTold) {
  RunJob good;
  good.all_in();
  good.record.sign_all();
  EXPECT_TRUE(good.blocks().empty());

  RunJob missing;
  EXPECT_TRUE(blocked_by(missing.blocks(), Code{"job.run_time_not_read"}));

  RunJob out;
  out.all_in();
  out.record.write(RunRead{RunQuantity::hanger, out.hanger_a, celsius_read(80), "T1"}, "bench",
                   out.record.live(RunRead{RunQuantity::hanger, out.hanger_a, celsius_read(80), "T1"}));
  const std::vector<Block> blocks = out.blocks();
  const auto hot = std::ranges::find(blocks, Code{"metrology.rise_out"}, [](const Block& b) { return b.what.code; });
  ASSERT_NE(hot, blocks.end());
  EXPECT_EQ(hot->stage, Stage::test_run);
  EXPECT_EQ(hot->where, (Where{Where::Part::station, out.hanger_a}));
  EXPECT_EQ(hot->severity, Severity::out);
  EXPECT_EQ(hot->lifted_by, Role::lead) << "the bench mends it; only the lead may let it pass";
  EXPECT_TRUE(hot->instruction);

  RunJob late;
  late.all_in();
  late.gauge("V1").calibrated_until = {2020, 1, 1};
  EXPECT_TRUE(blocked_by(late.blocks(), Code{"job.gauge_overdue"}));
}

/// Codes and fields of what check_entry refuses an entry for.
std::string refused(const RunJob& job, EntryBody body) {
  const auto open = job.record.open();
  Entry entry;
  entry.id = "new", entry.job = "job", entry.by = "lead", entry.on = "tablet";
  entry.at = open->entries.back().at;
  entry.follows = open->entries.back().id;
  entry.corrects = live_answers_to(open->state, body);
  entry.body = std::move(body);
  std::string out;
  for (const Problem& p : check_entry(open->shaft, open->workshop, open->state, entry))
    out += std::string{p.code.id()} + " " + p.field + "; ";
  return out;
}

TEST(RunRelease, IsForcedOnlyWithAReason) {
  RunJob job;
  job.all_in();
  job.shake(job.hanger_a, 2.3);  // The same again: agreed.
  job.record.write(RunRead{RunQuantity::vibration, job.hanger_b, speed_read(12), "V1"}, "bench",
                   job.record.live(RunRead{RunQuantity::vibration, job.hanger_b, speed_read(12), "V1"}));
  job.record.sign_all();
  ASSERT_EQ(job.blocks().size(), 1U);
  EXPECT_EQ(refused(job, Released{false, ""}), "record.still_open body.forced; ");
  EXPECT_EQ(refused(job, Released{true, ""}), "record.reason_missing body.reason; ");
  EXPECT_EQ(refused(job, Released{true, "Goes to the flat field only, looked at again on Monday."}), "");
}

TEST(RunEntry, TakesEachReadingWithItsOwnKindOfGauge) {
  const RunJob job;
  const auto vibration = [&](const char* gauge) {
    return refused(job, RunRead{RunQuantity::vibration, job.hanger_a, speed_read(1), gauge});
  };
  EXPECT_EQ(vibration("V1"), "");
  EXPECT_EQ(vibration(""), "") << "read without one it is kept, and decides nothing";
  EXPECT_EQ(vibration("T1"), "record.wrong_gauge body.gauge; ");
  EXPECT_EQ(vibration("V9"), "record.no_such_gauge body.gauge; ");
  EXPECT_EQ(refused(job, RunRead{RunQuantity::hanger, job.hanger_a, celsius_read(40), "V1"}),
            "record.wrong_gauge body.gauge; ");
}

TEST(RunRelease, ReadingsAreAskedForBeforeTheRunAsAWhole) {
  RunJob job;
  const std::vector<Block> blocks = job.blocks();
  const auto first = std::ranges::find(blocks, Stage::test_run, [](const Block& b) { return b.stage; });
  ASSERT_NE(first, blocks.end());
  EXPECT_TRUE(first->what.code.id().starts_with("job.run_")) << first->what.code.id();
}

}  // namespace
}  // namespace flatwise::job
