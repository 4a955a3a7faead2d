#include "core/fits/yielding.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/fits/joint_samples.h"

namespace flatwise::fits {
namespace {

/// The joint of docs/worked/W30: the ring of W1 in a hub of soft aluminium.
YieldingJoint soft_hub() {
  PressedJoint joint = ring_120_in_iron_hub();
  joint.hub = {.youngs_modulus = gigapascals(70), .poisson = 0.33};
  return {joint, megapascals(60)};
}

// Source: [Hill] ch. V, thick tube by Tresca: a tube twice as wide as its bore yields from 0.375 Y and right through at
// Y ln 2 = 0.6931 Y (textbook numbers, from memory); a thin ring never bears more than Y.
// Tolerance: 1e-12 relative.
TEST(YieldPressures, OfATubeTwiceAsWideAsItsBore) {
  YieldingJoint tube = soft_hub();
  tube.joint.hub_outside = 2 * tube.joint.diameter;
  const auto p = yield_pressures(tube).value();
  EXPECT_NEAR(p.onset / tube.hub_yield, 0.375, 1e-12);
  EXPECT_NEAR(p.full / tube.hub_yield, std::log(2.0), 1e-12);
  tube.joint.hub_outside = 4 * tube.joint.diameter;
  EXPECT_NEAR(yield_pressures(tube)->full / tube.hub_yield, 1.0, 1e-9);
}

// Source: docs/worked/W30-hub-that-yields.md, by hand, and there by scipy's solve_ivp on equilibrium and compatibility:
// border 150 mm, 22.5553 MPa, bore + 134.808 um, ring - 110.611 um, 21.516 um left over, hoop 50.833 MPa at the border.
// Tolerance: the digits written.
TEST(PressIntoYielding, MeetsTheWorkedHub) {
  const auto state = press_into_yielding(soft_hub(), micrometres(134.80793583 + 110.61113934)).value();
  EXPECT_EQ(state.zone, HubZone::partly_plastic);
  EXPECT_NEAR(state.pressure.si(), 22.55528e6, 50);
  EXPECT_NEAR(state.border.si(), 0.150, 1e-8);
  EXPECT_NEAR(state.bore_growth.si(), 134.80794e-6, 1e-10);
  EXPECT_NEAR(state.ring_shrink.si(), 110.61114e-6, 1e-10);
  EXPECT_NEAR(state.left_over.si(), 21.515988e-6, 1e-10);
  EXPECT_NEAR(state.hub_hoop.si(), 50.833333e6, 10);
}

// Source: [Hearn] eq. 3.32, pressure that yields a thick tube to a radius, and an exercise on it (100/200 mm, Y = 450 MPa;
// inputs read, answers by that equation): first yield 168.75, half-way through 280.897, all through 311.916 MPa.
// Tolerance: half of the last digit given.
TEST(YieldPressures, OfATextbooksTube) {
  YieldingJoint tube = soft_hub();
  tube.joint.diameter = millimetres(100);
  tube.joint.ring_inside = millimetres(90);
  tube.joint.hub_outside = millimetres(200);
  tube.hub_yield = megapascals(450);
  EXPECT_NEAR(yield_pressures(tube)->onset.si(), 168.75e6, 5e3);
  EXPECT_NEAR(yield_pressures(tube)->full.si(), 311.916e6, 500);
  const Length to_half_way = interference_behind_yield(tube, megapascals(280.897)).value();
  EXPECT_NEAR(press_into_yielding(tube, to_half_way)->border.si(), 0.150, 1e-6);
}

/// Radial stress and growth at the bore by stepping inwards from the border: equilibrium, and the flow rule that leaves no
/// plastic change of radial and hoop strain together (Runge and Kutta, fourth order).
struct AtBore {
  double pressure, growth;
};
AtBore stepped_inwards(const YieldingJoint& j, double border_m) {
  const double y = j.hub_yield.si(), e = j.joint.hub.youngs_modulus.si(), nu = j.joint.hub.poisson;
  const double outside = j.joint.hub_outside.si() / 2, bore = j.joint.diameter.si() / 2, c = border_m / 2;
  double stress = -0.5 * y * (1 - c * c / (outside * outside));
  double u = -stress * c / e * ((outside * outside + c * c) / (outside * outside - c * c) + nu);
  constexpr int kSteps = 2000;
  const double h = (bore - c) / kSteps;
  const auto slope = [&](double r, double s, double v) { return -v / r + (1 - nu) / e * (2 * s + y); };
  for (int i = 0; i < kSteps; ++i) {
    const double r = c + h * i;
    const auto at = [&](double x) { return stress + y * std::log(x / r); };
    const double k1 = slope(r, stress, u), k2 = slope(r + h / 2, at(r + h / 2), u + h / 2 * k1);
    const double k3 = slope(r + h / 2, at(r + h / 2), u + h / 2 * k2), k4 = slope(r + h, at(r + h), u + h * k3);
    u += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    stress = at(r + h);
  }
  return {-stress, 2 * u};
}

// Source: second method: numbers by steps inwards through the yielded zone.
// Tolerance: 1e-9 relative, the steps' own.
TEST(PressIntoYielding, MeetsStepsThroughTheYieldedZone) {
  for (const double micro : {190.0, 215.0, 245.0, 260.0}) {
    const auto state = press_into_yielding(soft_hub(), micrometres(micro)).value();
    ASSERT_EQ(state.zone, HubZone::partly_plastic) << micro;
    const AtBore stepped = stepped_inwards(soft_hub(), state.border.si());
    EXPECT_NEAR(state.pressure.si() / stepped.pressure, 1, 1e-9);
    EXPECT_NEAR(state.bore_growth.si() / stepped.growth, 1, 1e-9);
    EXPECT_NEAR((state.bore_growth + state.ring_shrink).si(), micro * 1e-6, 1e-12);
  }
}

// Source: the elastic branch is lame.h; the two meet at the onset.
// Tolerance: 1e-9 relative.
TEST(PressIntoYielding, IsLameBelowTheOnsetAndPassesOnSmoothly) {
  const YieldingJoint hub = soft_hub();
  const auto small = press_into_yielding(hub, micrometres(45)).value();
  EXPECT_EQ(small.zone, HubZone::elastic);
  EXPECT_EQ(small.pressure, contact_pressure(hub.joint, micrometres(45)).value());
  EXPECT_EQ(small.left_over, Length{});
  EXPECT_NEAR((small.bore_growth + small.ring_shrink).si(), 45e-6, 1e-15);
  const Length onset = interference_of(hub.joint, yield_pressures(hub)->onset).value();
  const auto before = press_into_yielding(hub, 0.9999999 * onset).value();
  const auto after = press_into_yielding(hub, 1.0000001 * onset).value();
  EXPECT_NEAR(after.pressure / before.pressure, 1, 1e-6);
  EXPECT_NEAR(after.left_over.si(), 0, 1e-10);
  EXPECT_NEAR(after.hub_hoop / before.hub_hoop, 1, 1e-6);
}

// Source: the model: past the full pressure nothing rises but the hub's growth.
// Tolerance: 1e-12 m.
TEST(PressIntoYielding, OnlyGrowsOnceItYieldedRightThrough) {
  const YieldingJoint hub = soft_hub();
  const auto much = press_into_yielding(hub, micrometres(500)).value();
  const auto more = press_into_yielding(hub, micrometres(600)).value();
  EXPECT_EQ(much.zone, HubZone::fully_plastic);
  EXPECT_EQ(much.pressure, yield_pressures(hub)->full);
  EXPECT_EQ(more.pressure, much.pressure);
  EXPECT_NEAR((more.left_over - much.left_over).si(), 100e-6, 1e-12);
  EXPECT_EQ(much.border, hub.joint.hub_outside);
}

// Property: the pressure rises with the interference, never over Lame's; back from it comes the interference.
// Source: closed form turned round. Tolerance: 1e-9 relative.
TEST(InterferenceBehindYield, TurnsItRound) {
  const YieldingJoint hub = soft_hub();
  double last = 0;
  for (double micro = 20; micro < 260; micro += 20) {
    const auto state = press_into_yielding(hub, micrometres(micro)).value();
    EXPECT_GT(state.pressure.si(), last);
    EXPECT_LE(state.pressure, contact_pressure(hub.joint, micrometres(micro)).value());
    EXPECT_NEAR(interference_behind_yield(hub, state.pressure)->si(), micro * 1e-6, micro * 1e-15);
    last = state.pressure.si();
  }
  EXPECT_EQ(interference_behind_yield(hub, megapascals(25)).error().code.id(), "fits.pressure_over_full");
}

// Source: W1: hoop stress 2.6 p at the bore; 195 MPa is reached at 75 MPa.
// Tolerance: 1e-12.
TEST(ShareToCrack, IsHoopOverTensile) {
  EXPECT_NEAR(share_to_crack(ring_120_in_iron_hub(), megapascals(75), megapascals(195)).value(), 1.0, 1e-12);
}

TEST(PressIntoYielding, RefusesAndNamesTheField) {
  YieldingJoint hub = soft_hub();
  EXPECT_EQ(press_into_yielding(hub, micrometres(-1)).error().field, "interference");
  hub.hub_yield = pascals(std::numeric_limits<double>::quiet_NaN());
  EXPECT_EQ(press_into_yielding(hub, micrometres(1)).error().field, "hub_yield");
  EXPECT_EQ(yield_pressures(hub).error().field, "hub_yield");
}

}  // namespace
}  // namespace flatwise::fits
