// What holds a ring in its hub, worked out of a definition.
#include "job/grip.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/shaft/shaft_samples.h"
#include "job/job_samples.h"
#include "job/judge.h"

namespace flatwise::job {
namespace {

Shaft pressed_by_the_ground(Pressure yield = megapascals(130)) {
  ShaftSpec spec = sample_shaft({.rotors = 3});
  for (Rotor& rotor : spec.rotors) rotor.hub.material.yield = yield;
  spec.loads = {{.force = newtons(900), .direction = degrees(180)}, {.station = 0, .force = newtons(5000)}};
  spec.loads.push_back({.force = newtons(1200), .direction = degrees(90), .along = newtons(-150)});
  return *Shaft::make(std::move(spec));
}
FitInputs fit(double least_um, double greatest_um) {
  return {given("interference-least", any(micrometres(least_um))),
          given("interference-greatest", any(micrometres(greatest_um)))};
}

// Source: sums of forces: 900 N down and 1200 N across are 1500 N; what presses on another station is not this rotor's.
// Tolerance: 1e-9 N.
TEST(Grip, OfTheGroundCountsWhatPressesOnThisRotor) {
  const bearings::GroundLoad ground = ground_on(pressed_by_the_ground(), 2);
  EXPECT_NEAR(ground.up.si(), -900, 1e-9);
  EXPECT_NEAR(ground.drag.si(), 1200, 1e-9);
  EXPECT_EQ(ground.along, newtons(-150));
}

// Source: [CreepRule]: wanted = 0.08 sqrt(d F / B) micrometres, in mm and N, with F = F_r + 6 M / B. Tolerance: 1e-9 relative.
TEST(Grip, WantsWhatTheRuleOfTheCataloguesSays) {
  const Shaft shaft = pressed_by_the_ground();
  const auto creep = creep_load(shaft, 2, fit(20, 30));
  ASSERT_TRUE(creep.has_value());
  const Rotor& r = shaft.rotor(2);
  const double couple = std::get<AnyQuantity>((*creep)->input("couple")->value).si;
  EXPECT_GT(couple, 0);
  const double f = 1500 + 6 * couple / r.bearing.width.si();
  const double wanted_um = 0.08 * std::sqrt(r.bearing.outside / r.bearing.width * f);
  EXPECT_NEAR((*creep)->si("wanted") * 1e6 / wanted_um, 1, 1e-9);
  EXPECT_NEAR(std::get<AnyQuantity>((*creep)->input("interference-least")->value).si, 20e-6 - r.hub.roughness_loss.si(),
              1e-15);
  EXPECT_EQ((*creep_load(shaft, 2, fit(400, 500)))->answer, Answer::in);
  EXPECT_EQ((*creep_load(shaft, 2, fit(-20, -10)))->answer, Answer::out);
}

TEST(Grip, SaysOfAHubWhetherItGivesWay) {
  const Shaft weak = pressed_by_the_ground(megapascals(20));
  const auto yields = hub_yielding(weak, 1, fit(40, 60));
  ASSERT_TRUE(yields.has_value());
  EXPECT_FALSE((*yields)->findings.empty());
  const auto stays = hub_yielding(pressed_by_the_ground(megapascals(400)), 1, fit(10, 20));
  ASSERT_TRUE(stays.has_value());
  EXPECT_TRUE((*stays)->findings.empty());
  EXPECT_FALSE(hub_yielding(weak, 1, fit(-30, -20)).has_value()) << "a loose ring presses on nothing";
}

/// What the stage's report says of rotor 1, its bores gauged and the ring pressed in.
std::vector<const Working*> said_of_the_fit(const StageReport& report) {
  std::vector<const Working*> found;
  for (const Shown& shown : report.workings)
    for (const char* figure : {"fitted-clearance", "creep-load", "hub-yielding"})
      if (shown.working->figure == figure && shown.where == at_rotor(1)) found.push_back(shown.working.get());
  return found;
}

// 2026-11-28: what a fit means for bearing and hub stood at the page only. Source of the order of sizes: as above.
TEST(Grip, IsAdviceInTheReportOfThePressAndJudgesNothing) {
  SampleRecord record;
  record.book_in();
  record.agree();
  record.take_off();
  record.inspect();
  record.lay_out();
  record.press();
  const auto job = record.open();
  const StageReport report = judge(job->facts(), Stage::press);
  const auto said = said_of_the_fit(report);
  ASSERT_GE(said.size(), 2U);
  for (const Working* working : said) EXPECT_FALSE(working->answer.has_value()) << working->figure;
  for (const Finding& f : report.findings) {
    const bool advice = f.code == Code{"press.may_creep"} || f.code.id().starts_with("fits.hub_yielded");
    EXPECT_TRUE(!advice || f.severity == Severity::note) << f.code.id();
  }
}

}  // namespace
}  // namespace flatwise::job
