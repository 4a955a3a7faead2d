// defects_test.cc: how often a spot is met, against published orders and kinematics.
#include "core/bearings/defects.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/bearings/figures.h"
#include "tests/support/figures.h"
#include "tests/support/test_table.h"

namespace flatwise::bearings {
namespace {

BallBearing bearing(int balls, double ball_mm, double pitch_mm) {
  return {balls, millimetres(ball_mm), millimetres(pitch_mm), millimetres(0.52 * ball_mm), millimetres(0.52 * ball_mm)};
}
/// As orders: one turn a second of the inner ring, the outer at rest.
DefectRates orders(const BallBearing& b) { return defect_rates({.bearing = b, .inner = turns_per_minute(60)}).value(); }

// Source: a university's bearing data set (fan end, 8 balls of 0.2656 in on 1.122 in): 0.381640, 3.053119, 4.946881, 1.993839; an open data
// set's bearing of 9 balls of 7.9375 mm on 38.50 mm: 0.396916, 3.572240, 5.427760, 2.322112; both read.
// Tolerance: half a unit of the last digit given.
TEST(DefectRates, AreThePublishedOrders) {
  const DefectRates eight = orders(bearing(8, 0.2656 * 25.4, 1.122 * 25.4));
  EXPECT_NEAR(eight.cage.hertz(), 0.381640, 5e-7);
  EXPECT_NEAR(eight.outer.hertz(), 3.053119, 5e-7);
  EXPECT_NEAR(eight.inner.hertz(), 4.946881, 5e-7);
  EXPECT_NEAR(eight.ball.hertz(), 1.993839, 5e-7);
  EXPECT_NEAR(eight.ball_spot.hertz(), 3.987678, 1e-6);
  const DefectRates nine = orders(bearing(9, 7.9375, 38.50));
  EXPECT_NEAR(nine.cage.hertz(), 0.396916, 5e-7);
  EXPECT_NEAR(nine.outer.hertz(), 3.572240, 5e-7);
  EXPECT_NEAR(nine.inner.hertz(), 5.427760, 5e-7);
  EXPECT_NEAR(nine.ball.hertz(), 2.322112, 5e-7);
}

// Source: by hand: 8 balls of 10 mm on 50 mm at 1800 r/min: 12, 96, 144 and 72 Hz.
// Tolerance: 1e-9 relative, rounding.
TEST(DefectRatesFigure, IsTheHandCalculation) {
  const auto working = example_with(figure_named(figures(), "defect-frequencies"), {});
  ASSERT_TRUE(working.has_value());
  EXPECT_NEAR(working->si("cage"), 12, 1e-8);
  EXPECT_NEAR(working->si("outer"), 96, 1e-7);
  EXPECT_NEAR(working->si("inner"), 144, 1e-7);
  EXPECT_NEAR(working->si("ball"), 72, 1e-7);
  EXPECT_NEAR(working->si("ball-spot"), 144, 1e-7);
}

// Source: tests/data/bearings_orders.csv, eight published bearings: for each share of the ball that its cage order says, the orders of both
// rings, and their sum is the count of balls.
// Tolerance: what half of the cage order's last printed digit makes of Z times it, plus the order's own.
TEST(DefectRates, MeetTheOrdersOfEightBearings) {
  for (const TestRow& row : test_table("bearings_orders.csv")) {
    const double outer = number(row, "outer_order"), inner = number(row, "inner_order");
    const int balls = static_cast<int>(std::lround(outer + inner));
    const double share = 1 - 2 * number(row, "cage_order");
    const DefectRates r = orders(bearing(balls, 40 * share, 40));
    EXPECT_NEAR(r.outer.hertz(), outer, balls * 0.0005 + 0.0005) << row.at("id");
    EXPECT_NEAR(r.inner.hertz(), inner, balls * 0.0005 + 0.0005) << row.at("id");
  }
}

// Source: kinematics: balls pass both rings together Z times a turn of one against the other, the outer Z times a turn of the cage against
// it; with the outer ring turning instead the cage has what is left to one; all rings turning alike add to the cage alone.
// Tolerance: 1e-12 relative.
TEST(DefectRates, HoldTheIdentities) {
  const BallBearing b = bearing(9, 12.7, 65);
  for (const double outer : {0.0, 30.0, -200.0, 539.0}) {
    const DefectRates r =
        defect_rates({.bearing = b, .inner = turns_per_minute(540), .outer = turns_per_minute(outer)}).value();
    const double against = (540 - outer) / 60;
    EXPECT_NEAR(r.outer.hertz() + r.inner.hertz(), 9 * against, 1e-11);
    EXPECT_NEAR(r.outer.hertz(), 9 * std::abs(r.cage.hertz() - outer / 60), 1e-10) << outer;
  }
  const DefectRates inner = orders(b);
  const DefectRates turned = defect_rates({.bearing = b, .outer = turns_per_minute(60)}).value();
  EXPECT_NEAR(turned.cage.hertz(), 1 - inner.cage.hertz(), 1e-12);
  EXPECT_NEAR(turned.outer.hertz(), inner.outer.hertz(), 1e-12);
}

TEST(DefectRates, RefuseRingsThatDoNotTurnAgainstEachOther) {
  const auto same =
      defect_rates({.bearing = bearing(9, 12.7, 65), .inner = turns_per_minute(5), .outer = turns_per_minute(5)});
  EXPECT_EQ(same.error().code.id(), "bearings.rings_alike");
  EXPECT_EQ(defect_rates({.bearing = bearing(17, 12.7, 65), .inner = turns_per_minute(5)}).error().field, "balls");
  EXPECT_EQ(defect_rates({.bearing = bearing(9, 12.7, 65), .contact = degrees(50), .inner = turns_per_minute(5)})
                .error()
                .field,
            "contact");
}

}  // namespace
}  // namespace flatwise::bearings
