#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/doubt/doubt.h"
#include "core/figures/catalogue.h"
#include "core/figures/effort.h"

namespace flatwise::doubt {
namespace {

const FigureSpec& pressure() { return *find_figure("press-pressure"); }

DoubtfulInput read(std::string_view text) {
  const auto input = read_doubtful(pressure(), text);
  EXPECT_TRUE(input) << text;
  return input ? *input : DoubtfulInput{};
}
std::string refused(std::string_view text) {
  const auto input = read_doubtful(pressure(), text);
  EXPECT_FALSE(input) << text;
  return input ? "" : std::string{input.error().code.id()};
}

// Source: definition; U at 95 % with k = 2 (GUM 6.2.1), a range's half width over root three (GUM 4.3.7).
// Tolerance: 1e-15 relative to the micrometre, rounding of the text.
TEST(ReadDoubtful, PlusMinusIsExpandedAndARangeIsRectangular) {
  for (const char* text : {"interference=40 µm ± 4 µm", "interference=40 µm +- 4 µm", "interference=40 µm±0.004 mm",
                           "interference=40 µm ± 10 %"}) {
    const DoubtfulInput in = read(text);
    EXPECT_EQ(in.shape, Shape::normal) << text;
    EXPECT_NEAR(in.input.u->standard_si, 2e-6, 1e-20) << text;
    EXPECT_NEAR(std::get<AnyQuantity>(in.input.value).si, 40e-6, 1e-20) << text;
  }
  const DoubtfulInput range = read("interference=30 µm .. 50 µm");
  EXPECT_EQ(range.shape, Shape::rectangular);
  EXPECT_NEAR(range.input.u->standard_si, 10e-6 / std::sqrt(3.0), 1e-20);
  EXPECT_NEAR(std::get<AnyQuantity>(range.input.value).si, 40e-6, 1e-20);
  EXPECT_EQ(range.input.typed, "30 µm .. 50 µm");
  EXPECT_FALSE(read("interference=40 µm").input.u);
}

TEST(ReadDoubtful, RefusesWhatCannotBeADoubt) {
  EXPECT_EQ(refused("interference=40 µm ± 0 µm"), "doubt.not_above_nought");
  EXPECT_EQ(refused("interference=40 µm ± -1 µm"), "doubt.not_above_nought");
  EXPECT_EQ(refused("interference=50 µm .. 30 µm"), "doubt.range_reversed");
  EXPECT_EQ(refused("interference=40 µm .. 40 µm"), "doubt.range_reversed");
  EXPECT_EQ(refused("interference=40 µm ± 4"), "quantity.no_unit");
  EXPECT_EQ(refused("interference=40 µm ± 4 kN"), "quantity.other_kind");
  EXPECT_EQ(refused("interference=40 µm ± 4 µm ± 1 µm"), "quantity.unknown_unit");
}

TEST(ReadDoubtful, AnUnknownNameIsNamedByTheFigure) {
  const std::string texts[] = {"interferance=40 µm ± 4 µm"};
  const auto out = ask_with_doubt(pressure(), texts);
  ASSERT_FALSE(out);
  EXPECT_EQ(out.error().front().code.id(), "figure.input_unknown");
}

// Every figure of the catalogue takes a doubt on its first quantity, or says why not; none breaks.
TEST(AskWithDoubt, EveryFigureOfTheCatalogueAnswers) {
  for (const FigureSpec* figure : catalogue()) {
    std::vector<std::string> texts(figure->example.inputs.begin(), figure->example.inputs.end());
    for (std::string& text : texts) {
      const auto spec = std::ranges::find(figure->inputs, text.substr(0, text.find('=')), &InputSpec::name);
      if (spec == figure->inputs.end() || spec->text || !spec->choices.empty() || spec->kind == Kind::count) continue;
      if (spec->kind == Kind::ratio || spec->kind == Kind::temperature) continue;
      text += " ± 0.1 %";
      break;
    }
    const auto out = ask_with_doubt(*figure, texts, {.most_draws = 0});
    if (out) continue;
    const std::string code{out.error().front().code.id()};
    EXPECT_TRUE(code == "doubt.has_its_own" || code == "doubt.not_above_nought") << figure->name << ": " << code;
  }
}

TEST(AskWithDoubt, RefusesWhatWouldTakeLongerThanAllowedBeforeItIsBegun) {
  std::vector<std::string> texts{"length=50 mm ± 0.1 mm", "length=60 mm", "above=0.1 mm", "below=0.1 mm",
                                 "samples=100000000"};
  const auto out = ask_with_doubt(*find_figure("stack-drawn"), texts, {.longest_us = 1e6});
  ASSERT_FALSE(out);
  EXPECT_EQ(out.error().front().code.id(), "doubt.too_long");
  texts = {"length=50 mm", "length=60 mm", "above=0.1 mm", "below=0.1 mm", "samples=1000"};
  EXPECT_TRUE(ask_with_doubt(*find_figure("stack-drawn"), texts, {.longest_us = 1e6}));
}

std::vector<std::string> turn_with(std::string_view more) {
  const FigureSpec& turn = *find_figure("bearing-turn");
  std::vector<std::string> texts{turn.example.inputs.begin(), turn.example.inputs.end()};
  for (std::string& text : texts)
    if (text.starts_with("lean=")) text += " ± 0.1°";
  if (!more.empty()) texts.emplace_back(more);
  return texts;
}

TEST(AskWithDoubt, AFigureWhoseRunIsLongIsLeftAtFirstOrderAndSaysSo) {
  const auto out = ask_with_doubt(*find_figure("bearing-turn"), turn_with("angles=720"));
  ASSERT_TRUE(out);
  EXPECT_EQ(out->draws, 0);
  EXPECT_EQ(out->working.findings.back().code.id(), "doubt.first_order_only");
  EXPECT_GT(out->outputs.front().linear.expanded_si, 0.0);
}

// 2026-11-27: one turn was taken for five times as long as it is, and its draws were refused.
// Source: the count of balances in one run: five turns of 72 angles; JCGM 101, 7.2.3: a hundred draws give mean and deviation.
// Tolerance: first order against 150 draws, two standard deviations of their spread: 2/sqrt(2 · 149) = 12 %.
TEST(AskWithDoubt, ATurnOfABearingIsDrawn) {
  const FigureSpec& turn = *find_figure("bearing-turn");
  const auto inputs = [&] {
    std::vector<Input> all;
    for (const std::string& text : turn_with({})) all.push_back(read_doubtful(turn, text)->input);
    return all;
  }();
  const double one = takes_us(turn, inputs);
  EXPECT_GT(one, 5 * 72 * 3.0);
  EXPECT_LT(one, 5 * 72 * 27.0);
  const auto out = ask_with_doubt(turn, turn_with({}), {.most_draws = 150});
  ASSERT_TRUE(out);
  EXPECT_EQ(out->draws, 150);
  ASSERT_TRUE(out->outputs.front().drawn);
  EXPECT_NEAR(out->outputs.front().drawn->standard_si / out->outputs.front().linear.standard_si, 1, 0.12);
  const auto few = [](const Finding& f) { return f.code.id() == "doubt.few_draws"; };
  EXPECT_EQ(std::ranges::count_if(out->working.findings, few), 1);
}

// The inputs that make a figure long are looked up by name: a name that its spec does not have ends the program.
TEST(TakesUs, KnowsTheInputsOfEveryFigure) {
  for (const FigureSpec* figure : catalogue()) {
    std::vector<Input> inputs;
    for (const std::string_view text : figure->example.inputs)
      if (const auto input = read_doubtful(*figure, text)) inputs.push_back(input->input);
    EXPECT_GE(takes_us(*figure, inputs), 2.0) << figure->name;
    EXPECT_LT(takes_us(*figure, inputs), 2e6) << figure->name;
  }
}

}  // namespace
}  // namespace flatwise::doubt
