#include "core/metrology/uncertainty.h"

#include <gtest/gtest.h>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <functional>

#include "core/metrology/decide.h"
#include "core/metrology/gauge.h"
#include "core/metrology/roundness.h"
#include "core/metrology/temperature.h"
#include "tests/support/test_table.h"

namespace flatwise::metrology {
namespace {

double accepted_one_sided(const TestRow& row) {
  const Sized value{.value_si = number(row, "in4") * 1e-3, .u_si = number(row, "in3") * 1e-3};
  const SizeLimits limits{millimetres(number(row, "in1")), millimetres(number(row, "in2"))};
  return judge(value, limits, Rule::one_sided).answer == Answer::in ? 1 : 0;
}
double conformance_of(const TestRow& row) {
  return conformance({.value_si = number(row, "in4") * 1e-3, .u_si = number(row, "in3") * 1e-3},
                     {millimetres(number(row, "in1")), millimetres(number(row, "in2"))});
}
/// Millimetres that a warm part (and gauge) reads too long by.
double correction_of(const TestRow& row, bool both) {
  const Warmth warm = thermometer(celsius(number(row, both ? "in4" : "in3")), {});
  const ThermalState state{.part = warm,
                           .gauge = both ? warm : thermometer(celsius(20), {}),
                           .part_expansion = {number(row, both ? "in3" : "in2")},
                           .gauge_expansion = {both ? number(row, "in2") : 11.5e-6}};
  const double relative = to_20(state).relative;
  return number(row, "in1") * (both ? relative : -relative);
}

/// What a row's kind computes.
const std::map<std::string, std::function<double(const TestRow&)>>& kinds() {
  static const std::map<std::string, std::function<double(const TestRow&)>> kAll{
      {"student", [](const TestRow& r) { return student_quantile(number(r, "in1"), number(r, "in2")); }},
      {"guard_one_sided", [](const TestRow& r) { return Sized{.u_si = number(r, "in1")}.guard_si(Rule::one_sided); }},
      {"accept_one_sided", accepted_one_sided},
      {"conformance", conformance_of},
      {"correction_part", [](const TestRow& r) { return correction_of(r, false); }},
      {"correction_both", [](const TestRow& r) { return correction_of(r, true); }},
      {"v_block",
       [](const TestRow& r) {
         return v_block_factor(static_cast<int>(number(r, "in1")), degrees(number(r, "in2"))).value();
       }},
  };
  return kAll;
}

// Source: each row of tests/data/metrology_check_values.csv names its own (t tables, ISO 14253-1, JCGM 106, ISO 1, W16).
// Tolerance: the row's own, half of its last digit.
TEST(CheckValues, EveryRowOfTheTableIsReproduced) {
  for (const TestRow& row : test_table("metrology_check_values.csv")) {
    const double got = kinds().at(row.at("kind"))(row);
    EXPECT_NEAR(got, number(row, "expected"), number(row, "tolerance")) << row.at("id") << ", " << row.at("source");
  }
}

// Source: scipy 1.10.1 stats.t.ppf and norm.ppf (tests/data/metrology_scipy.py).
// Tolerance: 1e-8 relative: that library stops there (Boost, below, agrees with ours to 1e-10).
TEST(Quantiles, AgreeWithAnotherLibrary) {
  for (const TestRow& row : test_table("metrology_scipy_quantiles.csv")) {
    const double p = number(row, "p"), wanted = number(row, "quantile");
    const double got = row.at("kind") == "normal" ? normal_quantile(p) : student_quantile(p, number(row, "nu"));
    EXPECT_NEAR(got, wanted, 1e-8 * (1 + wanted)) << row.at("kind") << ' ' << p << ' ' << row.at("nu");
  }
}

// Source: Boost.Math 1.74 students_t and normal, every degree of freedom to 400.
// Tolerance: 1e-10 relative for quantiles, 1e-12 for the distribution function.
TEST(Quantiles, AgreeWithBoostForEveryDegreeOfFreedom) {
  for (const double p : {0.6, 0.95, 0.975, 0.9875, 0.999, 0.99999}) {
    EXPECT_NEAR(normal_quantile(p), boost::math::quantile(boost::math::normal{}, p), 1e-12);
    for (int nu = 1; nu <= 400; ++nu) {
      const boost::math::students_t distribution{static_cast<double>(nu)};
      const double wanted = boost::math::quantile(distribution, p);
      ASSERT_NEAR(student_quantile(p, nu), wanted, 1e-10 * (1 + wanted)) << p << ' ' << nu;
      ASSERT_NEAR(student_cdf(wanted, nu), p, 1e-12) << p << ' ' << nu;
      ASSERT_NEAR(student_cdf(-wanted, nu), 1 - p, 1e-12) << p << ' ' << nu;
    }
  }
  for (const double nu : {2001.0, 1e4, 1e6})
    EXPECT_NEAR(student_cdf(1.9, nu), boost::math::cdf(boost::math::students_t{nu}, 1.9), 1e-12);
}

TEST(Quantiles, TruncateDegreesOfFreedomAndNeverTakeTwoForTheFactor) {
  EXPECT_EQ(student_quantile(0.975, 16.99), student_quantile(0.975, 16));
  // A factor of 2 for everything would be a third too small here: the check values see it.
  EXPECT_GT(coverage_factor(4), 2.7);
}

/// GUM H.1 in nanometres: the parts of the end gauge's uncertainty.
struct EndGauge {
  static constexpr double ls = 50000623, theta = -0.1, alpha = 11.5e-6;
  double u_d_repeat = 5.8, u_d_comparator_1 = 3.9, u_d_comparator_2 = 6.7;
  double u_alpha = rectangular(2e-6), u_delta_alpha = rectangular(1e-6), u_delta_theta = rectangular(0.05);

