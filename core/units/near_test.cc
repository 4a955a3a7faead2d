// near_test.cc: what counts as near enough to be meant.
#include "core/units/near.h"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace flatwise {
namespace {

constexpr std::array<std::string_view, 4> kNames{"bore", "bore-at-plane", "press-force", "mm"};

TEST(Nearest, FindsASlipOfTheHand) {
  EXPECT_EQ(nearest("bor", kNames), "bore");
  EXPECT_EQ(nearest("obre", kNames), "bore");
  EXPECT_EQ(nearest("press-froce", kNames), "press-force");
  EXPECT_EQ(nearest("bore-at-plan", kNames), "bore-at-plane");
}

TEST(Nearest, LeavesWhatIsFarAlone) {
  EXPECT_EQ(nearest("torque", kNames), "");
  EXPECT_EQ(nearest("", kNames), "");
  EXPECT_EQ(nearest(std::string(5000, 'x'), kNames), "");
}

}  // namespace
}  // namespace flatwise
