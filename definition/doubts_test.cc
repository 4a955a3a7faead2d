// "11.6 kg ± 0.2 kg": what is measured may say how well.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <regex>

#include "definition/describe.h"
#include "definition/test_files.h"

namespace flatwise::definition {
namespace {

std::string with(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  if (at != std::string::npos) text.replace(at, from.size(), to);
  return text;
}
Results<Shaft> read(const std::string& from, const std::string& to) {
  return read_shaft(with(good_file("nine.toml"), from, to), "nine.toml");
}
Problem refused(const std::string& from, const std::string& to) {
  const Results<Shaft> shaft = read(from, to);
  EXPECT_FALSE(shaft) << to;
  if (shaft) return {Code{"none"}, {}, {}, {}, std::nullopt};
  EXPECT_EQ(shaft.error().size(), 1U) << told(shaft.error());
  return shaft.error().front();
}

// Source: definition; ± is U at 95 %, k = 2 (GUM 6.2.1); a range's half width over root three (GUM 4.3.7).
// Tolerance: 1e-12 relative, rounding of the text.
TEST(Doubts, StandByTheFieldWithTheShaftToEitherSide) {
  for (const char* text : {"\"11.6 kg ± 0.2 kg\"", "\"11.6 kg +- 200 g\""}) {
    const Results<Shaft> shaft = read("\"11.6 kg\"", text);
    ASSERT_TRUE(shaft) << told(shaft.error());
    ASSERT_EQ(shaft->spec().doubts.size(), 1U);
    const FieldDoubt& mass = shaft->spec().doubts.at("rotor.mass");
    EXPECT_EQ(mass.meaning, "definition.field.rotor.mass");
    EXPECT_NEAR(mass.value.si, 11.6, 1e-12);
    EXPECT_NEAR(mass.u.standard_si, 0.1, 1e-12);
    EXPECT_NEAR(shaft->rotor(1).mass.si(), 11.6, 1e-12);
    ASSERT_TRUE(mass.above && mass.below);
    EXPECT_NEAR(mass.above->rotors[8].mass.si(), 11.7, 1e-12);
    EXPECT_NEAR(mass.below->rotors[0].mass.si(), 11.5, 1e-12);
    EXPECT_TRUE(mass.above->doubts.empty());
  }
  const Results<Shaft> range = read("\"11.6 kg\"", "\"11.4 kg .. 11.8 kg\"");
  ASSERT_TRUE(range);
  EXPECT_TRUE(range->spec().doubts.at("rotor.mass").anywhere);
  EXPECT_NEAR(range->spec().doubts.at("rotor.mass").u.standard_si, 0.2 / std::sqrt(3.0), 1e-12);
  EXPECT_TRUE(good_shaft().spec().doubts.empty());
}

TEST(Doubts, WhatIsDecidedTakesNone) {
  const Problem step = refused("[policy]", "[policy]\nlook_at_a_mark = \"1 min ± 10 s\"");
  EXPECT_EQ(step.code.id(), "definition.no_doubt");
  EXPECT_EQ(step.field, "policy.look_at_a_mark");
  EXPECT_EQ(step.given, "1 min ± 10 s");
  for (const Field& field : fields(Document::shaft)) {
    const bool decided = field.kind == Kind::money || field.in() == "policy" || field.key() == "tolerance";
    EXPECT_FALSE(decided && may_be_doubted(Document::shaft, field)) << field.path();
  }
  EXPECT_TRUE(may_be_doubted(Document::shaft, *find_field(Document::shaft, "load", "force")));
  EXPECT_TRUE(may_be_doubted(Document::shaft, *find_field(Document::shaft, "bar", "poisson")));
  for (const Field& field : fields(Document::workshop)) EXPECT_FALSE(may_be_doubted(Document::workshop, field));
}

TEST(Doubts, AllOfItMustBePossible) {
  EXPECT_EQ(refused("\"11.6 kg\"", "\"11.6 kg ± 12 kg\"").code.id(), "definition.out_of_range");
  EXPECT_EQ(refused("\"11.6 kg\"", "\"11.6 kg ± 0 kg\"").code.id(), "doubt.not_above_nought");
  EXPECT_EQ(refused("\"11.6 kg\"", "\"11.6 kg ± 2 mm\"").field, "rotor.mass");
  EXPECT_EQ(refused("\"11.6 kg\"", "\"12 kg .. 11 kg\"").code.id(), "doubt.range_reversed");
}

// 2026-11-27: "30 deg" was refused where up to 30° is allowed: the last digit of a double.
TEST(Range, ItsEndsAreInIt) {
  for (const char* lean : {"\"30 deg\"", "\"30°\"", "\"1800 arcmin\""}) EXPECT_TRUE(read("\"5°\"", lean)) << lean;
  EXPECT_EQ(refused("\"5°\"", "\"30.0001°\"").code.id(), "definition.out_of_range");
}

/// The schema lets a doubt through where the reader does, and only there.
TEST(Doubts, TheSchemaAgrees) {
  const auto json = nlohmann::json::parse(schema(Document::shaft, [](std::string_view, const Args&) { return ""; }));
  const auto pattern = [&](const char* table, const char* key) {
    return std::regex{json["definitions"][table]["properties"][key]["pattern"].get<std::string>(),
                      std::regex::ECMAScript};
  };
  EXPECT_TRUE(std::regex_search("11.6 kg ± 0.2 kg", pattern("rotor", "mass")));
  EXPECT_TRUE(std::regex_search("11.6 kg", pattern("rotor", "mass")));
  EXPECT_FALSE(std::regex_search("0.1 mm ± 0.1 mm", pattern("between", "tolerance")));
  EXPECT_TRUE(std::regex_search("0.1 mm", pattern("between", "tolerance")));
}

}  // namespace
}  // namespace flatwise::definition
