#include "core/fasteners/pull.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <numbers>

#include "core/fasteners/preload.h"

namespace flatwise::fasteners {
namespace {

const double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kTight = 1e-12;

// Source: Shigley eq. 8-27, T = K F d, worked: 3/8-16 grade 5 at 4940 lbf, K 0.20 and 0.15: 30.875 and 23.156 ft·lbf.
// Tolerance: half of the last digit given.
TEST(TorqueForPreload, MeetsTheWorkedGradeFiveBolt) {
  const auto band = torque_for_preload({pounds_force(4940), inches(0.375), {0.15, 0.20}}).value();
  EXPECT_NEAR(band.greatest / foot_pounds(1), 30.875, 0.0005);
  EXPECT_NEAR(band.least / foot_pounds(1), 23.156, 0.0005);
}

// Source: Shigley eq. 8-27 and ISO 898-1: M30 class 8.8 at 75 % of proof, F = 252265.5 N, K 0.20, 0.15: by hand (W20).
// Tolerance: 1e-6 relative, seven digits given.
TEST(TorqueForPreload, MeetsTheM30OfW20) {
  const auto band = torque_for_preload({newtons(252265.5), millimetres(30), {0.15, 0.20}}).value();
  EXPECT_NEAR(band.greatest.si(), 1513.593, 1513.593e-6);
  EXPECT_NEAR(band.least.si(), 1135.195, 1135.195e-6);
}

// Source: VDI 2230 without rounding, M30: F = 252265.5, P = 3.5, d2 = 27.727, mu = 0.12, Dk = 40: 1230.557 N m; with the
// guideline's rounding 0.16 P + 0.58 d2 mu + Dk mu/2: 1233.528 N m.
// Tolerance: 1e-5 relative; the rounded form within 0.3 %.
TEST(TorqueFull, MeetsTheM30OfTheGuideline) {
  const auto full =
      torque_full({newtons(252265.5), millimetres(3.5), millimetres(27.727), millimetres(40), 0.12, 0.12}).value();
  EXPECT_NEAR(full.torque.si(), 1230.557, 1230.557e-5);
  EXPECT_NEAR(full.torque.si(), 1233.528, 1233.528 * 3e-3);
  EXPECT_NEAR((full.stretching + full.thread + full.face).si(), full.torque.si(), 1e-9);
}

// Source: published nut factors as [NutFactors] cites them: dry 0.18-0.27, oil 0.10-0.26, zinc 0.17-0.35, lubricated 0.15 ± 30 %.
// Tolerance: 1e-12, the values as printed.
TEST(NutFactor, IsThePublishedRange) {
  EXPECT_NEAR(nut_factor(Lubrication::dry).range.least, 0.18, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::dry).range.greatest, 0.27, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::oiled).range.least, 0.10, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::oiled).range.greatest, 0.26, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::zinc).range.least, 0.17, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::zinc).range.greatest, 0.35, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::greased).range.least, 0.105, kTight);
  EXPECT_NEAR(nut_factor(Lubrication::greased).range.greatest, 0.195, kTight);
  for (const auto l :
       {Lubrication::dry, Lubrication::oiled, Lubrication::greased, Lubrication::moly, Lubrication::zinc})
    EXPECT_LT(nut_factor(l).range.least, nut_factor(l).range.greatest);
}

TEST(Preload, RefusesAndNamesTheField) {
  const TorqueOnThread good{newton_metres(500), {}, millimetres(30), {0.15, 0.2}};
  const auto field = [](const TorqueOnThread& on) { return preload_from_torque(on).error().field; };
  auto bad = good;
  bad.torque = newton_metres(kNaN);
  EXPECT_EQ(field(bad), "torque");
  bad = good;
  bad.diameter = {};
  EXPECT_EQ(field(bad), "diameter");
  bad = good;
  bad.factor = {0.2, 0.15};
  EXPECT_EQ(field(bad), "nut-factor-least");
  bad = good;
  bad.factor = {kNaN, 0.15};
  EXPECT_EQ(field(bad), "nut-factor-least");
  bad = good;
  bad.torque_u = newton_metres(-1);
  EXPECT_EQ(field(bad), "torque-u");
  EXPECT_FALSE(torque_full({newtons(1), millimetres(1), millimetres(1), millimetres(1), -0.1, 0.1}));
}

