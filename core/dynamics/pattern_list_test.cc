#include "core/dynamics/pattern_list.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/dynamics/pattern_explain.h"
#include "core/dynamics/pattern_keeper.h"
#include "core/dynamics/pattern_samples.h"

namespace flatwise::dynamics {
namespace {

PatternList listed(const PatternTask& task) {
  auto list = list_patterns(task);
  EXPECT_TRUE(list.has_value());
  return *std::move(list);
}
std::vector<std::string_view> codes_of(const PatternTask& task) {
  std::vector<std::string_view> codes;
  for (const Message& m : explain(task, listed(task))) codes.push_back(m.code.id());
  return codes;
}
bool says(const PatternTask& task, std::string_view code) {
  const auto codes = codes_of(task);
  return std::ranges::find(codes, code) != codes.end();
}

// Source: every choice of sign of every error (the worst of a sum that is convex in each error lies at their limits).
// Tolerance: 1e-12 relative.
TEST(WorstLeft, IsTheWorstOfEveryChoiceOfErrors) {
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    const PatternTask task = sample_task({.rotors = 5, .seed = seed, .force_n = 20});
    const PatternSums sums{task};
    const Places places{0, 3, static_cast<int>(seed % 6), 2, static_cast<int>(seed / 3 % 6)};
    double worst = 0;
    for (int signs = 0; signs < 1 << 10; ++signs)
      for (const std::size_t plane : {0u, 1u}) {
        std::complex<double> sum;
        for (int i = 0; i < 5; ++i) {
          const double along = (signs >> 2 * i & 1) != 0 ? 1 : -1, across = (signs >> 2 * i & 2) != 0 ? 1 : -1;
          const std::complex<double> share{1 + along * task.errors.share, across * task.errors.azimuth.radians()};
          sum += sums.own(i)[plane] * share *
                 sums.directions()[static_cast<std::size_t>(places[static_cast<std::size_t>(i)])];
        }
        worst = std::max(worst, std::abs(sum));
      }
    EXPECT_NEAR(worst_left(sums, task.errors, places), worst, 1e-12 * worst);
    EXPECT_LE(worst, sums.of(places) + sums.floor_worst() * (1 + 1e-12));
  }
}

// Source: by hand: facing puts every error on one line, where they add up in full; three directions share them.
// Tolerance: 1e-12 relative.
TEST(WorstLeft, IsGreatestWhereAllStandOnOneLine) {
  const PatternTask task = sample_task({.rotors = 6, .spread = 0, .judged = Judged::couple});
  const PatternSums sums{task};
  EXPECT_NEAR(worst_left(sums, task.errors, Places{0, 3, 0, 3, 0, 3}), sums.floor_worst(), 1e-12 * 60);
  EXPECT_LT(worst_left(sums, task.errors, Places{0, 2, 4, 0, 2, 4}), 0.9 * sums.floor_worst());
}

TEST(ListPatterns, SaysWhenErrorsDecideAndPutsTheSimplestFirst) {
  for (const int rotors : {10, 14, 24}) {
    const PatternTask task = sample_task({.rotors = rotors, .seed = 3, .spread = 0.1, .force_n = 5});
    const PatternList list = listed(task);
    EXPECT_TRUE(list.errors_decide) << rotors;
    EXPECT_LE(list.rows.size(), 8u);
    EXPECT_GE(list.rows.size(), 2u);
    for (std::size_t i = 0; i < list.rows.size(); ++i) {
      EXPECT_LE(list.rows[i].left_si, list.floor_rms);
      EXPECT_GE(list.rows[i].worst_si, list.rows[list.robust].worst_si);
      EXPECT_LE(list.rows[0].simplicity, list.rows[i].simplicity);
    }
    EXPECT_TRUE(says(task, "pattern.errors_decide"));
  }
}

TEST(ListPatterns, GivesTheLeastFirstWhereItMeansSomething) {
  PatternTask task = sample_task({.rotors = 4, .seed = 3, .spread = 0.4});
  task.errors = {0.001, degrees(0.01)};
  const PatternList list = listed(task);
  EXPECT_FALSE(list.errors_decide);
  EXPECT_EQ(list.rows[0].left_si, list.least.left_si);
  EXPECT_EQ(list.proof, Proof::complete);
  for (std::size_t i = 1; i < list.rows.size(); ++i) EXPECT_GE(list.rows[i].left_si, list.rows[i - 1].left_si - 1e-12);
  EXPECT_TRUE(says(task, "pattern.proof_complete"));
  EXPECT_TRUE(says(task, "pattern.facing_unlike"));
  EXPECT_TRUE(says(task, "pattern.runner_up"));
}

/// What every arrangement that the task allows leaves, turned and mirrored images once, the least first.
std::vector<double> every_left(const PatternTask& task) {
  const PatternSums sums{task};
  std::vector<double> all;
  Places places(task.rotors.size(), 0);
  for (std::size_t i = 1; i < places.size();) {
    if (task.allows(places) && first_image(places, task) == places) all.push_back(sums.of(places));
    for (i = 1; i < places.size() && ++places[i] == task.positions;) places[i++] = 0;
  }
  std::ranges::sort(all);
  return all;
}

// 2026-11-27: where the tine gap kept neighbours apart the second row left 23.33 N and was called the next best; 4.40 N is.
// Source: every arrangement looked at.
// Tolerance: 64 eps of the sum of sizes.
TEST(ListPatterns, TheNextBestIsTheNextOfAllAlsoWhereNeighboursStandApart) {
  int told = 0;
  for (std::uint32_t seed = 1; seed <= 12; ++seed)
    for (const std::uint32_t ways : {0b1111u, 0b0111u, 0b0110u, 0b0011u}) {
      PatternTask task = sample_task({.rotors = 7, .seed = seed, .spread = 0.3, .force_n = seed % 2 == 0 ? 20.0 : 0.0});
      task.errors = {1e-9, degrees(1e-9)};
      task.apart.assign(6, ways);
      const PatternList list = listed(task);
      ASSERT_FALSE(list.errors_decide);
      const std::vector<double> all = every_left(task);
      for (std::size_t i = 0; i < list.rows.size(); ++i)
        EXPECT_NEAR(list.rows[i].left_si, all[i], 2 * PatternSums{task}.rounding()) << seed << " row " << i;
      told += says(task, "pattern.runner_up");
    }
  EXPECT_EQ(told, 48);
}

TEST(ListPatterns, NoNextBestIsSaidWhereOnlyTheLeastIsProven) {
  PatternTask task = sample_task({.rotors = 9, .spread = 0.3, .force_n = 20});
  task.errors = {1e-9, degrees(1e-9)};
  for (std::size_t i = 1; i < 5; ++i) task.rotors[i].couple = task.rotors[0].couple;
  const PatternList list = listed(task);
  EXPECT_EQ(list.proof, Proof::complete);
  if (list.seen_to == 0 && list.rows[1].left_si > list.least.left_si + PatternSums{task}.rounding()) {
    EXPECT_FALSE(says(task, "pattern.runner_up"));
  }
  EXPECT_EQ(says(task, "pattern.runner_up"), next_is_proven(list, PatternSums{task}));
}

TEST(Explain, SaysWhyOfLikeRotors) {
  const auto like = [](int rotors) { return sample_task({.rotors = rotors, .spread = 0, .judged = Judged::couple}); };
  EXPECT_TRUE(says(like(4), "pattern.is_facing"));
  EXPECT_TRUE(says(like(4), "pattern.facing_even"));
  EXPECT_TRUE(says(like(4), "pattern.thirds_odd"));
  EXPECT_TRUE(says(like(3), "pattern.is_step"));
  EXPECT_TRUE(says(like(9), "pattern.facing_odd"));
  EXPECT_TRUE(says(like(9), "pattern.thirds_even"));
  for (const char* code :
       {"pattern.is_listed", "pattern.pair", "pattern.three", "pattern.proof_nought", "pattern.facing_odd"})
    EXPECT_TRUE(says(like(5), code)) << code;
  PatternTask close = like(4);
  close.apart.assign(3, 0b0111);  // Never half a turn apart.
  EXPECT_TRUE(says(close, "pattern.facing_strikes"));
  EXPECT_FALSE(says(close, "pattern.facing_even"));
}

// Source: by hand: six of seven like rotors pair off, the seventh makes its 10 N m.
// Tolerance: 1e-12 N m.
TEST(Explain, SaysWhatOneRotorMakes) {
  const PatternTask task = sample_task({.rotors = 7, .spread = 0, .judged = Judged::couple});
  for (const Message& m : explain(task, listed(task)))
    if (m.code == Code{"pattern.facing_odd"})
      for (const Arg& arg : m.args)
        if (arg.name == "left") {
          EXPECT_NEAR(std::get<AnyQuantity>(arg.value).si, 10, 1e-12);
          EXPECT_EQ(std::get<AnyQuantity>(arg.value).kind, Kind::torque);
        }
}

}  // namespace
}  // namespace flatwise::dynamics
