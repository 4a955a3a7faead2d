#include "core/working/input_specs.h"

#include <gtest/gtest.h>

#include <string>

namespace flatwise {
namespace {

constexpr std::string_view kWays[] = {"long", "short"};

FigureSpec takes(std::vector<InputSpec> inputs) {
  return {.name = "takes",
          .formula = "",
          .inputs = std::move(inputs),
          .outputs = {{.name = "nothing", .symbol = "", .kind = Kind::ratio}},
          .sources = {kCommonPractice},
          .compute = [](const Given&) -> Result<Computed> { return Computed{.values = {any_ratio(0)}}; },
          .example = {}};
}
bool accepts(const InputSpec& spec, double si) {
  return evaluate(takes({spec}), {given("x", AnyQuantity{si, spec.kind})}).has_value();
}
bool accepts_without(const InputSpec& spec) { return evaluate(takes({spec}), {}).has_value(); }
Given given_positions(std::vector<double> metres_each) {
  std::vector<Input> inputs;
  for (const double m : metres_each) inputs.push_back(given("x", any(metres(m))));
  return Given{std::move(inputs)};
}

TEST(InputSpecs, TakeTheirEndsAndNothingBeyond) {
  const InputSpec above = above_nought("x", "x", Kind::length, 2);
  EXPECT_FALSE(accepts(above, 0));
  EXPECT_TRUE(accepts(above, 2));
  EXPECT_FALSE(accepts(above, 2.001));
  const InputSpec from = from_nought("x", "x", Kind::length, 2);
  EXPECT_FALSE(accepts(from, -1e-9));
  EXPECT_TRUE(accepts(from, 0));
  const InputSpec both = between("x", "x", Kind::angle, -1, 1);
  EXPECT_TRUE(accepts(both, -1));
  EXPECT_FALSE(accepts(both, -1.001));
}

TEST(InputSpecs, WordsAndTextsAreNotQuantities) {
  EXPECT_TRUE(evaluate(takes({one_of("x", "x", kWays)}), {given("x", "short")}));
  EXPECT_FALSE(evaluate(takes({one_of("x", "x", kWays)}), {given("x", "sideways")}));
  EXPECT_TRUE(evaluate(takes({free_text("x", "x")}), {given("x", "M30")}));
  EXPECT_FALSE(accepts(free_text("x", "x"), 1));
}

TEST(InputSpecs, MayBeLeftOutRepeatedOrAssumed) {
  const InputSpec plain = above_nought("x", "x", Kind::length, 2);
  EXPECT_FALSE(accepts_without(plain));
  EXPECT_TRUE(accepts_without(optional(plain)));
  const std::vector<Input> twice{given("x", any(metres(1))), given("x", any(metres(2)))};
  EXPECT_FALSE(evaluate(takes({plain}), twice));
  EXPECT_TRUE(evaluate(takes({repeated(plain)}), twice));
  const auto working = evaluate(takes({assumed(plain, any(metres(1)), kOwnRule)}), {});
  ASSERT_TRUE(working);
  EXPECT_EQ(working->input("x")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(working->input("x")->origin.where, kOwnRule);
}

TEST(InputSpecs, AreJoinedInTheirOrder) {
  const auto all = joined({{free_text("a", ""), free_text("b", "")}, {}, {free_text("c", "")}});
  ASSERT_EQ(all.size(), 3U);
  EXPECT_EQ(all[0].name, "a");
  EXPECT_EQ(all[2].name, "c");
}

TEST(LengthIfGiven, IsNoneWhereItWasLeftOut) {
  EXPECT_EQ(length_if_given(given_positions({3}), "x"), metres(3));
  EXPECT_EQ(length_if_given(given_positions({3}), "y"), std::nullopt);
}

TEST(OneEach, TakesOneForAllOrOneEach) {
  using Values = std::vector<double>;
  EXPECT_EQ(one_each(given_positions({4}), "x", 3), (Values{4, 4, 4}));
  EXPECT_EQ(one_each(given_positions({4, 5}), "x", 2), (Values{4, 5}));
  EXPECT_EQ(one_each(given_positions({4, 5}), "x", 3), std::nullopt);
  EXPECT_EQ(one_each(given_positions({}), "x", 2), std::nullopt);
  EXPECT_EQ(one_each(given_positions({}), "x", 2, 0.5), (Values{0.5, 0.5}));
}

}  // namespace
}  // namespace flatwise
