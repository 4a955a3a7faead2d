// clamped_fields_test.cc: what the nuts clamp, snug, and the angles that were seen, as the files say them.
#include <gtest/gtest.h>

#include "definition/test_files.h"

namespace flatwise::definition {
namespace {

std::string with_all(std::string text, std::initializer_list<std::pair<std::string_view, std::string_view>> changes) {
  for (const auto& [from, to] : changes) {
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    text.replace(at, from.size(), to);
  }
  return text;
}

constexpr std::pair<std::string_view, std::string_view> kSnug{"class = \"grade 8\"",
                                                              "class = \"grade 8\"\nsnug = \"90 ft·lb\""};
constexpr std::pair<std::string_view, std::string_view> kClamped{
    "[policy]", "[clamped]\noutside = \"55 mm\"\nfaces = \"rough\"\n\n[policy]"};
constexpr std::pair<std::string_view, std::string_view> kHanger{
    "{ hanger = \"31 mm\"",
    "{ hanger = \"31 mm\", clamped = { outside = \"62 mm\", bore = \"45 mm\", youngs_modulus = \"110 GPa\" }"};

TEST(ClampedFields, AreReadWithTheirOrigins) {
  const auto shaft = read_shaft(with_all(good_file("nine.toml"), {kSnug, kClamped, kHanger}), "nine.toml");
  ASSERT_TRUE(shaft.has_value()) << told(shaft.error());
  const ShaftSpec& s = shaft->spec();
  EXPECT_EQ(s.clamped.tube.outside, millimetres(55));
  EXPECT_FALSE(s.clamped.tube.bore.has_value());
  EXPECT_EQ(s.clamped.tube.youngs_modulus, gigapascals(207));
  EXPECT_EQ(s.clamped.faces, Faces::rough);
  EXPECT_EQ(shaft->origin("clamped.outside").kind, OriginKind::given);
  EXPECT_EQ(shaft->origin("clamped.youngs_modulus").kind, OriginKind::assumed);
  EXPECT_EQ(s.stations[2].clamped.outside, millimetres(62));
  EXPECT_EQ(s.stations[2].clamped.bore, millimetres(45));
  EXPECT_EQ(s.stations[2].clamped.youngs_modulus, gigapascals(110));
  EXPECT_EQ(shaft->origin("stations[2].clamped").kind, OriginKind::given);
  EXPECT_FALSE(s.stations[3].clamped.outside.has_value());
  ASSERT_EQ(s.nuts.size(), 2U);
  EXPECT_EQ(s.nuts[0].snug, foot_pounds(90));
  EXPECT_EQ(shaft->origin("nut.snug").kind, OriginKind::given);
}

TEST(ClampedFields, AFileWithoutThemSaysNothingOfThem) {
  const auto shaft = read_shaft(good_file("nine.toml"), "nine.toml");
  ASSERT_TRUE(shaft.has_value());
  EXPECT_FALSE(shaft->spec().clamped.tube.outside.has_value());
  EXPECT_FALSE(shaft->spec().nuts[0].snug.has_value());
}

struct BadClamped {
  std::pair<std::string_view, std::string_view> change;
  std::string_view code, field;
};

TEST(ClampedFields, RefuseWhatCannotBeWithItsLine) {
  const BadClamped all[] = {
      {{"[policy]", "[clamped]\noutside = \"38 mm\"\n\n[policy]"}, "shaft.tube_thin", "clamped.outside"},
      {{"[policy]", "[clamped]\nbore = \"30 mm\"\n\n[policy]"}, "shaft.tube_bore", "clamped.bore"},
      {{"[policy]", "[clamped]\noutside = \"-55 mm\"\n\n[policy]"}, "definition.out_of_range", "clamped.outside"},
      {{"[policy]", "[clamped]\noutside = 55\n\n[policy]"}, "definition.number_without_unit", "clamped.outside"},
      {{"[policy]", "[clamped]\nfaces = \"shiny\"\n\n[policy]"}, "definition.not_a_choice", "clamped.faces"},
      {{"[policy]", "[clamped]\noutsde = \"55 mm\"\n\n[policy]"}, "definition.unknown_key", "clamped.outsde"},
      {{"class = \"grade 8\"", "class = \"grade 8\"\nsnug = \"900 ft·lb\""}, "shaft.snug_torque", "nut.snug"},
      {{"class = \"grade 8\"", "class = \"grade 8\"\nsnug = \"0 N·m\""}, "definition.out_of_range", "nut.snug"},
      {{"nut = \"34 mm\", washer", "nut = \"34 mm\", clamped = { outside = \"60 mm\" }, washer"},
       "definition.nut_is_not_clamped",
       ""},
  };
  for (const BadClamped& bad : all) {
    const auto shaft = read_shaft(with_all(good_file("nine.toml"), {bad.change}), "nine.toml");
    ASSERT_FALSE(shaft.has_value()) << bad.change.second;
    const Problem& problem = shaft.error().front();
    EXPECT_EQ(problem.code.id(), bad.code) << told(shaft.error());
    if (!bad.field.empty()) {
      EXPECT_EQ(problem.field, bad.field);
    }
    ASSERT_TRUE(problem.place.has_value()) << bad.code;
    EXPECT_GT(problem.place->line, 1) << bad.code;
  }
}

// Source: what is typed in the file: 5 degrees are pi/36.
// Tolerance: 1e-15 rad, rounding.
TEST(ClampedFields, TheAnglesSeenAreRead) {
  const Shaft shaft = read_shaft(good_file("nine.toml"), "nine.toml").value();
  const Workshop shop = read_workshop(good_file("workshop.toml"), "workshop.toml").value();
  const std::string text = good_file("readings.toml");
  const std::size_t at = text.find("[[torque]]");
  ASSERT_NE(at, std::string::npos);
  const std::string turned = text.substr(0, at) + "[[torque]]\nturned = \"150°\"" +
                             text.substr(at + std::string_view{"[[torque]]"}.size()) +
                             "\n[[second_pull]]\nnut = \"B\"\nturned = \"5°\"\n";
  const std::string_view questions[] = {"guards_on", "spacers_labelled", "bearing_greased", "captive_in",
                                        "nut_rechecked"};
  const auto bench = read_bench(turned, "readings.toml", shaft, shop, questions);
  ASSERT_TRUE(bench.has_value()) << told(bench.error());
  ASSERT_TRUE(bench->torques[0].turned.has_value());
  EXPECT_EQ(bench->torques[0].turned->typed, "150°");
  EXPECT_FALSE(bench->torques[1].turned.has_value());
  ASSERT_EQ(bench->second_pulls.size(), 1U);
  EXPECT_EQ(bench->second_pulls[0].nut, End::b);
  EXPECT_NEAR(bench->second_pulls[0].turned.value.value.si, degrees(5).radians(), 1e-15);
  const auto refused = [&](std::string_view from, std::string_view to) {
    std::string bad = turned;
    bad.replace(bad.find(from), from.size(), to);
    const auto read = read_bench(bad, "readings.toml", shaft, shop, questions);
    return read ? std::string{"none"} : std::string{read.error().front().code.id()} + " " + read.error().front().field;
  };
  EXPECT_EQ(refused("turned = \"150°\"", "turned = \"1801°\""), "definition.out_of_range torque[1].turned");
  EXPECT_EQ(refused("turned = \"5°\"", "turned = \"-5°\""), "definition.out_of_range second_pull[1].turned");
  EXPECT_EQ(refused("turned = \"5°\"\n", "turned = \"5 mm\"\n"), "quantity.other_kind second_pull[1].turned");
  EXPECT_EQ(refused("turned = \"5°\"\n", "turned = \"5°\"\ngauge = \"nix\"\n"),
            "definition.unknown_gauge second_pull[1].gauge");
}

}  // namespace
}  // namespace flatwise::definition
