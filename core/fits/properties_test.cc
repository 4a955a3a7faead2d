// What must hold for every fit: the order of things, the same answer in inches, and nothing from nothing.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <cmath>
#include <string>

#include "core/fits/bearing_tables.h"
#include "core/fits/iso286.h"
#include "core/fits/iso286_tables.h"
#include "core/fits/press.h"

namespace flatwise::fits {
namespace {

double between(double least, double greatest) {
  return least + (greatest - least) * static_cast<double>(*rc::gen::inRange(0, 100001)) / 100000.0;
}
Elastic any_material() { return {.youngs_modulus = gigapascals(between(60, 220)), .poisson = between(0.2, 0.35)}; }
PressedJoint any_joint() {
  const double d = between(20, 300);
  return {.diameter = millimetres(d),
          .ring_inside = millimetres(d * between(0.0, 0.95)),
          .hub_outside = millimetres(d * between(1.1, 4.0)),
          .ring = any_material(),
          .hub = any_material()};
}
void expect_holds(const std::string& what, bool held) { EXPECT_TRUE(held) << what; }

TEST(FitProperties, PressureGrowsWithInterferenceAndStartsAtNothing) {
  expect_holds("pressure", rc::check([] {
                 const auto joint = any_joint();
                 const double um = between(1, 200);
                 RC_ASSERT(contact_pressure(joint, Length{})->si() == 0.0);
                 RC_ASSERT(contact_pressure(joint, micrometres(um)).value() >
                           contact_pressure(joint, micrometres(0.9 * um)).value());
                 const double back = interference_of(joint, contact_pressure(joint, micrometres(um)).value())->si();
                 RC_ASSERT(std::abs(back - um * 1e-6) < 1e-14 * um);
               }));
}

TEST(FitProperties, AThickerHubPressesHarderAndAThinnerRingLess) {
  expect_holds("walls", rc::check([] {
                 const auto joint = any_joint();
                 auto thicker = joint, thinner = joint;
                 thicker.hub_outside = 1.1 * joint.hub_outside;
                 thinner.ring_inside = joint.ring_inside + 0.1 * (joint.diameter - joint.ring_inside);
                 RC_PRE(joint.ring_inside > Length{});
                 const auto p = contact_pressure(joint, micrometres(30)).value();
                 RC_ASSERT(contact_pressure(thicker, micrometres(30)).value() > p);
                 RC_ASSERT(contact_pressure(thinner, micrometres(30)).value() < p);
               }));
}

TEST(FitProperties, InchesAndMillimetresAgree) {
  expect_holds("units", rc::check([] {
                 auto metric = any_joint(), inch = metric;
                 inch.diameter = inches(metric.diameter.si() / 0.0254);
                 inch.ring_inside = inches(metric.ring_inside.si() / 0.0254);
                 inch.hub_outside = inches(metric.hub_outside.si() / 0.0254);
                 const double um = between(1, 200);
                 const double p = contact_pressure(metric, micrometres(um))->si();
                 // A thin wall loses digits in the difference of its diameters: 1e-12 covers a wall of 5 %.
                 RC_ASSERT(std::abs(contact_pressure(inch, thou(um / 25.4))->si() - p) <= 1e-12 * p);
               }));
}

TEST(FitProperties, TheForceBandHoldsEveryForceInsideIt) {
  expect_holds("band", rc::check([] {
                 const double least = between(-40, 60);
                 Pressing pressing{
                     .joint = any_joint(),
                     .width = millimetres(between(5, 60)),
                     .roughness_loss = micrometres(between(0, 10)),
                     .interference = {.least = micrometres(least), .greatest = micrometres(least + between(0, 60))},
                     .friction = {.least = 0.08, .greatest = 0.18},
                     .hub_yield = megapascals(250)};
                 const auto band = press_force(pressing).value();
                 RC_ASSERT(band.least >= Force{});
                 RC_ASSERT(band.greatest >= band.least);
                 const double at = between(pressing.interference.least.si(), pressing.interference.greatest.si());
                 pressing.interference = {.least = metres(at), .greatest = metres(at)};
                 pressing.friction.least = pressing.friction.greatest = between(0.08, 0.18);
                 const auto one = press_force(pressing).value();
                 RC_ASSERT(one.greatest.si() <= band.greatest.si() * (1 + 1e-12));
                 RC_ASSERT(one.least.si() >= band.least.si() * (1 - 1e-12));
               }));
}

TEST(FitProperties, ReadingBackTheForceGivesARangeAroundTheTruth) {
  expect_holds("readback", rc::check([] {
                 const double um = between(10, 60);
                 Pressing pressing{.joint = any_joint(),
                                   .width = millimetres(between(5, 60)),
                                   .roughness_loss = micrometres(5),
                                   .interference = {.least = micrometres(um), .greatest = micrometres(um)},
                                   .friction = {.least = 0.1, .greatest = 0.1},
                                   .hub_yield = megapascals(250)};
                 const Force truth = press_force(pressing)->greatest;
                 pressing.friction = {.least = 0.08, .greatest = 0.18};
                 const ForceReading reading{
                     .force = truth, .calibration_expanded = 0.05 * truth, .resolution = newtons(10)};
                 const auto back = read_back(reading, {.least = Force{}, .greatest = 2.0 * truth}, pressing).value();
                 RC_ASSERT(back.interference_least.si() <= um * 1e-6);
                 RC_ASSERT(back.interference_greatest.si() >= um * 1e-6);
                 RC_ASSERT(back.answer == Answer::in);
               }));
}

TEST(FitProperties, EveryClassIsAsWideAsItsGradeAndHoleAndShaftMirror) {
  expect_holds(
      "classes", rc::check([] {
        const Length nominal = nanometres(*rc::gen::inRange<std::int64_t>(3'000'000, 500'000'001));
        const FitClass hole{
            .nominal = {}, .hole = true, .letter = *rc::gen::inRange(0, 28), .grade = *rc::gen::inRange(5, 12)};
        const auto found = limit_deviations(nominal, hole);
        RC_PRE(found.has_value());
        const double it = standard_tolerance(nominal, hole.grade)->si();
        RC_ASSERT(std::abs((found->upper - found->lower).si() - it) < 1e-12);
        auto shaft = hole;
        shaft.hole = false;
        const auto mirrored = limit_deviations(nominal, shaft);
        if (mirrored && kLetters[static_cast<std::size_t>(hole.letter)].side == Side::away) {
          RC_ASSERT(found->lower == -mirrored->upper);
        }
      }));
}

TEST(FitProperties, LaterLettersLieFurtherIntoTheMetal) {
  expect_holds("letters", rc::check([] {
                 const Length nominal = nanometres(*rc::gen::inRange<std::int64_t>(3'000'000, 500'000'001));
                 const int grade = *rc::gen::inRange(5, 8);
                 Length before = metres(-1);
                 for (int letter = 0; letter < 28; ++letter) {
                   if (kLetters[static_cast<std::size_t>(letter)].side == Side::listed) continue;
                   const auto now =
                       limit_deviations(nominal, {.nominal = {}, .hole = false, .letter = letter, .grade = grade});
                   if (!now) continue;
                   RC_ASSERT(now->upper > before);
                   before = now->upper;
                 }
               }));
}

TEST(FitProperties, ABetterBearingClassLiesInsideTheWorse) {
  expect_holds("classes of rings", rc::check([] {
                 const Length outside = nanometres(*rc::gen::inRange<std::int64_t>(3'000'000, 500'000'001));
                 const auto normal = ring_outside_limits(outside, ToleranceClass::normal).value();
                 const auto p6 = ring_outside_limits(outside, ToleranceClass::p6).value();
                 const auto p5 = ring_outside_limits(outside, ToleranceClass::p5).value();
                 RC_ASSERT(normal.least < p6.least);
                 RC_ASSERT(p6.least < p5.least);
                 RC_ASSERT(p5.least < p5.greatest);
               }));
}

}  // namespace
}  // namespace flatwise::fits
