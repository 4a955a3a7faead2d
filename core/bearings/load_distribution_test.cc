// How balls share a load: against scipy's root, Stribeck's numbers, and what must be so by symmetry; what has no answer says why.
#include "core/bearings/load_distribution.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/support/test_table.h"

namespace flatwise::bearings {
namespace {

BallBearing bearing(int balls, double ball_mm, double pitch_mm) {
  const Length groove = millimetres(0.52 * ball_mm);
  return {balls, millimetres(ball_mm), millimetres(pitch_mm), groove, groove};
}
LoadedBearing loaded(const BallBearing& b, double clearance_um, double cage = 0) {
  return *loaded_bearing({b, micrometres(clearance_um)}, *point_contacts(b, kBearingSteel), radians(cage));
}
const BallBearing kNine = bearing(9, 12.7, 65);

// Source: tests/data/bearings_rest.csv: the equations of equilibrium in scipy.optimize.root, three and five unknowns, clearance from
// 120 µm to 6 µm of preload. Tolerance: 1e-8 relative, a hundred times what scipy's residual may leave; the shift 1e-11 m.
TEST(RestUnder, IsThatOfScipysRoot) {
  for (const TestRow& row : test_table("bearings_rest.csv")) {
    const BallBearing b =
        bearing(static_cast<int>(number(row, "balls")), number(row, "ball_mm"), number(row, "pitch_mm"));
    const LoadedBearing l = loaded(b, number(row, "clearance_um"), number(row, "cage"));
    const RingLoad load{newtons(number(row, "x")), newtons(number(row, "y")), newtons(number(row, "z")),
                        newton_metres(number(row, "about_x")), newton_metres(number(row, "about_y"))};
    const bool tilted = !row.at("tilt_x").empty();
    const auto rest = tilted ? rest_tilted(l, load, {radians(number(row, "tilt_x")), radians(number(row, "tilt_y"))})
                             : rest_under(l, load);
    ASSERT_TRUE(rest) << row.at("id") << rest.error().code.id();
    EXPECT_NEAR(rest->greatest.si() / number(row, "greatest"), 1, 1e-8) << row.at("id");
    EXPECT_NEAR(rest->inner_cubes / number(row, "cubes"), 1, 1e-8) << row.at("id");
    EXPECT_NEAR(rest->outer_powers / number(row, "powers"), 1, 1e-8) << row.at("id");
    EXPECT_NEAR(rest->shift.z.si(), number(row, "shift_z"), 1e-11) << row.at("id");
  }
}

// Source: Stribeck's numbers for no clearance and a radial load: greatest ball load 4.37 F/Z (limit of many balls), 4.38 F/Z for ten
// balls with one on the load line; and the closed form Z / sum of cos^2.5 for every count.
// Tolerance: half the last digit printed; the closed form 1e-10.
TEST(RestUnder, ARadialLoadGivesStribecksNumbers) {
  const auto number_of = [](int balls) {
    const auto rest = rest_under(loaded(bearing(balls, 8, 90), 0), {.x = newtons(1000)});
    return rest->greatest.si() * balls / 1000;
  };
  EXPECT_NEAR(number_of(10), 4.38, 0.005);
  EXPECT_NEAR(number_of(20), 4.37, 0.005);
  for (int balls = 6; balls <= 20; ++balls) {
    double sum = 0;
    for (int j = 0; j < balls; ++j) sum += std::pow(std::max(0.0, std::cos(2 * std::numbers::pi * j / balls)), 2.5);
    EXPECT_NEAR(number_of(balls), balls / sum, 1e-8) << balls;
  }
}

// Source: closed form: a centred axial load F on Z balls: each carries F / (Z sin a), cos a = (A - G/2) / (A + delta).
// Tolerance: 1e-9 relative.
TEST(RestUnder, AnAxialLoadIsSharedEvenly) {
  for (const double sign : {1.0, -1.0}) {
    const LoadedBearing l = loaded(kNine, 20);
    const auto rest = rest_under(l, {.z = newtons(sign * 1500)});
    ASSERT_TRUE(rest);
    const double q = rest->greatest.si(), squeeze = std::pow(q / l.contacts.together, 2.0 / 3.0);
    const double angle = std::acos((l.reach - 10e-6) / (l.reach + squeeze));
    EXPECT_NEAR(9 * q * std::sin(angle) / 1500, 1, 1e-9);
    for (const BallLoad& ball : ball_loads(l, rest->shift)) {
      EXPECT_NEAR(ball.load.si(), q, 1e-6 * q);
      EXPECT_NEAR(ball.contact.radians(), sign * angle, 1e-9);
    }
  }
}

/// Greatest part of the load that the ball loads at a shift do not hold, over the load; written without the kernel.
double misfit(const LoadedBearing& l, const RingShift& at, const RingLoad& load) {
  double left[5] = {load.x.si(), load.y.si(), load.z.si(), load.about_x.si() / l.circle, load.about_y.si() / l.circle};
  double most = 0, size = 0;
  for (const double part : left) size = std::max(size, std::abs(part));
  for (const BallLoad& b : ball_loads(l, at)) {
    const double q = b.load.si(), c = std::cos(b.azimuth.radians()), s = std::sin(b.azimuth.radians());
    const double across = q * std::cos(b.contact.radians()), along = q * std::sin(b.contact.radians());
    const double held[] = {across * c, across * s, along, along * s, -along * c};
    for (int i = 0; i < 5; ++i) left[i] -= held[i];
  }
  for (const double part : left) most = std::max(most, std::abs(part));
  return most / size;
}

// Source: statics, summed up from the ball loads that are shown. Tolerance: 1e-9 of the load, as promised. A shift that is wrong by
// a nanometre is seen.
TEST(RestUnder, HoldsTheLoad) {
  const LoadedBearing l = loaded(kNine, 12, 0.3);
  const RingLoad load{newtons(2000), newtons(-300), newtons(700), newton_metres(9), newton_metres(-4)};
  const auto rest = rest_under(l, load);
  ASSERT_TRUE(rest);
  EXPECT_LT(rest->misfit, 1e-9);
  EXPECT_LT(misfit(l, rest->shift, load), 1e-9);
  RingShift wrong = rest->shift;
  wrong.x = wrong.x + nanometres(1);
  EXPECT_GT(misfit(l, wrong, load), 1e-6);
}

// Source: convexity: there is one pattern of loads, wherever the search begins. Tolerance: 1e-8 relative, twice the misfit's share.
TEST(RestUnder, IsTheSameFromEveryStart) {
  const LoadedBearing l = loaded(kNine, 30, 0.2);
  const RingLoad load{newtons(1500), newtons(200), newtons(-900), newton_metres(3), newton_metres(11)};
  const auto rest = rest_under(l, load);
  for (const double far : {0.0, 1.0, -1.0, 5.0}) {
    const RingShift from{micrometres(-20 * far), micrometres(15 * far), micrometres(60 * far), radians(-2e-3 * far),
                         radians(3e-3 * far)};
    const auto again = rest_under(l, load, from);
    ASSERT_TRUE(again);
    EXPECT_NEAR(again->greatest / rest->greatest, 1, 1e-8);
    EXPECT_NEAR(again->inner_cubes / rest->inner_cubes, 1, 1e-8);
  }
}

// Source: mirror symmetry: everything turned half round about the axis, or reversed along it. Tolerance: 1e-9 relative.
TEST(RestUnder, IsMirroredByAMirroredLoad) {
  const RingLoad load{newtons(1500), newtons(200), newtons(900), newton_metres(3), newton_metres(11)};
  const auto here = rest_under(loaded(kNine, 15, 0.1), load);
  const RingLoad turned{-load.x, -load.y, load.z, -load.about_x, -load.about_y};
  const auto there = rest_under(loaded(kNine, 15, 0.1 + std::numbers::pi), turned);
  const RingLoad back{load.x, load.y, -load.z, -load.about_x, -load.about_y};
  const auto behind = rest_under(loaded(kNine, 15, 0.1), back);
  ASSERT_TRUE(here && there && behind);
  EXPECT_NEAR(there->greatest / here->greatest, 1, 1e-9);
  EXPECT_NEAR(behind->greatest / here->greatest, 1, 1e-9);
  EXPECT_NEAR(behind->shift.z.si(), -here->shift.z.si(), 1e-13);
}

// Source: the same function with its couples given back. Tolerance: 1e-8 relative.
TEST(RestTilted, GivesTheCouplesThatHoldTheTilt) {
  const LoadedBearing l = loaded(kNine, 12, 0.3);
  const RingLoad load{newtons(2000), newtons(-300), newtons(700), {}, {}};
  const auto held = rest_tilted(l, load, {radians(1e-3), radians(-2e-3)});
  ASSERT_TRUE(held);
  RingLoad whole = load;
  whole.about_x = held->held.about_x;
  whole.about_y = held->held.about_y;
  const auto free = rest_under(l, whole);
  ASSERT_TRUE(free);
  EXPECT_NEAR(free->shift.about_x.radians(), 1e-3, 1e-9);
  EXPECT_NEAR(free->shift.about_y.radians(), -2e-3, 1e-9);
  EXPECT_NEAR(free->greatest / held->greatest, 1, 1e-8);
}

// Source: the baseline build. Tolerance: 1e-12 relative, as promised of kernels.
TEST(BalanceKernel, IsTheSameAtEveryWidth) {
  const LoadedBearing l = loaded(bearing(11, 12, 70), 12, 0.3);
  const BalanceTask task{l.gap, {0.02, -0.003, 0.007, 0.004, 0.001}, 1e-12, 40};
  const auto run = [&](lanes::Width width, int unknowns) {
    Balance b{};
    b.at[0] = 0.05;
    b.at[2] = 0.1;
    (unknowns == 3 ? FLATWISE_PICK(width, balance_three) : FLATWISE_PICK(width, balance_five))(l.ring, task, b);
    EXPECT_LE(b.misfit, task.enough);
    return b;
  };
  for (const int unknowns : {3, 5}) {
    const Balance plain = run(lanes::Width::baseline, unknowns);
    for (const lanes::Width width : lanes::kEveryWidth) {
      if (!lanes::runs_here(width)) continue;
      const Balance wide = run(width, unknowns);
      EXPECT_NEAR(wide.inner_sum / plain.inner_sum, 1, 1e-12);
      EXPECT_NEAR(wide.outer_sum / plain.outer_sum, 1, 1e-12);
      EXPECT_NEAR(wide.greatest / plain.greatest, 1, 1e-12);
      for (int i = 0; i < 5; ++i) EXPECT_NEAR(wide.at[i], plain.at[i], 1e-12);
    }
  }
}

// Source: symmetry: preload alone holds the ring in the middle. Tolerance: a picometre.
TEST(RestUnder, SaysWhyThereIsNoAnswer) {
  const LoadedBearing l = loaded(kNine, 12);
  EXPECT_EQ(rest_under(l, {}).error().code.id(), "bearings.no_load");
  EXPECT_EQ(rest_under(l, {.x = newtons(1e-9)}).error().code.id(), "bearings.no_load");
  EXPECT_EQ(rest_under(l, {.x = newtons(std::nan(""))}).error().code.id(), "input.not_finite");
  EXPECT_EQ(rest_under(l, {.about_y = newton_metres(INFINITY)}).error().field, "about_y");
  EXPECT_EQ(rest_under(loaded(kNine, 300), {.z = kilonewtons(1)}).error().code.id(), "bearings.ball_climbs_out");
  EXPECT_EQ(rest_under(l, {.x = kilonewtons(300)}).error().code.id(), "bearings.beyond_elastic");
  EXPECT_EQ(rest_tilted(l, {}, {}).error().code.id(), "bearings.no_load");
  // Preload alone holds the ring: no load is an answer there.
  const auto tight = rest_under(loaded(kNine, -5), {});
  ASSERT_TRUE(tight);
  EXPECT_GT(tight->greatest, Force{});
  EXPECT_NEAR(tight->shift.x.si(), 0, 1e-12);
}

TEST(LoadedBearing, RefusesGeometryThatCannotBe) {
  const PointContacts c = *point_contacts(kNine, kBearingSteel);
  EXPECT_EQ(loaded_bearing({kNine, millimetres(1.1)}, c, {}).error().field, "clearance");
  EXPECT_EQ(loaded_bearing({kNine, micrometres(-60)}, c, {}).error().field, "clearance");
  EXPECT_EQ(loaded_bearing({kNine, metres(std::nan(""))}, c, {}).error().field, "clearance");
  EXPECT_EQ(loaded_bearing({bearing(4, 12, 65), {}}, c, {}).error().field, "balls");
}

}  // namespace
}  // namespace flatwise::bearings
