#include "core/fits/compound.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "core/fits/joint_samples.h"

namespace flatwise::fits {
namespace {

/// Shaft, adapter half, inner ring up to its raceway: docs/worked/W31.
std::vector<Tube> shaft_half_ring() {
  return {{millimetres(0), millimetres(50), kSteel},
          {millimetres(50), millimetres(65), kSteel},
          {millimetres(65), millimetres(77), kSteel}};
}

// Source: [Shigley9] eqs. 7-39 and 7-40: solid shaft of 50 in a hub of 100 mm, 50 um: 77.625 MPa (W1).
// Tolerance: 1e-12 relative.
TEST(Compound, OfTwoIsThePressOfTwo) {
  const std::vector<Tube> tubes{{millimetres(0), millimetres(50), kSteel}, {millimetres(50), millimetres(100), kSteel}};
  const Length fit[] = {micrometres(50)};
  const auto two = compound(tubes, fit).value();
  EXPECT_NEAR(two.pressure[0].si(), 77.625e6, 77.625e6 * 1e-12);
  EXPECT_EQ(two.inside_change[0], Length{});
}

// Source: docs/worked/W31-ring-on-half.md, by hand and there by numpy's linear solver: ring on half + 30 um alone: 9.691985
// MPa, the half's bore closes by 11.468 um, the raceway grows by 17.878 um; both joints with 10 and 30 um: 25.700636 and
// 17.249156 MPa; 5 um of clearance at the
// shaft, closed by 60 um at the ring: 21.471983 and 25.697723 MPa.
// Tolerance: the digits written.
TEST(Compound, MeetsTheWorkedHalf) {
  const Length loose[] = {micrometres(-30), micrometres(30)};
  const auto free = compound(shaft_half_ring(), loose).value();
  EXPECT_EQ(free.pressure[0], Pressure{});
  EXPECT_NEAR(free.pressure[1].si(), 9.691985e6, 1);
  EXPECT_NEAR(free.inside_change[1].si(), -11.467797e-6, 1e-12);
  EXPECT_NEAR(free.outside_change[2].si(), 17.878054e-6, 1e-12);
  EXPECT_NEAR(free.clearance[0].si(), 18.532203e-6, 1e-12);
  const Length tight[] = {micrometres(10), micrometres(30)};
  const auto both = compound(shaft_half_ring(), tight).value();
  EXPECT_NEAR(both.pressure[0].si(), 25.700636e6, 1);
  EXPECT_NEAR(both.pressure[1].si(), 17.249156e6, 1);
  const Length closing[] = {micrometres(-5), micrometres(60)};
  const auto closed = compound(shaft_half_ring(), closing).value();
  EXPECT_NEAR(closed.pressure[0].si(), 21.471983e6, 1);
  EXPECT_NEAR(closed.pressure[1].si(), 25.697723e6, 1);
  EXPECT_EQ(closed.clearance[0], Length{});
}

// Source: closed form: growth of a raceway over a hollow shaft, delta (d/di) (1 - (d0/d)^2)/(1 - (d0/di)^2) for one metal:
// d0 = 25, d = 50, di = 62 mm, 30 um: 21.6682199 um.
// Tolerance: half of the last digit given.
TEST(Compound, GrowsARacewayOverAHollowShaft) {
  const std::vector<Tube> tubes{{millimetres(25), millimetres(50), kSteel}, {millimetres(50), millimetres(62), kSteel}};
  const Length fit[] = {micrometres(30)};
  EXPECT_NEAR(compound(tubes, fit)->outside_change[1].si(), 21.6682199e-6, 5e-14);
}

// Property: what is left between neighbours is what was given: nothing where they press, the clearance where not.
// Source: the condition of contact itself. Tolerance: 1e-12 m.
TEST(Compound, LeavesNoOverlap) {
  EXPECT_TRUE(rc::check("compound", [] {
    std::vector<Tube> tubes;
    std::vector<Length> fits;
    double at_mm = *rc::gen::inRange(0, 30);
    const int count = *rc::gen::inRange(2, 6);
    for (int i = 0; i < count; ++i) {
      const double next_mm = at_mm + *rc::gen::inRange(3, 30);
      tubes.push_back({millimetres(at_mm),
                       millimetres(next_mm),
                       {gigapascals(*rc::gen::inRange(60, 210)), *rc::gen::inRange(20, 35) / 100.0}});
      at_mm = next_mm;
      if (i > 0) fits.push_back(micrometres(*rc::gen::inRange(-20, 30)));
    }
    const auto all = compound(tubes, fits).value();
    for (std::size_t j = 0; j < fits.size(); ++j) {
      const double left = (fits[j] - all.inside_change[j + 1] + all.outside_change[j]).si();
      RC_ASSERT(all.pressure[j] >= Pressure{});
      RC_ASSERT(std::abs(left + all.clearance[j].si()) < 1e-12);
    }
  }));
}

TEST(Compound, RefusesAndNamesTheField) {
  auto tubes = shaft_half_ring();
  const Length fits[] = {micrometres(5), micrometres(5)};
  EXPECT_EQ(compound(std::span{tubes}.first(1), {}).error().code.id(), "fits.tube_count");
  tubes[1].inside = millimetres(52);
  EXPECT_EQ(compound(tubes, fits).error().code.id(), "fits.tubes_apart");
  tubes[1].inside = millimetres(70);
  EXPECT_EQ(compound(tubes, fits).error().field, "tubes[2].inside");
  const Length much[] = {millimetres(5), micrometres(5)};
  EXPECT_EQ(compound(shaft_half_ring(), much).error().field, "fits[1]");
}

}  // namespace
}  // namespace flatwise::fits
