#include "core/working/figure.h"

#include <gtest/gtest.h>

#include <limits>

namespace flatwise {
namespace {

constexpr std::string_view kWays[] = {"long", "short"};

FigureSpec half_of() {
  return {.name = "half-of",
          .formula = "h = (sum of x) / 2",
          .inputs = {{.name = "part",
                      .symbol = "x",
                      .kind = Kind::length,
                      .least_si = 0,
                      .greatest_si = 1,
                      .above_least = true,
                      .repeated = true},
                     {.name = "share",
                      .symbol = "s",
                      .kind = Kind::ratio,
                      .assumed = any_ratio(0.5),
                      .assumed_from = "common practice"},
                     {.name = "way", .symbol = "w", .optional = true, .choices = kWays}},
          .outputs = {{.name = "half", .symbol = "h", .kind = Kind::length}},
          .sources = {"common practice"},
          .compute = [](const Given& in) -> Result<Computed> {
            double sum = 0;
            for (const double x : in.all_si("part")) sum += x;
            return Computed{.values = {AnyQuantity{in.si("share") * sum, Kind::length}}};
          },
          .example = {}};
}

TEST(Evaluate, CarriesInputsOutputsAndWhatWasAssumed) {
  const auto working =
      evaluate(half_of(), {measured("part", any(millimetres(2)), "readings:4"), given("part", any(millimetres(4)))});
  ASSERT_TRUE(working);
  EXPECT_EQ(working->si("half"), 0.5 * (0.002 + 0.004));
  ASSERT_EQ(working->inputs.size(), 3U);
  EXPECT_EQ(working->inputs[0].origin.kind, OriginKind::measured);
  EXPECT_EQ(working->inputs[0].symbol, "x");
  EXPECT_EQ(working->input("share")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(working->input("share")->origin.where, "common practice");
  EXPECT_EQ(working->input("way"), nullptr);
}

TEST(Evaluate, NamesEveryProblemAtOnce) {
  const auto working = evaluate(
      half_of(), {given("patr", any(millimetres(2))), given("share", any(newtons(1))), given("way", "sideways")});
  ASSERT_FALSE(working);
  ASSERT_EQ(working.error().size(), 4U);
  EXPECT_EQ(working.error()[0].code, Code{"figure.input_unknown"});
  EXPECT_EQ(working.error()[0].args[0].value, ArgValue{std::string{"part"}});
  EXPECT_EQ(working.error()[1].code, Code{"figure.input_missing"});
  EXPECT_EQ(working.error()[1].field, "part");
  EXPECT_EQ(working.error()[2].code, Code{"figure.input_kind"});
  EXPECT_EQ(working.error()[3].code, Code{"figure.input_choice"});
}

TEST(Evaluate, RefusesWhatIsOutOfRangeNotFiniteOrGivenTwice) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const auto& [value, code] : {std::pair{0.0, Code{"figure.input_range"}},
                                    {-1.0, Code{"figure.input_range"}},
                                    {1.5, Code{"figure.input_range"}},
                                    {nan, Code{"figure.input_not_finite"}}}) {
    const auto working = evaluate(half_of(), {given("part", AnyQuantity{value, Kind::length})});
    ASSERT_FALSE(working) << value;
    EXPECT_EQ(working.error().at(0).code, code) << value;
    EXPECT_EQ(working.error().at(0).field, "part");
  }
  const auto twice =
      evaluate(half_of(), {given("part", any(metres(1))), given("share", any_ratio(1)), given("share", any_ratio(1))});
  ASSERT_FALSE(twice);
  EXPECT_EQ(twice.error().at(0).code, Code{"figure.input_twice"});
}

TEST(Evaluate, AComputedInputKeepsTheWorkingItCameFrom) {
  const auto first = std::make_shared<const Working>(*evaluate(half_of(), {given("part", any(metres(1)))}));
  const auto second = evaluate(half_of(), {computed("part", "half", first)});
  ASSERT_TRUE(second);
  EXPECT_EQ(second->inputs[0].from, first);
  EXPECT_EQ(second->si("half"), 0.25);
}

}  // namespace
}  // namespace flatwise
