#include "core/doubt/doubt.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>

namespace flatwise::doubt {
namespace {

InputSpec number(std::string_view name) { return {.name = name, .symbol = name, .kind = Kind::ratio}; }

FigureSpec figure_of(std::vector<std::string_view> names, std::function<double(const Given&)> of) {
  FigureSpec spec{.name = "sample",
                  .formula = "y",
                  .inputs = {},
                  .outputs = {{"y", "y", Kind::ratio}},
                  .sources = {},
                  .compute = {},
                  .example = {}};
  for (const std::string_view name : names) spec.inputs.push_back(number(name));
  spec.compute = [of = std::move(of)](const Given& in) -> Result<Computed> {
    return Computed{.values = {any_ratio(of(in))}};
  };
  return spec;
}

DoubtfulInput doubtful(std::string_view name, double value, double standard, Shape shape = Shape::normal) {
  Input input = given(name, any_ratio(value));
  input.u = Uncertainty{standard, std::nullopt, 2 * standard};
  return {input, shape};
}

FigureSpec sum_of_four() {
  return figure_of({"a", "b", "c", "d"},
                   [](const Given& in) { return in.si("a") + in.si("b") + in.si("c") + in.si("d"); });
}
std::vector<DoubtfulInput> four(Shape shape, double last) {
  return {doubtful("a", 0, 1, shape), doubtful("b", 0, 1, shape), doubtful("c", 0, 1, shape),
          doubtful("d", 0, last, shape)};
}

constexpr Options kTwoDigits{.seed = 1, .digits = 2, .most_draws = 1000000};

// Source: JCGM 101:2008, 9.2.2, table 2 (from memory): four normals of standard uncertainty 1 give u = 2.0 and ±3.92.
// Tolerance: as published, half a unit of its last digit; the draws two such, for they are other draws.
TEST(Doubt, AddsFourNormals) {
  const auto out = with_doubt(sum_of_four(), four(Shape::normal, 1), kTwoDigits);
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->outputs[0].linear.standard_si, 2.0, 1e-12);
  EXPECT_NEAR(out->outputs[0].linear.expanded_si, 3.92, 0.005);
  EXPECT_NEAR(out->outputs[0].drawn->high_si, 3.92, 0.05);
  EXPECT_TRUE(out->outputs[0].linear_holds);
}

// Source: JCGM 101:2008, 9.2.3, table 3 (from memory): four rectangular inputs give ±3.88 by draws and exactly.
// Tolerance: draws, two units of the digit they settle to.
TEST(Doubt, AddsFourRectangles) {
  const auto out = with_doubt(sum_of_four(), four(Shape::rectangular, 1), kTwoDigits);
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->outputs[0].drawn->low_si, -3.88, 0.05);
  EXPECT_NEAR(out->outputs[0].drawn->high_si, 3.88, 0.05);
}

// Source: JCGM 101:2008, 9.2.4, table 4 (from memory): one rectangle ten times as wide: linear ±19.9, draws ±17.0.
// Tolerance: as published, and for the draws half a unit of their last digit.
TEST(Doubt, OneWideRectangleIsNotANormal) {
  const auto out = with_doubt(sum_of_four(), four(Shape::rectangular, 10), kTwoDigits);
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->outputs[0].linear.expanded_si, 19.9, 0.05);
  EXPECT_NEAR(out->outputs[0].drawn->high_si, 17.0, 0.15);
  EXPECT_FALSE(out->outputs[0].linear_holds);
  EXPECT_NEAR(out->working.outputs[0].u->expanded_si, 17.0, 0.15);
  ASSERT_EQ(out->working.findings.size(), 2U);
  EXPECT_EQ(out->working.findings[0].code.id(), "doubt.measure_first");
  EXPECT_EQ(out->working.findings[1].code.id(), "doubt.not_linear");
}

// Source: JCGM 101:2008, 9.3, table 6 (from memory): calibration of a weight; in milligrams u = 0.0539 and
// [1.1285, 1.3395] by first order, u = 0.0754 and [1.0834, 1.3825] by draws.
// Tolerance: first order as published; the draws 0.003, six times the 0.0005 that two digits of u settle to.
TEST(Doubt, CalibratesAWeight) {
  const auto of = [](const Given& in) {
    const double air = in.si("air") - 1.2;
    return (in.si("m") + in.si("dm")) * (1 + air * (1 / in.si("weight") - 1 / in.si("reference"))) - 100000.0;
  };
  const auto range = [](std::string_view name, double least, double greatest) {
    return doubtful(name, (least + greatest) / 2, (greatest - least) / 2 / std::numbers::sqrt3, Shape::rectangular);
  };
  const auto out = with_doubt(figure_of({"m", "dm", "air", "weight", "reference"}, of),
                              {doubtful("m", 100000, 0.050), doubtful("dm", 1.234, 0.020), range("air", 1.10, 1.30),
                               range("weight", 7000, 9000), range("reference", 7950, 8050)},
                              kTwoDigits);
  ASSERT_TRUE(out);
  const DoubtedOutput& y = out->outputs[0];
  EXPECT_NEAR(y.linear.standard_si, 0.0539, 0.00005);
  EXPECT_NEAR(1.234 - y.linear.expanded_si, 1.1285, 0.0001);
  EXPECT_NEAR(y.drawn->standard_si, 0.0754, 0.001);
  EXPECT_NEAR(y.drawn->low_si, 1.0834, 0.003);
  EXPECT_NEAR(y.drawn->high_si, 1.3825, 0.003);
  EXPECT_FALSE(y.linear_holds);
}

