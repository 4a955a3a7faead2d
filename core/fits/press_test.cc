#include "core/fits/press.h"

#include <gtest/gtest.h>
#include <cmath>
#include <limits>
#include <numbers>
#include <sstream>

#include "core/fits/joint_samples.h"
#include "core/fits/yielding.h"
#include "tests/support/test_table.h"

namespace flatwise::fits {
namespace {

constexpr double kEps = std::numeric_limits<double>::epsilon();

Pressing pressing_120() {
  return {.joint = ring_120_in_iron_hub(),
          .width = millimetres(25),
          .roughness_loss = micrometres(5),
          .interference = {.least = micrometres(15), .greatest = micrometres(50)},
          .friction = {.least = 0.08, .greatest = 0.18},
          .hub_yield = megapascals(250)};
}

// Source: docs/worked/W3-press-force.md, by hand from Shigley 9th ed. eq. 7-39: 45 um give 5.608174 MPa, so
// 0.18 * 5.608174 MPa * pi * 120 mm * 25 mm = 9514.04 N; 10 um and 0.08 give 939.65 N; work 9514.04 N * 25 mm / 2 =
// 118.926 J.
// Tolerance: 2e-6 relative, the digits of the published pressure.
TEST(PressForce, MatchesWorkedExampleW3) {
  const auto force = press_force(pressing_120()).value();
  EXPECT_NEAR(force.greatest.si(), 9514.04, 0.02);
  EXPECT_NEAR(force.least.si(), 939.65, 0.01);
  EXPECT_NEAR(force.energy_greatest.si(), 118.926, 0.001);
  EXPECT_FALSE(force.hub_yields);
  EXPECT_FALSE(force.from_nought);
}

TEST(PressForce, OfClearanceStartsAtExactlyNought) {
  auto pressing = pressing_120();
  for (double least_um : {-30.0, 0.0, 4.0}) {
    pressing.interference.least = micrometres(least_um);
    const auto force = press_force(pressing).value();
    EXPECT_EQ(force.least.si(), 0.0) << least_um;
    EXPECT_TRUE(force.from_nought);
    EXPECT_GT(force.greatest.si(), 9000);
  }
  pressing.interference = {.least = micrometres(-30), .greatest = micrometres(-10)};
  EXPECT_EQ(press_force(pressing)->greatest.si(), 0.0);
}

TEST(PressForce, SaysWhenTheHubYields) {
  auto pressing = pressing_120();
  // The onset is 5/18 of the yield strength: 5.608 MPa is reached by 20.19 MPa of yield.
  pressing.hub_yield = megapascals(20.18);
  EXPECT_TRUE(press_force(pressing)->hub_yields);
  pressing.hub_yield = megapascals(20.20);
  EXPECT_FALSE(press_force(pressing)->hub_yields);
}

// Source: second method: a hub that yields by Tresca (yielding.h, itself held against docs/worked/W30-hub-that-yields.md).
// Tolerance: none, only which is greater, and that both say so.
TEST(PressForce, PlainLamePastTheYieldIsTooHighAndReadsBackTooLittle) {
  auto pressing = pressing_120();
  pressing.hub_yield = megapascals(15);
  const auto plain = press_force(pressing).value();
  const auto yielded = press_into_yielding({pressing.joint, pressing.hub_yield}, micrometres(45)).value();
  EXPECT_TRUE(plain.hub_yields);
  EXPECT_LT(yielded.pressure, plain.pressure_greatest);
  const Force force = newtons(0.18 * yielded.pressure.si() * std::numbers::pi * 0.12 * 0.025);
  const auto back = read_back({force, newtons(1), newtons(1)}, {plain.least, plain.greatest}, pressing).value();
  EXPECT_TRUE(back.hub_yields);
  EXPECT_LT(back.interference_least, micrometres(50));  // What the force really came from.
}

TEST(PressForce, RefusesAndNamesTheField) {
  const double nan = std::nan("");
  const auto refused = [](auto change) {
    auto pressing = pressing_120();
    change(pressing);
    const auto force = press_force(pressing);
    return force ? std::string{"accepted"} : force.error().field;
  };
  EXPECT_EQ(refused([&](auto& p) { p.width = metres(nan); }), "width");
  EXPECT_EQ(refused([&](auto& p) { p.roughness_loss = micrometres(-1); }), "roughness_loss");
  EXPECT_EQ(refused([&](auto& p) { p.interference.least = micrometres(51); }), "interference");
  EXPECT_EQ(refused([&](auto& p) { p.interference.greatest = metres(nan); }), "interference");
  EXPECT_EQ(refused([&](auto& p) { p.friction = {.least = 0.0, .greatest = 0.18}; }), "friction");
  EXPECT_EQ(refused([&](auto& p) { p.friction = {.least = 0.2, .greatest = 0.18}; }), "friction");
  EXPECT_EQ(refused([&](auto& p) { p.friction = {.least = nan, .greatest = 0.18}; }), "friction");
  EXPECT_EQ(refused([&](auto& p) { p.hub_yield = Pressure{}; }), "hub_yield");
  EXPECT_EQ(refused([&](auto& p) { p.joint.hub_outside = millimetres(119); }), "hub_outside");
}

// A press that would show this friction: pressure from Lame turned round, checked in lame_test.cc.
FinishedPress press_with(double friction, double interference_um) {
  const double p = contact_pressure(ring_120_in_iron_hub(), micrometres(interference_um - 5)).value().si();
  return {.joint = ring_120_in_iron_hub(),
          .interference = micrometres(interference_um),
          .width = millimetres(25),
          .force = newtons(friction * p * std::numbers::pi * 0.120 * 0.025)};
}
std::vector<FinishedPress> presses_of(const std::string& each) {
  std::vector<FinishedPress> presses;
  std::istringstream in{each};
  double interference_um = 18;
  for (double mu = 0; in >> mu; interference_um += 2.5) presses.push_back(press_with(mu, interference_um));
  return presses;
}

// Source: tests/data/fits_scipy.py: prediction interval by scipy.stats.t; the first by hand in W4-shop-friction.md.
// Tolerance: 1e-11, the digits written.
TEST(ShopFriction, IsThePredictionIntervalOfTheNextPress) {
  for (const auto& row : test_table("fits_scipy_friction.csv")) {
    const auto shop = shop_friction(presses_of(row.at("each")), micrometres(5), {}).value();
    EXPECT_EQ(shop.standing, ShopFriction::Standing::narrowed);
    EXPECT_NEAR(shop.mean, number(row, "mean"), 1e-11);
    EXPECT_NEAR(shop.deviation, number(row, "deviation"), 1e-11);
    EXPECT_NEAR(shop.range.least, number(row, "least"), 1e-11);
    EXPECT_NEAR(shop.range.greatest, number(row, "greatest"), 1e-11);
  }
}

// Deliberately wrong: the interval of the mean (without the 1 of the new press) is narrower by more than the tolerance.
TEST(ShopFriction, TableSeesAnIntervalOfTheMeanInstead) {
  const auto row = test_table("fits_scipy_friction.csv").front();
  const double half = number(row, "greatest") - number(row, "mean");
  const double of_the_mean = half * std::sqrt((1.0 / 8) / (1 + 1.0 / 8));
  EXPECT_GT(half - of_the_mean, 1e-3);
}

TEST(ShopFriction, IsNotNarrowedBySevenPresses) {
  const auto shop = shop_friction(presses_of("0.105 0.112 0.098 0.121 0.109 0.117 0.101"), micrometres(5), {}).value();
  EXPECT_EQ(shop.standing, ShopFriction::Standing::too_few);
  EXPECT_EQ(shop.missing, 1);
  EXPECT_EQ(shop.range.least, 0.08);
  EXPECT_EQ(shop.range.greatest, 0.18);
  const auto none = shop_friction({}, micrometres(5), {}).value();
  EXPECT_EQ(none.missing, 8);
  EXPECT_EQ(none.mean, 0.13);
}

TEST(ShopFriction, IsNotNarrowedByPressesThatScatterToNought) {
  const auto shop = shop_friction(presses_of("0.02 0.30 0.05 0.25 0.02 0.28 0.04 0.22"), micrometres(5), {}).value();
  EXPECT_EQ(shop.standing, ShopFriction::Standing::too_scattered);
  EXPECT_EQ(shop.range.least, 0.08);
}

TEST(ShopFriction, RefusesAPressWithNothingToPressOnAndNamesIt) {
  auto presses = presses_of("0.105 0.112 0.098");
  presses[1].interference = micrometres(5);
  const auto shop = shop_friction(presses, micrometres(5), {});
  ASSERT_FALSE(shop);
  EXPECT_EQ(shop.error().field, "presses[2]");
  EXPECT_EQ(shop.error().code.id(), "fits.press_without_interference");
  presses = presses_of("0.105 0.112 0.098");
  presses[2].force = newtons(std::nan(""));
  EXPECT_EQ(shop_friction(presses, micrometres(5), {}).error().field, "presses[3].force");
}

struct SideCase {
  double force_n;
  Readback::Side side;
  Answer answer;
};

// Source: ISO 14253-1 by hand: band 1000 to 9000 N, U = sqrt(100^2 + (2 * 86.6025404/sqrt 12)^2) = 111.803 N.
// Tolerance: the forces stand 1 N either side of each edge.
TEST(ReadBack, DecidesWithTheUncertaintyOfTheGauge) {
  using Side = Readback::Side;
  const double u = std::sqrt(100.0 * 100.0 + 50.0 * 50.0);
  for (const auto& at :
       {SideCase{1000 - u - 1, Side::low, Answer::out}, SideCase{1000 - u + 1, Side::near_low, Answer::cannot_tell},
        SideCase{1000 + u - 1, Side::near_low, Answer::cannot_tell}, SideCase{1000 + u + 1, Side::inside, Answer::in},
        SideCase{9000 - u - 1, Side::inside, Answer::in}, SideCase{9000 - u + 1, Side::near_high, Answer::cannot_tell},
        SideCase{9000 + u - 1, Side::near_high, Answer::cannot_tell},
        SideCase{9000 + u + 1, Side::high, Answer::out}}) {
    const ForceReading reading{
        .force = newtons(at.force_n), .calibration_expanded = newtons(100), .resolution = newtons(86.60254037844386)};
    const auto back = read_back(reading, {.least = newtons(1000), .greatest = newtons(9000)}, pressing_120()).value();
    EXPECT_EQ(back.side, at.side) << at.force_n;
    EXPECT_EQ(back.answer, at.answer) << at.force_n;
    EXPECT_NEAR(back.expanded.si(), u, 1e-9);
  }
}

TEST(ReadBack, WithABandFromNoughtHasNoLowerSide) {
  const ForceReading reading{.force = Force{}, .calibration_expanded = newtons(100), .resolution = newtons(50)};
  const auto back = read_back(reading, {.least = Force{}, .greatest = newtons(9000)}, pressing_120()).value();
  EXPECT_EQ(back.answer, Answer::in);
  EXPECT_TRUE(back.no_lower_side);
  EXPECT_EQ(back.interference_least.si(), 0.0);
}

TEST(ReadBack, ACoarseGaugeIsNearBothEdges) {
  const ForceReading reading{.force = newtons(1500), .calibration_expanded = newtons(900), .resolution = newtons(50)};
  const auto back = read_back(reading, {.least = newtons(1000), .greatest = newtons(2000)}, pressing_120()).value();
  EXPECT_EQ(back.side, Readback::Side::near_both);
  EXPECT_EQ(back.answer, Answer::cannot_tell);
}

// Source: docs/worked/W3-press-force.md turned round: 9514.04 N at 0.18 is 45 um on top of 5 um flattened.
// Tolerance: 1e-5 relative, the digits of the force.
TEST(ReadBack, GivesBackTheInterferenceThatMadeTheForce) {
  auto pressing = pressing_120();
  pressing.friction = {.least = 0.18, .greatest = 0.18};
  const ForceReading reading{.force = newtons(9514.04), .calibration_expanded = Force{}, .resolution = Force{}};
  const auto back = read_back(reading, {.least = newtons(1000), .greatest = newtons(9600)}, pressing).value();
  EXPECT_NEAR(back.interference_least.si(), 50e-6, 5e-10);
  EXPECT_EQ(back.interference_least, back.interference_greatest);
}

TEST(ReadBack, RefusesUnreadableForces) {
  const ForceBand band{.least = newtons(1000), .greatest = newtons(9000)};
  ForceReading reading{.force = newtons(std::nan("")), .calibration_expanded = newtons(100), .resolution = newtons(50)};
  EXPECT_EQ(read_back(reading, band, pressing_120()).error().field, "force");
  reading = {.force = newtons(1500), .calibration_expanded = newtons(100), .resolution = newtons(-1)};
  EXPECT_EQ(read_back(reading, band, pressing_120()).error().field, "resolution");
  reading.resolution = newtons(1);
  EXPECT_EQ(read_back(reading, {.least = newtons(2), .greatest = newtons(1)}, pressing_120()).error().field, "band");
}

// Source: by hand in docs/worked/W3-press-force.md: 0.08 * 1.246261 MPa * pi * (120 mm)^2 * 25 mm / 2 = 56.379 N m.
// Tolerance: 1e-5 relative.
TEST(RingCreep, ComparesTheHoldingTorqueWithTheCouple) {
  CreepInput input{.diameter = millimetres(120),
                   .width = millimetres(25),
                   .pressure_least = megapascals(1.246261),
                   .pressure_greatest = megapascals(5.608174),
                   .friction = {.least = 0.08, .greatest = 0.18},
                   .couple = newton_metres(50)};
  const auto holds = ring_creep(input).value();
  EXPECT_NEAR(holds.holding_least.si(), 56.379, 1e-3);
  EXPECT_NEAR(holds.margin, 56.379 / 50, 2e-5);
  EXPECT_EQ(holds.answer, Answer::in);
  input.couple = newton_metres(300);
  EXPECT_EQ(ring_creep(input)->answer, Answer::cannot_tell);
  input.couple = newton_metres(600);
  EXPECT_EQ(ring_creep(input)->answer, Answer::out);
  input.couple = Torque{};
  EXPECT_EQ(ring_creep(input).error().field, "couple");
}

}  // namespace
}  // namespace flatwise::fits
