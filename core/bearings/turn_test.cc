// One turn of the shaft: statics by hand, and the two limits in which the standard says what each ring feels.
#include "core/bearings/turn.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "tests/support/test_table.h"

namespace flatwise::bearings {
namespace {

const BallBearing kTen{10, millimetres(14.288), millimetres(77.5), millimetres(7.43), millimetres(7.57)};
TurnTask task(OuterRing outer) {
  return {.at = {kTen, micrometres(15)},
          .contacts = *point_contacts(kTen, kBearingSteel),
          .rotor = {.lean = degrees(5), .mass = kilograms(12), .tip_radius = millimetres(250)},
          .ground = {},
          .outer = outer};
}

// Source: statics by hand at two angles. Tilt towards the ground: 1000 N up press the ring along its axis with 1000 sin 5° and
// across with 1000 cos 5° in the plane of the tilt; a quarter turn on, all of it across that plane. Tolerance: 1e-9 N.
TEST(OneTurn, TurnsTheGroundsLoadIntoTheLeaningBearing) {
  TurnTask t = task(OuterRing::held);
  t.rotor.mass = {};
  t.ground.up = newtons(1000);
  const auto turn = one_turn(t);
  ASSERT_TRUE(turn);
  const double s = std::sin(std::numbers::pi / 36), c = std::cos(std::numbers::pi / 36);
  EXPECT_NEAR(turn->angles[0].load.z.si(), 1000 * s, 1e-9);
  EXPECT_NEAR(turn->angles[0].load.x.si(), 1000 * c, 1e-9);
  EXPECT_NEAR(turn->angles[0].load.y.si(), 0, 1e-9);
  EXPECT_NEAR(turn->angles[18].load.z.si(), 0, 1e-9);
  EXPECT_NEAR(turn->angles[18].load.y.si(), -1000, 1e-9);
  // The tip over the ground lies off the middle by -R sin a there: the load's line misses the middle by that.
  EXPECT_NEAR(turn->angles[0].load.about_y.si(), -0.25 * s * 1000, 1e-9);
}

// Source: statics: 100 N along the shaft at the tips, 250 mm below, with no lean: a couple of 25 N m. Tolerance: 1e-9 N m.
TEST(OneTurn, SoilAlongTheShaftTiltsTheRotor) {
  TurnTask t = task(OuterRing::held);
  t.rotor.mass = {};
  t.rotor.lean = {};
  t.ground.along = newtons(100);
  const auto turn = one_turn(t);
  ASSERT_TRUE(turn);
  EXPECT_NEAR(turn->angles[0].load.about_y.si(), 25, 1e-9);
  EXPECT_NEAR(turn->angles[0].load.z.si(), -100, 1e-9);
  EXPECT_NEAR(turn->radial.si(), 0, 1e-9);
  EXPECT_NEAR(turn->axial.si(), 100, 1e-9);
}

// Source: tests/data/bearings_turn.csv: vectors in space taken into the bearing by rotation matrices, each angle by scipy's root, 360 places.
// Tolerance: 1e-4 relative, what 120 places differ from 360; the greatest load 1e-7.
TEST(OneTurn, IsThatOfScipy) {
  for (const TestRow& row : test_table("bearings_turn.csv")) {
    TurnTask t = task(OuterRing::held);
    t.at.clearance = micrometres(number(row, "clearance_um"));
    t.rotor = {degrees(number(row, "lean")),  kilograms(number(row, "mass")),       metres(number(row, "offset")),
               newtons(number(row, "force")), newton_metres(number(row, "couple")), metres(number(row, "radius"))};
    t.ground = {newtons(number(row, "up")), newtons(number(row, "drag")), newtons(number(row, "along"))};
    const auto held = one_turn(t);
    t.outer = OuterRing::turns;
    const auto turns = one_turn(t);
    ASSERT_TRUE(held && turns) << row.at("id");
    EXPECT_NEAR(std::pow(held->wear.inner_cubes, 10.0 / 9.0) / number(row, "inner"), 1, 1e-4) << row.at("id");
    EXPECT_NEAR(held->wear.outer_powers / number(row, "outer_held"), 1, 1e-4) << row.at("id");
    EXPECT_NEAR(turns->wear.outer_powers / number(row, "outer_turns"), 1, 1e-4) << row.at("id");
    EXPECT_NEAR(held->angles[static_cast<std::size_t>(held->hardest)].greatest.si() / number(row, "greatest"), 1, 1e-7)
        << row.at("id");
  }
}

/// Mean over many cages of what the balls of a standing load give.
RingWear standing(const RingLoad& load, double clearance_um) {
  RingWear mean;
  constexpr int kCages = 48;
  for (int i = 0; i < kCages; ++i) {
    const auto b = loaded_bearing({kTen, micrometres(clearance_um)}, *point_contacts(kTen, kBearingSteel),
                                  radians(2 * std::numbers::pi / 10 * i / kCages));
    const auto rest = rest_under(*b, load);
    mean.inner_cubes += rest->inner_cubes / kCages;
    mean.outer_powers += rest->outer_powers / kCages;
  }
  return mean;
}

// Source: ISO/TS 16281 eqs. 25 and 27: a load that stands: the inner ring, turning, feels the mean of load³, the outer, standing, the mean
// of load^(10/3). Tolerance: 1 %: the standard takes one position of the cage, here it wanders.
TEST(OneTurn, AStandingLoadIsTheStandardsUsualCase) {
  TurnTask t = task(OuterRing::held);
  t.rotor.lean = {};
  t.rotor.mass = {};
  t.ground.up = newtons(3000);
  const auto turn = one_turn(t);
  ASSERT_TRUE(turn);
  RingLoad level = turn->angles[0].load;
  const RingWear still = standing(level, 15);
  EXPECT_NEAR(turn->wear.inner_cubes / still.inner_cubes, 1, 0.01);
  EXPECT_NEAR(turn->wear.outer_powers / still.outer_powers, 1, 0.01);
}

// Source: ISO/TS 16281 eqs. 26 and 28, the other case: a load that turns with the inner ring: that feels the mean of load^(10/3), the outer
// the mean of load³. Tolerance: 1 %, as above.
TEST(OneTurn, ACoupleThatTurnsWithTheInnerRingIsTheOtherCase) {
  TurnTask t = task(OuterRing::held);
  t.rotor.mass = {};
  t.rotor.couple = newton_metres(40);
  const auto turn = one_turn(t);
  ASSERT_TRUE(turn);
  const RingWear still = standing({.about_y = newton_metres(40)}, 15);
  EXPECT_NEAR(std::pow(turn->wear.inner_cubes, 10.0 / 9.0) / still.outer_powers, 1, 0.01);
  EXPECT_NEAR(turn->wear.outer_powers / std::pow(still.inner_cubes, 10.0 / 9.0), 1, 0.01);
}

// Source: ten times as many angles. Tolerance: 0.5 % of the life, as the header says.
TEST(OneTurn, SeventyTwoAnglesAreEnough) {
  for (const OuterRing outer : {OuterRing::held, OuterRing::turns}) {
    TurnTask t = task(outer);
    t.ground = {newtons(1500), newtons(400), newtons(150)};
    t.rotor.couple = newton_metres(35);
    t.rotor.force = newtons(80);
    const BallRatings q = ball_ratings(kTen, ratings_of(kTen)->dynamic);
    const double few = reference_life(q, one_turn(t)->wear);
    t.angles = 720;
    EXPECT_NEAR(few / reference_life(q, one_turn(t)->wear), 1, 0.005);
  }
}

// Source: kinematics: a rotor held from turning has -W (1 - cos a) along its axis, one that turns with the shaft W cos a.
// Tolerance: 1e-12 relative.
TEST(RelativeSpeed, OfAHeldRotorIsTheShafts) {
  const double shaft = 540 * std::numbers::pi / 30, cosine = std::cos(std::numbers::pi / 36);
  const auto relative = [&](double spin) {
    return relative_speed(radians_per_second(shaft), degrees(5), radians_per_second(spin)).radians_per_second();
  };
  EXPECT_NEAR(relative(-shaft * (1 - cosine)) / shaft, 1, 1e-12);
  EXPECT_NEAR(relative(shaft * cosine), 0, 1e-12);
}

TEST(OneTurn, RefusesWhatCannotBe) {
  TurnTask t = task(OuterRing::held);
  t.rotor.mass = {};
  EXPECT_EQ(one_turn(t).error().code.id(), "bearings.no_load");
  t.ground.up = newtons(100);
  t.rotor.lean = degrees(50);
  EXPECT_EQ(one_turn(t).error().field, "lean");
  t.rotor.lean = degrees(5);
  t.rotor.tip_radius = millimetres(20);
  EXPECT_EQ(one_turn(t).error().field, "tip_radius");
  t.rotor.tip_radius = millimetres(200);
  t.angles = 71;
  EXPECT_EQ(one_turn(t).error().field, "angles");
}

}  // namespace
}  // namespace flatwise::bearings
