#include "core/dynamics/tine_gap.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <complex>
#include <limits>
#include <numbers>

#include "core/shaft/shaft_samples.h"

namespace flatwise::dynamics {
namespace {

TineRow row_of(double lean_degrees, double azimuth_degrees, double radius_mm = 230, double width_mm = 34) {
  return {millimetres(radius_mm), millimetres(width_mm), degrees(lean_degrees), degrees(azimuth_degrees)};
}
double closing_mm(const TineRow& a, const TineRow& b) { return tine_gap(millimetres(300), a, b)->closing.si() * 1e3; }
double phasor_mm(const TineRow& a, const TineRow& b) {
  const auto phasor = [](const TineRow& r) {
    return std::polar(r.tip_radius.si() * 1e3 * std::sin(r.lean.radians()), r.azimuth.radians());
  };
  return std::abs(phasor(a) - phasor(b));
}

// Source: geometry (W29): facing rotors close by 2 R sin a: 230 mm at 5°: 40.0916 mm; pitch 160 mm and tines 34 mm wide leave 85.9084 mm (3.38 in).
// Tolerance: half of the last digit given; 1e-12 of the closed form.
TEST(TineGap, OfFacingRotorsIsTheClosedForm) {
  const auto gap = tine_gap(millimetres(160), row_of(5, 0), row_of(5, 180)).value();
  EXPECT_NEAR(gap.closing.si(), 2 * 0.23 * std::sin(degrees(5).radians()), 1e-12 * 0.23);
  EXPECT_NEAR(gap.gap.si() * 1e3, 85.9084, 0.00005);
  EXPECT_NEAR(gap.gap.si() / 0.0254, 3.38, 0.005);
}

// Source: plane geometry by hand: a plane at lean a through the shaft's axis is met by the cylinder of tips at z = R t cos p / √(1 + t² cos² p),
// t = tan a. Of two a sixth of a turn apart the closing z(p + 30°) - z(p - 30°) is even about p = -90°, where the cosines are ±1/2: R t /
// √(1 + t²/4). The phasors' |R sin a (1 - e^{j 60°})| is R sin a. Their ratio 1 / (cos a √(1 + t²/4)) is 1.00286 at 5°, 1.01150 at 10°.
// Tolerance: half of the last digit given; 1e-9 of the closed form, the search's own.
TEST(TineGap, IsMoreThanThePhasorsSay) {
  const auto short_by = [](double lean) {
    return 100 * (closing_mm(row_of(lean, 0), row_of(lean, 60)) / phasor_mm(row_of(lean, 0), row_of(lean, 60)) - 1);
  };
  EXPECT_NEAR(short_by(5), 0.29, 0.005);
  EXPECT_NEAR(short_by(10), 1.15, 0.005);
  for (const double lean : {1.0, 5.0, 10.0, 20.0}) {
    const double a = lean * std::numbers::pi / 180, t = std::tan(a);
    EXPECT_NEAR(short_by(lean), 100 * (1 / (std::cos(a) * std::sqrt(1 + t * t / 4)) - 1), 1e-7) << lean;
  }
}

// Source: second method: the closing on a grid of a million angles, without the derivative.
// Tolerance: 1e-10 of the tip radius, the grid's own error.
TEST(TineGap, MeetsAPlainSearch) {
  const std::pair<TineRow, TineRow> pairs[] = {
      {row_of(5, 0), row_of(5, 60)},         {row_of(5, 10), row_of(2, 130, 200)},
      {row_of(10, 0), row_of(10, 120)},      {row_of(30, 0), row_of(12, 45, 180)},
      {row_of(5, 0), row_of(0, 0, 230, 20)}, {row_of(40, 77), row_of(41, 80, 250)}};
  for (const auto& [a, b] : pairs) {
    double best = -1;
    constexpr int kSteps = 1'000'000;
    for (int i = 0; i < kSteps; ++i) {
      const Angle at = radians(2 * std::numbers::pi * i / kSteps);
      best = std::max(
          best,
          (tine_place(a.tip_radius, a.lean, at - a.azimuth) - tine_place(b.tip_radius, b.lean, at - b.azimuth)).si());
    }
    EXPECT_NEAR(closing_mm(a, b) * 1e-3, best, 1e-10 * 0.23);
  }
}

// Source: rotors alike and in step never close: exactly nought. Straight rotors too.
// Tolerance: none.
TEST(TineGap, OfRotorsInStepIsThePitchLessAWidth) {
  EXPECT_EQ(tine_gap(millimetres(160), row_of(5, 30), row_of(5, 30))->closing, Length{});
  EXPECT_EQ(tine_gap(millimetres(160), row_of(0, 0), row_of(0, 180))->closing, Length{});
}

TEST(TineGap, GoesNegativeWhereTinesStrike) {
  EXPECT_LT(tine_gap(millimetres(70), row_of(5, 0), row_of(5, 180))->gap, Length{});
  EXPECT_GT(tine_gap(millimetres(75), row_of(5, 0), row_of(5, 180))->gap, Length{});
}

TEST(TineGap, RefusesAndNamesTheField) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(tine_gap(metres(nan), row_of(5, 0), row_of(5, 0)).error().field, "pitch");
  EXPECT_EQ(tine_gap(metres(1), row_of(50, 0), row_of(5, 0)).error().field, "lean");
  EXPECT_EQ(tine_gap(metres(1), row_of(5, 0), row_of(nan, 0)).error().field, "other-lean");
  EXPECT_EQ(tine_gap(metres(1), row_of(5, 0), row_of(5, 0, 230, -1)).error().field, "other-tine-width");
  EXPECT_EQ(tine_gap(metres(1), row_of(5, 0, nan), row_of(5, 0)).error().field, "tip-radius");
}

// Source: the sample shaft, pitch 160 mm: facing 85.9084 mm between all neighbours; its third rotor turned a flat makes its gaps wider.
// Tolerance: 1e-9 m.
TEST(TineGaps, OfAShaftNameTheNeighbours) {
  SampleShaft sample;
  sample.rotors = 4;
  const Shaft shaft = Shaft::make(sample_shaft(sample)).value();
  const std::vector<Angle> facing{degrees(0), degrees(180), degrees(0), degrees(180)},
      turned{degrees(0), degrees(180), degrees(60), degrees(180)};
  const auto gaps = tine_gaps(shaft, facing);
  ASSERT_EQ(gaps.size(), 3U);
  for (const auto& g : gaps) EXPECT_NEAR(g.gap.gap.si(), 0.0859084, 1e-7);
  EXPECT_EQ(gaps[2].rotor, 3);
  const auto after = tine_gaps(shaft, turned);
  EXPECT_NEAR(after[0].gap.gap.si(), gaps[0].gap.gap.si(), 1e-12);
  EXPECT_GT(after[1].gap.gap, gaps[1].gap.gap);
  EXPECT_GT(after[2].gap.gap, gaps[2].gap.gap);
}

// Properties: turning both changes nothing; facing is the worst case of alike rotors; inches agree; swapping sides keeps the gap.
// Tolerance: 1e-12 of the tip radius, as stated.
TEST(TineGap, PropertiesHold) {
  EXPECT_TRUE(rc::check("tine gap", [] {
    const double lean = *rc::gen::inRange(1, 30), other = *rc::gen::inRange(1, 30), at = *rc::gen::inRange(0, 360),
                 turn = *rc::gen::inRange(0, 360);
    const TineRow a = row_of(lean, 0), b = row_of(other, at);
    const double here = closing_mm(a, b);
    RC_ASSERT(std::abs(closing_mm(row_of(lean, turn), row_of(other, at + turn)) - here) <= 1e-12 * 230 * 4);
    RC_ASSERT(std::abs(closing_mm(b, a) - here) <= 1e-12 * 230 * 4);
    RC_ASSERT(closing_mm(row_of(lean, 0), row_of(lean, at)) <= closing_mm(row_of(lean, 0), row_of(lean, 180)) + 1e-9);
    RC_ASSERT(here >= phasor_mm(a, b) - 1e-9 || lean != other);
  }));
}

}  // namespace
}  // namespace flatwise::dynamics
