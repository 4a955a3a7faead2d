#include "core/dynamics/pattern_search.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <random>

namespace flatwise::dynamics {
namespace {

/// Invented rotors, drawn from a seed: couples within `spread` of 10 N m, and forces where they have an offset.
PatternTask task_of(int rotors, int positions, std::uint32_t seed, double spread = 0.2, double force_n = 0) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> even(-1, 1);
  PatternTask task;
  task.positions = positions;
  for (int i = 0; i < rotors; ++i)
    task.rotors.push_back({metres(0.2 + 0.16 * i), Angle{}, newtons(force_n * even(random)),
                           newton_metres(10 * (1 + spread * even(random)))});
  task.planes = {metres(0), metres(0.4 + 0.16 * rotors)};
  return task;
}

/// The least of all arrangements, every one of them looked at.
double least_of_all(const PatternTask& task) {
  const PatternSums sums{task};
  Places places(task.rotors.size(), 0);
  double least = std::numeric_limits<double>::infinity();
  for (;;) {
    if (task.allows(places)) least = std::min(least, sums.of(places));
    std::size_t i = 0;
    while (i < places.size() && ++places[i] == task.positions) places[i++] = 0;
    if (i == places.size()) return least;
  }
}

// Source: every arrangement looked at, for each number of positions and judge.
// Tolerance: 64 eps of the sum of sizes.
TEST(FindPattern, IsTheLeastOfAllArrangements) {
  for (const int positions : {2, 3, 4, 5, 6, 8, 10, 12, 24})
    for (int rotors = 2; std::pow(positions, rotors) < 3e5; ++rotors)
      for (const Judged judged : {Judged::larger_plane, Judged::both_planes, Judged::couple})
        for (const double force : {0.0, 30.0}) {
          PatternTask task =
              task_of(rotors, positions, static_cast<std::uint32_t>(rotors * 31 + positions), 0.2, force);
          task.judged = judged;
          const auto found = find_pattern(task);
          ASSERT_TRUE(found.has_value());
          EXPECT_NE(found->proof, Proof::none);
          EXPECT_NEAR(found->best[0].left_si, least_of_all(task), 2 * PatternSums{task}.rounding())
              << rotors << " rotors on " << positions;
        }
}

}  // namespace
}  // namespace flatwise::dynamics