// Source: Hooke, by hand (W21): 200 kN on a tube 80/60 mm, 1.6 m long, E = 206 GPa: F L / (E A) = 0.7064 mm.
// Tolerance: half of the last digit given.
TEST(StackCompression, MeetsW21AndAddsUp) {
  const Sleeve whole[] = {{metres(1.6), millimetres(80), millimetres(60)}};
  const Sleeve parts[] = {{metres(1.0), millimetres(80), millimetres(60)},
                          {metres(0.6), millimetres(80), millimetres(60)}};
  const Length at_once = stack_compression(kilonewtons(200), gigapascals(206), whole).value();
  EXPECT_NEAR(at_once.si() * 1e3, 0.7064, 0.00005);
  EXPECT_NEAR(stack_compression(kilonewtons(200), gigapascals(206), parts).value().si(), at_once.si(), 1e-15);
  const Sleeve wrong[] = {{metres(1), millimetres(60), millimetres(80)}};
  EXPECT_EQ(stack_compression(kilonewtons(200), gigapascals(206), wrong).error().code.id(), "fasteners.sleeve_bore");
  EXPECT_FALSE(stack_compression(kilonewtons(200), gigapascals(206), {}));
}

// Source: common practice: 200 lbf at the end of a 5 ft bar is 1000 ft·lbf.
// Tolerance: 1e-12 relative, exact conversions.
TEST(BarPull, TwoHundredPoundsOnFiveFeetIsAThousand) {
  const auto pull = bar_pull({.torque = foot_pounds(1000), .lever = {.length = inches(60)}}).value();
  EXPECT_NEAR(pull.pull / pounds_force(1), 200, 200 * kTight);
  EXPECT_EQ(pull.pull, pull.greatest);
  const auto slanted =
      bar_pull({.torque = foot_pounds(1000), .lever = {.length = inches(60), .pull_angle = degrees(30)}}).value();
  EXPECT_NEAR(slanted.pull / pounds_force(1), 400, 400 * kTight);
}

// Source: second way round: the pull on the longer bar, or with the multiplier, is the limit itself.
// Tolerance: 1e-9 N, rounding.
TEST(BarPull, OnePersonsBetterWayIsEnough) {
  const BarPull bar{.torque = newton_metres(1220), .lever = {.length = metres(1.5)}, .multiplier = {}};
  const auto better = for_one_person(bar, newtons(400)).value();
  auto longer = bar;
  longer.lever.length = better.length;
  EXPECT_NEAR(bar_pull(longer)->greatest.si(), 400, 1e-9);
  auto geared = bar;
  geared.multiplier.ratio = better.ratio;
  EXPECT_NEAR(bar_pull(geared)->greatest.si(), 400, 1e-9);
}

// Source: statics, checked by published crow's-foot examples: 9 in extension on a 12 in wrench, 100 wanted, sets
// 57.142857; L = 500, E = 100: no correction at 90°, 87.610066 at 45°.
// Tolerance: half of the last digit given.
TEST(WrenchSetting, MeetsThePublishedExtensions) {
  const auto at = [](double l, double e, double degree) {
    return wrench_setting(newton_metres(100),
                          {.length = millimetres(l), .extension = millimetres(e), .extension_angle = degrees(degree)})
        .value()
        .si();
  };
  EXPECT_NEAR(at(12 * 25.4, 9 * 25.4, 0), 57.142857, 5e-7);
  EXPECT_NEAR(at(500, 100, 90), 100, 1e-12);
  EXPECT_NEAR(at(500, 100, 45), 87.610066, 5e-7);
  EXPECT_NEAR(at(500, 100, -45), 87.610066, 5e-7);
}

