#include "core/fasteners/figures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "tests/support/figures.h"

namespace flatwise::fasteners {
namespace {

const FigureSpec& spec_of(std::string_view name) { return figure_named(figures(), name); }

TEST(FastenerFigures, HaveSourcesAndExamples) {
  EXPECT_EQ(figures().size(), 17U);
  for (const FigureSpec& figure : figures()) {
    EXPECT_FALSE(figure.sources.empty()) << figure.name;
    EXPECT_FALSE(figure.example.inputs.empty()) << figure.name;
  }
}

// Source: ISO 898-1 table 3 (600 MPa) and table 4 (560.59 mm2): proof load 336.4 kN.
// Tolerance: half of the last digit given.
TEST(ProofLoad, OfAnM30ByClassAndByMaterial) {
  const auto& spec = spec_of("proof-load");
  const auto by_class = evaluate(spec, {given("thread", "M30"), given("class", "8.8")}).value();
  EXPECT_NEAR(by_class.si("proof-load"), 336.35e3, 50);
  const auto by_material = evaluate(spec, {given("thread", "M42"), given("proof-strength", any(megapascals(400)))});
  EXPECT_TRUE(by_material);
  EXPECT_EQ(first_code(evaluate(spec, {given("thread", "M42"), given("class", "8.8")})), "fasteners.class_size");
  EXPECT_EQ(first_code(evaluate(spec, {given("thread", "M30")})), "fasteners.strength_once");
  EXPECT_EQ(first_code(evaluate(
                spec, {given("thread", "M30"), given("class", "8.8"), given("proof-strength", any(megapascals(400)))})),
            "fasteners.strength_once");
}

// Source: F = T / (K d), by hand (W22): 900 ft·lbf on 1.5 in, K 0.15 to 0.20: 36,000 to 48,000 lbf.
// Tolerance: 1e-9 relative.
TEST(TorquePreload, GivesTheBandAndJudgesItAgainstProof) {
  const auto& spec = spec_of("torque-preload");
  const std::vector<Input> base{given("torque", any(foot_pounds(900))), given("diameter", any(inches(1.5))),
                                given("nut-factor-least", any_ratio(0.15)),
                                given("nut-factor-greatest", any_ratio(0.20))};
  const auto band = evaluate(spec, base).value();
  EXPECT_NEAR(band.si("preload-least") / pounds_force(1).si(), 36000, 36e-6);
  EXPECT_NEAR(band.si("preload-greatest") / pounds_force(1).si(), 48000, 48e-6);
  EXPECT_TRUE(band.findings.empty());
  auto with_proof = base;
  with_proof.push_back(given("proof-load", any(pounds_force(40000))));
  EXPECT_EQ(evaluate(spec, with_proof)->findings.at(0).severity, Severity::cannot_tell);
  with_proof.back() = given("proof-load", any(pounds_force(30000)));
  EXPECT_EQ(evaluate(spec, with_proof)->findings.at(0).severity, Severity::out);
}

TEST(TorquePreload, TakesTheLubricationsRangeAndRefusesHalfOfOne) {
  const auto& spec = spec_of("torque-preload");
  const std::vector<Input> base{given("torque", any(newton_metres(500))), given("diameter", any(millimetres(30)))};
  auto inputs = base;
  EXPECT_EQ(first_code(evaluate(spec, inputs)), "fasteners.nut_factor_missing");
  inputs.push_back(given("lubrication", "zinc"));
  EXPECT_EQ(evaluate(spec, inputs)->si("nut-factor-greatest"), 0.35);
  inputs.push_back(given("nut-factor-least", any_ratio(0.1)));
  EXPECT_EQ(first_code(evaluate(spec, inputs)), "fasteners.nut_factor_half");
}

// Source: statics; the sheet of W22: 900 ft·lb on a 5 ft bar is 180 lbf (801 N), over 400 N; with 4:1 it is 45 lbf.
// Tolerance: half of the last digit given.
TEST(BarPull, FlagsWhatOnePersonCannotHold) {
  const auto& spec = spec_of("bar-pull");
  std::vector<Input> inputs{given("torque", any(foot_pounds(900))), given("length", any(inches(60)))};
  const auto alone = evaluate(spec, inputs).value();
  EXPECT_NEAR(alone.si("pull"), 801, 0.5);
  ASSERT_EQ(alone.findings.size(), 1U);
  EXPECT_EQ(alone.findings[0].code.id(), "fasteners.pull_too_much");
  EXPECT_EQ(alone.findings[0].instruction->code.id(), "fasteners.pull_by_multiplier");
  const auto little =
      evaluate(spec, {given("torque", any(newton_metres(700))), given("length", any(metres(1.5)))}).value();
  EXPECT_EQ(little.findings.at(0).instruction->code.id(), "fasteners.pull_better");
  EXPECT_EQ(alone.input("one-person")->origin.kind, OriginKind::assumed);
  inputs.push_back(given("multiplier", any_ratio(4)));
  const auto geared = evaluate(spec, inputs).value();
  EXPECT_NEAR(geared.si("pull") / pounds_force(1).si(), 45, 1e-9);
  ASSERT_EQ(geared.findings.size(), 1U);
  EXPECT_EQ(geared.findings[0].code.id(), "fasteners.multiplier_foot");
  EXPECT_NEAR(std::get<AnyQuantity>(geared.findings[0].args[0].value).si / foot_pounds(1).si(), 675, 1e-9);
}

// Source: statics (W22): 900 ft·lb on 4 ft with 2 ft straight on: 600 ft·lb, 150 lbf.
// Tolerance: 1e-9, exact conversions.
TEST(WrenchSetting, ShowsThePullToo) {
  const auto set =
      evaluate(spec_of("wrench-setting"), {given("torque", any(foot_pounds(900))), given("length", any(inches(48))),
                                           given("extension", any(inches(24)))})
          .value();
  EXPECT_NEAR(set.si("setting") / foot_pounds(1).si(), 600, 1e-9);
  EXPECT_NEAR(set.si("pull") / pounds_force(1).si(), 150, 1e-9);
  EXPECT_EQ(set.findings.at(0).code.id(), "fasteners.pull_too_much");
}

TEST(TorqueReached, AnswersAndSaysHowToMend) {
  const auto& spec = spec_of("torque-reached");
  const auto at = [&](double shown, double calibration) {
    return evaluate(spec, {given("with", "wrench"), given("shown", any(newton_metres(shown))),
                           given("length", any(millimetres(500))), given("calibration", any_ratio(calibration)),
                           given("target", any(newton_metres(500)))})
        .value();
  };
  EXPECT_EQ(text_out(at(400, 0.04), "state"), "below");
  EXPECT_EQ(at(400, 0.04).answer, Answer::out);
  EXPECT_EQ(at(400, 0.04).findings.at(0).instruction->code.id(), "fasteners.pull_on");
  EXPECT_EQ(text_out(at(500, 0.04), "state"), "inside");
  EXPECT_EQ(at(500, 0.04).answer, Answer::in);
  EXPECT_EQ(text_out(at(600, 0.04), "state"), "above");
  EXPECT_EQ(at(600, 0.04).findings.at(0).instruction->code.id(), "fasteners.slacken_again");
  EXPECT_EQ(at(460, 0.04).answer, Answer::cannot_tell);
  EXPECT_EQ(at(460, 0.04).findings.at(0).instruction->code.id(), "fasteners.pull_on");
  EXPECT_EQ(at(500, 0.15).answer, Answer::cannot_tell);
  EXPECT_EQ(at(500, 0.15).findings.at(0).instruction->code.id(), "fasteners.finer_tool");
}

// Source: statics: 300 N at 1.5 m is 450 N m.
// Tolerance: 1e-9 N m, rounding.
TEST(TorqueReached, WantsTheReadingOfTheToolThatWasUsed) {
  const auto& spec = spec_of("torque-reached");
  EXPECT_EQ(first_code(evaluate(
                spec, {given("with", "bar"), given("shown", any(newton_metres(5))), given("length", any(metres(1))),
                       given("calibration", any_ratio(0)), given("target", any(newton_metres(5)))})),
            "fasteners.reading_of_bar");
  const auto bar = evaluate(spec, {given("with", "bar"), given("pulled", any(newtons(300))),
                                   given("length", any(metres(1.5))), given("calibration", any_ratio(0.02)),
                                   given("pull-resolution", any(newtons(5))), given("target", any(newton_metres(450)))})
                       .value();
  EXPECT_NEAR(bar.si("torque"), 450, 1e-9);
  EXPECT_EQ(bar.answer, Answer::in);
}

// Source: docs/worked/W34-turn-and-settling.md: 96.78 kN of 77.03 to 118.19.
// Tolerance: half of the last digit written.
TEST(AngleTurn, IsJudgedAgainstProof) {
  const auto& spec = spec_of("angle-turn");
  auto inputs = inputs_of(spec, spec.example.inputs);
  EXPECT_NEAR(evaluate(spec, inputs)->si("preload-greatest"), 118.19e3, 10);
  inputs.push_back(given("proof-load", any(kilonewtons(100))));
  EXPECT_EQ(evaluate(spec, inputs)->findings.at(0).severity, Severity::cannot_tell);
  inputs.back() = given("proof-load", any(kilonewtons(70)));
  EXPECT_EQ(evaluate(spec, inputs)->findings.at(0).instruction->code.id(), "fasteners.check_turn");
}

TEST(SecondPull, HasThreeAnswers) {
  const auto& spec = spec_of("second-pull");
  const auto at = [&](double turned) {
    return evaluate(spec, {given("turned", any(degrees(turned))), given("expected", any(degrees(3.6)))}).value();
  };
  EXPECT_EQ(at(3).answer, Answer::in);
  EXPECT_EQ(at(6).answer, Answer::cannot_tell);
  EXPECT_EQ(at(10).findings.at(0).instruction->code.id(), "fasteners.look_along_stack");
}

TEST(OwnNutFactorFigure, WantsAPreloadForEachTorque) {
  const auto& spec = spec_of("own-nut-factor");
  auto inputs = inputs_of(spec, spec.example.inputs);
  EXPECT_EQ(evaluate(spec, inputs)->findings.at(0).code.id(), "fasteners.factor_narrowed");
  inputs.erase(inputs.begin());
  EXPECT_EQ(first_code(evaluate(spec, inputs)), "fasteners.pulls_uneven");
}

}  // namespace
}  // namespace flatwise::fasteners
