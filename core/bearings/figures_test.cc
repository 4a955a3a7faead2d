// The figures of the play: the way there and back, what doubt does, and what is said beside a new bearing.
#include "core/bearings/figures.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/figures.h"

namespace flatwise::bearings {
namespace {

const FigureSpec& spec_of(std::string_view name) { return figure_named(figures(), name); }
Results<Working> example_with(std::string_view figure, const std::vector<std::string_view>& changes) {
  return flatwise::example_with(spec_of(figure), changes);
}

// Source: a bearing worked by hand with the formulas: 55 x 100, ten balls of 14.288 mm, groove 0.52, dial at 4 5/8 in; 0.0040 in
// of clearance swing 0.0572 in. Tolerance: a hundredth of a thousandth of an inch.
TEST(ClearanceFromPlay, OfAWornBearing) {
  const auto worn = example_with("clearance-from-play", {"swing=0.0572 in", "swing-u=0.002 in"});
  ASSERT_TRUE(worn);
  EXPECT_NEAR(worn->si("clearance") / 25.4e-6, 4.0, 0.01);
  EXPECT_LT(worn->si("clearance-least"), worn->si("clearance"));
  EXPECT_GT(worn->si("clearance-greatest"), worn->si("clearance"));
}

// Source: the other figure. Tolerance: 1 %, what least and greatest of the tilt factor differ from its mean.
TEST(ClearanceFromPlay, TurnsRimPlayRound) {
  for (const char* hub : {"hub=centred", "hub=free"}) {
    const auto play = example_with("rim-play", {"clearance-least=30 µm", "clearance-greatest=30 µm", hub});
    ASSERT_TRUE(play);
    const double middle = 0.5 * (play->si("swing-least") + play->si("swing-greatest")) * 1e3;
    const std::string swing = "swing=" + std::to_string(middle) + " mm";
    const auto back = example_with("clearance-from-play", {swing, hub});
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->si("clearance") * 1e6, 30, 0.6) << hub;
  }
}

// Source: the other figure. Tolerance: 2.5 % of the clearance, over twice what the middle of least and
// greatest of the tilt factor differs from its mean.
TEST(ClearanceFromPlay, TurnsRimPlayRoundWhereTheRotorHung) {
  for (const char* push : {"push=0 N", "push=5 N", "push=40 N"}) {
    const auto play = example_with(
        "rim-play", {"clearance-least=30 µm", "clearance-greatest=30 µm", "held=hanging", "weight=200 N", push});
    ASSERT_TRUE(play);
    const double middle = 0.5 * (play->si("swing-least") + play->si("swing-greatest")) * 1e3;
    const std::string swing = "swing=" + std::to_string(middle) + " mm";
    const auto back = example_with("clearance-from-play", {swing, "held=hanging", "weight=200 N", push});
    ASSERT_TRUE(back);
    EXPECT_NEAR(back->si("clearance") * 1e6, 30, 0.75) << push;
    EXPECT_NEAR(back->si("share"), play->si("share"), 0.01) << push;
  }
}

// Source: derivation: unpushed the share is 1/sqrt 2 at any clearance, so that the clearance is that of a swing sqrt 2 times as wide.
// Tolerance: 0.01 um, the digits of the swing.
TEST(ClearanceFromPlay, OfAHangingRotorIsThatOfAWiderSwing) {
  const auto hung = example_with("clearance-from-play", {"swing=1 mm", "held=hanging", "weight=200 N"});
  const auto carried = example_with("clearance-from-play", {"swing=1.414213562 mm"});
  ASSERT_TRUE(hung && carried);
  EXPECT_NEAR(hung->si("clearance") * 1e6, carried->si("clearance") * 1e6, 0.01);
  EXPECT_NEAR(hung->si("share"), std::sqrt(0.5), 1e-9);
  EXPECT_EQ(carried->si("share"), 1.0);
  EXPECT_TRUE(says(hung, "bearings.play_hung_unpushed"));
  EXPECT_TRUE(
      says(example_with("clearance-from-play", {"held=hanging", "weight=200 N", "push=40 N"}), "bearings.play_hung"));
}

// Source: sense of the thing: a weak push by hand tells less than a strong one, and neither as much as a sling.
TEST(ClearanceFromPlay, IsDoubtedMoreTheWeakerTheHangingRotorWasPushed) {
  double before = 0;
  for (const char* push : {"push=1 kN", "push=40 N", "push=10 N", "push=0 N"}) {
    const auto hung = example_with("clearance-from-play", {"held=hanging", "weight=200 N", push});
    ASSERT_TRUE(hung) << push;
    const double wide = (hung->si("clearance-greatest") - hung->si("clearance")) / hung->si("clearance");
    EXPECT_GT(wide, before) << push;
    before = wide;
  }
}

TEST(ClearanceFromPlay, WantsTheWeightOfARotorThatHangs) {
  EXPECT_EQ(first_code(example_with("clearance-from-play", {"held=hanging"})), "bearings.hanging_needs_weight");
  EXPECT_EQ(first_code(example_with("rim-play", {"held=hanging", "push=40 N"})), "bearings.hanging_needs_weight");
  EXPECT_TRUE(
      example_with("rim-play", {"held=hanging", "weight=200 N", "clearance-least=-5 µm", "clearance-greatest=0 µm"}));
}

// Source: the square law. Tolerance: 2 % of the doubt (higher terms).
TEST(ClearanceFromPlay, DoublesTheDoubtOfTheDial) {
  const auto fine = example_with("clearance-from-play", {"balls=20", "swing-u=0.0588 mm"});  // 4 % of 1.47 mm
  ASSERT_TRUE(fine);
  const double half = 0.5 * (fine->si("clearance-greatest") - fine->si("clearance-least")) / fine->si("clearance");
  EXPECT_NEAR(half, 0.08, 0.006);
}

TEST(ClearanceFromPlay, AGuessedInsideWidensTheAnswer) {
  const auto sure = example_with("clearance-from-play", {});
  const auto guessed =
      example_with("clearance-from-play", {"ball-doubt=0.05", "groove-doubt=0.005", "balls-from=estimated"});
  ASSERT_TRUE(sure && guessed);
  EXPECT_GT(guessed->si("clearance-greatest"), sure->si("clearance-greatest"));
  EXPECT_LT(guessed->si("clearance-least"), sure->si("clearance-least"));
}

TEST(ClearanceFromPlay, IsSetBesideANewBearingWithoutAVerdict) {
  EXPECT_TRUE(says(example_with("clearance-from-play", {"new-greatest=38 µm"}), "bearings.play_past_new"));
  EXPECT_TRUE(says(example_with("clearance-from-play", {"new-greatest=102 µm"}), "bearings.play_may_be_new"));
  EXPECT_TRUE(says(example_with("clearance-from-play", {"new-greatest=200 µm"}), "bearings.play_as_new"));
  for (const char* most : {"new-greatest=38 µm", "new-greatest=102 µm", "new-greatest=200 µm"}) {
    const auto working = example_with("clearance-from-play", {most});
    EXPECT_FALSE(working->answer.has_value());
    for (const Finding& f : working->findings) EXPECT_EQ(f.severity, Severity::note);
  }
}

TEST(ClearanceFromPlay, RefusesASwingThatNoBearingAllows) {
  EXPECT_EQ(first_code(example_with("clearance-from-play", {"swing=1.47 in"})), "bearings.tilt_impossible");
  EXPECT_EQ(first_code(example_with("clearance-from-play", {"radius=30 mm"})), "bearings.radius_inside");
}

TEST(RimPlay, ABearingWithoutClearanceShowsNone) {
  const auto tight = example_with("rim-play", {"clearance-least=-5 µm", "clearance-greatest=0 µm"});
  ASSERT_TRUE(tight);
  EXPECT_EQ(tight->si("swing-least"), 0.0);
  EXPECT_EQ(tight->si("swing-greatest"), 0.0);
  EXPECT_EQ(first_code(example_with("rim-play", {"clearance-least=50 µm"})), "bearings.range_reversed");
}

// Source: plain tube under outer pressure, u = p d_i D^2 / (E (D^2 - d_i^2)) on radius at its inside (Lame), doubled for the
// diameter; here with a hub so stiff that all of the interference goes into the ring. Tolerance: 1e-6 relative.
TEST(FittedClearance, LosesWhatTheRacewayCloses) {
  const auto stiff = example_with("fitted-clearance", {"roughness-loss=0 µm", "hub-modulus=1000 GPa", "hub-outside=9 m",
                                                       "hub-poisson=0", "ring-poisson=0"});
  ASSERT_TRUE(stiff);
  const double d = 86.5, big = 100, e_i = 207, e_o = 1000, wide = 9000;
  const double ring = (big * big + d * d) / (big * big - d * d) / e_i;
  const double hub = (wide * wide + big * big) / (wide * wide - big * big) / e_o;
  const double pressure = 30.0 / big / (ring + hub);
  const double closes = 2 * pressure * d * big * big / (big * big - d * d) / e_i;
  EXPECT_NEAR(stiff->si("outer-loss") * 1e6, closes, 1e-6 * closes);
  EXPECT_NEAR(stiff->si("least") * 1e6, 23 - closes, 1e-6 * closes);
  EXPECT_NEAR(stiff->si("greatest") * 1e6, 43, 1e-9);
}

TEST(BearingGeometry, TakesWhatIsKnownAndEstimatesTheRest) {
  const auto known = example_with("bearing-geometry", {"balls=9", "ball-diameter=13 mm", "inner-groove-share=0.51"});
  ASSERT_TRUE(known);
  EXPECT_EQ(known->si("balls"), 9);
  EXPECT_DOUBLE_EQ(known->si("ball-diameter"), 0.013);
  EXPECT_DOUBLE_EQ(known->si("inner-groove"), 0.51 * 0.013);
  EXPECT_DOUBLE_EQ(known->si("outer-groove"), 0.52 * 0.013);
  EXPECT_EQ(known->input("ball-share"), nullptr) << "nothing is assumed of a ball that was measured";
  EXPECT_FALSE(says(known, "bearings.estimated"));
  EXPECT_TRUE(says(example_with("bearing-geometry", {"ball-diameter=13 mm"}), "bearings.estimated"));
  EXPECT_EQ(first_code(example_with("bearing-geometry", {"balls=19"})), "bearings.balls_overlap");
  EXPECT_EQ(first_code(example_with("bearing-geometry", {"balls=7", "ball-diameter=23 mm"})),
            "bearings.balls_reach_out");
  EXPECT_EQ(first_code(example_with("bearing-geometry", {"ball-diameter=13 mm", "ball-share=0.3"})),
            "figure.input_instead");
}

// Source: [ISO281] nu_1 at 540 r/min and 85 mm: 26.340028 mm²/s (docs/worked, computed from the published formula). Tolerance: 1e-6.
TEST(BearingLife, TakesTheOilAsItIs) {
  const auto oiled = example_with("bearing-life", {"viscosity=52.680056 mm²/s"});
  ASSERT_TRUE(oiled);
  EXPECT_NEAR(oiled->si("viscosity-ratio"), 2, 2e-6);
  const auto by_ratio = example_with("bearing-life", {"viscosity-ratio=2"});
  EXPECT_NEAR(oiled->si("modified-least") / by_ratio->si("modified-least"), 1, 1e-5);
  EXPECT_EQ(first_code(example_with("bearing-life", {"viscosity=2 mm²/s"})), "input.outside");
  EXPECT_EQ(first_code(example_with("bearing-life", {"viscosity=60 mm²/s", "viscosity-ratio=2"})),
            "figure.input_instead");
  EXPECT_TRUE(says(example_with("bearing-life", {"viscosity=460 mm²/s"}), "bearings.viscosity_counts_as_four"));
}

TEST(FittedClearance, SaysWhenNoneIsLeft) {
  EXPECT_TRUE(
      says(example_with("fitted-clearance", {"interference-greatest=60 µm"}), "bearings.may_have_no_clearance"));
  EXPECT_TRUE(says(example_with("fitted-clearance",
                                {"interference-least=60 µm", "interference-greatest=60 µm", "group-greatest=24 µm"}),
                   "bearings.no_clearance_left"));
  EXPECT_FALSE(says(example_with("fitted-clearance", {}), "bearings.may_have_no_clearance"));
}

}  // namespace
}  // namespace flatwise::bearings
