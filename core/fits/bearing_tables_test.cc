#include "core/fits/bearing_tables.h"

#include <gtest/gtest.h>
#include <cmath>

#include "core/fits/interference.h"
#include "core/fits/iso286.h"
#include "tests/support/test_table.h"

namespace flatwise::fits {
namespace {

constexpr double kExactUm = 1e-6;
double um(Length v) { return v.si() * 1e6; }

ToleranceClass tolerance_of(const std::string& name) {
  return name == "p6" ? ToleranceClass::p6 : name == "p5" ? ToleranceClass::p5 : ToleranceClass::normal;
}

// What a row of fits_iso492.csv asks for, at one size.
double published_quantity(const TestRow& row, Length size) {
  const auto tolerance = tolerance_of(row.at("class"));
  if (row.at("quantity") == "runout") return um(outer_ring_runout(size, tolerance).value());
  const auto limits =
      row.at("quantity") == "bore" ? ring_bore_limits(size, tolerance) : ring_outside_limits(size, tolerance);
  EXPECT_NEAR(um(limits.value().greatest - size), 0.0, kExactUm);
  return um(size - limits.value().least);
}

// Source: ISO 492, rows of tests/data/fits_iso492.csv, each with whether it was read or remembered.
// Tolerance: exact as published; a picometre for the double. Checked at the end and just over the start of each step.
TEST(RingLimits, AreThePublishedTables) {
  for (const auto& row : test_table("fits_iso492.csv")) {
    const double over = number(row, "over_mm");
    EXPECT_NEAR(published_quantity(row, millimetres(number(row, "to_mm"))), number(row, "um"), kExactUm)
        << row.at("id");
    if (over >= 3) {
      EXPECT_NEAR(published_quantity(row, millimetres(over + 0.001)), number(row, "um"), kExactUm) << row.at("id");
    }
  }
}

ClearanceGroup group_of(const std::string& name) {
  if (name == "C2") return ClearanceGroup::c2;
  if (name == "C3") return ClearanceGroup::c3;
  if (name == "C4") return ClearanceGroup::c4;
  return name == "C5" ? ClearanceGroup::c5 : ClearanceGroup::cn;
}

// Source: ISO 5753-1, rows of tests/data/fits_iso5753.csv, each with whether it was read or remembered.
// Tolerance: exact as published.
TEST(RadialClearance, IsThePublishedTable) {
  for (const auto& row : test_table("fits_iso5753.csv")) {
    for (double at : {number(row, "over_mm") + 0.001, number(row, "to_mm")}) {
      const auto found = radial_clearance(millimetres(at), group_of(row.at("group")));
      ASSERT_TRUE(found) << row.at("id");
      EXPECT_NEAR(um(found->least), number(row, "least_um"), kExactUm) << row.at("id");
      EXPECT_NEAR(um(found->greatest), number(row, "greatest_um"), kExactUm) << row.at("id");
    }
  }
}

TEST(RadialClearance, GrowsFromGroupToGroup) {
  for (double bore : {9.0, 15.0, 20.0, 25.0, 35.0, 45.0, 60.0, 70.0, 90.0, 110.0, 130.0, 150.0, 170.0, 190.0}) {
    Limits before{};
    for (auto group :
         {ClearanceGroup::c2, ClearanceGroup::cn, ClearanceGroup::c3, ClearanceGroup::c4, ClearanceGroup::c5}) {
      const auto now = radial_clearance(millimetres(bore), group).value();
      EXPECT_GT(now.greatest, now.least);
      if (group != ClearanceGroup::c2) {
        EXPECT_GT(now.least, before.least);
        EXPECT_GT(now.greatest, before.greatest);
      }
      before = now;
    }
  }
}

TEST(BearingTables, RefuseSizesTheyDoNotHave) {
  for (double bad : {2.999, 500.001, 0.0, -90.0, std::nan("")}) {
    EXPECT_FALSE(ring_outside_limits(millimetres(bad), ToleranceClass::normal));
    EXPECT_FALSE(ring_bore_limits(millimetres(bad), ToleranceClass::p6));
    EXPECT_FALSE(outer_ring_runout(millimetres(bad), ToleranceClass::p5));
  }
  EXPECT_EQ(ring_outside_limits(metres(1e300), ToleranceClass::normal).error().field, "outside");
  EXPECT_EQ(radial_clearance(millimetres(200.001), ClearanceGroup::cn).error().code.id(), "fits.size_out_of_range");
  EXPECT_EQ(radial_clearance(millimetres(5), ClearanceGroup::c4).error().code.id(), "fits.no_group_at_bore");
}

struct FitCase {
  const char* hole;
  double nominal_mm, least_um, greatest_um;
};

// Source: ISO 286-2 and ISO 492 by hand: Normal ring 120 (0/-15) in N7 (-10/-45) is -5 to 45 um, in M7
// (0/-35) -15 to 35.
// Tolerance: a thousandth of a nanometre for the differences of doubles near 0.1 m.
TEST(Interference, OfNormalRingInTabulatedHole) {
  for (const auto& fit : {FitCase{"N7", 120, -5, 45}, FitCase{"M7", 120, -15, 35}}) {
    const Mating mating{.hole = limits_of_fit(millimetres(fit.nominal_mm), fit.hole).value(),
                        .shaft = ring_outside_limits(millimetres(fit.nominal_mm), ToleranceClass::normal).value()};
    const auto range = interference(mating).value();
    EXPECT_NEAR(um(range.least), fit.least_um, kExactUm);
    EXPECT_NEAR(um(range.greatest), fit.greatest_um, kExactUm);
    EXPECT_NEAR(um(range.mean), 0.5 * (fit.least_um + fit.greatest_um), kExactUm);
  }
}

// Source: ISO 286-2 and ISO 492 by hand: ring bore 60 (0/-15) on m6 (+30/+11) is 11 to 45 um, on h6 (0/-19) -19 to 15.
// Tolerance: as above.
TEST(Interference, OfTabulatedShaftInNormalRing) {
  for (const auto& fit : {FitCase{"m6", 60, 11, 45}, FitCase{"h6", 60, -19, 15}}) {
    const Mating mating{.hole = ring_bore_limits(millimetres(fit.nominal_mm), ToleranceClass::normal).value(),
                        .shaft = limits_of_fit(millimetres(fit.nominal_mm), fit.hole).value()};
    const auto range = interference(mating).value();
    EXPECT_NEAR(um(range.least), fit.least_um, kExactUm);
    EXPECT_NEAR(um(range.greatest), fit.greatest_um, kExactUm);
  }
}

TEST(Interference, RefusesReversedAndUnreadableLimits) {
  Mating mating{.hole = {millimetres(90), millimetres(89)}, .shaft = around(millimetres(90), micrometres(5))};
  EXPECT_EQ(interference(mating).error().field, "hole");
  mating = {.hole = around(millimetres(90), micrometres(5)), .shaft = around(metres(std::nan("")), micrometres(5))};
  EXPECT_EQ(interference(mating).error().field, "shaft");
}

TEST(Flattening, TakesOffTheLossButNeverTurnsAFitIntoClearance) {
  EXPECT_EQ(after_flattening(micrometres(20), micrometres(5)), micrometres(20) - micrometres(5));
  EXPECT_EQ(after_flattening(micrometres(4), micrometres(5)), Length{});
  EXPECT_EQ(after_flattening(micrometres(-4), micrometres(5)), micrometres(-4));
}

// Source: DIN 7190-1 rule by hand: 0.8 (1.6 + 6.3) = 6.32 um.
// Tolerance: 4 eps.
TEST(Flattening, LossIsEightTenthsOfBothHeights) {
  EXPECT_NEAR(um(flattening_loss({.hole = micrometres(6.3), .shaft = micrometres(1.6)}).value()), 6.32, 1e-14 * 6.32);
  EXPECT_EQ(flattening_loss({.hole = micrometres(-1), .shaft = micrometres(1)}).error().field, "roughness.hole");
}

}  // namespace
}  // namespace flatwise::fits