TEST(WrenchSetting, RefusesAnExtensionFoldedBackToTheNut) {
  const auto refused = [](double e, double degree) {
    const auto r =
        wrench_setting(newton_metres(100),
                       {.length = millimetres(300), .extension = millimetres(e), .extension_angle = degrees(degree)});
    return r ? std::string{} : std::string{r.error().code.id()};
  };
  EXPECT_EQ(refused(300, 180), "fasteners.no_lever");
  EXPECT_EQ(refused(700, 120), "fasteners.no_lever");
  EXPECT_EQ(refused(200, 180), "");
  EXPECT_EQ(wrench_setting(newton_metres(100), {.length = metres(kNaN)}).error().field, "length");
  EXPECT_EQ(wrench_setting(newton_metres(100), {.length = metres(1), .extension = metres(-1)}).error().field,
            "extension");
}

Pulled wrench_of(double newton_metre) {
  return {.reading = newton_metres(newton_metre), .lever = {.length = millimetres(500)}, .calibration_u = 0.04};
}

// Source: statics, closed form: a pull 10° off square changes the torque at the nut by E sin e tan 10° / (L + E cos e):
// 2.2 % at e = 45°, E = L/5. Rectangular +-a: root mean square sqrt(tan a / a - 1) times E sin e / (L + E cos e).
// Tolerance: 1e-6 relative, Simpson's rule; 2.2 % to its last digit.
TEST(TorqueReached, CarriesThePullAnglesShareOfAnExtension) {
  Pulled pulled = wrench_of(100);
  pulled.calibration_u = 0;
  pulled.lever.extension = millimetres(100);
  pulled.lever.extension_angle = degrees(45);
  const auto reached = torque_reached(pulled).value();
  const double a = degrees(10).radians(), share = 0.2 * std::sqrt(0.5) / (1 + 0.2 * std::sqrt(0.5));
  EXPECT_NEAR(share * std::tan(a), 0.022, 0.0005);
  EXPECT_NEAR(reached.standard / reached.torque, share * std::sqrt(std::tan(a) / a - 1), 1e-6 * 0.013);
  EXPECT_NEAR(reached.torque.si(), 100 * (1 + 0.2 * std::sqrt(0.5)), 1e-10);
}

// Source: closed form: a bar pulled within +-a of square: mean square of cos d - 1 is 1/2 + sin 2a / 4a - 2 sin a / a + 1.
// Tolerance: 1e-6 relative, Simpson's rule.
TEST(TorqueReached, CarriesThePullAngleOfABar) {
  const Pulled bar{.with = PulledWith::bar, .pull = newtons(400), .lever = {.length = metres(1.5)}};
  const auto reached = torque_reached(bar).value();
  EXPECT_NEAR(reached.torque.si(), 600, 1e-9);
  const double a = degrees(10).radians();
  const double rms = std::sqrt(0.5 + std::sin(2 * a) / (4 * a) - 2 * std::sin(a) / a + 1);
  EXPECT_NEAR(reached.standard.si() / 600, rms, 1e-6 * rms);
}

// Source: GUM 5.1.2, by hand (W22): wrench U 4 % (k = 2), multiplier 5 % (k = 2), no extension: U = 6.40 %; 225 ft·lb
// times 4 is 900 ± 58 ft·lb.
// Tolerance: half of the last digit given.
TEST(TorqueReached, CombinesWrenchAndMultiplier) {
  Pulled pulled{
      .reading = foot_pounds(225), .lever = {.length = inches(60)}, .multiplier = {4, 0.05}, .calibration_u = 0.04};
  const auto reached = torque_reached(pulled).value();
  EXPECT_NEAR(reached.torque / foot_pounds(1), 900, 1e-9);
  EXPECT_NEAR(reached.expanded / foot_pounds(1), 57.6, 0.05);
  pulled.resolution_si = foot_pounds(10).si();  // rectangular: 10 / sqrt(12) / 225 = 1.283 %.
  EXPECT_NEAR(torque_reached(pulled)->standard / torque_reached(pulled)->torque,
              std::hypot(0.02, 0.025, 10 / std::sqrt(12.0) / 225), 1e-12);
}

