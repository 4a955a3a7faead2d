// Clearance left after both fits and warmth, against closed forms of thick rings.
#include "core/bearings/fitted.h"

#include <gtest/gtest.h>

#include <cmath>

namespace flatwise::bearings {
namespace {

constexpr fits::Elastic kSteel{pascals(207e9), 0.3};

FittedTask loose() {
  return {.group = {micrometres(23), micrometres(43)},
          .outer = {.joint = {.diameter = millimetres(100),
                              .ring_inside = millimetres(86.5),
                              .hub_outside = millimetres(150),
                              .ring = kSteel,
                              .hub = kSteel},
                    .least = {},
                    .greatest = {},
                    .flattened = {}},
          .inner = std::nullopt};
}
Pressed seat(double inside_mm, double interference_um) {
  return {.joint = {.diameter = millimetres(50),
                    .ring_inside = millimetres(inside_mm),
                    .hub_outside = millimetres(62),
                    .ring = kSteel,
                    .hub = kSteel},
          .least = micrometres(interference_um),
          .greatest = micrometres(interference_um),
          .flattened = {}};
}

// Source: closed form of an inner ring on a seat of the same steel: the raceway grows by delta d/d_i on a solid seat, times
// (1 - (d_0/d)²)/(1 - (d_0/d_i)²) on a hollow one: 24.1935484 µm and 21.6682199 µm for d 50, d_i 62, d_0 25 mm, delta 30 µm.
// Tolerance: 1e-7 µm, the digits written.
TEST(ClearanceLeft, LosesWhatTheSeatOpensTheInnerRacewayBy) {
  FittedTask task = loose();
  task.inner = seat(0, 30);
  EXPECT_NEAR(clearance_left(task)->inner_loss.si() * 1e6, 24.1935484, 1e-6);
  task.inner = seat(25, 30);
  const auto hollow = clearance_left(task);
  ASSERT_TRUE(hollow);
  EXPECT_NEAR(hollow->inner_loss.si() * 1e6, 21.6682199, 1e-6);
  EXPECT_NEAR(hollow->least.si() * 1e6, 23 - 21.6682199, 1e-6);
  EXPECT_NEAR(hollow->greatest.si() * 1e6, 43 - 21.6682199, 1e-6);
}

// Source: linear expansion: 11.5e-6 x 20 K x 86.5 mm = 19.895 µm. Tolerance: 1e-6 µm.
TEST(ClearanceLeft, LosesWhatTheWarmerInnerRingGrows) {
  FittedTask task = loose();
  task.warmer = kelvins(20);
  EXPECT_NEAR(clearance_left(task)->warm_loss.si() * 1e6, 19.895, 1e-6);
  EXPECT_NEAR(clearance_left(task)->least.si() * 1e6, 23 - 19.895, 1e-6);
  task.warmer = kelvins(-20);
  EXPECT_NEAR(clearance_left(task)->greatest.si() * 1e6, 43 + 19.895, 1e-6);
}

// Source: the order of things: least with the tightest fit, greatest with the loosest, mean between. Tolerance: none.
TEST(ClearanceLeft, IsLeastWithTheTightestFit) {
  FittedTask task = loose();
  task.outer.least = micrometres(5);
  task.outer.greatest = micrometres(40);
  const auto left = clearance_left(task);
  ASSERT_TRUE(left);
  EXPECT_LT(left->least, left->mean);
  EXPECT_LT(left->mean, left->greatest);
  EXPECT_LT(left->greatest, micrometres(43));
  EXPECT_GT(left->outer_loss, Length{});
  task.outer.flattened = micrometres(40);
  EXPECT_EQ(clearance_left(task)->outer_loss, Length{});
}

TEST(ClearanceLeft, RefusesWhatCannotBe) {
  FittedTask task = loose();
  task.outer.least = micrometres(50);
  EXPECT_EQ(clearance_left(task).error().code.id(), "bearings.range_reversed");
  task = loose();
  task.inner = seat(60, 10);
  EXPECT_EQ(clearance_left(task).error().field, "seat.ring_inside");
  task = loose();
  task.outer.joint.hub_outside = millimetres(90);
  EXPECT_EQ(clearance_left(task).error().field, "hub_outside");
  task = loose();
  task.warmer = kelvins(std::nan(""));
  EXPECT_EQ(clearance_left(task).error().field, "warmer");
}

}  // namespace
}  // namespace flatwise::bearings
