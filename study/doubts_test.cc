#include <gtest/gtest.h>

#include "study/study_samples.h"

namespace flatwise::study {
namespace {

// Source: closed form; the couple of rotors that are held goes as the square of the speed: 1 % of it is 2 % of couple.
// Tolerance: 1e-4 of it, the curvature of the square.
TEST(StudyDoubts, EveryWaysCoupleCarriesTheDoubtOfTheDefinition) {
  const ShaftSpec plain = sample_shaft({.rotors = 5});
  ShaftSpec above = plain, below = plain, spec = plain;
  above.speed = radians_per_second(1.01 * plain.speed.radians_per_second());
  below.speed = radians_per_second(0.99 * plain.speed.radians_per_second());
  spec.doubts["shaft.speed"] = {.meaning = "definition.field.shaft.speed",
                                .value = any(plain.speed),
                                .u = {0.01 * plain.speed.radians_per_second(), std::nullopt, 1},
                                .above = std::make_shared<const ShaftSpec>(above),
                                .below = std::make_shared<const ShaftSpec>(below)};
  const Order two{.ways = {stands("Facing", "facing"), stands("Thirds", "step 2")}};
  const Study s = done(two, *Shaft::make(spec));
  for (const Cell& cell : row(s, RowKey::couple).cells) {
    ASSERT_TRUE(cell.value && cell.u);
    EXPECT_NEAR(cell.u->standard_si / cell.value->si, 0.02, 2e-6);
    EXPECT_NE(said(cell, {}).find(" ± "), std::string::npos);
  }
  const auto better = [](const Message& m) { return m.code.id() == "doubt.measure_first"; };
  EXPECT_TRUE(std::ranges::any_of(s.notes, better));
  const Study exact = done(two, *Shaft::make(plain));
  EXPECT_FALSE(row(exact, RowKey::couple).cells.front().u);
  EXPECT_FALSE(std::ranges::any_of(exact.notes, better));
}

// A way that states the speed does not wait for the definition's: nothing of its doubt is left in it.
TEST(StudyDoubts, WhatAWayStatesIsNotDoubted) {
  const ShaftSpec plain = sample_shaft({.rotors = 5});
  ShaftSpec above = plain, spec = plain;
  above.speed = radians_per_second(1.01 * plain.speed.radians_per_second());
  spec.doubts["shaft.speed"] = {.meaning = "definition.field.shaft.speed",
                                .value = any(plain.speed),
                                .u = {1, std::nullopt, 2},
                                .above = std::make_shared<const ShaftSpec>(above)};
  const Study s =
      done({.ways = {way("Slow", "speed", "300 /min"), way("Fast", "speed", "500 /min")}}, *Shaft::make(spec));
  EXPECT_TRUE(s.doubts.empty());
}

}  // namespace
}  // namespace flatwise::study
