// What doubts of the definition make of an arrangement and of a shaft that bends: against closed forms.
#include <gtest/gtest.h>

#include <functional>

#include "core/shaft/shaft_samples.h"
#include "job/arrange.h"
#include "job/bending_doubts.h"

namespace flatwise::job {
namespace {

Shaft doubted(const ShaftSpec& plain, const std::string& path, const std::string& meaning,
              const std::function<void(ShaftSpec&, double factor)>& scale, double share) {
  ShaftSpec above = plain, below = plain, spec = plain;
  scale(above, 1 + share);
  scale(below, 1 - share);
  spec.doubts[path] = {.meaning = meaning,
                       .value = any_ratio(1),
                       .u = {share, std::nullopt, 2 * share},
                       .above = std::make_shared<const ShaftSpec>(above),
                       .below = std::make_shared<const ShaftSpec>(below)};
  return *Shaft::make(std::move(spec));
}

// Source: closed form; rotors that are held wobble with a couple of (I_p - I_t) Ω² sin α cos α: 1 % of speed is 2 % of couple.
// Tolerance: 1e-4 of it; half the sum of both steps' squares holds their curvature, (0.01)⁴.
TEST(PatternDoubts, ACoupleGoesAsTheSquareOfTheSpeed) {
  const Shaft shaft = doubted(
      sample_shaft({.rotors = 5}), "shaft.speed", "definition.field.shaft.speed",
      [](ShaftSpec& spec, double f) { spec.speed = radians_per_second(f * spec.speed.radians_per_second()); }, 0.01);
  dynamics::PatternWish facing;  // Of five rotors that face one is left over.
  for (int rotor = 1; rotor <= 5; ++rotor) facing.stays.push_back({rotor, rotor % 2 == 1 ? 1 : 4});
  const auto arranged = arrange(shaft, facing);
  ASSERT_TRUE(arranged);
  int with = 0;
  for (std::size_t i = 0; i < arranged->rows.size(); ++i) {
    const doubt::ToldDoubt* told = arranged->doubt_of(i, "couple");
    const double couple = arranged->rows[i].left.couple.size.si();
    EXPECT_EQ(told != nullptr, couple > 0);
    if (told == nullptr) continue;
    ++with;
    EXPECT_NEAR(told->doubt.u.standard_si / couple, 0.02, 2e-6);
    EXPECT_EQ(told->doubt.shares.front().field, "shaft.speed");
  }
  EXPECT_GT(with, 0);
  EXPECT_EQ(arranged->says.back().code.id(), "doubt.measure_first");
}

// Source: closed form; where the bar alone gives, every critical speed goes as the root of Young's modulus: 1 % of E is 0.5 % of it,
// and the forces at rest of a shaft on two hangers stay as they are.
// Tolerance: 1e-4 of it, the root's curvature and the solver.
TEST(BendingDoubts, ACriticalSpeedGoesAsTheRootOfTheModulus) {
  const Shaft shaft = doubted(
      sample_shaft({.rotors = 5}), "bar.youngs_modulus", "definition.field.bar.youngs_modulus",
      [](ShaftSpec& spec, double f) { spec.bar.youngs_modulus = f * spec.bar.youngs_modulus; }, 0.01);
  const auto told = bending_doubts(shaft);
  int speeds = 0;
  for (const doubt::ToldDoubt& one : told) {
    if (one.figure.value.kind != Kind::angular_speed) {
      EXPECT_FALSE(one.figure.key.ends_with("rest")) << one.figure.key;
      continue;
    }
    ++speeds;
    EXPECT_NEAR(one.doubt.u.standard_si / one.figure.value.si, 0.005, 5e-6) << one.figure.key;
  }
  EXPECT_EQ(speeds, 2);
}

// Source: statics; two hangers carry all that hangs on the shaft: their forces move by what the masses add, g each kilogram.
// Tolerance: 1e-6 of it, rounding of the beam.
TEST(BendingDoubts, TheHangersCarryWhatTheRotorsWeighMore) {
  const Shaft shaft = doubted(
      sample_shaft({.rotors = 5}), "rotor.mass", "definition.field.rotor.mass",
      [](ShaftSpec& spec, double f) {
        for (Rotor& rotor : spec.rotors) rotor.mass = f * rotor.mass;
      },
      0.01);
  double moved = 0;
  for (const doubt::ToldDoubt& one : bending_doubts(shaft))
    if (one.figure.key.ends_with("rest")) moved += one.doubt.shares.front().moves_si;
  EXPECT_NEAR(moved, 0.01 * 5 * 11.6 * 9.80665, 1e-5);
}

TEST(BendingDoubts, NothingDoubtedNothingTold) {
  EXPECT_TRUE(bending_doubts(*Shaft::make(sample_shaft({.rotors = 5}))).empty());
}

}  // namespace
}  // namespace flatwise::job
