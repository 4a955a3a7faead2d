#include "core/doubt/of_shaft.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/shaft/shaft_samples.h"

namespace flatwise::doubt {
namespace {

/// A shaft whose speed, mass of rotor 1 and load stand for the inputs of a sum: SI values given, doubted so.
struct Doubted {
  double value, standard;
  bool anywhere = false;
};
ShaftSpec plain_spec(const std::vector<Doubted>& of) {
  ShaftSpec spec = sample_shaft({.rotors = static_cast<int>(of.size())});
  for (std::size_t i = 0; i < of.size(); ++i) spec.rotors[i].mass = kilograms(of[i].value);
  return spec;
}

Shaft shaft_with(const std::vector<Doubted>& of) {
  ShaftSpec spec = plain_spec(of);
  for (std::size_t i = 0; i < of.size(); ++i) {
    ShaftSpec above = plain_spec(of), below = plain_spec(of);
    above.rotors[i].mass = kilograms(of[i].value + of[i].standard);
    below.rotors[i].mass = kilograms(of[i].value - of[i].standard);
    spec.doubts["rotors[" + std::to_string(i) + "].mass"] = {
        .meaning = "definition.field.rotor.mass",
        .value = any(kilograms(of[i].value)),
        .u = {of[i].standard, std::nullopt, 2 * of[i].standard},
        .anywhere = of[i].anywhere,
        .above = std::make_shared<const ShaftSpec>(std::move(above)),
        .below = std::make_shared<const ShaftSpec>(std::move(below))};
  }
  return *Shaft::make(std::move(spec));
}
double mass(const Shaft& shaft, int rotor) { return shaft.rotor(rotor).mass.si(); }

// Source: JCGM 101:2008, 9.2.2, table 2 (from memory): four normals of standard uncertainty 1 give u = 2.0 and ±3.92.
// Tolerance: as published, half a unit of its last digit.
TEST(OfShaft, AddsFourNormals) {
  const Shaft shaft = shaft_with({{10, 1}, {10, 1}, {10, 1}, {10, 1}});
  const auto out =
      of_shaft(shaft, [](const Shaft& s) { return std::vector{mass(s, 1) + mass(s, 2) + mass(s, 3) + mass(s, 4)}; });
  ASSERT_TRUE(out[0]);
  EXPECT_NEAR(out[0]->u.standard_si, 2.0, 1e-9);
  EXPECT_NEAR(out[0]->u.expanded_si, 3.92, 0.005);
  EXPECT_FALSE(out[0]->drawn);
  EXPECT_NEAR(out[0]->shares[0].part, 0.25, 1e-9);
}

// Source: JCGM 101:2008, 9.2.3, table 3 (from memory): four rectangles of standard uncertainty 1 give ±3.88; 9.2.4, table 4: one of
// them ten times as wide ±17.0.
// Tolerance: 2 % of U, what 20 000 draws leave.
TEST(OfShaft, DrawsRectangles) {
  const auto sum = [](const Shaft& s) { return std::vector{mass(s, 1) + mass(s, 2) + mass(s, 3) + mass(s, 4)}; };
  const auto out = of_shaft(shaft_with({{99, 1, true}, {99, 1, true}, {99, 1, true}, {99, 1, true}}), sum);
  EXPECT_NEAR(out[0]->u.expanded_si, 3.88, 0.08);
  const auto wide = of_shaft(shaft_with({{99, 1, true}, {99, 1, true}, {99, 1, true}, {99, 10, true}}), sum);
  EXPECT_NEAR(wide[0]->u.expanded_si, 17.0, 0.34);
  EXPECT_GT(wide[0]->shares[0].part, 0.9);
}

// What is nought as defined and grows to either side has no half difference: only both steps show it.
// Source: closed form; |z| of a normal has its 2.5 and 97.5 % points at 0.0313 and 2.2414 (scipy.stats.halfnorm.ppf).
// Tolerance: 2 % of the interval, what 20 000 draws leave.
TEST(OfShaft, SeesWhatBendsAtItsLeast) {
  const auto out =
      of_shaft(shaft_with({{10, 0.5}}), [](const Shaft& s) { return std::vector{std::abs(mass(s, 1) - 10)}; });
  ASSERT_TRUE(out[0] && out[0]->drawn);
  EXPECT_NEAR(out[0]->drawn->high_si, 0.5 * 2.2414, 0.022);
  EXPECT_NEAR(out[0]->drawn->low_si, 0.5 * 0.0313, 0.01);
  EXPECT_NEAR(out[0]->u.expanded_si, 0.5 * (2.2414 - 0.0313) / 2, 0.022);
}

// Source: closed form; y = 3 a - 4 b with u 0.1 each: parts 9/25 and 16/25; with b known half as loosely 1.96 · hypot(0.3, 0.2).
// Tolerance: 1e-8; the factor is a published quantile.
TEST(OfShaft, SaysWhatToMeasureBetter) {
  const auto told = told_of_shaft(shaft_with({{10, 0.1}, {20, 0.1}}), [](const Shaft& s) {
    return std::vector<NamedFigure>{{.key = "left",
                                     .name = Word{"doubt.figure.couple"},
                                     .value = any(newton_metres(3 * mass(s, 1) - 4 * mass(s, 2)))},
                                    {.key = "still", .name = Word{"doubt.figure.plane"}, .value = any(newtons(7))}};
  });
  ASSERT_EQ(told.size(), 1U);
  const FigureDoubt& doubt = told[0].doubt;
  ASSERT_EQ(doubt.shares.size(), 2U);
  EXPECT_EQ(doubt.shares[0].field, "rotors[1].mass");
  EXPECT_NEAR(doubt.shares[0].moves_si, -0.4, 1e-9);
  EXPECT_NEAR(doubt.shares[0].part, 0.64, 1e-9);
  EXPECT_NEAR(doubt.shares[0].halved_si, 1.959963985 * std::hypot(0.3, 0.2), 1e-8);
  const auto all = says(told[0]);
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].code.id(), "doubt.told");
  EXPECT_EQ(all[1].code.id(), "doubt.measure_first");
}

// Source: definition; the step that holds is the standard uncertainty itself.
// Tolerance: 1e-9, rounding.
TEST(OfShaft, WhatHoldsToOneSideOnlyIsMarked) {
  const auto out = of_shaft(shaft_with({{10, 1}}), [](const Shaft& s) {
    return std::vector{mass(s, 1) > 10.5 ? std::nan("") : mass(s, 1), 7.0, std::nan("")};
  });
  ASSERT_TRUE(out[0]);
  EXPECT_TRUE(out[0]->one_sided);
  EXPECT_NEAR(out[0]->u.standard_si, 1, 1e-9);
  EXPECT_FALSE(out[1]);
  EXPECT_FALSE(out[2]);
}

TEST(OfShaft, WithoutDoubtNothingIsWorkedOut) {
  const auto out = of_shaft(*Shaft::make(sample_shaft({})), [](const Shaft&) -> std::vector<double> {
    ADD_FAILURE();
    return {};
  });
  EXPECT_TRUE(out.empty());
}

}  // namespace
}  // namespace flatwise::doubt
