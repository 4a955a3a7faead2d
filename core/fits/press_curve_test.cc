#include "core/fits/press_curve.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/fits/creep.h"
#include "core/fits/joint_samples.h"
#include "core/fits/materials.h"

namespace flatwise::fits {
namespace {

/// The press of docs/worked/W3 with a lead of 2 mm.
PressPath worked_path() {
  return {.pressing = {.joint = ring_120_in_iron_hub(),
                       .width = millimetres(25),
                       .roughness_loss = micrometres(5),
                       .interference = {.least = micrometres(15), .greatest = micrometres(50)},
                       .friction = {.least = 0.08, .greatest = 0.18},
                       .hub_yield = megapascals(250)},
          .lead = millimetres(2)};
}

// Source: docs/worked/W33-press-curve.md: nothing on the lead, half of the force of W3 half-way, all of it home (939.7 N
// and 9.514 kN), and no more after; the work of W3.
// Tolerance: 1e-9 relative.
TEST(PressCurve, RisesEvenlyToTheForceOfThePress) {
  const PressPath path = worked_path();
  const auto home = press_force(path.pressing).value();
  const Length travels[] = {millimetres(1), millimetres(2), millimetres(14.5), millimetres(27), millimetres(30)};
  const auto curve = press_curve(path, travels).value();
  EXPECT_EQ(curve[0].greatest, Force{});
  EXPECT_EQ(curve[1].greatest, Force{});
  EXPECT_NEAR(curve[2].greatest / home.greatest, 0.5, 1e-9);
  for (const std::size_t i : {std::size_t{3}, std::size_t{4}}) {
    EXPECT_NEAR(curve[i].least / home.least, 1, 1e-9);
    EXPECT_NEAR(curve[i].greatest / home.greatest, 1, 1e-9);
  }
  EXPECT_NEAR(*press_work(path) / home.energy_greatest, 1, 1e-9);
}

// Source: closed form: with p = C (m + (s/W - 1/2) t) the integral to x is C x (m + (x/W - 1) t/2): a bore 20 um smaller at
// its far end, mean 45 um after flattening, half-way: 0.5 (45 - 5)/45.
// Tolerance: 1e-9 relative.
TEST(PressCurve, FollowsATaperedBore) {
  PressPath path = worked_path();
  path.bore_taper = micrometres(20);
  const Length travels[] = {millimetres(14.5), millimetres(27)};
  const auto curve = press_curve(path, travels).value();
  const Force home = press_force(path.pressing)->greatest;
  EXPECT_NEAR(curve[0].greatest / home, 0.5 * 40 / 45, 1e-9);
  EXPECT_NEAR(curve[1].greatest / home, 1, 1e-9);
}

// Source: yielding.h: the force is what the yielded hub's pressure gives, under plain Lame's.
// Tolerance: 1e-9 relative.
TEST(PressCurve, IsLowerWhereTheHubYields) {
  PressPath path = worked_path();
  path.pressing.hub_yield = megapascals(14);
  const Length home[] = {millimetres(27)};
  const auto yielded = press_curve(path, home).value();
  const auto state = press_into_yielding({path.pressing.joint, path.pressing.hub_yield}, micrometres(45)).value();
  ASSERT_EQ(state.zone, HubZone::partly_plastic);
  const double seat_m2 = 3.14159265358979323846 * 0.120 * 0.025;
  EXPECT_NEAR(yielded[0].greatest.si(), 0.18 * state.pressure.si() * seat_m2, 1e-5);
  path.hub_may_yield = false;
  EXPECT_LT(yielded[0].greatest, press_curve(path, home)->front().greatest);
}

/// What a gauge would show: this interference and friction, read every 2.5 mm, then a stop.
CurveReading read_off(double micro, double friction, double (*change)(double share) = [](double s) { return s; }) {
  PressPath path = worked_path();
  path.pressing.interference = {.least = micrometres(micro), .greatest = micrometres(micro)};
  const double home_n = friction / path.pressing.friction.greatest * press_force(path.pressing)->greatest.si();
  CurveReading reading{.points = {}, .expanded = newtons(100)};
  for (int i = 0; i <= 10; ++i)
    reading.points.push_back({millimetres(2 + 2.5 * i), newtons(home_n * change(i / 10.0))});
  return reading;
}
bool says(const CurveRead& read, CurveSaid what) { return std::ranges::find(read.said, what) != read.said.end(); }

// Source: the curve was made from 35 um of interference and friction 0.12; least friction 0.08, greatest 0.18, U 100 N and
// 5 um flattened: from 5 + 30 (0.12/0.18) less U's share to 5 + 30 (0.12/0.08) more.
// Tolerance: 1 um, what 100 N of 3800 N mean here.
TEST(ReadCurve, TellsTheInterferenceBehindAnEvenCurve) {
  const auto read = read_curve(read_off(35, 0.12), worked_path()).value();
  EXPECT_EQ(read.said, std::vector<CurveSaid>{CurveSaid::inside});
  EXPECT_NEAR((read.interference - read.expanded).si() * 1e6, 25, 1);
  EXPECT_NEAR((read.interference + read.expanded).si() * 1e6, 50, 1.5);
  EXPECT_NEAR(read.bend, 1, 1e-9);
  EXPECT_FALSE(read.stop_felt);
}

// Source: the shape rules of the header (common practice), each on a curve made to show it.
// Tolerance: none, the finding itself.
TEST(ReadCurve, NamesWhatTheShapeShows) {
  const auto at = [](CurveReading reading) { return read_curve(reading, worked_path()).value(); };
  EXPECT_TRUE(says(at(read_off(8, 0.08)), CurveSaid::below));
  EXPECT_TRUE(says(at(read_off(70, 0.18)), CurveSaid::above));
  EXPECT_TRUE(at(read_off(70, 0.18)).first_outside.has_value());
  EXPECT_TRUE(says(at(read_off(45, 0.15, [](double s) { return s < 0.75 ? s : 0.5 * s; })), CurveSaid::sudden_drop));
  EXPECT_TRUE(says(at(read_off(45, 0.15, [](double s) { return s * s; })), CurveSaid::bends_up));
  EXPECT_TRUE(says(at(read_off(45, 0.15, [](double s) { return s * (2 - s); })), CurveSaid::bends_down));
  auto half_way = read_off(40, 0.12);
  half_way.points.resize(7);
  EXPECT_TRUE(says(at(half_way), CurveSaid::not_home));
  half_way.points.push_back({millimetres(17.4), kilonewtons(9)});  // Against a shoulder that came too soon, or home.
  EXPECT_TRUE(at(half_way).stop_felt);
  EXPECT_FALSE(says(at(half_way), CurveSaid::not_home));
  auto coarse = read_off(45, 0.15, [](double s) { return s * s; });
  coarse.expanded = kilonewtons(4);
  EXPECT_FALSE(says(at(coarse), CurveSaid::bends_up));  // A gauge so coarse could have drawn it.
}

TEST(ReadCurve, RefusesAndNamesTheField) {
  auto reading = read_off(35, 0.12);
  std::swap(reading.points[3], reading.points[4]);
  EXPECT_EQ(read_curve(reading, worked_path()).error().code.id(), "fits.curve_order");
  reading.points.resize(3);
  EXPECT_EQ(read_curve(reading, worked_path()).error().code.id(), "fits.curve_points");
  PressPath path = worked_path();
  path.lead = millimetres(-1);
  EXPECT_EQ(press_curve(path, {}).error().field, "lead");
  path = worked_path();
  path.bore_taper = millimetres(2);
  EXPECT_EQ(press_curve(path, {}).error().field, "bore_taper");
  const Length travel[] = {metres(std::numeric_limits<double>::quiet_NaN())};
  EXPECT_EQ(press_curve(worked_path(), travel).error().field, "travel");
}

// Source: docs/worked/W32-creep-margin.md, by hand: d = 55, B = 21 mm, 4 kN and 30 N m: 4000 + 6 * 30/0.021 = 12571.43 N;
// 0.08 sqrt(55 * 12571.43/21) = 14.5162 um; 10 K more: 0.825 um.
// Tolerance: the digits written.
TEST(CreepMargin, MeetsTheWorkedRing) {
  CreepLoad load{.diameter = millimetres(55),
                 .width = millimetres(21),
                 .radial = kilonewtons(4),
                 .couple = newton_metres(30),
                 .temperature_rise = kelvins(10),
                 .interference_least = micrometres(10),
                 .interference_greatest = micrometres(30)};
  const auto margin = creep_margin(load).value();
  EXPECT_NEAR(margin.equivalent.si(), 12571.43, 0.005);
  EXPECT_NEAR(margin.loss_by_load.si() * 1e6, 14.5162, 1e-4);
  EXPECT_NEAR(margin.loss_by_heat.si() * 1e6, 0.825, 1e-9);
  EXPECT_EQ(margin.answer, Answer::cannot_tell);
  load.interference_least = micrometres(16);
  EXPECT_EQ(creep_margin(load)->answer, Answer::in);
  load.static_rating = kilonewtons(20);
  EXPECT_NEAR(creep_margin(load)->loss_by_load.si() * 1e6, 14.5162, 1e-4);  // 0.02 F/B = 11.97: the greater counts.
  load.radial = kilonewtons(-1);
  EXPECT_EQ(creep_margin(load).error().field, "radial");
}

// Source: the rows of the table itself: a metal that yields has both strengths in order, grey iron has none to yield at.
// Tolerance: exact.
TEST(Metals, AreWholeAndKnowWhichCrack) {
  for (const Metal& metal : metals()) {
    EXPECT_TRUE(!metal.yield || *metal.yield < metal.tensile) << metal.name;
    EXPECT_EQ(find_metal(metal.name), &metal);
  }
  EXPECT_FALSE(find_metal("grey iron")->yield.has_value());
  EXPECT_EQ(find_metal("butter"), nullptr);
}

}  // namespace
}  // namespace flatwise::fits
