// Rules that need no gauge: answers, order of spacers, parts, count-out. Invented sample shaft (core/shaft/shaft_samples.h).
#include "job/judge.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/shaft/shaft_samples.h"
#include "job/kit.h"

namespace flatwise::job {
namespace {

/// Nine rotors, 1 to 4 came off at end A, everything answered and in order.
struct JobInOrder {
  Shaft shaft = *Shaft::make(sample_shaft());
  Workshop workshop;
  Bench bench;

  JobInOrder() {
    bench.came_off = bench.new_set = {1, 2, 3, 4};
    bench.labels_back = std::vector<LabelBack>{{"S1", {}}, {"S2", {}}, {"S3", {}}, {"S4", {}}};
    for (const int r : bench.came_off) {
      bench.fitted.push_back({r, {"TH-100-C3", {}, {}}});
      for (const Half half : {Half::a, Half::b})
        bench.leans.push_back({r, half, {{any(degrees(5)), {}, "5°"}, "5°", {}}});
      for (const char* item : {"set", "seal", "snap_ring"}) {
        const int count = std::string_view{item} == "set" ? 1 : 2;
        bench.counted.push_back({r, item, {count, {}, {}}, Told<int>{0, {}, {}}});
      }
    }
    for (const Asked& a : asked(shaft, bench))
      bench.answers.push_back({std::string{a.question->id}, a.number, {}, {Reply::yes, {}, {}}});
  }
  [[nodiscard]] StageReport judged(Stage stage) const { return judge({shaft, workshop, bench}, stage); }
};

bool has(const StageReport& report, Code code) {
  return std::ranges::any_of(report.findings, [&](const Finding& f) { return f.code == code; });
}

TEST(Answers, AllAnsweredIsInOrder) {
  const JobInOrder job;
  for (const Stage stage : {Stage::booking_in, Stage::teardown, Stage::kit, Stage::test_run})
    EXPECT_EQ(job.judged(stage).worst(), Severity::note) << static_cast<int>(stage);
}

TEST(Answers, EveryQuestionLeftOutBlocksItsStageAndIsNamed) {
  const JobInOrder whole;
  for (std::size_t i = 0; i < whole.bench.answers.size(); ++i) {
    JobInOrder job;
    const auto left_out = job.bench.answers[i];
    job.bench.answers.erase(job.bench.answers.begin() + static_cast<std::ptrdiff_t>(i));
    int named = 0;
    for (const Question& q : questions()) {
      if (q.id != left_out.question) continue;
      for (const Finding& f : job.judged(q.stage).findings)
        if (f.code == Code{"job.unanswered"} && f.severity == Severity::unanswered) ++named;
    }
    EXPECT_EQ(named, 1) << left_out.question << ' ' << left_out.number;
  }
}

TEST(Answers, NoIsAnAnswerAndBlocks) {
  JobInOrder job;
  job.bench.answers.front().reply.value = Reply::no;
  const StageReport report = job.judged(Stage::booking_in);
  EXPECT_TRUE(has(report, Code{"job.answered_no"}));
  EXPECT_EQ(report.worst(), Severity::out);
}

TEST(Answers, CaptivePartsAreAskedForOnlyWhereTheStationCameOff) {
  JobInOrder job;
  const auto asks_captive = [](const std::vector<Asked>& list) {
    return std::ranges::any_of(list, [](const Asked& a) { return a.question->id == "captive_in"; });
  };
  EXPECT_FALSE(asks_captive(asked(job.shaft, job.bench)));
  job.bench.came_off = {8, 9};
  EXPECT_TRUE(asks_captive(asked(job.shaft, job.bench)));
}

TEST(StationsOff, RunFromTheEndsToTheLastRotorThatCameOff) {
  const JobInOrder job;
  const std::vector<bool> off = stations_off(job.shaft, job.bench);
  const auto station = [&](std::string_view label) {
    return static_cast<std::size_t>(std::ranges::find(job.shaft.stations(), label, &Station::label) -
                                    job.shaft.stations().begin());
  };
  EXPECT_TRUE(off[station("nut A")]);
  EXPECT_TRUE(off[station("4")]);
  EXPECT_FALSE(off[station("S5")]);
  EXPECT_FALSE(off[station("nut B")]);
}

TEST(StationsOff, WithAllRotorsOffTheEndThatWasSaidDecides) {
  JobInOrder job;
  job.bench.came_off = {1, 2, 3, 4, 5, 6, 7, 8, 9};
  const auto& stations = job.shaft.stations();
  const auto station = [&](std::string_view label) {
    return static_cast<std::size_t>(std::ranges::find(stations, label, &Station::label) - stations.begin());
  };
  const auto off = [&](std::string_view label) -> bool { return stations_off(job.shaft, job.bench)[station(label)]; };
  EXPECT_TRUE(off("nut A") && off("nut B")) << "nobody said: both ends may be open";
  job.bench.opened = Opened{teardown::OpenedFrom::a, 0, {}};
  EXPECT_TRUE(off("nut A") && off("9") && !off("nut B"));
  job.bench.opened = Opened{teardown::OpenedFrom::b, 0, {}};
  EXPECT_TRUE(!off("nut A") && off("1") && off("nut B"));
  job.bench.opened = Opened{teardown::OpenedFrom::both, 4, {}};
  EXPECT_TRUE(off("nut A") && off("4") && off("5") && off("nut B"));
  const auto between = static_cast<std::size_t>(job.shaft.station_of_rotor(4)) + 1;
  EXPECT_FALSE(stations_off(job.shaft, job.bench)[between]) << "what lies between the two shares stayed";
  // Nobody said, and the parts tell.
  job.bench.opened.reset();
  job.bench.parts_off = {static_cast<int>(station("nut B")) + 1};
  EXPECT_TRUE(!off("nut A") && off("1") && off("nut B"));
}

TEST(StationsOff, APartThatCameOffByItselfIsOff) {
  JobInOrder job;
  job.bench.came_off.clear();
  job.bench.parts_off = {job.shaft.station_of_rotor(5) + 2};
  const std::vector<bool> off = stations_off(job.shaft, job.bench);
  EXPECT_EQ(std::ranges::count(off, true), 1);
  EXPECT_TRUE(off[static_cast<std::size_t>(job.shaft.station_of_rotor(5)) + 1]);
  // One label to put back, and the stack is to be measured again.
  job.bench.labels_back.reset();
  EXPECT_TRUE(has(job.judged(Stage::stack), Code{"stack.order_not_noted"}));
  EXPECT_TRUE(has(job.judged(Stage::stack), Code{"stack.not_measured"}));
}

TEST(Spacers, DoubledMissingAndAnothersAreNamedWithTheirCount) {
  JobInOrder job;
  const int place = job.shaft.station_of_rotor(1) + 1;
  const auto seen = [&](Phase phase, int count, const std::string& label = {}) {
    job.bench.spacers_seen = {{phase, place, {count, {}, {}}, label}};
    return job.judged(phase == Phase::teardown ? Stage::teardown : Stage::stack);
  };
  const auto severity = [](const StageReport& report, Code code) {
    const auto it = std::ranges::find(report.findings, code, &Finding::code);
    return it == report.findings.end() ? std::optional<Severity>{} : it->severity;
  };
  // As it came apart it explains what was wrong; as it went back it stops the work.
  EXPECT_EQ(severity(seen(Phase::teardown, 2), Code{"teardown.spacers_doubled"}), Severity::note);
  EXPECT_EQ(severity(seen(Phase::teardown, 0), Code{"teardown.spacer_not_there"}), Severity::note);
  EXPECT_EQ(severity(seen(Phase::teardown, 1, "S4"), Code{"teardown.spacer_of_another"}), Severity::note);
  EXPECT_EQ(severity(seen(Phase::assembly, 3), Code{"stack.spacers_more"}), Severity::out);
  EXPECT_EQ(severity(seen(Phase::assembly, 0), Code{"stack.spacer_fewer"}), Severity::out);
  EXPECT_EQ(severity(seen(Phase::assembly, 1, "S4"), Code{"stack.spacer_of_another"}), Severity::out);
  const StageReport three = seen(Phase::assembly, 3);
  const auto it = std::ranges::find(three.findings, Code{"stack.spacers_more"}, &Finding::code);
  const auto count = std::ranges::find(it->args, std::string_view{"count"}, &Arg::name);
  EXPECT_EQ(std::get<std::int64_t>(count->value), 2) << "two more than the definition";
  EXPECT_EQ(it->where, at_station(place));
  // One spacer of its own is as it should be.
  const StageReport right = seen(Phase::assembly, 1);
  EXPECT_TRUE(std::ranges::none_of(right.findings, [](const Finding& f) { return f.severity == Severity::out; }));
}

TEST(Spacers, TheLengthSaysThatItReadsAsWithOneMoreOrOneLess) {
  JobInOrder job;
  job.workshop.gauges.push_back({});
  Gauge& tape = job.workshop.gauges.back();
  tape.id = "TM";
  tape.use = Gauge::Use::length;
  tape.calibration_expanded_si = 0.0002;
  tape.resolution_si = 0.0001;
  tape.calibrated_until = {2036, 1, 1};
  job.bench.date = {2026, 2, 3};
  double nominal = 0;
  for (const Station& s : job.shaft.stations())
    if (s.kind != StationKind::nut) nominal += s.length.nominal.si();
  const Station& spacer = job.shaft.stations()[static_cast<std::size_t>(job.shaft.station_of_rotor(1)) + 1];
  ASSERT_EQ(spacer.kind, StationKind::spacer);
  const auto reads = [&](double length) {
    job.bench.stack = {{{{{length, Kind::length}, {}, "read"}, "read", {}}, "TM"}};
    return job.judged(Stage::stack);
  };
  const double one = spacer.length.nominal.si();
  EXPECT_TRUE(has(reads(nominal + one), Code{"stack.as_with_one_more"}));
  EXPECT_TRUE(has(reads(nominal - one), Code{"stack.as_with_one_less"}));
  const StageReport seated = reads(nominal);
  EXPECT_FALSE(has(seated, Code{"stack.as_with_one_more"}) || has(seated, Code{"stack.as_with_one_less"}));
  // Counted, it is no story any more.
  job.bench.spacers_seen = {{Phase::assembly, job.shaft.station_of_rotor(1) + 1, {2, {}, {}}, {}}};
  const StageReport counted = reads(nominal + one);
  EXPECT_TRUE(has(counted, Code{"stack.parts_more"}));
  EXPECT_FALSE(has(counted, Code{"stack.as_with_one_more"}));
}

TEST(WayOff, ARotorOffBetweenTwoThatStayedIsNamed) {
  JobInOrder job;
  job.bench.came_off = {1, 3};
  const StageReport report = job.judged(Stage::teardown);
  ASSERT_TRUE(has(report, Code{"teardown.rotor_held_between"}));
  job.bench.came_off = {1, 2, 8, 9};
  EXPECT_FALSE(has(job.judged(Stage::teardown), Code{"teardown.rotor_held_between"}));
}

struct OrderCase {
  std::vector<std::string> back;
  Code code;
};
class OrderBack : public ::testing::TestWithParam<OrderCase> {};
TEST_P(OrderBack, NamesTheSlip) {
  JobInOrder job;
  job.bench.labels_back->clear();
  for (const std::string& label : GetParam().back) job.bench.labels_back->push_back({label, {}});
  EXPECT_TRUE(has(job.judged(Stage::stack), GetParam().code));
}
INSTANTIATE_TEST_SUITE_P(Slips, OrderBack,
                         ::testing::Values(OrderCase{{"S1", "S3", "S2", "S4"}, Code{"stack.spacers_exchanged"}},
                                           OrderCase{{"S2", "S3", "S1", "S4"}, Code{"stack.spacers_out_of_order"}},
                                           OrderCase{{"S1", "S2", "S3"}, Code{"stack.spacer_missing"}},
                                           OrderCase{{"S1", "S2", "S2", "S3", "S4"}, Code{"stack.label_doubled"}},
                                           OrderCase{{"S1", "", "S3", "S4"}, Code{"stack.spacer_without_label"}},
                                           OrderCase{{"S1", "S2", "S3", "S4", "S9"}, Code{"stack.spacer_not_wanted"}}));

TEST(OrderBack, TheRightOrderIsNoFinding) {
  const JobInOrder job;
  for (const Finding& f : job.judged(Stage::stack).findings)
    EXPECT_TRUE(f.code == Code{"stack.not_measured"}) << f.code.id();
}

TEST(Parts, WrongBearingWrongLeanAndUnsoundRingAreNamed) {
  JobInOrder job;
  job.bench.fitted[1].designation.value = "TH-100";
  job.bench.leans[0].angle.value.value = any(degrees(2));
  job.bench.reused_rings.push_back({3, {Reply::no, {}, {}}});
  std::erase(job.bench.new_set, 4);
  const StageReport report = job.judged(Stage::kit);
  for (const Code code :
       {Code{"kit.wrong_bearing"}, Code{"kit.wrong_lean"}, Code{"kit.ring_not_sound"}, Code{"kit.no_new_set"}})
    EXPECT_TRUE(has(report, code)) << code.id();
}

TEST(Parts, WhatWasNotReadIsUnansweredNotPassed) {
  JobInOrder job;
  job.bench.fitted.pop_back();
  job.bench.leans.pop_back();
  const StageReport report = job.judged(Stage::kit);
  EXPECT_TRUE(has(report, Code{"kit.designation_not_read"}));
  EXPECT_TRUE(has(report, Code{"kit.lean_not_read"}));
  EXPECT_EQ(report.worst(), Severity::unanswered);
}

TEST(CountOut, MissingLeftOverAndNotCountedAreNamed) {
  JobInOrder job;
  job.bench.counted[1].laid.value = 1;
  job.bench.counted[4].left->value = 1;
  job.bench.counted.pop_back();
  const StageReport report = job.judged(Stage::kit);
  for (const Code code : {Code{"kit.missing_on_tray"}, Code{"kit.left_on_tray"}, Code{"kit.not_counted"}})
    EXPECT_TRUE(has(report, code)) << code.id();
}

// An old piece that lies in no scrap box may have gone back in: cannot tell, until it is found. Nobody counted: nothing is said.
TEST(CountOut, OldPiecesAreInTheScrapBox) {
  JobInOrder job;
  const int rotor = job.bench.came_off.front();
  EXPECT_FALSE(has(job.judged(Stage::kit), Code{"kit.old_not_in_scrap"}));
  job.bench.scrapped = {{rotor, "seal", {2, {}, {}}, {}}, {rotor, "set", {1, {}, {}}, {}}};
  EXPECT_FALSE(has(job.judged(Stage::kit), Code{"kit.old_not_in_scrap"}));
  job.bench.scrapped.front().laid.value = 1;
  const StageReport report = job.judged(Stage::kit);
  ASSERT_TRUE(has(report, Code{"kit.old_not_in_scrap"}));
  EXPECT_EQ(report.worst(), Severity::cannot_tell);
}

// Common practice: every rotor that left the shaft gets a new set; seals are always new; snap rings only if sound.
TEST(Kit, HoldsASetTwoSealsAndRingsThatAreNewUnlessSound) {
  const JobInOrder job;
  const auto trays = kit(job.shaft, {3}, {{3, {Reply::yes, {}, {}}}});
  ASSERT_EQ(trays.size(), 1U);
  ASSERT_EQ(trays[0].items.size(), 3U);
  EXPECT_EQ(trays[0].items[0].fresh, 1);
  EXPECT_EQ(trays[0].items[1].fresh, 2);
  EXPECT_EQ(trays[0].items[2].count, 2);
  EXPECT_EQ(trays[0].items[2].fresh, 1);
  const auto parts = parts_wanted(trays, job.workshop, {});
  ASSERT_EQ(parts.size(), 3U);
  EXPECT_FALSE(parts[0].on_shelf.has_value());
  EXPECT_EQ(parts[1].price, 13.0);
}

// What lies on a tray has left the shelf: it is not short of, and not ordered, a second time.
TEST(Kit, WhatLiesOnATrayIsNotTakenTwice) {
  JobInOrder job;
  const auto trays = kit(job.shaft, {3}, {{3, {Reply::yes, {}, {}}}});
  const std::string seal = trays[0].items[1].part.part_number, ring = trays[0].items[2].part.part_number;
  job.workshop.stock = {{seal, "seal", 1}, {ring, "ring", 0}};
  auto parts = parts_wanted(trays, job.workshop, {});
  EXPECT_TRUE(parts[1].short_of());
  EXPECT_TRUE(parts[2].short_of());
  // One seal, and both rings, of which one is the old one.
  parts = parts_wanted(trays, job.workshop, {{3, "seal", {1, {}, {}}, {}}, {3, "snap_ring", {2, {}, {}}, {}}});
  EXPECT_EQ(parts[1].to_take(), 1);
  EXPECT_FALSE(parts[1].short_of());
  EXPECT_EQ(parts[2].taken, 1);
  EXPECT_FALSE(parts[2].short_of());
  EXPECT_EQ(parts[1].price, 13.0) << "what the customer pays for is all that was wanted";
}

TEST(Kit, WithThePolicyOffOnlySealsAndRingsAreDue) {
  auto spec = sample_shaft();
  spec.policies.renew_disturbed = false;
  const Shaft shaft = *Shaft::make(spec);
  const auto trays = kit(shaft, {1}, {});
  ASSERT_EQ(trays[0].items.size(), 2U);
  EXPECT_EQ(trays[0].items[0].item, "seal");
}

TEST(Report, SafetyComesBeforeEverythingAndOutBeforeUnanswered) {
  JobInOrder job;
  job.bench.answers.erase(job.bench.answers.begin());
  job.bench.labels_back.reset();
  const JobReport report = judge_through({job.shaft, job.workshop, job.bench}, Stage::kit);
  ASSERT_NE(report.first_open(), nullptr);
  EXPECT_EQ(report.first_open()->code, Code{"job.unanswered"});
}

}  // namespace
}  // namespace flatwise::job
