// catalogue_test.cc: every figure of the catalogue: its example answers as its page says, its words and sources are
// there, and it refuses what is not a number, what it does not know, and what is missing.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <limits>
#include <set>
#include <string>

#include "core/doubt/doubt.h"
#include "core/figures/catalogue.h"
#include "core/units/format.h"
#include "core/units/parse.h"
#include "words/words.h"

namespace flatwise {
namespace {

/// As the shell, the page and the API ask.
Results<Working> asked(const FigureSpec& spec, std::span<const std::string> texts) {
  auto answer = doubt::ask_with_doubt(spec, texts);
  if (!answer) return tl::unexpected(std::move(answer.error()));
  return std::move(answer->working);
}

std::vector<std::string> texts(const Example& example) { return {example.inputs.begin(), example.inputs.end()}; }

std::string codes_of(const std::vector<Problem>& problems) {
  std::string codes;
  for (const Problem& p : problems) codes += std::string{p.code.id()} + "(" + p.field + "=" + p.given + ") ";
  return codes;
}

double si_of(const std::string& text, Kind kind) {
  const auto entered = parse_quantity(text, kind, "expected");
  EXPECT_TRUE(entered.has_value()) << text;
  return entered ? entered->value.si : std::numeric_limits<double>::quiet_NaN();
}

/// What one step of the last digit written is worth: "85.9 mm" gives 0.1 mm.
double last_digit(std::string text, Kind kind) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789.-"), text.size());
  const std::size_t digit = text.find_last_of("0123456789", end - 1);
  const double as_written = si_of(text, kind);
  text[digit] = static_cast<char>(text[digit] == '9' ? '8' : text[digit] + 1);
  return std::abs(si_of(text, kind) - as_written);
}

class EachFigure : public ::testing::TestWithParam<const FigureSpec*> {
 protected:
  const FigureSpec& spec() const { return *GetParam(); }
  std::string key() const { return "figure." + std::string{spec().name}; }
  Results<Working> example() const { return asked(spec(), texts(spec().example)); }
};

// Source: the example on the figure's own page; what it rests on is tested in the figure's folder.
// Tolerance: half a step of the last digit written, and a rounding error.
TEST_P(EachFigure, ExampleAnswersAsThePageSays) {
  const auto working = example();
  ASSERT_TRUE(working.has_value()) << codes_of(working.error());
  const std::string expected{spec().example.expected};
  const std::size_t equals = expected.find('=');
  ASSERT_NE(equals, std::string::npos);
  ASSERT_FALSE(working->outputs.empty());
  const Output& main = working->outputs.front();
  EXPECT_EQ(main.name, expected.substr(0, equals)) << "the page shows the main output";
  const std::string value = expected.substr(equals + 1);
  if (const auto* quantity = std::get_if<AnyQuantity>(&main.value)) {
    EXPECT_NEAR(quantity->si, si_of(value, quantity->kind), 0.5000001 * last_digit(value, quantity->kind))
        << format_quantity(*quantity);
  } else {
    EXPECT_EQ(std::get<std::string>(main.value), value);
  }
}

TEST_P(EachFigure, AnswersWithTheOutputsOfItsSpec) {
  const auto working = example();
  ASSERT_TRUE(working.has_value());
  ASSERT_EQ(working->outputs.size(), spec().outputs.size());
  for (std::size_t i = 0; i < working->outputs.size(); ++i) {
    const Output& output = working->outputs[i];
    EXPECT_EQ(output.name, spec().outputs[i].name);
    const auto* quantity = std::get_if<AnyQuantity>(&output.value);
    EXPECT_EQ(quantity == nullptr, spec().outputs[i].text) << output.name;
    if (quantity == nullptr) continue;
    EXPECT_EQ(quantity->kind, spec().outputs[i].kind) << output.name;
    EXPECT_FALSE(std::isnan(quantity->si)) << output.name;
  }
}

TEST_P(EachFigure, SaysTheSameTwice) {
  const auto one = example(), two = example();
  ASSERT_TRUE(one.has_value() && two.has_value());
  for (std::size_t i = 0; i < one->outputs.size(); ++i) EXPECT_EQ(one->outputs[i].value, two->outputs[i].value);
}

TEST_P(EachFigure, HasItsWords) {
  std::vector<std::string> codes{key(), key() + ".limits"};
  for (const InputSpec& in : spec().inputs) codes.push_back(key() + "." + std::string{in.name});
  for (const OutputSpec& out : spec().outputs) codes.push_back(key() + "." + std::string{out.name});
  for (const std::string& code : codes) EXPECT_TRUE(has_words(code)) << code;
}

TEST_P(EachFigure, NamesSourcesThatAreListed) {
  std::ifstream in{FLATWISE_SOURCE_DIR "/docs/sources.md"};
  const std::string page{std::istreambuf_iterator<char>{in}, {}};
  EXPECT_FALSE(spec().sources.empty());
  for (const std::string_view source : spec().sources) {
    if (source == "common practice") continue;
    EXPECT_NE(page.find("| " + std::string{source} + " |"), std::string::npos) << source;
    EXPECT_TRUE(has_words("source." + std::string{source})) << source;  // A working names it to people.
  }
}

TEST_P(EachFigure, RefusesAnInputThatItDoesNotHave) {
  auto inputs = texts(spec().example);
  inputs.emplace_back("no-such-input=1 mm");
  const auto working = asked(spec(), inputs);
  ASSERT_FALSE(working.has_value());
  EXPECT_THAT(codes_of(working.error()), ::testing::HasSubstr("figure.input_unknown(no-such-input="));
}

TEST_P(EachFigure, RefusesWhatIsNotANumberAndNamesTheInput) {
  for (const InputSpec& in : spec().inputs) {
    if (!in.choices.empty() || in.text) continue;
    for (const double bad : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
      const auto working = evaluate(spec(), {given(in.name, AnyQuantity{bad, in.kind})});
      ASSERT_FALSE(working.has_value()) << in.name;
      EXPECT_TRUE(std::ranges::any_of(working.error(), [&](const Problem& p) { return p.field == in.name; }))
          << in.name << ": " << codes_of(working.error());
    }
  }
}

TEST_P(EachFigure, RefusesToGuessWhatIsNeeded) {
  for (const InputSpec& in : spec().inputs) {
    if (in.optional || in.assumed) continue;
    auto inputs = texts(spec().example);
    std::erase_if(inputs, [&](const std::string& text) { return text.starts_with(std::string{in.name} + "="); });
    const auto working = asked(spec(), inputs);
    ASSERT_FALSE(working.has_value()) << in.name;
    EXPECT_THAT(codes_of(working.error()), ::testing::HasSubstr("(" + std::string{in.name} + "="));
  }
}

TEST_P(EachFigure, ItsDefaultsAreSaidAndPossible) {
  for (const InputSpec& in : spec().inputs) {
    if (!in.assumed) continue;
    EXPECT_FALSE(in.assumed_from.empty()) << in.name << ": why this default?";
    if (const auto* quantity = std::get_if<AnyQuantity>(&*in.assumed)) {
      EXPECT_EQ(quantity->kind, in.kind) << in.name;
      EXPECT_GE(quantity->si, in.least_si) << in.name;
      EXPECT_LE(quantity->si, in.greatest_si) << in.name;
    }
  }
}

std::string as_test_name(const ::testing::TestParamInfo<const FigureSpec*>& info) {
  std::string name{info.param->name};
  std::ranges::replace(name, '-', '_');
  return name;
}
INSTANTIATE_TEST_SUITE_P(Catalogue, EachFigure, ::testing::ValuesIn(catalogue().begin(), catalogue().end()),
                         as_test_name);

TEST(Catalogue, NamesAreUniqueAndPlain) {
  std::set<std::string_view> names;
  for (const FigureSpec* spec : catalogue()) {
    EXPECT_TRUE(names.insert(spec->name).second) << spec->name;
    EXPECT_EQ(spec->name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-"), std::string_view::npos)
        << spec->name;
    EXPECT_EQ(find_figure(spec->name), spec);
  }
  EXPECT_GE(names.size(), 20U);
}

TEST(Catalogue, AMistypedNameIsMetWithTheNearOne) {
  EXPECT_EQ(find_figure("pres-force"), nullptr);
  EXPECT_EQ(nearest_figure("pres-force"), "press-force");
  EXPECT_EQ(nearest_figure("qqqqqqqqqqqqqq"), "");
}

TEST(Ask, TellsAllThatCannotBeReadAtOnce) {
  const FigureSpec* spec = find_figure("press-force");
  ASSERT_NE(spec, nullptr);
  const std::vector<std::string> inputs{"no equals sign", "=5 mm", "interference-least=twenty", "width=5"};
  const auto working = asked(*spec, inputs);
  ASSERT_FALSE(working.has_value());
  EXPECT_EQ(working.error().size(), 4U) << codes_of(working.error());
}

}  // namespace
}  // namespace flatwise
