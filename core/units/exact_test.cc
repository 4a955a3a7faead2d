// exact_test.cc: the wide whole numbers and the one rounding that typed values go through.
#include "core/units/exact.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>
#include <limits>
#include <string>

namespace flatwise::exact {
namespace {

Ratio decimal(std::uint64_t mantissa, int power) {
  Ratio r{false, Whole{mantissa}, Whole{1}};
  (power < 0 ? r.den : r.num) = power < 0 ? power_of_ten(-power) : r.num * power_of_ten(power);
  return r;
}

TEST(Whole, DividesBackWhatItMultiplied) {
  EXPECT_TRUE(rc::check([](std::uint64_t a, std::uint64_t b, std::uint64_t c, std::uint64_t d) {
    const Whole divisor = Whole{b} * Whole{c} + Whole{1};
    const Whole rest = Whole{d} < divisor ? Whole{d} : Whole{0};
    const Divided back = divide(Whole{a} * divisor + rest, divisor);
    RC_ASSERT(back.quotient == Whole{a});
    RC_ASSERT(back.rest == rest);
  }));
}

// Source: C++ [expr.mul] on unsigned __int128: a second way to the same products and quotients.
// Tolerance: exact.
TEST(Whole, AgreesWithTheCompilersWideIntegers) {
  EXPECT_TRUE(rc::check([](std::uint64_t a, std::uint64_t b, std::uint64_t c) {
    RC_PRE(c != 0U);
    __extension__ using Wide = unsigned __int128;
    const Wide product = static_cast<Wide>(a) * b;
    const Divided d = divide(Whole{a} * Whole{b}, Whole{c});
    RC_ASSERT(d.rest.low64() == static_cast<std::uint64_t>(product % c));
    RC_ASSERT(d.quotient.low64() == static_cast<std::uint64_t>(product / c));
  }));
}

TEST(Whole, SaysWhenItDoesNotFit) {
  const Whole great = power_of_ten(190);
  EXPECT_FALSE(great.overflowed());
  EXPECT_TRUE((great * great).overflowed());
  EXPECT_TRUE(((great * great) + Whole{1}).overflowed());
  EXPECT_TRUE((Whole{1} - Whole{2}).overflowed());
}

// Source: the C library's strtod (glibc rounds correctly), an independent reader of decimals.
// Tolerance: the same bits.
TEST(NearestDouble, AgreesWithTheCLibraryOnDecimals) {
  EXPECT_TRUE(rc::check([](std::uint64_t mantissa) {
    const int power = *rc::gen::inRange(-45, 31);
    const std::string text = std::to_string(mantissa) + "e" + std::to_string(power);
    RC_ASSERT(nearest_double(decimal(mantissa, power)) == std::strtod(text.c_str(), nullptr));
  }));
}

// Source: IEEE 754-2019, 4.3.1: halves go to the even one. 2^53 + 1 lies halfway between two doubles.
// Tolerance: exact.
TEST(NearestDouble, HalvesGoToEven) {
  const std::uint64_t two53 = std::uint64_t{1} << 53;
  EXPECT_EQ(nearest_double(decimal(two53 + 1, 0)), 9007199254740992.0);
  EXPECT_EQ(nearest_double(decimal(two53 + 3, 0)), 9007199254740996.0);
  EXPECT_EQ(nearest_double({true, Whole{two53 + 1} * power_of_ten(20) + Whole{1}, power_of_ten(20)}),
            -9007199254740994.0);
  EXPECT_EQ(nearest_double({true, Whole{0}, Whole{7}}), 0.0);
}

// Source: Python's mpmath 1.2.1 at 60 digits, rounded to double.
// Tolerance: exact.
TEST(NearestDouble, PiIsPi) { EXPECT_EQ(nearest_double(pi()), 3.141592653589793); }

// Source: by hand.
// Tolerance: exact.
TEST(NearestWhole, HalvesGoToEvenAndTooGreatIsNone) {
  EXPECT_EQ(nearest_whole({false, Whole{5}, Whole{2}}), 2);
  EXPECT_EQ(nearest_whole({true, Whole{7}, Whole{2}}), -4);
  EXPECT_EQ(nearest_whole({false, Whole{26}, Whole{10}}), 3);
  EXPECT_EQ(nearest_whole(decimal(1, 19)), std::nullopt);
}

// Source: by hand.
// Tolerance: exact.
TEST(Ratio, AddsAcrossSigns) {
  const Ratio half{false, Whole{1}, Whole{2}}, minus_third{true, Whole{1}, Whole{3}};
  EXPECT_EQ(nearest_double(half + minus_third), 1.0 / 6.0);
  EXPECT_EQ(nearest_double(minus_third + half), 1.0 / 6.0);
  const Ratio minus_half{true, Whole{1}, Whole{2}};
  EXPECT_FALSE((half + minus_half).negative);
  EXPECT_EQ(nearest_double(minus_half * minus_third), 1.0 / 6.0);
}

}  // namespace
}  // namespace flatwise::exact
