// figures_page_test.cc: docs/reference/figures.md is what the program says, and the program says what stands there.
//
// FLATWISE_WRITE_PAGES=1 writes the page anew instead of comparing.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <numbers>
#include <set>

#include "tests/end_to_end/process.h"
#include "tests/end_to_end/schema.h"

namespace flatwise::end_to_end {
namespace {

const std::string kPage = "docs/reference/figures.md";

TEST(FiguresPage, IsWhatTheProgramSays) {
  const Ran ran = flatwise({"figure", "--reference"});
  ASSERT_EQ(ran.status, 0);
  if (std::getenv("FLATWISE_WRITE_PAGES") != nullptr)
    std::ofstream{std::string{FLATWISE_SOURCE_DIR} + "/" + kPage, std::ios::binary} << ran.out;
  const std::vector<std::string> kept = lines_of(ours(kPage)), says = lines_of(ran.out);
  const auto [k, n] = std::ranges::mismatch(kept, says);
  EXPECT_TRUE(k == kept.end() && n == says.end())
      << kPage << ": " << (k == kept.end() ? "(end)" : *k) << "\nprogram: " << (n == says.end() ? "(end)" : *n)
      << "\nwritten anew with FLATWISE_WRITE_PAGES=1";
}

/// One example of the page: the words typed, and 'output=value' under them.
struct Example {
  std::vector<std::string> words;
  std::string output, value;
};

std::vector<std::string> shell_words(const std::string& line) {
  std::vector<std::string> words(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '\'')
      quoted = !quoted;
    else if (c == ' ' && !quoted)
      words.emplace_back();
    else
      words.back() += c;
  }
  return words;
}

std::vector<Example> examples_of(const std::string& page) {
  const std::vector<std::string> lines = lines_of(page);
  std::vector<Example> found;
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    if (!lines[i].starts_with("flatwise figure ")) continue;
    std::vector<std::string> words = shell_words(lines[i]);
    words.erase(words.begin());
    const std::size_t is = lines[i + 1].find('=');
    found.push_back({std::move(words), lines[i + 1].substr(0, is), lines[i + 1].substr(is + 1)});
  }
  return found;
}

struct Unit {
  double si = 1, zero = 0;  ///< SI = value * si + zero.
};

// Source: exact definitions: SI prefixes; degree = pi/180; 1 lbf = 4.4482216152605 N; 1 ft·lbf = 1.3558179483314004 N·m;
// 0 °C = 273.15 K.
const std::map<std::string, Unit>& units() {
  constexpr double degree = std::numbers::pi / 180;
  static const std::map<std::string, Unit> known{{"", {}},
                                                 {"%", {.si = 0.01}},
                                                 {"mm", {.si = 1e-3}},
                                                 {"µm", {.si = 1e-6}},
                                                 {"mm²", {.si = 1e-6}},
                                                 {"in", {.si = 0.0254}},
                                                 {"thou", {.si = 25.4e-6}},
                                                 {"°", {.si = degree}},
                                                 {"N", {}},
                                                 {"kN", {.si = 1e3}},
                                                 {"lbf", {.si = 4.4482216152605}},
                                                 {"N·m", {}},
                                                 {"ft·lb", {.si = 1.3558179483314004}},
                                                 {"MPa", {.si = 1e6}},
                                                 {"g·mm", {.si = 1e-6}},
                                                 {"kg", {}},
                                                 {"s", {}},
                                                 {"min", {.si = 60}},
                                                 {"h", {.si = 3600}},
                                                 {"Hz", {}},
                                                 {"/min", {.si = std::numbers::pi / 30}},
                                                 {"m/s", {}},
                                                 {"mm/s", {.si = 1e-3}},
                                                 {"GPa", {.si = 1e9}},
                                                 {"g", {.si = 1e-3}},
                                                 {"K", {}},
                                                 {"kN/mm", {.si = 1e6}},
                                                 {"mm⁴", {.si = 1e-12}},
                                                 {"USD", {}},
                                                 {"GBP", {}},
                                                 {"°C", {.si = 1, .zero = 273.15}}};
  return known;
}

/// Empty where the main output is the value written, to half of its last digit.
std::string difference(const Example& example, const nlohmann::json& working) {
  const nlohmann::json& main = working["outputs"][0];
  if (main["name"] != example.output) return "main output is " + main["name"].get<std::string>();
  const nlohmann::json& value = main["value"];
  if (value["kind"] == "word")
    return value["value"] == example.value ? "" : "says " + value["value"].get<std::string>();
  std::size_t used = 0;
  const double wanted = std::stod(example.value, &used);
  const std::size_t point = example.value.find('.');
  const double half_digit = point < used ? 0.5 * std::pow(10.0, -static_cast<double>(used - point - 1)) : 0.5;
  const std::string unit =
      example.value.substr(std::min(example.value.find_first_not_of(' ', used), example.value.size()));
  if (!units().contains(unit)) return "a unit that this test does not know: " + unit;
  const Unit& u = units().at(unit);
  double si = NAN;
  for (const auto& item : value.items())
    if (item.key().starts_with("value")) si = item.value().get<double>();
  const double off = std::abs((si - u.zero) / u.si - wanted);
  return off <= half_digit * (1 + 1e-6) ? "" : "off by " + std::to_string(off) + " " + unit;
}

// Source: the page itself, whose expected values come from each figure's own checks; here they go through the program.
// Tolerance: half of the last digit written.
TEST(FiguresPage, ExamplesGiveWhatStandsUnderThem) {
  const std::vector<Example> examples = examples_of(ours(kPage));
  ASSERT_GT(examples.size(), 30U);
  for (const Example& example : examples) {
    std::vector<std::string> words = example.words;
    words.emplace_back("--json");
    const Ran ran = flatwise(words);
    EXPECT_LT(ran.status, 2) << typed(words) << "\n" << ran.out << ran.err;
    if (ran.status >= 2) continue;
    const nlohmann::json working = parsed(ran.out);
    EXPECT_EQ(faults_against("figure", working), "") << typed(words);
    EXPECT_EQ(difference(example, working), "") << typed(words);
  }
}

TEST(FiguresPage, ComparisonBites) {
  std::vector<Example> examples = examples_of(ours(kPage));
  int caught = 0;
  for (Example& example : examples) {
    if (example.value.find_first_of("0123456789") != 0) continue;
    std::vector<std::string> words = example.words;
    words.emplace_back("--json");
    const nlohmann::json working = parsed(flatwise(words).out);
    const std::size_t last = example.value.find_last_of("0123456789");  // One more in the last digit.
    example.value[last] = example.value[last] == '9' ? '7' : static_cast<char>(example.value[last] + 1);
    if (!difference(example, working).empty()) ++caught;
    if (caught == 5) break;
  }
  EXPECT_EQ(caught, 5);
}

TEST(FiguresPage, HasEveryFigureOfTheCatalogueOnce) {
  std::multiset<std::string> shown;
  for (const Example& example : examples_of(ours(kPage))) shown.insert(example.words[1]);
  const nlohmann::json list = parsed(flatwise({"figure", "--json"}).out);
  EXPECT_EQ(shown.size(), list["figures"].size());
  for (const auto& figure : list["figures"]) EXPECT_EQ(shown.count(figure["name"]), 1U) << figure["name"];
}

}  // namespace
}  // namespace flatwise::end_to_end
