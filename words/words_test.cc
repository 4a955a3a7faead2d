// words_test.cc: sentences are filled rightly, and bad dictionaries do not build.
#include "words/words.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "core/units/parse.h"
#include "words/dictionary.h"
#include "words/template.h"

namespace flatwise {
namespace {

const Voice kMetric{};
const Voice kInch{.language = Language::english, .units = UnitSystem::inch, .currency = "EUR"};

std::string fill(std::string_view text, const Args& args, const Voice& voice = kMetric) {
  return words::fill(text, args, voice);
}

TEST(Words, FillsEveryKindOfArgument) {
  EXPECT_EQ(fill("rotor {n}", {{"n", 4}}), "rotor 4");
  EXPECT_EQ(fill("{n} flats", {{"n", -2}}), "−2 flats");
  EXPECT_EQ(fill("{half} of rotor 4", {{"half", Word{"half.b"}}}), "half B of rotor 4");
  EXPECT_EQ(fill("{file}", {{"file", "long-nine.toml"}}), "long-nine.toml");
  EXPECT_EQ(fill("{d}", {{"d", any(millimetres(38.1))}}), "38.1\u00A0mm");
  EXPECT_EQ(fill("{d}", {{"d", any(millimetres(38.1))}}, kInch), "1.5\u00A0in");
  EXPECT_EQ(fill("{c}", {{"c", any_money(18.4)}}, kInch), "18.40\u00A0EUR");
}

TEST(Words, ShowsTheOtherSystemInBracketsWhereItDiffers) {
  EXPECT_EQ(fill("{d+}", {{"d", any(millimetres(38.1))}}), "38.1\u00A0mm (1.5\u00A0in)");
  EXPECT_EQ(fill("{t+}", {{"t", any(foot_pounds(350))}}, kInch), "350\u00A0ft·lb (474.5\u00A0N·m)");
  EXPECT_EQ(fill("{n+}", {{"n", any(turns_per_minute(480))}}), "480\u00A0r/min");
  EXPECT_EQ(fill("{n+}", {{"n", 3}}), "3");
}

// 2026-11-27: "greatest diameter 3.9366 in is 0.03 thou inside its limit 3.9366 in".
TEST(Words, AValueAndItsLimitThatDifferAreSaidDifferent) {
  const Args near{{"value", any(millimetres(99.98931674686572))}, {"limit", any(millimetres(99.99))}};
  EXPECT_EQ(fill("{value}, limit {limit}", near, kInch), "3.93659\u00A0in, limit 3.93661\u00A0in");
  EXPECT_EQ(fill("{value}, limit {limit}", near), "99.989\u00A0mm, limit 99.99\u00A0mm");
  const Args same{{"value", any(millimetres(38.1))}, {"limit", any(millimetres(38.1))}};
  EXPECT_EQ(fill("{value}, limit {limit}", same, kInch), "1.5\u00A0in, limit 1.5\u00A0in");
  const Args other{{"value", any(millimetres(99.98931674686572))}, {"by", any(millimetres(99.99))}};
  EXPECT_EQ(fill("{value}", other, kInch), "3.9366\u00A0in");
}

TEST(Words, SaysListsWithAndOrOr) {
  const auto rotors = [](std::vector<std::int64_t> v) { return Args{{"rotors", std::move(v)}}; };
  EXPECT_EQ(fill("{rotors}", rotors({1, 2, 5})), "1, 2 and 5");
  EXPECT_EQ(fill("{rotors or}", rotors({1, 2, 5})), "1, 2 or 5");
  EXPECT_EQ(fill("{rotors}", rotors({1, 2})), "1 and 2");
  EXPECT_EQ(fill("{rotors}", rotors({7})), "7");
  EXPECT_EQ(fill("{ends}", {{"ends", std::vector<Word>{Word{"end.a"}, Word{"end.b"}}}}), "end A and end B");
  EXPECT_EQ(fill("{rotors|rotor #|rotors #|no rotor}", rotors({1, 2})), "rotors 1 and 2");
  EXPECT_EQ(fill("{rotors|rotor #|rotors #|no rotor}", rotors({})), "no rotor");
}

TEST(Words, ChoosesByNumber) {
  const std::string_view turn = "Turn {half} {flats|one flat|# flats|not at all}{towards? towards {towards}}.";
  const Args one{{"half", Word{"half.b"}}, {"flats", 1}, {"towards", 3}};
  EXPECT_EQ(fill(turn, one), "Turn half B one flat towards 3.");
  EXPECT_EQ(fill(turn, {{"half", Word{"half.b"}}, {"flats", 2}}), "Turn half B 2 flats.");
  EXPECT_EQ(fill(turn, {{"half", Word{"half.b"}}, {"flats", 0}}), "Turn half B not at all.");
  EXPECT_EQ(fill("{n|one|many}", {{"n", 0}}), "many");
  EXPECT_EQ(fill("{n|one|# of {m}, and {m|a|#}}", {{"n", 3}, {"m", 4}}), "3 of 4, and 4");
  EXPECT_EQ(fill("joint #5", {}), "joint #5");  // Outside a choice '#' is itself.
}

TEST(Words, ConditionsTakeEmptyForAbsent) {
  const std::string_view t = "{near?Did you mean {near}?|Use one of these.}";
  EXPECT_EQ(fill(t, {{"near", "MPa"}}), "Did you mean MPa?");
  EXPECT_EQ(fill(t, {{"near", ""}}), "Use one of these.");
  EXPECT_EQ(fill(t, {}), "Use one of these.");
  EXPECT_EQ(fill("a{n? {n}}", {{"n", 0}}), "a 0");  // Nought is there.
}

TEST(Words, WhatIsMissingIsABug) {
  EXPECT_THROW((void)fill("{x}", {}), std::logic_error);
  EXPECT_THROW((void)fill("{x|one|many}", {{"x", "text"}}), std::logic_error);
  EXPECT_THROW((void)say("no.such_code", {}, kMetric), std::logic_error);
  EXPECT_THROW((void)fill("{w}", {{"w", Word{"no.such_word"}}}), std::logic_error);
}

TEST(Words, NamesTheRotorWhereTheSentenceDoesNot) {
  const Where rotor{.part = Where::Part::rotor, .number = 3};
  const Message settle{Code{"metrology.settle_none"}, {{"plane", Word{"metrology.plane_a"}}}};
  EXPECT_EQ(say(settle, rotor, kMetric), "Rotor 3: " + say(settle, kMetric));
  EXPECT_EQ(say(settle, {}, kMetric), say(settle, kMetric));
  const Message play{Code{"job.read_play"}, {{"rotor", 3}}};  // Names its rotor itself.
  EXPECT_EQ(say(play, rotor, kMetric), say(play, kMetric));
}

TEST(Words, SaysAProblemInThreeParts) {
  const auto entered = parse_quantity("5 N·m", Kind::length, "rotor.bearing.d");
  ASSERT_FALSE(entered);
  const SaidProblem said = say(entered.error(), kMetric);
  EXPECT_EQ(said.read, "N·m is the unit of a torque; a length is wanted.");
  EXPECT_EQ(said.allowed, "Written like 38.1 mm, 1 1/2 in, 12 µm or 0.5 thou.");
  EXPECT_EQ(said.mend, "Use a unit of a length.");
}

TEST(Words, EveryRefusalOfAQuantityCanBeSaid) {
  const Kind kinds[] = {Kind::length, Kind::count, Kind::temperature, Kind::force, Kind::money, Kind::ratio};
  const char* const texts[] = {"",       "\xFF",     "nan",        "mm",  "1,5 mm",  "1 500 mm", "1234567890123456 mm",
                               "1/0 in", "1 3/2 in", "1e99 mm",    "5",   "5 x",     "20 ton",   "5 N·m",
                               "3 kg",   "5 mm 3",   "5 ft 12 in", "3.5", "-300 °C", "5 €"};
  for (const Kind kind : kinds)
    for (const char* text : texts)
      if (const auto entered = parse_quantity(text, kind, "bore"); !entered) {
        const SaidProblem said = say(entered.error(), kMetric);
        EXPECT_FALSE(said.read.empty() || said.allowed.empty() || said.mend.empty()) << text;
      }
}

TEST(Words, SaysTheRangeOfAnInput) {
  const auto allowed = [](Args args) {
    args.emplace_back("value", any(millimetres(-1)));
    return say(Problem{Code{"figure.input_range"}, "bore", "-1 mm", std::move(args), std::nullopt}, kMetric).allowed;
  };
  const Arg least{"least", any(millimetres(3))}, greatest{"greatest", any(millimetres(500))};
  EXPECT_EQ(allowed({{"open", 0}, least, greatest}),
            "bore is at least 3\u00A0mm (0.1181\u00A0in), and at most 500\u00A0mm (19.685\u00A0in).");
  EXPECT_EQ(allowed({{"open", 1}, least}), "bore is over 3\u00A0mm (0.1181\u00A0in).");
  EXPECT_EQ(allowed({{"open", 0}, greatest}), "bore is at most 500\u00A0mm (19.685\u00A0in).");
}

TEST(Words, EveryKindHasItsWord) {
  for (int i = 0; i < kKindCount; ++i)
    EXPECT_TRUE(has_words("kind." + std::string{kind_name(static_cast<Kind>(i))})) << kind_name(static_cast<Kind>(i));
  EXPECT_FALSE(has_words("no.such_code"));
}

// The shell printed the keys, the page and the paper the words.
TEST(Words, SaysASourceInWords) {
  const std::vector<std::string_view> keys{"Shigley9", "common practice"};
  EXPECT_EQ(sources_words(keys, {}),
            "Shigley's Mechanical Engineering Design, 9th edition, interference fits; common practice");
  EXPECT_EQ(sources_words({}, {}), "");
  EXPECT_EQ(source_words(Origin{OriginKind::assumed, "ISO281"}, {}),
            "ISO 281, dynamic load ratings and life of rolling bearings");
  EXPECT_EQ(source_words(Origin{OriginKind::measured, "ISO281"}, {}), "ISO281");  // What a gauge may be called.
  EXPECT_EQ(where_words({OriginKind::given, "shaft.toml:31"}, {}), "shaft.toml, line 31");
}

TEST(Words, DictionaryIsSortedAndSaidCodesAreItsCodes) {
  const auto codes = all_codes(Language::english);
  EXPECT_TRUE(std::ranges::is_sorted(codes));
  EXPECT_EQ(std::ranges::adjacent_find(codes), codes.end());
}

TEST(Template, NamesItsFault) {
  for (const char* good :
       {"plain", "{x}", "{x+}", "{x or}", "{x|a|b}", "{x|a|b|c}", "{x?a}", "{x?a|b}", "{x?a {y|b|c}}", ""})
    EXPECT_EQ(words::fault_of(good), "") << good;
  for (const char* bad :
       {"{x", "x}", "{}", "{X}", "{x|a}", "{x|a|b|c|d}", "{x?a|b|c}", "{x+y}", "{x y}", "{x?{y|a}}", "{ x}"})
    EXPECT_NE(words::fault_of(bad), "") << bad;
}

TEST(Words, SaysTheUnitOfARangeOnceWhereItIsTheSame) {
  EXPECT_EQ(range_words(any(millimetres(1)), any(millimetres(1.25)), kMetric), "1 to 1.25\u00A0mm");
  EXPECT_EQ(range_words(any(micrometres(480)), any(millimetres(1.25)), kMetric), "480\u00A0µm to 1.25\u00A0mm");
  EXPECT_EQ(figure_only(any(millimetres(1.25)), kMetric), "1.25");
  EXPECT_EQ(capital("nut A came off."), "Nut A came off.");
  EXPECT_EQ(capital("±"), "±");
  EXPECT_EQ(capital(""), "");
}

/// Runs the dictionary compiler on a text; gives its exit status and what it complained of.
std::pair<int, std::string> compiled(const std::string& toml) {
  const std::filesystem::path folder = std::filesystem::path{testing::TempDir()} / "flatwise_dictionary";
  std::filesystem::create_directories(folder);
  std::ofstream{folder / "bad.toml"} << toml;
  const std::string command = std::string{FLATWISE_COMPILE_DICTIONARY} + " english '" + (folder / "out.cc").string() +
                              "' '" + (folder / "bad.toml").string() + "' 2>'" + (folder / "said").string() + "'";
  const int status = std::system(command.c_str());
  std::ifstream said{folder / "said"};
  std::pair<int, std::string> out{status, std::string{std::istreambuf_iterator<char>{said}, {}}};
  std::filesystem::remove_all(folder);
  return out;
}

TEST(CompileDictionary, StopsTheBuildWithFileAndLine) {
  EXPECT_EQ(compiled("\"a.b\" = \"good {x}\"\n").first, 0);
  for (const auto& [toml, said] :
       {std::pair{"\"a.b\" = \"one\"\n\"a.b\" = \"two\"\n", "bad.toml:2:"},
        std::pair{"# hm\n\"a.b\" = \"bad {x\"\n", "bad.toml:2: error: a.b: a brace opens"},
        std::pair{"a.b = \"no quotes round the key\"\n", "bad.toml:1:"}, std::pair{"\"a.b\" = 3\n", "bad.toml:1:"}}) {
    const auto [status, complaint] = compiled(toml);
    EXPECT_NE(status, 0) << toml;
    EXPECT_NE(complaint.find(said), std::string::npos) << complaint;
  }
}

}  // namespace
}  // namespace flatwise
