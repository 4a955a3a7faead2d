#include "core/units/guards.h"

#include <gtest/gtest.h>

#include <limits>

namespace flatwise {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kEndless = std::numeric_limits<double>::infinity();

AnyQuantity metre(double v) { return {v, Kind::length}; }

TEST(Guards, LetGoodValuesPass) {
  EXPECT_FALSE(not_finite("x", metre(-1)));
  EXPECT_FALSE(not_above_nought("x", metre(1e-9)));
  EXPECT_FALSE(negative("x", metre(0)));
  EXPECT_FALSE(outside("x", metre(1), 1, 2));
  EXPECT_FALSE(outside("x", metre(2), 1, 2));
}

TEST(Guards, StopTheValueBesideTheEnd) {
  EXPECT_TRUE(not_above_nought("x", metre(0)));
  EXPECT_TRUE(negative("x", metre(-1e-9)));
  EXPECT_TRUE(outside("x", metre(0.999), 1, 2));
  EXPECT_TRUE(outside("x", metre(2.001), 1, 2));
}

TEST(Guards, StopWhatIsNotFinite) {
  for (const double bad : {kNan, kEndless, -kEndless}) {
    EXPECT_TRUE(not_finite("x", metre(bad))) << bad;
    EXPECT_TRUE(not_above_nought("x", metre(bad))) << bad;
    EXPECT_TRUE(negative("x", metre(bad))) << bad;
    EXPECT_TRUE(outside("x", metre(bad), 1, 2)) << bad;
  }
}

TEST(Guards, NameFieldValueAndRange) {
  const auto p = outside("width", metre(3), 1, 2);
  ASSERT_TRUE(p);
  EXPECT_EQ(p->code, Code{"input.outside"});
  EXPECT_EQ(p->field, "width");
  EXPECT_EQ(p->args, (Args{{"value", metre(3)}, {"least", metre(1)}, {"greatest", metre(2)}}));
  EXPECT_EQ(not_above_nought("width", metre(0))->args, (Args{{"value", metre(0)}}));
}

}  // namespace
}  // namespace flatwise
