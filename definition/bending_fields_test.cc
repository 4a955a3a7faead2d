// bending_fields_test.cc: what bends a shaft, as its file says it: the bar, hangers that give, masses, loads at rest.
#include <gtest/gtest.h>

#include "definition/test_files.h"

namespace flatwise::definition {
namespace {

std::string nine_with(std::string_view from, std::string_view to, std::string_view more = {}) {
  std::string text = good_file("nine.toml");
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to) + std::string{more};
}

constexpr std::string_view kMore = R"(
[bar]
youngs_modulus = "205 GPa"
drive_torque = "250 N·m"

[[load]]
at = "pulley"
force = "1.2 kN"
direction = "90°"

[[load]]
at = "every rotor"
force = "100 N"
)";

TEST(BendingFields, AreReadWithTheirOrigins) {
  const auto shaft = read_shaft(
      nine_with("{ hanger = \"31 mm\"", "{ hanger = \"31 mm\", stiffness = \"20 N/µm\", mass = \"1.5 kg\"", kMore),
      "nine.toml");
  ASSERT_TRUE(shaft.has_value()) << told(shaft.error());
  const ShaftSpec& s = shaft->spec();
  EXPECT_EQ(s.bar.youngs_modulus, gigapascals(205));
  EXPECT_EQ(s.bar.drive_torque, newton_metres(250));
  EXPECT_EQ(shaft->origin("bar.youngs_modulus").kind, OriginKind::given);
  EXPECT_EQ(shaft->origin("bar.density").kind, OriginKind::assumed);
  ASSERT_EQ(s.loads.size(), 2U);
  EXPECT_EQ(s.stations[static_cast<std::size_t>(s.loads[0].station.value())].label, "pulley");
  EXPECT_DOUBLE_EQ(s.loads[0].direction.degrees(), 90);
  EXPECT_FALSE(s.loads[1].station.has_value());
  EXPECT_DOUBLE_EQ(s.loads[1].direction.degrees(), 180);
  EXPECT_EQ(s.stations[2].stiffness, Stiffness::from_si(2e7));
  EXPECT_EQ(s.stations[2].mass, kilograms(1.5));
  EXPECT_EQ(shaft->origin("stations[2].stiffness").kind, OriginKind::given);
  EXPECT_EQ(shaft->origin("stations[3].mass").kind, OriginKind::assumed);
}

TEST(BendingFields, RefuseWhatTheyCannotMean) {
  const auto first = [](const std::string& text) {
    const auto shaft = read_shaft(text, "nine.toml");
    return shaft ? "none" : std::string{shaft.error().front().code.id()};
  };
  EXPECT_EQ(first(nine_with("{ rotor = \"68 mm\"", "{ rotor = \"68 mm\", stiffness = \"20 N/µm\"")),
            "definition.not_for_this_part");
  EXPECT_EQ(first(nine_with("{ rotor = \"68 mm\"", "{ rotor = \"68 mm\", mass = \"2 kg\"")),
            "definition.mass_of_rotor");
  EXPECT_EQ(first(good_file("nine.toml") + "\n[[load]]\nat = \"puley\"\nforce = \"5 N\"\n"),
            "definition.unknown_label");
  EXPECT_NE(first(good_file("nine.toml") + "\n[[load]]\nat = \"pulley\"\nforce = \"0 N\"\n"), "none");
  EXPECT_NE(first(good_file("nine.toml") + "\n[bar]\npoisson = 0.6\n"), "none");
}

}  // namespace
}  // namespace flatwise::definition
