// What a definition states of a bearing reaches its figures, and what it does not is said to be assumed.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

#include "study/outcome.h"
#include "study/study_samples.h"

namespace flatwise::study {
namespace {

Shaft with(const std::function<void(Rotor&)>& change, Force along = {}) {
  ShaftSpec spec = five().spec();
  for (Rotor& rotor : spec.rotors) change(rotor);
  spec.loads.push_back({.force = newtons(1500), .direction = degrees(0), .along = along});
  return *Shaft::make(std::move(spec));
}
Shaft as_it_was() {
  return with([](Rotor&) {});
}
BearingTold told(const Shaft& shaft) {
  const Results<BearingTold> bearing = bearing_of(shaft, 2);
  EXPECT_TRUE(bearing.has_value()) << (bearing ? "" : say(bearing.error().front(), {}).read);
  return *bearing;
}
double of_turn(const Shaft& shaft, std::string_view output) { return told(shaft).turn->si(output); }

// Source: [ISO281]: life goes with the cube of the rating. Tolerance: 1e-9 relative.
TEST(StatedBearing, TwiceTheCataloguesRatingLivesEightTimesAsLong) {
  const auto rated = [](double kilonewtons) {
    return with([=](Rotor& r) {
      r.bearing.inside.dynamic_rating = newtons(1000 * kilonewtons);
      r.bearing.inside.static_rating = newtons(29'000);
    });
  };
  EXPECT_NEAR(of_turn(rated(80), "life") / of_turn(rated(40), "life"), 8, 8e-9);
}

// Source: [ISO281] table 12, factor a_1 at 95 %: 0.64. Tolerance: half its last digit.
TEST(StatedBearing, AStricterShareShortensTheLifeByThePublishedFactor) {
  const Shaft strict = with([](Rotor& r) { r.bearing.care.reliability = 0.95; });
  EXPECT_NEAR(of_turn(strict, "modified-least") / of_turn(as_it_was(), "modified-least"), 0.64, 0.005);
  EXPECT_DOUBLE_EQ(of_turn(strict, "life"), of_turn(as_it_was(), "life"));
}

// Source: [ISO281] nu_1 = 45000 n^-0.83 d_m^-0.5 under 1000 turns a minute; kappa = nu / nu_1. Tolerance: 1e-9 relative.
TEST(StatedBearing, TheOilCountsByWhatThisBearingNeeds) {
  const Shaft oiled = with([](Rotor& r) { r.bearing.care.viscosity = Viscosity::from_si(40e-6); });
  const BearingTold bearing = told(oiled);
  const double rpm = std::abs(bearing.turn->si("relative-speed")) * 30 / std::numbers::pi;
  const double pitch_mm = bearing.geometry->si("pitch-diameter") * 1e3;
  const double needed = 45000 * std::pow(rpm, -0.83) / std::sqrt(pitch_mm);
  EXPECT_NEAR(bearing.turn->si("viscosity-ratio") / (40 / needed), 1, 1e-9);
  EXPECT_EQ(bearing.turn->input("viscosity-ratio"), nullptr);
}

// Source: sense: a cleaner bearing lives longer, a load along the shaft shortens its life. Tolerance: none.
TEST(StatedBearing, DirtAndALoadAlongTheShaftCount) {
  const Shaft clean = with([](Rotor& r) { r.bearing.care.cleanliness = Cleanliness::high; });
  EXPECT_GT(of_turn(clean, "modified-greatest"), of_turn(as_it_was(), "modified-greatest"));
  const Shaft pushed = with([](Rotor&) {}, newtons(800));
  EXPECT_LT(of_turn(pushed, "life"), of_turn(as_it_was(), "life"));
  EXPECT_DOUBLE_EQ(told(pushed).turn->input("ground-along") != nullptr
                       ? std::get<AnyQuantity>(told(pushed).turn->input("ground-along")->value).si
                       : 0,
                   800);
}

// Source: [Shigley9] thick ring on a plain seat: raceway opens by 2 p d² d_r / (E (d_r² - d²)); the joint's pressure from the
// interference of seat and ring within their limits. Steel on steel, no bore through the seat: p = E δ (d_r² - d²)/(2 d d_r²)
// so that the raceway opens by δ d/d_r. Tolerance: 2 %, for the hole through the seat, which is small here.
TEST(StatedBearing, ATightSeatOpensTheInnerRaceway) {
  const auto seated = [](double over_um) {
    return with([=](Rotor& r) {
      r.seat = Limits{r.bearing.bore + micrometres(over_um), r.bearing.bore + micrometres(over_um)};
    });
  };
  const BearingTold bearing = told(seated(30));
  ASSERT_NE(bearing.fitted, nullptr);
  ASSERT_NE(bearing.fitted->input("seat-diameter"), nullptr);
  EXPECT_GT(bearing.fitted->si("inner-loss"), 0);
  EXPECT_LT(bearing.fitted->si("least"), told(as_it_was()).fitted->si("least"));
  EXPECT_NEAR(told(seated(-60)).fitted->si("inner-loss"), 0, 1e-12);
}

// Source: [LinearExpansion], alpha 11.5e-6 over the raceway; sense for its sign. Tolerance: none.
TEST(StatedBearing, AWarmerInnerRingTakesClearance) {
  const Shaft warm = with([](Rotor& r) { r.bearing.care.inner_warmer = kelvins(10); });
  EXPECT_LT(told(warm).fitted->si("greatest"), told(as_it_was()).fitted->si("greatest"));
}

TEST(StatedBearing, WhatWasCountedIsNotCalledEstimated) {
  const Shaft counted = with([](Rotor& r) {
    r.bearing.inside = {.balls = 9,
                        .ball_diameter = millimetres(13),
                        .pitch_diameter = millimetres(77),
                        .groove_inner = 0.515,
                        .groove_outer = 0.525};
  });
  const BearingTold bearing = told(counted);
  EXPECT_EQ(bearing.geometry->si("balls"), 9);
  EXPECT_DOUBLE_EQ(bearing.geometry->si("ball-diameter"), 0.013);
  EXPECT_DOUBLE_EQ(bearing.geometry->si("inner-groove"), 0.515 * 0.013);
  EXPECT_DOUBLE_EQ(bearing.geometry->si("outer-groove"), 0.525 * 0.013);
  EXPECT_TRUE(bearing.geometry->findings.empty());
  ASSERT_NE(bearing.play, nullptr);
  EXPECT_EQ(std::get<std::string>(bearing.play->input("balls-from")->value), "counted");
}

TEST(StatedBearing, SaysWhatNobodyStatedAndNothingElse) {
  EXPECT_EQ(not_stated(told(as_it_was()), {}).size(), 7U);
  const Shaft known = with([](Rotor& r) {
    r.bearing.inside = {.balls = 10,
                        .ball_diameter = millimetres(13.725),
                        .groove_inner = 0.52,
                        .groove_outer = 0.52,
                        .dynamic_rating = newtons(43'000),
                        .static_rating = newtons(29'000)};
    r.bearing.care = {.viscosity = Viscosity::from_si(60e-6),
                      .cleanliness = Cleanliness::slight,
                      .reliability = 0.9,
                      .inner_warmer = kelvins(5)};
    r.seat = Limits{r.bearing.bore, r.bearing.bore + micrometres(20)};
  });
  EXPECT_TRUE(not_stated(told(known), {}).empty());
}

}  // namespace
}  // namespace flatwise::study
