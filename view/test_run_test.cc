// The sheet of the test run: readings against the limits of the demo's long nine (invented).
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "view/view_samples.h"
#include "wire/written.h"

namespace flatwise::view {
namespace {

using Plain = nlohmann::json;
using job::RunQuantity;
using job::Stage;

struct OneRun {
  SampleJob job{demo_file("long-nine.toml")};

  /// The sheet opens once all that is asked before the run is answered.
  OneRun() {
    job.answer(Stage::booking_in);
    job.answer(Stage::test_run);
  }
  [[nodiscard]] int station(std::string_view label) const {
    const auto& all = job.shaft().stations();
    return static_cast<int>(std::ranges::find(all, label, &Station::label) - all.begin());
  }
  void read(RunQuantity what, std::string_view label, const char* text, const char* gauge) {
    const Kind kind = what == RunQuantity::vibration ? Kind::speed
                      : what == RunQuantity::minutes ? Kind::time
                                                     : Kind::temperature;
    job.write(job::RunRead{what, label.empty() ? 0 : station(label) + 1, typed(text, kind), gauge});
  }
  [[nodiscard]] Plain sheet(std::string_view label, UnitSystem units = UnitSystem::inch) {
    Screen screen = screen_of(units);
    screen.stage = Stage::test_run;
    screen.station = station(label);
    screen.step = 1;  // On all the same: of this job nothing but the run is told.
    Subject subject = job.subject();
    subject.former_runs = former;
    return Plain::parse(wire::text_of(bench_view(subject, screen)));
  }
  std::vector<job::FormerRun> former;  ///< Newest first.
};

std::vector<Plain> blocks(const Plain& list, std::string_view kind) {
  std::vector<Plain> out;
  for (const Plain& block : list)
    if (block["block"] == kind) out.push_back(block);
  return out;
}
bool says(const Plain& json, const std::string& text) {
  return json.dump(-1, ' ', false).find(text) != std::string::npos;
}

TEST(TestRunSheet, SaysTheLimitsOfTheDefinition) {
  OneRun run;
  const Plain head = run.sheet("hanger A")["sheet"]["head"];
  EXPECT_TRUE(says(head, "30\u00a0min at least"));
  EXPECT_TRUE(says(head, "0.15\u00a0in/s at most"));
}

// Source: 104 °F less 57 °F is 47 °F; the limit of 40 K is 72 °F.
TEST(TestRunSheet, StandsSignWordBarAndWorkingTogether) {
  OneRun run;
  run.read(RunQuantity::room, {}, "57 °F", "TH-1");
  run.read(RunQuantity::hanger, "hanger A", "104 °F", "TH-1");
  run.read(RunQuantity::vibration, "hanger A", "0.09 in/s", "VM-1");
  const Plain sheet = run.sheet("hanger A")["sheet"];
  const std::vector<Plain> answers = blocks(sheet["right"], "answer");
  ASSERT_EQ(answers.size(), 2U);
  for (const Plain& answer : answers) {
    EXPECT_EQ(answer["sign"], "in");
    EXPECT_TRUE(answer.contains("bar"));
    EXPECT_TRUE(answer.contains("working"));
  }
  EXPECT_TRUE(says(answers[0]["value"], "47"));
  EXPECT_TRUE(says(answers[0]["value"], "±"));
  EXPECT_TRUE(says(answers[1]["value"], "0.09"));
  EXPECT_TRUE(says(sheet["left"], "IN"));
}

TEST(TestRunSheet, HoldsTheRunAgainstTheOneBeforeAndTheLastGoodOne) {
  OneRun run;
  run.read(RunQuantity::vibration, "hanger A", "0.09 in/s", "VM-1");
  const Plain alone = run.sheet("hanger A")["sheet"];
  EXPECT_FALSE(says(alone, "last good run"));
  const auto was = [](double mm_s) {
    return std::vector<job::FormerRun::Value>{{"run-vibration", "hanger A", any(Speed::from_si(mm_s * 1e-3))}};
  };
  run.former = {{"29", false, was(5.08)}, {"27", true, was(1.27)}, {"25", true, was(2.54)}};
  const Plain sheet = run.sheet("hanger A")["sheet"];
  const Plain answer = blocks(sheet["right"], "answer").at(0);
  EXPECT_TRUE(says(answer, "0.2\u00a0in/s in the run before, job 29"));
  EXPECT_NE(answer["bar"], blocks(alone["right"], "answer").at(0)["bar"]);
  EXPECT_TRUE(says(sheet["left"], "the last good run, job 27"));
  EXPECT_TRUE(says(sheet["left"], "0.05\u00a0in/s"));
  EXPECT_FALSE(says(sheet, "job 25"));
  // A hanger that the earlier shaft did not have, or that nobody read then, has nothing to be held against.
  run.former = {{"27", true, {{"run-vibration", "hanger Z", any(Speed::from_si(1e-3))}}}};
  EXPECT_FALSE(says(run.sheet("hanger A")["sheet"], "job 27"));
}

TEST(TestRunSheet, WithoutAGaugeItCannotTell) {
  OneRun run;
  run.read(RunQuantity::room, {}, "57 °F", "");
  run.read(RunQuantity::hanger, "hanger M", "104 °F", "TH-1");
  const Plain sheet = run.sheet("hanger M")["sheet"];
  const std::vector<Plain> answers = blocks(sheet["right"], "answer");
  ASSERT_EQ(answers.size(), 1U);
  EXPECT_EQ(answers[0]["sign"], "tell");
  EXPECT_TRUE(says(answers[0], "nothing says how sure"));
}

TEST(TestRunSheet, OutSaysWhatToDoAndStopsTheCell) {
  OneRun run;
  run.read(RunQuantity::vibration, "hanger B", "0.5 in/s", "VM-1");
  const Plain view = run.sheet("nut A");
  const std::vector<Plain> answers = blocks(view["sheet"]["right"], "answer");
  ASSERT_EQ(answers.size(), 1U) << "no hanger was tapped: the worst is shown";
  EXPECT_EQ(answers[0]["sign"], "out");
  EXPECT_TRUE(says(answers[0], "lock it off"));
  const auto hanger = static_cast<std::size_t>(run.station("hanger B"));
  EXPECT_EQ(view["strip"]["stations"][hanger]["flag"], "stopped");
}

TEST(TestRunSheet, WhatNobodyReadIsNamed) {
  OneRun run;
  run.read(RunQuantity::minutes, {}, "12 min", "");
  const Plain foot = run.sheet("hanger A")["sheet"]["foot"];
  EXPECT_TRUE(says(foot, "It ran 12 min"));
  EXPECT_TRUE(says(foot, "The heat of hanger M was not read"));
  EXPECT_TRUE(says(foot, "The vibration of hanger B was not read"));
}

TEST(TestRunSheet, OffersTheMeterForVibration) {
  OneRun run;
  const std::vector<Plain> pads = blocks(run.sheet("hanger A")["sheet"]["right"], "keypad");
  ASSERT_EQ(pads.size(), 1U);
  const Plain fields = pads[0]["fields"];
  const auto vibration = std::ranges::find_if(fields, [](const Plain& f) { return f["kind"] == "speed"; });
  ASSERT_NE(vibration, fields.end());
  EXPECT_EQ((*vibration)["gauges"][0]["id"], "VM-1");
  EXPECT_EQ((*vibration)["unit"], "in/s");
}

}  // namespace
}  // namespace flatwise::view
