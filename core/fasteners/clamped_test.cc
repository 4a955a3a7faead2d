#include "core/fasteners/clamped.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numbers>

#include "core/fasteners/turn.h"
#include "core/shaft/shaft_samples.h"

namespace flatwise::fasteners {
namespace {

const std::array<ClampedPart, 2> kWorkedParts{{{metres(1.6), millimetres(60), std::nullopt, gigapascals(207)},
                                               {metres(0.4), millimetres(70), millimetres(45), gigapascals(170)}}};
const PolygonBar kHexagon{6, millimetres(38.1), gigapascals(207)};

TurnAsked worked() {
  return {.torque = newton_metres(1220),
          .torque_u = newton_metres(122),
          .snug = newton_metres(120),
          .snug_u = 0.3,
          .diameter = millimetres(38.1),
          .pitch = inches(1.0 / 6),
          .factor = {0.10, 0.26},
          .before = {},
          .springs = clamped_springs(kHexagon, kWorkedParts).value(),
          .stiffness_u = 0.15};
}

// Source: docs/worked/W44-turn-to-torque.md, by hand: Hooke's law in textbook form, F l / (E A), and the area of a regular polygon.
// Tolerance: half of the last digit written.
TEST(ClampedSprings, MeetTheWorkedShaft) {
  const ClampedSprings springs = clamped_springs(kHexagon, kWorkedParts).value();
  EXPECT_NEAR(springs.shaft.si(), 130.113e6, 500);
  EXPECT_NEAR(springs.stack.si(), 167.664e6, 500);
}

// Source: the definition of the area: a polygon of many flats is the round bar on which its flats lie, pi/4 s^2.
// Tolerance: 24 flats are 0.6 % over the circle (tan(x)/x - 1 with x = pi/24, by series x^2/3 = 0.571 %).
TEST(ClampedSprings, ComeToTheRoundBarWithManyFlats) {
  const std::array<ClampedPart, 1> part{{{metres(1), millimetres(80), millimetres(60), gigapascals(200)}}};
  const auto springs = clamped_springs({24, millimetres(50), gigapascals(200)}, part).value();
  const double round = 200e9 * std::numbers::pi / 4 * 0.05 * 0.05;
  EXPECT_NEAR(springs.shaft.si() / round, 1.0058, 2e-4);
  EXPECT_NEAR(springs.stack.si(), 200e9 * std::numbers::pi / 4 * (0.08 * 0.08 - 0.06 * 0.06), 1);
}

// Source: docs/worked/W44-turn-to-torque.md, by hand.
// Tolerance: half of the last digit written.
TEST(TurnExpected, MeetsTheWorkedShaft) {
  TurnAsked asked = worked();
  const TurnExpected first = turn_expected(asked).value();
  EXPECT_NEAR(first.expected.degrees(), 186.19, 0.005);
  EXPECT_NEAR(first.least.degrees(), 95.99, 0.005);
  EXPECT_NEAR(first.greatest.degrees(), 450.91, 0.005);
  asked.before = {kilonewtons(100), kilonewtons(360)};
  const TurnExpected second = turn_expected(asked).value();
  EXPECT_EQ(second.expected, Angle{});
  EXPECT_EQ(second.least, Angle{});
  EXPECT_NEAR(second.greatest.degrees(), 344.45, 0.005);
}

// Source: preload_from_turn, which goes the other way: the preload by the turn is the one that the torque gives.
// Tolerance: 1e-9 relative.
TEST(TurnExpected, IsTheTurnThatGivesThePreloadOfTheTorque) {
  TurnAsked asked = worked();
  asked.factor = {0.15, 0.15};
  asked.torque_u = {};
  asked.snug_u = asked.stiffness_u = 0;
  const TurnExpected band = turn_expected(asked).value();
  EXPECT_EQ(band.least, band.greatest);
  const Force snug = asked.snug / (0.15 * asked.diameter);
  const auto preload = preload_from_turn({.pitch = asked.pitch,
                                          .turned = band.expected,
                                          .turned_u = degrees(1),
                                          .snug = {snug, snug},
                                          .shaft = asked.springs.shaft,
                                          .stack = asked.springs.stack,
                                          .stiffness_u = 0})
                           .value();
  const double wanted = 1220 / (0.15 * 0.0381);
  EXPECT_NEAR(preload.preload.si(), wanted, 1e-9 * wanted);
}

TEST(JudgeTurned, KeepsTheGuardBand) {
  const TurnExpected band{degrees(186), degrees(96), degrees(451)};
  const auto at = [&](double turned, double u) { return judge_turned(band, degrees(turned), degrees(u))->state; };
  EXPECT_EQ(at(200, 5), TurnedState::explained);
  EXPECT_EQ(at(101, 5), TurnedState::explained);
  EXPECT_EQ(at(98, 5), TurnedState::cannot_tell);
  EXPECT_EQ(at(90, 5), TurnedState::too_little);
  EXPECT_EQ(at(449, 5), TurnedState::cannot_tell);
  EXPECT_EQ(at(460, 5), TurnedState::too_much);
  EXPECT_EQ(judge_turned(band, degrees(460), degrees(5))->answer, Answer::out);
}

// Source: the sample shaft itself (core/shaft/shaft_samples.h), counted by hand.
// Tolerance: 1e-12 m, rounding of the sum.
TEST(ClampedBy, AddsUpWhatTheNutPullsOn) {
  ShaftSpec spec = sample_shaft({.rotors = 3});
  spec.clamped.tube.outside = millimetres(55);
  spec.stations[2].clamped.outside = millimetres(70);  // Hanger A.
  const Shaft shaft = Shaft::make(spec).value();
  const ClampedRun run = clamped_by(shaft, shaft.spec().nuts[0]);
  ASSERT_EQ(run.parts.size(), 2U);
  EXPECT_EQ(run.parts[0].outside, millimetres(55));
  EXPECT_NEAR((run.parts[0].length + run.parts[1].length).si(), (shaft.total_length() - millimetres(68)).si(),
              1e-12);  // All but the two nuts.
  EXPECT_NEAR(run.parts[1].length.si(), 0.031, 1e-12);
  EXPECT_EQ(run.nut_faces, 2);
  ASSERT_NE(run.other, nullptr);
  EXPECT_EQ(run.other->end, End::b);
  // Two washers, two hangers, four spacers, a pulley, six halves: 15 parts.
  EXPECT_EQ(run.joints, 14);
  const ClampedRun back = clamped_by(shaft, shaft.spec().nuts[1]);
  EXPECT_EQ(back.joints, run.joints);
}

TEST(ClampedBy, StopsAtWhatDoesNotComeOffAndNamesWhatNobodyTold) {
  ShaftSpec spec = sample_shaft({.rotors = 3});
  spec.stations[9].obstacle = true;
  for (std::size_t i = 0; i < 9; ++i)
    if (i != 4) spec.stations[i].clamped.outside = millimetres(60);
  const Shaft shaft = Shaft::make(spec).value();
  const ClampedRun run = clamped_by(shaft, shaft.spec().nuts[0]);
  EXPECT_EQ(run.untold, std::vector<int>{4});
  EXPECT_TRUE(run.parts.empty());
  EXPECT_EQ(run.other, nullptr);
  EXPECT_EQ(run.nut_faces, 1);
}

TEST(Clamped, RefusesAndNamesTheField) {
  TurnAsked asked = worked();
  asked.snug = newton_metres(1220);
  EXPECT_EQ(turn_expected(asked).error().field, "snug");
  asked = worked();
  asked.torque_u = newton_metres(1220);
  EXPECT_EQ(turn_expected(asked).error().field, "torque-u");
  asked = worked();
  asked.before = {kilonewtons(2), kilonewtons(1)};
  EXPECT_EQ(turn_expected(asked).error().field, "before-greatest");
  const std::array<ClampedPart, 1> thin{{{metres(1), millimetres(40), millimetres(45), gigapascals(200)}}};
  EXPECT_EQ(clamped_springs(kHexagon, thin).error().field, "outside");
  EXPECT_EQ(clamped_springs(kHexagon, {}).error().field, "length");
  EXPECT_EQ(judge_turned({}, degrees(-1), degrees(1)).error().field, "turned");
}

TEST(Clamped, AShaftWhoseTubesCannotBeIsRefused) {
  const auto field = [](auto change) {
    ShaftSpec spec = sample_shaft({.rotors = 3});
    change(spec);
    const auto made = Shaft::make(spec);
    return made ? std::string{} : made.error().front().field;
  };
  EXPECT_EQ(field([](ShaftSpec& s) { s.clamped.tube.outside = millimetres(38); }), "clamped.outside");
  EXPECT_EQ(field([](ShaftSpec& s) { s.clamped.tube.bore = millimetres(38); }), "clamped.bore");
  EXPECT_EQ(field([](ShaftSpec& s) { s.stations[3].clamped.outside = millimetres(30); }), "stack[3].clamped.outside");
  EXPECT_EQ(field([](ShaftSpec& s) { s.nuts[0].snug = s.nuts[0].torque; }), "nut 1.snug");
  EXPECT_EQ(field([](ShaftSpec& s) { s.nuts[0].snug = newton_metres(100); }), "");
}

}  // namespace
}  // namespace flatwise::fasteners
