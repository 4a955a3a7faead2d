#include "core/timing/pairing.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "core/units/rounding.h"

namespace flatwise::timing {
namespace {

constexpr double kPi = std::numbers::pi;

double kink_degrees(double lean_degrees, int flats_out, int flats) {
  const auto k =
      kink({.lean = degrees(lean_degrees), .flats_out = flats_out, .flats = flats, .permissible = arc_minutes(10)});
  EXPECT_TRUE(k);
  return k->angle.degrees();
}

/// Common practice: the marks of a pair are half a turn apart.
TEST(PairingError, OppositeMarksAreRight) {
  for (const int flats : {4, 6, 8, 12}) {
    for (int a = 1; a <= flats; ++a) {
      const int opposite = (a - 1 + flats / 2) % flats + 1;
      EXPECT_EQ(pairing_error({.flat_a = a, .flat_b = opposite}, flats).value(), 0);
      EXPECT_EQ(pairing_error({.flat_a = a, .flat_b = a}, flats).value(), flats / 2);
    }
  }
  EXPECT_EQ(pairing_error({.flat_a = 4, .flat_b = 2}, 6).value(), 1);
  EXPECT_EQ(pairing_error({.flat_a = 4, .flat_b = 6}, 6).value(), -1);
  EXPECT_EQ(pairing_error({.flat_a = 1, .flat_b = 2}, 6).value(), -2);
}

TEST(PairingError, RefusesOddFlatsAndFlatsThatAreNotThere) {
  EXPECT_EQ(pairing_error({.flat_a = 1, .flat_b = 3}, 5).error().code, Code{"timing.odd_flats"});
  EXPECT_EQ(pairing_error({.flat_a = 1, .flat_b = 2}, 2).error().code, Code{"timing.flats_range"});
  EXPECT_EQ(pairing_error({.flat_a = 1, .flat_b = 2}, 26).error().code, Code{"timing.flats_range"});
  EXPECT_EQ(pairing_error({.flat_a = 1, .flat_b = 2}, -6).error().code, Code{"timing.flats_range"});
  EXPECT_EQ(pairing_error({.flat_a = 0, .flat_b = 2}, 6).error().field, "flat-a");
  EXPECT_EQ(pairing_error({.flat_a = 1, .flat_b = 7}, 6).error().field, "flat-b");
}

// Source: spherical law of cosines, cos g = cos^2 a + sin^2 a cos d [Spherical-cosines]; the values at 3 and 5 degrees
// were computed from it beforehand with six decimals.
// Tolerance: 1e-6 deg, the last digit given.
TEST(Kink, MatchesTheLawOfCosines) {
  EXPECT_NEAR(kink_degrees(3, 1, 6), 2.998972, 1e-6);
  EXPECT_NEAR(kink_degrees(3, 2, 6), 5.195558, 1e-6);
  EXPECT_NEAR(kink_degrees(3, 3, 6), 6.000000, 1e-6);
  EXPECT_NEAR(kink_degrees(3, 1, 4), 4.241671, 1e-6);
  EXPECT_NEAR(kink_degrees(5, 1, 6), 4.995238, 1e-6);
  EXPECT_NEAR(kink_degrees(5, 2, 6), 8.657500, 1e-6);
}

using Vector = std::array<double, 3>;

/// Bore axis of a half: the shaft's axis leant over by `lean`, then turned about the shaft to `azimuth`.
Vector bore_axis(double lean, double azimuth) {
  const Vector leant{std::sin(lean), 0, std::cos(lean)};
  return {leant[0] * std::cos(azimuth) - leant[1] * std::sin(azimuth),
          leant[0] * std::sin(azimuth) + leant[1] * std::cos(azimuth), leant[2]};
}

double angle_between(const Vector& u, const Vector& v) {
  const Vector cross{u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
  const double dot = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
  return std::atan2(std::hypot(cross[0], cross[1], cross[2]), dot);
}

// Source: the two bore axes as rotated vectors; a half on the B side with its mark opposite has the same axis as its partner.
// Tolerance: 64 eps absolute; both ways round a few times on values up to 1.
RC_GTEST_PROP(Kink, IsTheAngleBetweenTheTwoBoreAxes, ()) {
  const double lean = *rc::gen::inRange(0, 3001) / 100.0 * kPi / 180;
  const int flats = 2 * *rc::gen::inRange(2, 13);
  const int flat_a = *rc::gen::inRange(1, flats + 1), flat_b = *rc::gen::inRange(1, flats + 1);
  const int error = pairing_error({.flat_a = flat_a, .flat_b = flat_b}, flats).value();
  const auto bent = kink({.lean = radians(lean), .flats_out = error, .flats = flats, .permissible = arc_minutes(10)});
  const double mark_a = 2 * kPi * (flat_a - 1) / flats, mark_b = 2 * kPi * (flat_b - 1) / flats;
  const double wanted = angle_between(bore_axis(lean, mark_a), bore_axis(lean, mark_b - kPi));
  RC_ASSERT(std::abs(bent->angle.radians() - wanted) < 64 * std::numeric_limits<double>::epsilon());
}

/// The comparison bites: a tempting wrong formula, full delta for half of it, is out by degrees.
TEST(Kink, FullAngleInsteadOfHalfIsFoundOut) {
  const double wrong = 2 * std::asin(std::sin(5 * kPi / 180) * std::abs(std::sin(kPi / 3)));
  EXPECT_GT(std::abs(wrong - kink_degrees(5, 1, 6) * kPi / 180), 0.05);
}

// Source: 4.995238 deg by the law of cosines, over 10 minutes of arc.
// Tolerance: 1e-5, six figures of that value.
TEST(Kink, RightPairIsStraightAndOneFlatOutIsManyTimesTheBearing) {
  EXPECT_EQ(kink_degrees(5, 0, 6), 0);
  EXPECT_EQ(kink_degrees(5, 6, 6), 0);
  EXPECT_EQ(kink_degrees(0, 1, 6), 0);
  const auto k = kink({.lean = degrees(5), .flats_out = 1, .flats = 6, .permissible = arc_minutes(10)});
  EXPECT_NEAR(k->times, 4.995238 * 6, 1e-5);
  EXPECT_EQ(to_two_figures(k->times), 30);
  EXPECT_NEAR(to_two_figures(3.14159), 3.1, 1e-12);
  EXPECT_EQ(to_two_figures(134.6), 130);
}

TEST(Kink, RefusesWhatCannotBe) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(kink({.lean = degrees(5), .flats_out = 1, .flats = 5, .permissible = arc_minutes(10)}).error().code,
            Code{"timing.odd_flats"});
  for (const double lean : {-1.0, 90.0, nan})
    EXPECT_EQ(kink({.lean = degrees(lean), .flats_out = 1, .flats = 6, .permissible = arc_minutes(10)}).error().field,
              "lean");
  for (const double limit : {0.0, -1.0, nan, std::numeric_limits<double>::infinity()})
    EXPECT_EQ(kink({.lean = degrees(5), .flats_out = 1, .flats = 6, .permissible = arc_minutes(limit)}).error().field,
              "misalignment");
}

}  // namespace
}  // namespace flatwise::timing
