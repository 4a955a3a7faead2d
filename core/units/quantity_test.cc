// quantity_test.cc: what the quantity types allow and refuse, and the exact factors of their factories.
#include "core/units/quantity.h"

#include <gtest/gtest.h>

#include <limits>
#include <type_traits>

#include "core/units/angle.h"
#include "core/units/any_quantity.h"
#include "core/units/temperature.h"

namespace flatwise {
namespace {

template <class A, class B>
concept Addable = requires(A a, B b) { a + b; };
template <class A, class B>
concept Comparable = requires(A a, B b) { a < b; };

static_assert(Addable<Length, Length> && !Addable<Length, Pressure> && !Addable<Length, double>);
static_assert(!Addable<Temperature, Temperature> && Addable<Temperature, TemperatureRise>);
static_assert(!Comparable<Force, Torque> && !Comparable<AngularSpeed, Frequency> && !Comparable<Angle, double>);
static_assert(!std::is_convertible_v<double, Length> && !std::is_convertible_v<Length, double>);
static_assert(!std::is_convertible_v<Frequency, AngularSpeed> && !std::is_convertible_v<Temperature, TemperatureRise>);
static_assert(std::is_same_v<decltype(newtons(1) / square_millimetres(1)), Pressure>);
static_assert(std::is_same_v<decltype(newtons(1) * metres(1)), Torque>);
static_assert(std::is_same_v<decltype(metres(1) / metres(1)), double>);
static_assert(sizeof(Length) == sizeof(double));

constexpr double kEps = std::numeric_limits<double>::epsilon();

// Source: NIST SP 811 (2008), appendix B.8: 1 ft·lbf = 1.3558179483314004 N·m and 1 lbf = 4.4482216152605 N exactly,
// 1 in = 25.4 mm exactly.
// Tolerance: 2 eps relative; each factory rounds its factor and its product.
TEST(Quantity, FactoriesCarryTheExactFactors) {
  EXPECT_NEAR(foot_pounds(350).si(), 474.53628191599014, 2 * kEps * 475);
  EXPECT_NEAR(pounds_force(200).si(), 889.6443230521, 2 * kEps * 890);
  EXPECT_NEAR(inches(1.5).si(), 0.0381, 2 * kEps * 0.0381);
  EXPECT_NEAR(thou(0.5).si(), 1.27e-5, 2 * kEps * 1.27e-5);
}

// Source: BIPM SI brochure (9th edition), 2.3.1: t/°C = T/K - 273.15; the Fahrenheit interval is 5/9 K (NIST SP 811, B.8).
// Tolerance: 4 eps of the kelvin value; celsius() takes 273.15 off.
TEST(Quantity, TemperatureAndItsRiseKeepApart) {
  EXPECT_NEAR(celsius(20).kelvin(), 293.15, 4 * kEps * 293.15);
  EXPECT_NEAR(celsius(100).fahrenheit(), 212.0, 8 * kEps * 671);
  EXPECT_NEAR((celsius(80) - celsius(20)).kelvins(), 60.0, 4 * kEps * 353);
  EXPECT_EQ(Temperature{}, kReferenceTemperature);
}

// Source: definitions: a turn is 2 pi rad, a degree 60 minutes of arc.
// Tolerance: 4 eps relative.
TEST(Quantity, TurnsAndMinutesOfArc) {
  EXPECT_NEAR(turns_per_minute(60).radians_per_second(), 6.283185307179586, 4 * kEps * 6.3);
  EXPECT_NEAR(arc_minutes(10).degrees(), 1.0 / 6.0, 4 * kEps);
  EXPECT_NEAR(turns_per_minute(480).turns_per_minute(), 480.0, 4 * kEps * 480);
}

TEST(Quantity, KindsHaveNamesOfTheirOwn) {
  for (int i = 0; i < kKindCount; ++i)
    for (int j = 0; j < i; ++j) EXPECT_NE(kind_name(static_cast<Kind>(i)), kind_name(static_cast<Kind>(j)));
}

}  // namespace
}  // namespace flatwise
