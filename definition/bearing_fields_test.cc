// bearing_fields_test.cc: what a shaft file states of a bearing beyond its sizes: inside, ratings, oil, dirt, warmth, seat.
#include <gtest/gtest.h>

#include "definition/test_files.h"

namespace flatwise::definition {
namespace {

constexpr std::string_view kFirstKey = "designation =";

/// The good file with more keys in its bearing.
std::string bearing_with(std::string_view keys) {
  std::string text = good_file("nine.toml");
  const std::size_t at = text.find(kFirstKey);
  EXPECT_NE(at, std::string::npos);
  return text.insert(at, std::string{keys} + ", ");
}
std::string rotor_with(std::string_view keys) {
  std::string text = good_file("nine.toml");
  constexpr std::string_view kTable = "[rotor] ";
  const std::size_t at = text.find(kTable);
  EXPECT_NE(at, std::string::npos);
  return text.insert(text.find('\n', at) + 1, std::string{keys} + "\n");
}
std::string first(const std::string& text) {
  const auto shaft = read_shaft(text, "nine.toml");
  if (shaft) return "none";
  return std::string{shaft.error().front().code.id()} + " " + shaft.error().front().field;
}

TEST(BearingFields, AreReadWithTheirOrigins) {
  const auto shaft = read_shaft(
      bearing_with(
          "balls = 9, ball_diameter = \"13 mm\", pitch_diameter = \"77 mm\", groove_inner = 0.515, groove_outer = "
          "0.525, dynamic_rating = \"43.6 kN\", static_rating = \"29 kN\", viscosity = \"68 mm²/s\", cleanliness "
          "= \"slight\", reliability = 0.95, inner_warmer = \"8 K\""),
      "nine.toml");
  ASSERT_TRUE(shaft.has_value()) << told(shaft.error());
  const Bearing& b = shaft->rotor(1).bearing;
  EXPECT_EQ(b.inside.balls, 9);
  EXPECT_DOUBLE_EQ(b.inside.ball_diameter.value().si(), 0.013);
  EXPECT_DOUBLE_EQ(b.inside.pitch_diameter.value().si(), 0.077);
  EXPECT_EQ(b.inside.groove_inner, 0.515);
  EXPECT_EQ(b.inside.groove_outer, 0.525);
  EXPECT_EQ(b.inside.dynamic_rating, newtons(43'600));
  EXPECT_EQ(b.inside.static_rating, newtons(29'000));
  EXPECT_DOUBLE_EQ(b.care.viscosity.value().si(), 68e-6);
  EXPECT_EQ(b.care.cleanliness, Cleanliness::slight);
  EXPECT_EQ(b.care.reliability, 0.95);
  EXPECT_EQ(b.care.inner_warmer, kelvins(8));
  EXPECT_EQ(shaft->origin("rotor.bearing.viscosity").kind, OriginKind::given);
}

TEST(BearingFields, LeftOutAreNotThere) {
  const Shaft shaft = good_shaft();
  EXPECT_EQ(shaft.rotor(1).bearing.inside, BearingInside{});
  EXPECT_EQ(shaft.rotor(1).bearing.care, BearingCare{});
  EXPECT_FALSE(shaft.rotor(1).seat.has_value());
}

TEST(BearingFields, RefuseWhatNoBearingHas) {
  EXPECT_EQ(first(bearing_with("balls = 3")), "definition.out_of_range rotor.bearing.balls");
  EXPECT_EQ(first(bearing_with("balls = 20")), "bearings.balls_overlap rotor.bearing.balls");
  EXPECT_EQ(first(bearing_with("ball_diameter = \"24 mm\"")), "bearings.balls_reach_out rotor.bearing.ball_diameter");
  EXPECT_EQ(first(bearing_with("ball_diameter = \"2 mm\"")), "bearings.balls_out_of_range rotor.bearing.ball_diameter");
  EXPECT_EQ(first(bearing_with("pitch_diameter = \"60 mm\"")), "bearings.balls_reach_out rotor.bearing.pitch_diameter");
  EXPECT_EQ(first(bearing_with("groove_inner = 0.49")), "definition.out_of_range rotor.bearing.groove_inner");
  EXPECT_EQ(first(bearing_with("viscosity = \"68 N\"")).substr(0, 9), "quantity.");
  EXPECT_EQ(first(bearing_with("cleanliness = \"spotless\"")), "definition.not_a_choice rotor.bearing.cleanliness");
  EXPECT_EQ(first(bearing_with("reliability = 0.5")), "definition.out_of_range rotor.bearing.reliability");
}

// Source: ISO 286-2, 55 k6: +21 and +2 µm. Tolerance: none.
TEST(SeatFields, TakeAFitOrLimits) {
  const auto fit = read_shaft(rotor_with("seat = { fit = \"k6\" }"), "nine.toml");
  ASSERT_TRUE(fit.has_value()) << told(fit.error());
  const Rotor& r = fit->rotor(1);
  ASSERT_EQ(r.bearing.bore, millimetres(55));
  EXPECT_NEAR(r.seat.value().least.si(), 0.055002, 1e-12);
  EXPECT_NEAR(r.seat.value().greatest.si(), 0.055021, 1e-12);
  EXPECT_EQ(r.seat_code, "k6");
  const auto limits = read_shaft(rotor_with("seat = { least = \"55.00 mm\", greatest = \"55.02 mm\" }"), "nine.toml");
  ASSERT_TRUE(limits.has_value()) << told(limits.error());
  EXPECT_DOUBLE_EQ(limits->rotor(1).seat.value().greatest.si(), 0.05502);
}

TEST(SeatFields, RefuseHalvesAndContradictions) {
  EXPECT_EQ(first(rotor_with("seat = { least = \"55 mm\" }")), "definition.no_seat rotor.seat.least");
  EXPECT_EQ(first(rotor_with("seat = { fit = \"k6\", least = \"55 mm\" }")),
            "definition.fit_and_limits rotor.seat.fit");
  EXPECT_EQ(first(rotor_with("seat = { least = \"55.1 mm\", greatest = \"55 mm\" }")),
            "definition.limits_crossed rotor.seat.least");
}

TEST(LoadFields, MayGoAlongTheShaft) {
  const std::string both =
      good_file("nine.toml") + "\n[[load]]\nat = \"every rotor\"\nforce = \"1 kN\"\nalong = \"-150 N\"\n";
  const auto shaft = read_shaft(both, "nine.toml");
  ASSERT_TRUE(shaft.has_value()) << told(shaft.error());
  EXPECT_EQ(shaft->spec().loads.back().along, newtons(-150));
  const auto along =
      read_shaft(good_file("nine.toml") + "\n[[load]]\nat = \"every rotor\"\nalong = \"150 N\"\n", "nine.toml");
  ASSERT_TRUE(along.has_value()) << told(along.error());
  EXPECT_EQ(along->spec().loads.back().force, Force{});
  EXPECT_EQ(first(good_file("nine.toml") + "\n[[load]]\nat = \"every rotor\"\n").substr(0, 18), "definition.no_load");
}

}  // namespace
}  // namespace flatwise::definition