TEST(JudgeTorque, GivesTheFourAnswers) {
  const TorqueTarget target{newton_metres(1000), 0.10};
  const auto state = [&](double read) { return judge_torque(torque_reached(wrench_of(read)).value(), target)->state; };
  EXPECT_EQ(state(800), TorqueState::below);
  EXPECT_EQ(state(900), TorqueState::cannot_tell);
  EXPECT_EQ(state(1000), TorqueState::inside);
  EXPECT_EQ(state(1080), TorqueState::cannot_tell);
  EXPECT_EQ(state(1200), TorqueState::above);
  Pulled crude = wrench_of(1000);
  crude.calibration_u = 0.12;
  const auto judged = judge_torque(torque_reached(crude).value(), target).value();
  EXPECT_EQ(judged.state, TorqueState::cannot_tell);
  EXPECT_FALSE(judged.tool_can_tell);
}

TEST(TorqueReached, RefusesAndNamesTheField) {
  const auto field = [](const Pulled& p) {
    const auto r = torque_reached(p);
    return r ? std::string{"accepted"} : r.error().field;
  };
  EXPECT_EQ(field(wrench_of(0)), "shown");
  EXPECT_EQ(field(wrench_of(kNaN)), "shown");
  auto bad = wrench_of(100);
  bad.calibration_u = -0.1;
  EXPECT_EQ(field(bad), "calibration");
  bad = wrench_of(100);
  bad.lever.pull_angle = degrees(5);
  EXPECT_EQ(field(bad), "pull-angle");
  bad = wrench_of(100);
  bad.multiplier.ratio = 0.5;
  EXPECT_EQ(field(bad), "multiplier");
  EXPECT_EQ(judge_torque({newton_metres(100), {}, {}}, {newton_metres(kNaN), 0.1}).error().field, "target");
  EXPECT_EQ(judge_torque({newton_metres(100), {}, {}}, {newton_metres(100), 0}).error().field, "tolerance");
}

TEST(TorqueOrder, FollowsTheDefinitionAndRefusesATie) {
  std::vector<Nut> nuts(2);
  nuts[0].order = 2;
  nuts[1].order = 1;
  EXPECT_EQ(torque_order(nuts).value(), (std::vector<int>{1, 0}));
  nuts[0].order = 1;
  EXPECT_EQ(torque_order(nuts).error().field, "order");
}

// Properties: setting a wrench and reading it back is the way round; feet and metres agree; scaling all lengths keeps a
// setting; more efficient means less pull.
// Tolerance: 1e-12 relative.
TEST(Pull, PropertiesHold) {
  EXPECT_TRUE(rc::check("a setting read back is the torque", [] {
    const double torque = *rc::gen::inRange(1, 3000), l = *rc::gen::inRange(100, 2000), e = *rc::gen::inRange(0, 1000);
    const double angle = *rc::gen::inRange(-89, 90), ratio = *rc::gen::inRange(1, 20);
    const Lever lever{.length = millimetres(l), .extension = millimetres(e), .extension_angle = degrees(angle)};
    const auto setting = wrench_setting(newton_metres(torque), lever, {ratio, 0});
    RC_ASSERT(setting.has_value());
    const auto back = torque_reached({.reading = *setting, .lever = lever, .multiplier = {ratio, 0}});
    RC_ASSERT(std::abs(back->torque.si() - torque) <= 1e-12 * torque);
    const Lever in_inches{.length = inches(l / 25.4), .extension = inches(e / 25.4), .extension_angle = degrees(angle)};
    const auto again = wrench_setting(foot_pounds(torque / 1.3558179483314004), in_inches, {ratio, 0});
    RC_ASSERT(std::abs(again->si() - setting->si()) <= 1e-12 * setting->si());
  }));
}

// A wrench that forgot the extension would be seen: the reading would pass for the torque.
TEST(TorqueReached, AForgottenExtensionWouldBeSeen) {
  Pulled pulled = wrench_of(1000);
  pulled.lever.extension = millimetres(250);
  const auto judged = judge_torque(torque_reached(pulled).value(), {newton_metres(1000), 0.10}).value();
  EXPECT_EQ(judged.state, TorqueState::above);
}

}  // namespace
}  // namespace flatwise::fasteners