// Source: closed form; y = 3 a - 4 b with u 0.1 each: parts 9/25 and 16/25, U = 1.959964 · 0.5.
// Tolerance: 1e-9 relative; the factor for endless degrees of freedom is a published quantile.
TEST(Doubt, SharesSayWhatToMeasureFirst) {
  const auto spec = figure_of({"a", "b"}, [](const Given& in) { return 3 * in.si("a") - 4 * in.si("b"); });
  const auto out = with_doubt(spec, {doubtful("a", 1, 0.1), doubtful("b", 2, 0.1)});
  ASSERT_TRUE(out);
  const auto& shares = out->outputs[0].shares;
  ASSERT_EQ(shares.size(), 2U);
  EXPECT_EQ(shares[0].input, 1U);
  EXPECT_NEAR(shares[0].part, 0.64, 1e-9);
  EXPECT_NEAR(shares[0].moves_si, -0.4, 1e-9);
  EXPECT_NEAR(shares[0].without_si, 1.959963985 * 0.3, 1e-8);
  EXPECT_NEAR(shares[0].halved_si, 1.959963985 * std::hypot(0.3, 0.2), 1e-8);
  EXPECT_EQ(out->working.findings[0].code.id(), "doubt.measure_first");
}

// Source: Student's t for 4 degrees of freedom at 95 %, 2.776 (table G.2 of the GUM).
// Tolerance: half a unit of the table's last digit; the draws one digit of u.
TEST(Doubt, FewReadingsWidenBothWays) {
  DoubtfulInput input = doubtful("a", 10, 1);
  input.input.u->degrees_of_freedom = 4;
  const auto out = with_doubt(figure_of({"a"}, [](const Given& in) { return in.si("a"); }), {input}, kTwoDigits);
  ASSERT_TRUE(out);
  EXPECT_NEAR(out->outputs[0].linear.expanded_si, 2.776, 0.0005);
  EXPECT_NEAR(out->outputs[0].drawn->high_si, 12.776, 0.1);
}

TEST(Doubt, SameSeedSameDraws) {
  const auto one = with_doubt(sum_of_four(), four(Shape::rectangular, 3));
  const auto two = with_doubt(sum_of_four(), four(Shape::rectangular, 3));
  const auto other = with_doubt(sum_of_four(), four(Shape::rectangular, 3), {.seed = 2});
  EXPECT_EQ(one->outputs[0].drawn->high_si, two->outputs[0].drawn->high_si);
  EXPECT_NE(one->outputs[0].drawn->high_si, other->outputs[0].drawn->high_si);
}

TEST(Doubt, DrawsWhereTheFigureDoesNotHoldAreCountedNotClamped) {
  FigureSpec spec = figure_of({"a"}, [](const Given& in) { return std::sqrt(in.si("a")); });
  spec.inputs[0].least_si = 0;
  const auto out = with_doubt(spec, {doubtful("a", 1, 1)});
  ASSERT_TRUE(out);
  EXPECT_FALSE(out->outputs[0].drawn);
  EXPECT_EQ(out->working.findings.back().code.id(), "doubt.leaves_the_range");
  EXPECT_EQ(out->working.outputs[0].u->expanded_si, out->outputs[0].linear.expanded_si);
}

TEST(Doubt, WithoutDoubtThePlainFigureComesBack) {
  const auto out = with_doubt(figure_of({"a"}, [](const Given& in) { return in.si("a"); }),
                              {{given("a", any_ratio(3)), Shape::normal}});
  ASSERT_TRUE(out);
  EXPECT_TRUE(out->outputs.empty());
  EXPECT_FALSE(out->working.outputs[0].u);
  EXPECT_EQ(out->draws, 0);
}

TEST(Doubt, AFigureWithItsOwnUncertaintyTakesNone) {
  FigureSpec spec = figure_of({"a"}, [](const Given& in) { return in.si("a"); });
  spec.compute = [](const Given& in) -> Result<Computed> {
    return Computed{.values = {any_ratio(in.si("a"))}, .u = {Uncertainty{1, std::nullopt, 2}}};
  };
  const auto out = with_doubt(spec, {doubtful("a", 1, 1)});
  ASSERT_FALSE(out);
  EXPECT_EQ(out.error().front().code.id(), "doubt.has_its_own");
  const auto plain = with_doubt(spec, {{given("a", any_ratio(1)), Shape::normal}});
  ASSERT_TRUE(plain);
  EXPECT_EQ(plain->working.outputs[0].u->expanded_si, 2);
}

// Source: linearity; scaling every doubt scales U and leaves the parts alone.
// Tolerance: 1e-9 relative.
RC_GTEST_PROP(Doubt, ScalesWithTheDoubts, ()) {
  const double scale = *rc::gen::inRange(1, 1000) / 100.0;
  const auto spec = figure_of({"a", "b"}, [](const Given& in) { return 2 * in.si("a") + in.si("b"); });
  const auto one = with_doubt(spec, {doubtful("a", 1, 0.1), doubtful("b", 1, 0.3)}, {.most_draws = 0});
  const auto two = with_doubt(spec, {doubtful("a", 1, 0.1 * scale), doubtful("b", 1, 0.3 * scale)}, {.most_draws = 0});
  const double ratio = two->outputs[0].linear.expanded_si / one->outputs[0].linear.expanded_si;
  RC_ASSERT(std::abs(ratio / scale - 1) < 1e-9);
  RC_ASSERT(std::abs(two->outputs[0].shares[0].part - one->outputs[0].shares[0].part) < 1e-9);
}

}  // namespace
}  // namespace flatwise::doubt
