#include "core/stack/joints.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <numeric>
#include <random>

namespace flatwise::stack {
namespace {

StackLength stack_of(int parts, double half_mm) {
  const std::vector<StackPart> all(
      static_cast<std::size_t>(parts),
      {.nominal = millimetres(100), .above = millimetres(half_mm), .below = millimetres(half_mm)});
  return StackLength::of(all).value();
}
JointHabits habits_of(double partly) {
  return {.step = millimetres(1.5),
          .least_gap = millimetres(0.75),
          .partly = partly,
          .feeler_misses = 0.1,
          .feeler_misleads = 0.001};
}

// Source: Bayes by hand (W25), no length measured: prior 0.03, feeler did not go in, misses 1 in 10, misleads 1 in 1000:
// 0.03 * 0.1 / (0.03 * 0.1 + 0.97 * 0.999) = 0.00308642.
// Tolerance: 1e-8 absolute.
TEST(JointChances, WithoutALengthAreBayesByHand) {
  const Joint joints[] = {{0.03, Feeler::did_not}, {0.01, Feeler::not_tried}, {0.01, Feeler::went_in}};
  const auto chances = joint_chances(joints, habits_of(0.5), stack_of(4, 0.1), std::nullopt).value();
  EXPECT_NEAR(chances.open[0], 0.003 / (0.003 + 0.97 * 0.999), 1e-12);
  EXPECT_NEAR(chances.open[0], 0.0030863, 1e-6);
  EXPECT_NEAR(chances.open[1], 0.01, 1e-12);
  EXPECT_NEAR(chances.open[2], 0.009 / (0.009 + 0.99 * 0.001), 1e-12);
  EXPECT_NEAR(chances.all_home, (1 - chances.open[0]) * 0.99 * (1 - chances.open[2]), 1e-12);
}

/// The same by summing over all subsets, the length's density by plain quadrature of the exact band's derivative: another way.
double density_by_quadrature(const StackLength& stack, double y, double u, int open, const JointHabits& habits) {
  // Each gap and the measuring error by midpoint sums; the seated length by differences of its cumulative distribution.
  std::vector<std::pair<double, double>> shifts{{0.0, 1.0}};
  constexpr int kCells = 60;
  for (int i = 0; i < open; ++i) {
    std::vector<std::pair<double, double>> next;
    for (const auto& [at, weight] : shifts) {
      next.emplace_back(at + habits.step.si(), weight * (1 - habits.partly));
      for (int c = 0; c < kCells && habits.partly > 0; ++c)
        next.emplace_back(at + habits.least_gap.si() + (c + 0.5) / kCells * (habits.step - habits.least_gap).si(),
                          weight * habits.partly / kCells);
    }
    shifts = std::move(next);
  }
  constexpr int kNodes = 120;
  double sum = 0;
  for (const auto& [at, weight] : shifts)
    for (int i = 0; i < kNodes; ++i) {
      const double z = -6 + 12 * (i + 0.5) / kNodes, h = 1e-7;
      const Length x = metres(y - at - z * u);
      const double density = (stack.cumulative(x + metres(h)) - stack.cumulative(x - metres(h))) / (2 * h);
      sum += weight * density * std::exp(-0.5 * z * z) / std::sqrt(2 * 3.14159265358979) * 12 / kNodes;
    }
  return sum;
}

// Source: second method: sum over all subsets of six joints, densities by quadrature.
// Tolerance: 1e-3 relative plus 1e-6, the quadrature's own.
TEST(JointChances, MeetTheSumOverAllSubsets) {
  const auto stack = stack_of(7, 0.1);
  const auto habits = habits_of(0.5);
  std::vector<Joint> joints(6);
  joints[1].prior_open = joints[2].prior_open = 0.03;
  joints[4].feeler = Feeler::did_not;
  joints[5].feeler = Feeler::went_in;
  for (const double y_mm : {700.0, 700.9, 701.5, 702.6}) {
    const MeasuredStack measured{millimetres(y_mm), millimetres(0.15)};
    double total = 0, home = 0;
    std::vector<double> open(6, 0.0), density(4);
    for (int k = 0; k < 3; ++k)
      density[static_cast<std::size_t>(k)] = density_by_quadrature(stack, measured.length.si(), 1.5e-4, k, habits);
    for (unsigned set = 0; set < 64; ++set) {
      double weight = 1;
      std::size_t count = 0;
      for (std::size_t j = 0; j < 6; ++j) {
        const bool is_open = ((set >> j) & 1U) != 0;
        count += is_open ? 1 : 0;
        weight *= is_open ? joints[j].prior_open : 1 - joints[j].prior_open;
        if (j == 4) weight *= is_open ? 0.1 : 0.999;
        if (j == 5) weight *= is_open ? 0.9 : 0.001;
      }
      if (count > 2) continue;  // A thousandth of a thousandth; see the tolerance.
      weight *= density[count];
      total += weight;
      if (set == 0) home = weight;
      for (std::size_t j = 0; j < 6; ++j)
        if (((set >> j) & 1U) != 0) open[j] += weight;
    }
    const auto chances = joint_chances(joints, habits, stack, measured).value();
    EXPECT_NEAR(chances.all_home, home / total, 2e-3 * home / total + 1e-5) << y_mm;
    for (std::size_t j = 0; j < 6; ++j)
      EXPECT_NEAR(chances.open[j], open[j] / total, 2e-3 * open[j] / total + 1e-4) << y_mm << ' ' << j;
  }
}

// Source: simulation, 400,000 stacks drawn from the same assumptions, fixed seed: of those that read near y, how many have joint 2 open.
// Tolerance: four standard errors of the share found.
TEST(JointChances, MeetASimulation) {
  const auto stack = stack_of(5, 0.2);
  const auto habits = habits_of(0.5);
  std::vector<Joint> joints(4, Joint{0.1, Feeler::not_tried});
  joints[1] = {0.3, Feeler::not_tried};
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> even;
  std::normal_distribution<double> normal;
  constexpr double kReading = 0.5009, kWindow = 2e-5;
  int near = 0, second_open = 0, home = 0;
  double gaps = 0, squares = 0;
  for (int draw = 0; draw < 400'000; ++draw) {
    double length = normal(random) * 2e-4;
    for (int p = 0; p < 5; ++p) length += 0.1 + 2e-4 * (2 * even(random) - 1);
    int open = 0;
    bool second = false;
    double second_gap = 0;
    for (std::size_t j = 0; j < 4; ++j) {
      if (even(random) >= joints[j].prior_open) continue;
      ++open;
      second = second || j == 1;
      const double gap = even(random) < 0.5 ? 1.5e-3 : 0.75e-3 + 0.75e-3 * even(random);
      if (j == 1) second_gap = gap;
      length += gap;
    }
    if (std::abs(length - kReading) > kWindow) continue;
    ++near;
    second_open += second ? 1 : 0;
    gaps += second_gap;
    squares += second_gap * second_gap;
    home += open == 0 ? 1 : 0;
  }
  ASSERT_GT(near, 2000);
  const auto chances = joint_chances(joints, habits, stack, MeasuredStack{metres(kReading), metres(2e-4)}).value();
  const double share = static_cast<double>(second_open) / near, home_share = static_cast<double>(home) / near;
  EXPECT_NEAR(chances.open[1], share, 4 * std::sqrt(share * (1 - share) / near));
  EXPECT_NEAR(chances.all_home, home_share, 4 * std::sqrt(home_share * (1 - home_share) / near));
  const double mean = gaps / second_open, deviation = std::sqrt(squares / second_open - mean * mean);
  EXPECT_NEAR(chances.gap[1].mean.si(), mean, 4 * deviation / std::sqrt(1.0 * second_open));
  EXPECT_NEAR(chances.gap[1].deviation.si(), deviation, 0.1 * deviation);
}

// Source: closed forms: before any length a gap is the step in half the cases, else even from 0.75 to 1.5 mm: mean
// (1.5 + 1.125)/2 = 1.3125, mean square (2.25 + 1.3125)/2 = 1.78125, deviation sqrt(1.78125 - 1.3125^2) = 0.242061; with
// no gap but the whole step a measured length changes nothing: 1.5 mm.
// Tolerance: 1e-9 m, 1e-7 where a series was summed.
TEST(JointChances, TellHowFarAJointIsOpen) {
  const std::vector<Joint> joints(3);
  const auto before = joint_chances(joints, habits_of(0.5), stack_of(4, 0.1), std::nullopt).value();
  EXPECT_NEAR(before.gap[0].mean.si(), 1.3125e-3, 1e-9);
  EXPECT_NEAR(before.gap[0].deviation.si(), 0.242061e-3, 1e-9);
  const MeasuredStack measured{millimetres(401.4), millimetres(0.05)};
  const auto whole = joint_chances(joints, habits_of(0), stack_of(4, 0.1), measured).value();
  EXPECT_NEAR(whole.gap[0].mean.si(), 1.5e-3, 1e-7);
  // A reading between says that the joint is home in part, and by how much.
  const MeasuredStack between{millimetres(401.0), millimetres(0.01)};
  const auto part = joint_chances(joints, habits_of(0.5), stack_of(4, 0.02), between).value();
  EXPECT_NEAR(part.gap[0].mean.si(), 1.0e-3, 0.02e-3);
  EXPECT_LT(part.gap[0].deviation.si(), 0.04e-3);
}

TEST(JointChances, SayWhenNoStoryFits) {
  const std::vector<Joint> joints(6);
  const auto at = [&](double mm) {
    return joint_chances(joints, habits_of(0.5), stack_of(7, 0.1), MeasuredStack{millimetres(mm), millimetres(0.05)})
        .value();
  };
  EXPECT_TRUE(at(700).explained);
  EXPECT_FALSE(at(690).explained);
  EXPECT_FALSE(at(740).explained);
  EXPECT_TRUE(at(703).explained);
}

TEST(JointChances, RefuseAndNameTheField) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto stack = stack_of(3, 0.1);
  const Joint good[] = {{}, {}}, bad[] = {{}, {1.5, Feeler::not_tried}};
  EXPECT_EQ(joint_chances(bad, habits_of(0.5), stack, {}).error().field, "prior-open");
  EXPECT_EQ(joint_chances({}, habits_of(0.5), stack, {}).error().field, "length");
  EXPECT_EQ(joint_chances(good, habits_of(nan), stack, {}).error().field, "partly");
  auto habits = habits_of(0.5);
  habits.least_gap = millimetres(2);
  EXPECT_EQ(joint_chances(good, habits, stack, {}).error().field, "least-gap");
  EXPECT_EQ(joint_chances(good, habits_of(0.5), stack, MeasuredStack{metres(0.3), {}}).error().field, "measured-u");
}

// Properties: chances lie in 0 to 1; a longer reading never makes 'all home' likelier past the band; joints alike are as likely.
// Tolerance: 1e-9.
TEST(JointChances, PropertiesHold) {
  EXPECT_TRUE(rc::check("joint chances", [] {
    const int count = *rc::gen::inRange(1, 30);
    std::vector<Joint> joints(static_cast<std::size_t>(count));
    for (Joint& j : joints) j = {*rc::gen::inRange(0, 50) / 100.0, static_cast<Feeler>(*rc::gen::inRange(0, 3))};
    joints.push_back(joints.front());
    const auto stack = stack_of(count + 2, 0.05);
    const double extra_mm = *rc::gen::inRange(-5, 30) / 10.0;
    const auto chances = joint_chances(joints, habits_of(0.5), stack,
                                       MeasuredStack{stack.nominal() + millimetres(extra_mm), millimetres(0.3)})
                             .value();
    if (!chances.explained) return;
    for (const double c : chances.open) RC_ASSERT(c >= 0 && c <= 1);
    RC_ASSERT(chances.all_home >= 0 && chances.all_home <= 1 + 1e-12);
    RC_ASSERT(std::abs(chances.open.front() - chances.open.back()) <= 1e-9);
  }));
}

}  // namespace
}  // namespace flatwise::stack
