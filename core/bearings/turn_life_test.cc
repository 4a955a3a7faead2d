// Life of the bearing of a wobbling rotor, and what it hangs on most.
#include "core/bearings/turn_life.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace flatwise::bearings {
namespace {

const BallBearing kTen{10, millimetres(14.288), millimetres(77.5), millimetres(7.43), millimetres(7.57)};
TurnLifeTask task() {
  return {.turn = {.at = {kTen, micrometres(15)},
                   .contacts = *point_contacts(kTen, kBearingSteel),
                   .rotor = {.lean = degrees(5),
                             .mass = kilograms(12),
                             .couple = newton_metres(35),
                             .tip_radius = millimetres(250)},
                   .ground = {newtons(1500), {}, newtons(150)}},
          .ratings = *ratings_of(kTen),
          .shaft = turns_per_minute(540),
          .spin = turns_per_minute(30),
          .lubrication = {}};
}

// Source: the parts put together by hand: life in turns from the wear and the ball ratings; turns over the speed of one ring against
// the other, 540 cos 5° - 30 a minute; a_ISO at e_C C_u / P_ref. Tolerance: 1e-12 relative.
TEST(TurnLife, IsItsPartsPutTogether) {
  const auto life = turn_life(task());
  ASSERT_TRUE(life);
  const double turns = reference_life(ball_ratings(kTen, task().ratings.dynamic), one_turn(task().turn)->wear);
  EXPECT_NEAR(life->million_turns / turns, 1, 1e-12);
  const double rpm = 540 * std::cos(std::numbers::pi / 36) - 30;
  EXPECT_NEAR(life->basic.si() / (turns * 1e6 / rpm * 60), 1, 1e-12);
  const double load = 0.1 * (task().ratings.fatigue / reference_load(task().ratings.dynamic, turns));
  EXPECT_NEAR(life->least.si() / life->basic.si() / life_factor(1, load), 1, 1e-12);
  EXPECT_LT(life->least, life->greatest);
}

// Source: definition of a held rotor: its rings turn against each other with the shaft's speed. Tolerance: 1e-12 relative.
TEST(TurnLife, OfAHeldRotorCountsTheShaftsTurns) {
  TurnLifeTask t = task();
  const double shaft = t.shaft.radians_per_second();
  t.turn.outer = OuterRing::held;
  t.spin = radians_per_second(-shaft * (1 - std::cos(std::numbers::pi / 36)));
  EXPECT_NEAR(turn_life(t)->relative.radians_per_second() / shaft, 1, 1e-12);
}

std::vector<Influence> of(const TurnLifeTask& t) { return influences(t, turn_life(t).value()); }

// Source: sense: more speed, load and dirt, and less oil shorten life; the strongest comes first. Tolerance: none.
TEST(Influences, ComeStrongestFirstAndTheRightWay) {
  const auto all = of(task());
  ASSERT_EQ(all.size(), 6U);
  for (std::size_t i = 1; i < all.size(); ++i)
    EXPECT_GE(std::abs(std::log(all[i - 1].factor)), std::abs(std::log(all[i].factor)));
  for (const Influence& i : all) {
    if (i.of == Influenced::clearance) continue;
    EXPECT_LT(i.factor, 1) << static_cast<int>(i.of);
  }
}

// Source: with no couple and no ground but the weight, more speed only shortens the hours: by 1/1.1. Tolerance: 1e-9 relative.
TEST(Influences, OfSpeedAloneAreTheHours) {
  TurnLifeTask t = task();
  t.turn.rotor.couple = {};
  t.turn.ground = {};
  t.spin = {};
  const auto all = of(t);
  const auto speed = std::ranges::find(all, Influenced::speed, &Influence::of);
  ASSERT_NE(speed, all.end());
  EXPECT_NEAR(speed->factor, 1 / 1.1, 1e-9);
}

// Source: the life worked out anew with the change (turn_life). Tolerance: none, the same sums.
TEST(Influences, OfOilDirtAndNoGroundAreThoseOfAWholeTurnAnew) {
  TurnLifeTask t = task();
  const auto hours = [](const TurnLifeTask& one) {
    const TurnLife life = turn_life(one).value();
    const double middle = 0.5 * (life.contamination.least + life.contamination.greatest);
    return life.basic.si() *
           life_factor(one.lubrication.viscosity_ratio, middle * (one.ratings.fatigue / life.reference));
  };
  TurnLifeTask thin = t;
  thin.lubrication.viscosity_ratio *= 0.5;
  const auto with_ground = of(t);
  EXPECT_EQ(std::ranges::find(with_ground, Influenced::viscosity, &Influence::of)->factor, hours(thin) / hours(t));
  EXPECT_NE(std::ranges::find(with_ground, Influenced::ground, &Influence::of)->factor, 1);
  t.turn.ground = {};
  const auto without = of(t);
  EXPECT_EQ(std::ranges::find(without, Influenced::ground, &Influence::of)->factor, 1);
}

TEST(TurnLife, RefusesWhatCannotBe) {
  TurnLifeTask t = task();
  t.spin = radians_per_second(t.shaft.radians_per_second() * std::cos(std::numbers::pi / 36));
  EXPECT_EQ(turn_life(t).error().code.id(), "bearings.rings_stand");
  t = task();
  t.lubrication.viscosity_ratio = 0.05;
  EXPECT_EQ(turn_life(t).error().field, "viscosity_ratio");
  t = task();
  t.ratings.dynamic = {};
  EXPECT_EQ(turn_life(t).error().field, "dynamic_rating");
}

}  // namespace
}  // namespace flatwise::bearings