  [[nodiscard]] double u_theta() const { return std::hypot(0.2, arcsine(0.5)); }
  [[nodiscard]] Combined difference() const {
    const Component parts[] = {{u_d_repeat, 1, 24}, {u_d_comparator_1, 1, 5}, {u_d_comparator_2, 1, 8}};
    return combine(parts);
  }
  [[nodiscard]] Combined first_order() const {
    const Component parts[] = {{25, 1, 18},
                               {difference().u, 1, difference().dof},
                               {u_delta_alpha, -ls * theta, 50},
                               {u_delta_theta, -ls * alpha, 2},
                               {u_alpha, 0},
                               {u_theta(), 0}};
    return combine(parts);
  }
  [[nodiscard]] Combined with_second_order() const {
    const Combined first = first_order();
    const Component parts[] = {
        {first.u, 1, first.dof}, second_order(ls, u_delta_alpha, u_theta()), second_order(ls, u_alpha, u_delta_theta)};
    return combine(parts);
  }
};

// Source: JCGM 100:2008 H.1.4 to H.1.7 (9.7, 0.41, 32, 16.7 then 16, t 2.92, U99 93, second order 11.7 and 1.7, 34 nm);
// more digits computed from the same inputs; 21.6 degrees of freedom read beside an independent GUM calculator's example.
// Tolerance: 1e-5 relative where more digits are known, else half of the last digit printed.
TEST(EndGauge, OfGumH1IsReproducedWithItsSecondOrderTerms) {
  const EndGauge g;
  EXPECT_EQ(std::round(EndGauge::ls + 215), 50000838);
  EXPECT_NEAR(g.difference().u, 9.681942, 1e-4);
  EXPECT_NEAR(g.difference().dof, 25.4473, 3e-4);
  EXPECT_NEAR(g.u_theta(), 0.406202, 1e-6);
  const Combined first = g.first_order();
  EXPECT_NEAR(first.u, 31.663879, 3e-4);
  EXPECT_NEAR(first.dof, 16.7, 0.06);
  EXPECT_NEAR(coverage_factor(first.dof, 0.99), 2.92, 5e-3);
  EXPECT_NEAR(coverage_factor(first.dof, 0.99) * first.u, 93, 0.6);
  EXPECT_NEAR(second_order(EndGauge::ls, g.u_delta_alpha, g.u_theta()).u, 11.7, 0.05);
  EXPECT_NEAR(second_order(EndGauge::ls, g.u_alpha, g.u_delta_theta).u, 1.667, 5e-4);
  EXPECT_NEAR(g.with_second_order().u, 33.807, 5e-4);
  EXPECT_NEAR(g.with_second_order().dof, 21.6, 0.25);
}

// Source: the same annex; each input spoilt as a hurried hand would. Tolerance: none of the spoilt ones may come near.
TEST(EndGauge, ASpoiltInputIsSeen) {
  EndGauge half_width_taken_as_standard;
  half_width_taken_as_standard.u_delta_theta = 0.05;
  EXPECT_GT(std::abs(half_width_taken_as_standard.first_order().u - 31.663879), 1);
  EndGauge full_width_halved;
  full_width_halved.u_delta_alpha = rectangular(0.5e-6);
  EXPECT_GT(std::abs(full_width_halved.with_second_order().u - 33.807), 0.5);
}

// Source: GUM 5.1 (u = |c| u_x) and the 97.5 % quantile of the normal distribution, 1.959963984540054.
// Tolerance: 4 eps; 1e-12 relative at the quantile.
TEST(Combine, OfNothingIsNoughtAndOfOneIsThatOne) {
  EXPECT_EQ(combine({}).u, 0);
  const Component one[] = {{3e-6, -2, 7}};
  EXPECT_DOUBLE_EQ(combine(one).u, 6e-6);
  EXPECT_DOUBLE_EQ(combine(one).dof, 7);
  EXPECT_FALSE(expand({1e-6}).degrees_of_freedom);
  EXPECT_NEAR(expand({1e-6}).expanded_si, 1.959963984540054e-6, 1e-18);
}

// Source: W11 by hand: cast-iron hub 100 mm, room 20 °C ± 5 K, steel gauge in the same room.
// Tolerance: 1e-3 relative, the digits of the hand sheet.
TEST(Temperature, NotTakenWidensAndTogetherNarrows) {
  ThermalState state{.part = room(celsius(20), kelvins(5)),
                     .gauge = room(celsius(20), kelvins(5)),
                     .part_expansion = {10.5e-6},
                     .gauge_expansion = {11.5e-6}};
  EXPECT_EQ(to_20(state).relative, 0);
  EXPECT_NEAR(to_20(state).u_relative * 0.1, 4.503e-6, 1e-9);
  state.together = true;
  EXPECT_NEAR(to_20(state).u_relative * 0.1, 0.769e-6, 1e-9);
}

// Source: ISO 1 and 15 K (common practice), by hand. Tolerance: exact.
TEST(Temperature, FifteenKelvinAwayStillReadsAndMoreDoesNot) {
  ThermalState state{.part = thermometer(celsius(35), kelvins(1)),
                     .gauge = thermometer(celsius(20), kelvins(1)),
                     .part_expansion = {10.5e-6},
                     .gauge_expansion = {11.5e-6}};
  EXPECT_FALSE(too_far_from_20(state, kelvins(15)));
  state.part.value = celsius(35.1);
  EXPECT_TRUE(too_far_from_20(state, kelvins(15)));
  state.part.value = celsius(20);
  state.gauge.value = celsius(4.9);
  EXPECT_TRUE(too_far_from_20(state, kelvins(15)));
  EXPECT_TRUE(farthest_from_20(state).gauge);
}

// Source: 1, 2, 3 µm by hand: mean 2, s 1, two degrees of freedom. Tolerance: 1e-12 m.
TEST(GaugeStudy, GivesScatterAndRefusesTwoReadings) {
  const Length readings[] = {millimetres(100.001), millimetres(100.002), millimetres(100.003)};
  const auto study = gauge_study(readings);
  ASSERT_TRUE(study);
  EXPECT_NEAR(study->scatter.s_m, 1e-6, 1e-12);
  EXPECT_NEAR(study->mean.si(), 0.100002, 1e-12);
  EXPECT_EQ(study->scatter.dof, 2);
  EXPECT_EQ(gauge_study(std::span{readings}.first(2)).error().code.id(), "metrology.count");
  const Length bad[] = {millimetres(1), millimetres(1), metres(std::nan(""))};
  EXPECT_EQ(gauge_study(bad).error().field, "reading");
}

TEST(Roundness, RefusesWhatIsNoVBlock) {
  EXPECT_EQ(v_block_factor(0, degrees(90)).error().field, "lobes");
  EXPECT_EQ(v_block_factor(3, degrees(180)).error().field, "v-angle");
  EXPECT_EQ(v_block_factor(3, radians(std::nan(""))).error().field, "v-angle");
}

}  // namespace
}  // namespace flatwise::metrology
