#include "core/dynamics/balance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace flatwise::dynamics {
namespace {

// Source: ISO 21940-11, U_per = 1000 e_per W m with 60000/(2 pi) = 9549.296586; G 16, 60 kg, 540 /min: 16976.527 g mm and 282.942 µm.
// Tolerance: 1e-6 relative, digits given.
TEST(PermissibleUnbalance, MeetsTheStandardsFormula) {
  const auto u = permissible_unbalance({Speed::from_si(0.016), kilograms(60), turns_per_minute(540)}).value();
  EXPECT_NEAR(u.unbalance.si() * 1e6, 16976.527, 0.017);
  EXPECT_NEAR(u.mass_offset.si() * 1e6, 282.942, 0.0005);
  const auto one = permissible_unbalance({Speed::from_si(0.001), kilograms(1), turns_per_minute(1)}).value();
  EXPECT_NEAR(one.unbalance.si() * 1e6, 9549.296586, 1e-6);
}

TEST(PermissibleUnbalance, RefusesAndNamesTheField) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(permissible_unbalance({Speed::from_si(nan), kilograms(1), turns_per_minute(1)}).error().field, "grade");
  EXPECT_EQ(permissible_unbalance({Speed::from_si(1), kilograms(0), turns_per_minute(1)}).error().field, "mass");
  EXPECT_EQ(permissible_unbalance({Speed::from_si(1), kilograms(1), turns_per_minute(-1)}).error().field, "speed");
}

}  // namespace
}  // namespace flatwise::dynamics
