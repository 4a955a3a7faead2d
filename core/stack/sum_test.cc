#include "core/stack/sum.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <random>
#include <string>

#include "tests/support/test_table.h"

namespace flatwise::stack {
namespace {

struct Row {
  std::string name;
  std::vector<double> halves_mm;
  double scale_mm, degrees, q975_mm, f1;
};
std::vector<Row> reference_rows() {
  std::vector<Row> rows;
  for (const TestRow& row : test_table("stack_sums.csv"))
    rows.push_back({row.at("case"), numbers(row, "halves", '+'), number(row, "scale"), number(row, "degrees"),
                    number(row, "q975"), number(row, "f1")});
  return rows;
}
std::vector<StackPart> parts_of(const Row& row) {
  std::vector<StackPart> parts;
  for (const double half : row.halves_mm)
    parts.push_back({.nominal = millimetres(50), .above = millimetres(half), .below = millimetres(half)});
  if (row.scale_mm > 0)
    parts.push_back({.nominal = millimetres(50), .standard_uncertainty = millimetres(row.scale_mm)});
  if (row.degrees > 0) parts.back().degrees_of_freedom = row.degrees;
  return parts;
}
std::vector<StackPart> alike(int count, double half_mm) {
  return std::vector<StackPart>(
      static_cast<std::size_t>(count),
      {.nominal = millimetres(50), .above = millimetres(half_mm), .below = millimetres(half_mm)});
}

// Source: tests/data/stack_sums.csv: exact piecewise polynomials and scipy's quadrature, another method (stack_sums.py).
// Tolerance: 1e-7 relative at the quantile and 1e-7 in the chance; with a t part 1e-5, its tail left outside is 1e-6.
TEST(StackLength, MeetsTheScipyReference) {
  const auto rows = reference_rows();
  ASSERT_EQ(rows.size(), 15U);
  for (const Row& row : rows) {
    const auto stack = StackLength::of(parts_of(row)).value();
    const double tolerance = row.degrees > 0 ? 1e-5 : 1e-7;
    const Band band = stack.band();
    EXPECT_NEAR((band.greatest - stack.centre()).si() * 1e3, row.q975_mm, tolerance * row.q975_mm) << row.name;
    EXPECT_NEAR((stack.centre() - band.least).si() * 1e3, row.q975_mm, tolerance * row.q975_mm) << row.name;
    EXPECT_NEAR(stack.cumulative(stack.centre() + millimetres(row.q975_mm / 2)), row.f1, tolerance) << row.name;
  }
}

// Root sum of squares, or a normal of the same variance, in place of the exact sum must be seen by that table.
// Source: tests/data/stack_sums.csv.
// Tolerance: the two must differ by more than a hundred times the table's own 1e-7.
TEST(StackLength, ANormalInItsPlaceWouldBeSeen) {
  for (const Row& row : reference_rows()) {
    if (row.scale_mm > 0) continue;
    double variance = 0;
    for (const double half : row.halves_mm) variance += half * half / 3;
    EXPECT_GT(std::abs(1.959963984540054 * std::sqrt(variance) - row.q975_mm), 1e-5 * row.q975_mm) << row.name;
  }
}

// Source: Irwin-Hall (Feller vol. 2, I.9), by hand (W23): two alike +-t: 97.5 % at 2t (1 - sqrt(0.05)); five alike: foot of the
// distribution, F(x) = (x/2t)^5 / 5! below the first corner.
// Tolerance: 1e-12 relative.
TEST(StackLength, MeetsIrwinHall) {
  const auto two = StackLength::of(alike(2, 0.1)).value();
  EXPECT_NEAR((two.band().greatest - two.centre()).si(), 2e-4 * (1 - std::sqrt(0.05)), 2e-16);
  const auto five = StackLength::of(alike(5, 0.1)).value();
  for (const double x_mm : {0.05, 0.1, 0.15, 0.2})
    EXPECT_NEAR(five.cumulative(five.centre() - millimetres(0.5 - x_mm)), std::pow(x_mm / 0.2, 5) / 120, 1e-12) << x_mm;
}

// Source: a worked stack-up of four parts ± 0.10, 0.05, 0.03, 0.05: worst case 0.23, root sum of squares 0.126095202; five and
// ten parts ± 0.1: 0.5 and 0.223607, 1.0 and 0.316228, by definition.
// Tolerance: last digit given.
TEST(StackLength, MeetsWorkedWorstCases) {
  std::vector<StackPart> parts;
  for (const double half : {0.10, 0.05, 0.03, 0.05})
    parts.push_back({.nominal = millimetres(20), .above = millimetres(half), .below = millimetres(half)});
  const auto four = StackLength::of(parts).value();
  EXPECT_NEAR((four.worst_case().greatest - four.nominal()).si() * 1e3, 0.23, 1e-9);
  EXPECT_NEAR((four.nominal() - four.worst_case().least).si() * 1e3, 0.23, 1e-9);
  EXPECT_NEAR(four.root_sum_of_squares().si() * 1e3, 0.126095202, 1e-9);
  const auto five = StackLength::of(alike(5, 0.1)).value(), ten = StackLength::of(alike(10, 0.1)).value();
  EXPECT_NEAR(five.worst_case().greatest.si() * 1e3, 250.5, 1e-9);
  EXPECT_NEAR(five.root_sum_of_squares().si() * 1e3, 0.223607, 1e-6);
  EXPECT_NEAR(ten.worst_case().greatest.si() * 1e3, 501.0, 1e-9);
  EXPECT_NEAR(ten.root_sum_of_squares().si() * 1e3, 0.316228, 1e-6);
}

// Source: Monte Carlo with the standard library's generator, 400,000 draws, fixed seed; parts with unequal limits.
// Tolerance: four standard errors of a share of 0.95: 4 sqrt(0.05 * 0.95 / 400000) = 0.0014.
TEST(StackLength, HoldsNinetyFiveInAHundredOfRandomStacks) {
  std::vector<StackPart> parts;
  for (int i = 0; i < 9; ++i)
    parts.push_back({.nominal = millimetres(40 + 5 * i), .above = millimetres(0.02 * i), .below = millimetres(0.1)});
  parts.push_back({.nominal = millimetres(30), .standard_uncertainty = millimetres(0.05)});
  const Band band = StackLength::of(parts).value().band();
  std::mt19937_64 random(20261125);
  std::normal_distribution<double> normal;
  std::uniform_real_distribution<double> even;
  int inside = 0;
  constexpr int kDraws = 400'000;
  for (int draw = 0; draw < kDraws; ++draw) {
    double sum = 0;
    for (const StackPart& p : parts)
      sum += p.nominal.si() - p.below.si() + even(random) * (p.above + p.below).si() +
             normal(random) * p.standard_uncertainty.si();
    inside += sum >= band.least.si() && sum <= band.greatest.si() ? 1 : 0;
  }
  EXPECT_NEAR(static_cast<double>(inside) / kDraws, 0.95, 0.0014);
}

TEST(StackLength, OfExactPartsIsAPoint) {
  const auto stack = StackLength::of(alike(3, 0)).value();
  EXPECT_EQ(stack.band().least, stack.nominal());
  EXPECT_EQ(stack.band().greatest, stack.nominal());
}

// Narrow parts beside a wide one take the short ways; the band must pass over smoothly.
// Source: closed form of one rectangle, 0.95 t; the variance rule of a narrow smoothing, which moves a straight part of F nowhere.
// Tolerance: 1e-6 relative.
TEST(StackLength, NarrowPartsMoveTheBandSmoothly) {
  for (const double narrow : {0.5e-2, 2e-3, 0.9e-3, 1.2e-4, 0.8e-4, 1e-9}) {
    auto parts = alike(1, 1.0);
    parts.push_back({.nominal = millimetres(50), .above = millimetres(narrow), .below = millimetres(narrow)});
    const auto stack = StackLength::of(parts).value();
    EXPECT_NEAR((stack.band().greatest - stack.centre()).si() * 1e3, 0.95, 1e-6) << narrow;
  }
}

TEST(StackLength, RefusesAndNamesThePart) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const auto refused = [](StackPart part) {
    auto parts = alike(2, 0.1);
    parts.push_back(part);
    const auto stack = StackLength::of(parts);
    return stack ? std::string{} : stack.error().field + " " + std::string{stack.error().code.id()};
  };
  EXPECT_EQ(refused({.nominal = millimetres(0)}), "part[3] input.not_above_nought");
  EXPECT_EQ(refused({.nominal = millimetres(nan)}), "part[3] input.not_above_nought");
  EXPECT_EQ(refused({.nominal = millimetres(5), .above = millimetres(-0.1)}), "part[3] stack.negative");
  EXPECT_EQ(refused({.nominal = millimetres(5), .above = millimetres(nan)}), "part[3] stack.negative");
  EXPECT_EQ(refused({.nominal = millimetres(5), .below = millimetres(5)}), "part[3] stack.limit_too_wide");
  EXPECT_EQ(refused({.nominal = millimetres(5), .standard_uncertainty = millimetres(1), .degrees_of_freedom = 1}),
            "part[3] stack.few_readings");
  EXPECT_EQ(StackLength::of({}).error().code.id(), "stack.part_count");
}

// Properties: the order of parts does not matter, scaling all lengths scales the band, the band lies in the worst case and
// grows with the coverage, F rises.
// Tolerance: 1e-9 relative, the stated accuracy.
TEST(StackLength, PropertiesHold) {
  EXPECT_TRUE(rc::check("stack band", [] {
    std::vector<StackPart> parts;
    const int count = *rc::gen::inRange(1, 20);
    for (int i = 0; i < count; ++i)
      parts.push_back({.nominal = millimetres(*rc::gen::inRange(10, 100)),
                       .above = micrometres(*rc::gen::inRange(0, 200)),
                       .below = micrometres(*rc::gen::inRange(0, 200))});
    const auto stack = StackLength::of(parts).value();
    const Band band = stack.band(), wide = stack.band(0.99), worst = stack.worst_case();
    RC_ASSERT(band.least >= worst.least - nanometres(1) && band.greatest <= worst.greatest + nanometres(1));
    RC_ASSERT(wide.least <= band.least && wide.greatest >= band.greatest);
    std::vector<StackPart> in_inches(parts.rbegin(), parts.rend());
    for (StackPart& p : in_inches) p = {25.4 * p.nominal, 25.4 * p.above, 25.4 * p.below, {}, {}};
    const auto scaled = StackLength::of(in_inches).value().band();
    const double width = (band.greatest - band.least).si();
    RC_ASSERT(std::abs((scaled.greatest - scaled.least).si() / 25.4 - width) <= 1e-9 * width + 1e-15);
    double before = 0;
    for (int i = 0; i <= 20; ++i) {
      const double here = stack.cumulative(worst.least + (i / 20.0) * (worst.greatest - worst.least));
      RC_ASSERT(here >= before - 1e-12);
      before = here;
    }
  }));
}

}  // namespace
}  // namespace flatwise::stack
