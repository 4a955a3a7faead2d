#include "core/fits/lame.h"

#include <gtest/gtest.h>
#include <cmath>
#include <limits>

#include "core/fits/joint_samples.h"
#include "tests/support/test_table.h"

namespace flatwise::fits {
namespace {

constexpr double kEps = std::numeric_limits<double>::epsilon();

PressedJoint solid_50_in_100() {
  return {.diameter = millimetres(50),
          .ring_inside = Length{},
          .hub_outside = millimetres(100),
          .ring = kSteel,
          .hub = kSteel};
}

// Source: Shigley's Mechanical Engineering Design, 9th ed., eqs. 7-40, 7-44, 7-45; by hand in W1-ring-in-hub.md:
// 207e9 * 50e-6 / 0.1 * 0.75 = 77.625 MPa; 5/3 of it; itself.
// Tolerance: 32 eps relative.
TEST(ContactPressure, OfASolidShaftOfTheSameMaterial) {
  const auto p = contact_pressure(solid_50_in_100(), micrometres(50));
  ASSERT_TRUE(p);
  EXPECT_NEAR(p->si(), 77.625e6, 77.625e6 * 32 * kEps);
  const auto stress = hoop_stress(solid_50_in_100(), *p).value();
  EXPECT_NEAR(stress.hub.si(), 129.375e6, 129.375e6 * 32 * kEps);
  EXPECT_NEAR(stress.ring.si(), -77.625e6, 77.625e6 * 32 * kEps);
  EXPECT_EQ(stress.ring_inside, stress.ring);
}

// Source: Shigley 9th ed., eqs. 7-39, 7-44, 7-45: ring 107/120 in a cast-iron hub of 180, 45 um.
// Tolerance: 1e-6 relative, as published.
TEST(ContactPressure, OfABearingRingInACastIronHub) {
  const auto p = contact_pressure(ring_120_in_iron_hub(), micrometres(45)).value();
  EXPECT_NEAR(p.si(), 5.608174e6, 5.7);
  const auto stress = hoop_stress(ring_120_in_iron_hub(), p).value();
  EXPECT_NEAR(stress.hub.si(), 14.581252e6, 15);
  EXPECT_NEAR(stress.ring.si(), -49.124260e6, 50);
}

// Source: problem of a textbook (brass tube in a steel tube, joint 101.6 mm), solved with Lame's equations.
// Tolerance: 1e-5 relative, as published.
TEST(ContactPressure, OfABrassTubeInASteelTube) {
  const PressedJoint joint{.diameter = millimetres(101.6),
                           .ring_inside = millimetres(50.8),
                           .hub_outside = millimetres(127.0),
                           .ring = {.youngs_modulus = gigapascals(103.4), .poisson = 0.32},
                           .hub = {.youngs_modulus = gigapascals(206.7), .poisson = 0.29}};
  const auto p = contact_pressure(joint, micrometres(51)).value();
  EXPECT_NEAR(p.si(), 13.76527e6, 140);
  const auto stress = hoop_stress(joint, p).value();
  EXPECT_NEAR(stress.hub.si(), 62.70844e6, 630);
  EXPECT_NEAR(stress.ring.si(), -22.94211e6, 230);
}

// Source: lecture exercise (steel shaft 50/100 in an iron disc of 250, hoop at most 30 MPa): 21.724138 MPa, radial
// interference 0.03237685 mm; solved with Lame's equations.
// Tolerance: 1e-6 relative, as published.
TEST(ContactPressure, TurnedRoundFromHoopStressAndFromPressure) {
  const PressedJoint joint{.diameter = millimetres(100),
                           .ring_inside = millimetres(50),
                           .hub_outside = millimetres(250),
                           .ring = {.youngs_modulus = gigapascals(210), .poisson = 0.3},
                           .hub = {.youngs_modulus = gigapascals(70), .poisson = 0.25}};
  const auto p = pressure_for_hub_hoop(joint, megapascals(30)).value();
  EXPECT_NEAR(p.si(), 21.724138e6, 22);
  EXPECT_NEAR(interference_of(joint, p)->si(), 2 * 0.03237685e-3, 7e-11);
}

PressedJoint joint_of(const TestRow& row) {
  return {.diameter = metres(number(row, "diameter")),
          .ring_inside = metres(number(row, "ring_inside")),
          .hub_outside = metres(number(row, "hub_outside")),
          .ring = {.youngs_modulus = pascals(number(row, "ring_e")), .poisson = number(row, "ring_nu")},
          .hub = {.youngs_modulus = pascals(number(row, "hub_e")), .poisson = number(row, "hub_nu")}};
}

// Source: tests/data/fits_scipy.py: the equilibrium equation of both rings solved numerically by scipy, no closed form.
// Tolerance: 2e-8 relative: the collocation was asked for 1e-10, and a stress is a derivative.
TEST(ContactPressure, AgreesWithANumericalSolutionOfTheEquations) {
  constexpr double kSolved = 2e-8;
  for (const auto& row : test_table("fits_scipy_joint.csv")) {
    const auto joint = joint_of(row);
    const auto p = contact_pressure(joint, metres(number(row, "interference"))).value();
    const auto stress = hoop_stress(joint, p).value();
    const auto near = [&row](double found, const char* column) {
      EXPECT_NEAR(found, number(row, column), std::abs(kSolved * number(row, column))) << column;
    };
    near(p.si(), "pressure");
    near(stress.hub.si(), "hub_hoop");
    near(stress.ring.si(), "ring_hoop");
    near(stress.ring_inside.si(), "ring_inside_hoop");
    near(outer_raceway_change(joint, p)->si(), "raceway");
  }
}

// Deliberately wrong: both of Poisson's ratios with the hub's sign. The numerical solution must tell.
TEST(ContactPressure, NumericalSolutionSeesAWrongSignOfPoissonsRatio) {
  const auto row = test_table("fits_scipy_joint.csv").front();
  auto joint = joint_of(row);
  joint.ring.poisson = -joint.ring.poisson;
  const auto wrong = contact_pressure(joint, metres(number(row, "interference"))).value();
  EXPECT_GT(std::abs(wrong.si() / number(row, "pressure") - 1), 0.01);
}

// Source: closed form delta d / d_i from Lame's equations, by hand in W2-raceway.md: 0.0241935484 mm on a solid
// seat, 0.0216682199 mm on one with a 25 mm bore.
// Tolerance: 1e-9 relative, as published.
TEST(InnerRaceway, GrowsByTheClosedForm) {
  PressedJoint seat{.diameter = millimetres(50),
                    .ring_inside = Length{},
                    .hub_outside = millimetres(62),
                    .ring = kSteel,
                    .hub = kSteel};
  const auto growth = [&seat] {
    return inner_raceway_change(seat, contact_pressure(seat, micrometres(30)).value())->si() * 1e3;
  };
  EXPECT_NEAR(growth(), 0.0241935484, 1e-9 * 0.0241935484 + 5e-11);
  seat.ring_inside = millimetres(25);
  EXPECT_NEAR(growth(), 0.0216682199, 1e-9 * 0.0216682199 + 5e-11);
}

// Source: Tresca with Shigley 9th ed. eq. 7-45, by hand in W1: Y/2 (1 - 120^2/180^2) = 250/2 * 5/9 = 69.44 MPa; there
// the hoop stress less the radial stress is the yield strength.
// Tolerance: 32 eps relative.
TEST(YieldOnset, IsWhereTheGreatestShearReachesHalfTheYieldStrength) {
  const auto onset = yield_onset(ring_120_in_iron_hub(), megapascals(250)).value();
  EXPECT_NEAR(onset.si(), 625e6 / 9, 625e6 / 9 * 32 * kEps);
  const auto stress = hoop_stress(ring_120_in_iron_hub(), onset).value();
  EXPECT_NEAR((stress.hub + onset).si(), 250e6, 250e6 * 32 * kEps);
}

// Source: common practice (4 D + d) / 5, by hand: (4 * 120 + 55) / 5 = 107.
// Tolerance: 4 eps relative.
TEST(RingInside, IsEstimatedFromBoreAndOutside) {
  EXPECT_NEAR(estimated_ring_inside(millimetres(55), millimetres(120))->si(), 0.107, 0.107 * 4 * kEps);
  EXPECT_EQ(estimated_ring_inside(millimetres(120), millimetres(120)).error().code.id(), "fits.not_inside");
}

TEST(ContactPressure, OfNothingIsExactlyNothing) {
  EXPECT_EQ(contact_pressure(ring_120_in_iron_hub(), Length{})->si(), 0.0);
  EXPECT_EQ(interference_of(ring_120_in_iron_hub(), Pressure{})->si(), 0.0);
}

TEST(ContactPressure, RefusesWhatCannotBeAndNamesTheField) {
  const double nan = std::nan("");
  const auto refused = [](auto change) {
    auto joint = ring_120_in_iron_hub();
    change(joint);
    const auto p = contact_pressure(joint, micrometres(10));
    return p ? std::string{"accepted"} : p.error().field;
  };
  EXPECT_EQ(refused([&](auto& j) { j.diameter = metres(nan); }), "diameter");
  EXPECT_EQ(refused([&](auto& j) { j.ring_inside = metres(nan); }), "ring_inside");
  EXPECT_EQ(refused([&](auto& j) { j.ring_inside = j.diameter; }), "ring_inside");
  EXPECT_EQ(refused([&](auto& j) { j.hub_outside = j.diameter; }), "hub_outside");
  EXPECT_EQ(refused([&](auto& j) { j.hub_outside = metres(std::numeric_limits<double>::infinity()); }), "hub_outside");
  EXPECT_EQ(refused([&](auto& j) { j.ring.youngs_modulus = Pressure{}; }), "ring.youngs_modulus");
  EXPECT_EQ(refused([&](auto& j) { j.hub.poisson = 0.51; }), "hub.poisson");
  EXPECT_EQ(refused([&](auto& j) { j.hub.poisson = nan; }), "hub.poisson");
  EXPECT_EQ(contact_pressure(ring_120_in_iron_hub(), micrometres(-1)).error().field, "interference");
  EXPECT_EQ(contact_pressure(ring_120_in_iron_hub(), metres(nan)).error().field, "interference");
  EXPECT_EQ(hoop_stress(ring_120_in_iron_hub(), pascals(-1)).error().field, "pressure");
  EXPECT_EQ(yield_onset(ring_120_in_iron_hub(), Pressure{}).error().field, "hub_yield");
}

}  // namespace
}  // namespace flatwise::fits
