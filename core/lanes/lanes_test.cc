#include "core/lanes/lanes.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/lanes/lanes_samples.h"

namespace flatwise::lanes {
namespace {

TEST(Lanes, EveryProcessorRunsTheBaselineAndTheWidestRuns) {
  EXPECT_TRUE(runs_here(Width::baseline));
  EXPECT_TRUE(runs_here(widest()));
  for (const Width width : kEveryWidth) EXPECT_TRUE(!runs_here(width) || width <= widest());
}

// Each build was compiled for its own processor, and pick() takes the right one.
TEST(Lanes, EachBuildIsItsOwn) {
  const int at_once[] = {2, 4, 8};
  for (const Width width : kEveryWidth) {
    if (!runs_here(width)) continue;
#if defined(__x86_64__)
    EXPECT_EQ(FLATWISE_PICK(width, doubles_at_once)(), at_once[static_cast<int>(width)]);
#else
    EXPECT_EQ(FLATWISE_PICK(width, doubles_at_once)(), at_once[0]);
#endif
  }
}

// Source: closed form, the sum of the first 1000 whole numbers as roots of their squares: 500500.
// Tolerance: exact; every partial sum is a whole number under 2^53.
TEST(Lanes, EveryBuildGivesTheSameSum) {
  std::vector<double> squares;
  for (int i = 1; i <= 1000; ++i) squares.push_back(static_cast<double>(i) * i);
  for (const Width width : kEveryWidth) {
    if (!runs_here(width)) continue;
    EXPECT_EQ(FLATWISE_PICK(width, root_sum)(squares.data(), 1000), 500500.0);
  }
}

}  // namespace
}  // namespace flatwise::lanes
