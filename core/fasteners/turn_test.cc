#include "core/fasteners/turn.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace flatwise::fasteners {
namespace {

/// docs/worked/W34: a shaft of 50 mm round in tubes of 80/60, both 1.6 m, steel of 206 GPa, thread of 3 mm pitch.
Stiffness worked_shaft() {
  const Sleeve shaft[] = {{metres(1.6), millimetres(50), Length{}}};
  return stiffness_of(gigapascals(206), shaft).value();
}
Stiffness worked_stack() {
  const Sleeve stack[] = {{metres(1.6), millimetres(80), millimetres(60)}};
  return stiffness_of(gigapascals(206), stack).value();
}

// Source: docs/worked/W34-turn-and-settling.md, by hand: 252.80 and 283.14 kN/mm, in line 133.55 kN/mm; 60 degrees on
// 3 mm: 0.5 mm, 66.78 kN over a snug of 30 kN.
// Tolerance: half of the last digit written.
TEST(PreloadFromTurn, MeetsTheWorkedShaft) {
  EXPECT_NEAR(worked_shaft().si(), 252.80e6, 5e3);
  EXPECT_NEAR(worked_stack().si(), 283.14e6, 5e3);
  const Turned turned{.pitch = millimetres(3),
                      .turned = degrees(60),
                      .turned_u = degrees(5),
                      .snug = {kilonewtons(25), kilonewtons(35)},
                      .shaft = worked_shaft(),
                      .stack = worked_stack(),
                      .stiffness_u = 0.15};
  const auto preload = preload_from_turn(turned).value();
  EXPECT_NEAR(preload.advance.si(), 0.5e-3, 1e-12);
  EXPECT_NEAR(preload.preload.si(), 96.78e3, 10);
  EXPECT_NEAR(preload.least.si(), 77.03e3, 10);
  EXPECT_NEAR(preload.greatest.si(), 118.19e3, 10);
  EXPECT_NEAR(preload.share_of_snug, 30 / 96.78, 1e-4);
}

// Source: the definition: the turn's force shortens the stack and stretches the shaft by the nut's advance together.
// Tolerance: 1e-12 relative.
TEST(PreloadFromTurn, SharesTheAdvanceBetweenShaftAndStack) {
  const Turned turned{.pitch = millimetres(4),
                      .turned = degrees(90),
                      .turned_u = degrees(0),
                      .snug = {},
                      .shaft = worked_shaft(),
                      .stack = worked_stack(),
                      .stiffness_u = 0};
  const auto preload = preload_from_turn(turned).value();
  const double taken_m = preload.preload.si() / turned.shaft.si() + preload.preload.si() / turned.stack.si();
  EXPECT_NEAR(taken_m, 1e-3, 1e-15);
  EXPECT_EQ(preload.least, preload.greatest);
}

// Source: [VDI2230] table 5 for load along the bolt, turned faces (10 to 40 um): thread 3, face 3, joint 2 um, from memory;
// W34: 12 joints, one nut face: 30 um, 4.007 kN of 96.78, 3.6 degrees.
// Tolerance: half of the last digit written.
TEST(Settling, MeetsTheWorkedShaft) {
  const Settling given{.faces = Faces::turned,
                       .joints = 12,
                       .nut_faces = 1,
                       .pitch = millimetres(3),
                       .preload = kilonewtons(96.78),
                       .shaft = worked_shaft(),
                       .stack = worked_stack()};
  const auto settled = settling(given).value();
  EXPECT_NEAR(settled.amount.si(), 30e-6, 1e-15);
  EXPECT_NEAR(settled.loss.si(), 4.007e3, 0.5);
  EXPECT_NEAR(settled.left, 0.9586, 5e-5);
  EXPECT_NEAR(settled.turn.degrees(), 3.6, 1e-9);
  Settling two = given;  // Nuts at both ends: a thread and a face more, 6 um.
  two.threads = two.nut_faces = 2;
  EXPECT_NEAR(settling(two)->amount.si(), 36e-6, 1e-15);
  Settling stiff = given;
  stiff.preload = kilonewtons(1);
  EXPECT_EQ(settling(stiff)->left, 0.0);
}

TEST(Repulled, AnswersWithAGuardBand) {
  const auto at = [](double turned, double u) {
    return judge_repulled({.turned = degrees(turned), .turned_u = degrees(u), .expected = degrees(4), .spread = 0.5})
        .value();
  };
  EXPECT_EQ(at(2, 1).state, RepulledState::held);
  EXPECT_EQ(at(5.5, 1).state, RepulledState::cannot_tell);
  EXPECT_EQ(at(9, 1).state, RepulledState::lost);
  EXPECT_EQ(at(9, 1).answer, Answer::out);
}

// Source: by hand: K 0.16, 0.15, 0.17, 0.16, 0.16: mean 0.16, s 0.0070711, t(0.975, 4) = 2.776445, half 0.0215063.
// Tolerance: 1e-6.
TEST(OwnNutFactor, NarrowsFromFivePulls) {
  std::vector<KnownPull> pulls;
  for (const double k : {0.16, 0.15, 0.17, 0.16, 0.16})
    pulls.push_back({newton_metres(k * 100e3 * 0.036), kilonewtons(100)});
  const auto own = own_nut_factor(pulls, millimetres(36), {0.10, 0.26}).value();
  EXPECT_TRUE(own.narrowed);
  EXPECT_NEAR(own.range.least, 0.16 - 0.0215063, 1e-6);
  EXPECT_NEAR(own.range.greatest, 0.16 + 0.0215063, 1e-6);
  pulls.pop_back();
  const auto few = own_nut_factor(pulls, millimetres(36), {0.10, 0.26}).value();
  EXPECT_FALSE(few.narrowed);
  EXPECT_EQ(few.range.greatest, 0.26);
}

TEST(Turn, RefusesAndNamesTheField) {
  Turned turned{.pitch = millimetres(3),
                .turned = degrees(60),
                .turned_u = degrees(5),
                .snug = {kilonewtons(25), kilonewtons(35)},
                .shaft = worked_shaft(),
                .stack = worked_stack(),
                .stiffness_u = 0.15};
  turned.turned = degrees(1801);
  EXPECT_EQ(preload_from_turn(turned).error().field, "turned");
  turned.turned = degrees(3);
  EXPECT_EQ(preload_from_turn(turned).error().field, "turned");
  turned.turned = degrees(30);
  turned.snug = {kilonewtons(35), kilonewtons(25)};
  EXPECT_EQ(preload_from_turn(turned).error().field, "snug-greatest");
  EXPECT_EQ(settling({.faces = Faces::rough,
                      .joints = 0,
                      .nut_faces = 0,
                      .pitch = millimetres(3),
                      .preload = kilonewtons(1),
                      .shaft = worked_shaft(),
                      .stack = worked_stack()})
                .error()
                .field,
            "nut-faces");
  EXPECT_EQ(judge_repulled({.turned = degrees(-1), .turned_u = {}, .expected = {}, .spread = 0}).error().field,
            "turned");
}

}  // namespace
}  // namespace flatwise::fasteners
