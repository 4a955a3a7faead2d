#include "core/dynamics/figures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "core/shaft/shaft_samples.h"
#include "tests/support/figures.h"

namespace flatwise::dynamics {
namespace {

const FigureSpec& spec_of(std::string_view name) { return figure_named(figures(), name); }
std::vector<Angle> facing(int rotors) {
  std::vector<Angle> tilt;
  for (int i = 0; i < rotors; ++i) tilt.push_back(degrees(180.0 * (i % 2)));
  return tilt;
}

// Source: W26 and skewed disk of wobble_test.cc.
// Tolerance: digits given.
TEST(RotatingCoupleFigure, TakesTheThreeWaysOfTurning) {
  const std::vector<Input> base{given("speed", any(turns_per_minute(540))), given("lean", any(degrees(5))),
                                given("across", any(kilogram_square_metres(0.1))),
                                given("along", any(kilogram_square_metres(0.2)))};
  const auto with = [&](std::vector<Input> more) {
    auto inputs = base;
    inputs.insert(inputs.end(), more.begin(), more.end());
    return evaluate(spec_of("rotating-couple"), inputs);
  };
  EXPECT_NEAR(with({given("spinning", "with-shaft")})->si("couple"), -27.764189, 28e-6);
  EXPECT_NEAR(with({given("spinning", "held")})->si("couple"), 27.976298, 28e-6);
  EXPECT_TRUE(with({given("spinning", "rolling"), given("travel", any(Speed::from_si(1.5))),
                    given("rolling-radius", any(metres(0.2)))}));
  EXPECT_EQ(first_code(with({given("spinning", "rolling"), given("travel", any(Speed::from_si(1.5)))})),
            "dynamics.rolling_inputs");
  EXPECT_EQ(first_code(with({given("spinning", "held"), given("travel", any(Speed::from_si(1.5)))})),
            "dynamics.rolling_inputs");
}

TEST(CoupleResultantFigure, RefusesUnevenListsAndWrongFlats) {
  const auto with = [](std::vector<Input> more) {
    std::vector<Input> inputs{given("position", any(metres(0.1))), given("position", any(metres(0.3))),
                              given("couple", any(newton_metres(10))), given("plane-a", any(metres(0)))};
    inputs.insert(inputs.end(), more.begin(), more.end());
    return evaluate(spec_of("couple-resultant"), inputs);
  };
  const Input b = given("plane-b", any(metres(0.6))), six = given("flats", any_count(6));
  const Input one = given("flat", any_count(1)), four = given("flat", any_count(4)),
              seven = given("flat", any_count(7));
  EXPECT_EQ(first_code(with({b, six, one})), "dynamics.values_uneven");
  EXPECT_EQ(first_code(with({b, six, one, seven})), "dynamics.no_such_flat");
  EXPECT_EQ(first_code(with({b, one, four})), "dynamics.flat_or_azimuth");
  EXPECT_EQ(first_code(with({b, six, one, four, given("azimuth", any(degrees(0)))})), "dynamics.flat_or_azimuth");
  EXPECT_EQ(first_code(with({given("plane-b", any(metres(0))), six, one, four})), "dynamics.planes_together");
  const auto quiet = with({b, six, one, four}).value();
  EXPECT_EQ(quiet.findings.at(0).code.id(), "dynamics.quiet");
  EXPECT_EQ(quiet.input("error-share")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(with({b, six, one, one})->findings.at(0).code.id(), "dynamics.leaves");
}

// Source: facing on an odd number leaves one couple (resultants_test.cc); W26 held: 18.78 N m.
// Tolerance: 1e-9 relative.
TEST(ArrangementWorking, CarriesEachRotorsCoupleBehindIt) {
  SampleShaft sample;
  sample.rotors = 9;
  ShaftSpec spec = sample_shaft(sample);
  spec.rotors[4].across = kilogram_square_metres(0.090);
  const Shaft shaft = Shaft::make(spec).value();
  const auto working = arrangement_working(shaft, facing(9)).value();
  EXPECT_EQ(working.figure, "couple-resultant");
  int behind = 0, rotors = 0;
  for (const Input& input : working.inputs) {
    if (input.name != "couple") continue;
    ++rotors;
    behind += input.from != nullptr ? 1 : 0;
  }
  EXPECT_EQ(rotors, 9);
  EXPECT_EQ(behind, 9);
  const double one = std::get<AnyQuantity>(working.input("couple")->value).si;
  const double w = turns_per_minute(480).radians_per_second(), a = degrees(5).radians();
  EXPECT_NEAR(working.si("left-couple"), one + 0.005 * w * w * std::sin(a) * std::cos(a), 1e-9 * one);
  EXPECT_EQ(working.findings.at(0).severity, Severity::note);
}

TEST(LeastGapWorking, NamesTheTwoThatStrike) {
  SampleShaft sample;
  sample.rotors = 4;
  ShaftSpec spec = sample_shaft(sample);
  const auto apart = least_gap_working(Shaft::make(spec).value(), facing(4)).value();
  EXPECT_TRUE(apart.findings.empty());
  spec.rotors[2].tip_radius = millimetres(1400);
  const auto strike = least_gap_working(Shaft::make(spec).value(), facing(4)).value();
  ASSERT_EQ(strike.findings.size(), 1U);
  EXPECT_EQ(strike.findings[0].code.id(), "dynamics.tines_strike");
  EXPECT_EQ(strike.findings[0].where.number, 2);
  EXPECT_TRUE(strike.findings[0].instruction.has_value());
  sample.rotors = 1;
  EXPECT_EQ(least_gap_working(Shaft::make(sample_shaft(sample)).value(), facing(1)).error().code.id(),
            "dynamics.one_rotor");
}

// Source: 2 pi v / W: 6 km/h at 480 /min: 208.3 mm a swing.
// Tolerance: half of the last digit given.
TEST(GroundPerSwing, IsTravelOverFrequency) {
  const auto w = evaluate(spec_of("ground-per-swing"),
                          {given("travel", any(Speed::from_si(6 / 3.6))), given("speed", any(turns_per_minute(480)))});
  EXPECT_NEAR(w->si("ground"), 0.2083, 0.00005);
}

}  // namespace
}  // namespace flatwise::dynamics
