// advice_test.cc: what a study advises and what it must not, and of which bearing it speaks.
#include <gtest/gtest.h>

#include <tuple>

#include "study/study_samples.h"

namespace flatwise::study {
namespace {

// 2026-11-27: "Take Upright: its bearings live longer".
TEST(Study, LeanAndSpeedDoTheWorkAndAreNotChosenByWhatIsEasyOnTheBearing) {
  for (const auto& [field, as_it_is, less] :
       {std::tuple{"lean", "5°", "1°"}, std::tuple{"speed", "480 /min", "300 /min"}}) {
    Order order{.ways = {way("As it is", field, as_it_is), way("Less", field, less)}};
    order.ground = Typed{"1.2 kN"};
    const Study s = done(order);
    EXPECT_GT(s.outcomes[1].bearing->life.basic, s.outcomes[0].bearing->life.basic);
    EXPECT_EQ(s.advice.way, 0) << field;
    EXPECT_EQ(s.advice.because.code, Code{"study.because_work"});
    const Code note = std::string{field} == "lean" ? Code{"study.note_lean"} : Code{"study.note_speed"};
    EXPECT_TRUE(std::ranges::any_of(s.notes, [&](const Message& m) { return m.code == note; })) << field;
    order.ways = {way("A bit less", field, std::string{field} == "lean" ? "4°" : "400 /min"), way("Less", field, less)};
    const Study other = done(order);
    EXPECT_EQ(other.advice.way, std::nullopt);
    EXPECT_EQ(other.advice.because.code, Code{"study.because_work_open"});
  }
}

TEST(Study, WhatMustNotBeStillDecidesBetweenLeans) {
  ShaftSpec spec = five().spec();
  for (Rotor& rotor : spec.rotors) rotor.tine_width = millimetres(130);  // At 5° facing tines strike.
  const Study s = done({.ways = {way("As it is", "lean", "5°"), way("Less", "lean", "3°")}}, *Shaft::make(spec));
  ASSERT_TRUE(s.outcomes[0].arranged.strikes());
  EXPECT_EQ(s.advice.way, 1);
  EXPECT_EQ(s.advice.because.code, Code{"study.bad_strikes"});
}

// 2026-11-27: without a hanger the row said "At each hanger" and a way was advised by it.
TEST(Study, WithoutTwoHangersNothingIsAdvisedByWhatTheyWouldFeel) {
  for (const std::size_t hangers : {0U, 1U}) {
    ShaftSpec spec = five().spec();
    std::size_t kept = 0;
    for (Station& station : spec.stations)
      if (station.kind == StationKind::hanger && ++kept > hangers) station.kind = StationKind::spacer;
    const Study s =
        done({.ways = {stands("Facing", "facing"), stands("The quiet one", "1 3 4 5 1")}}, *Shaft::make(spec));
    EXPECT_TRUE(row(s, RowKey::hanger).ends);
    EXPECT_EQ(word(word_of(row(s, RowKey::hanger)), {}), "At each end");
    EXPECT_NE(s.advice.because.code, Code{"study.because_quiet"});
    EXPECT_NE(s.advice.because.code, Code{"study.because_less"});
    EXPECT_TRUE(std::ranges::any_of(s.notes, [](const Message& m) { return m.code == Code{"study.note_planes"}; }));
    for (const Cell& cell : row(s, RowKey::words).cells)
      for (const Message& says : cell.says) EXPECT_NE(says.code, Code{"study.why_left"});
  }
  EXPECT_FALSE(row(done(three_ways()), RowKey::hanger).ends);
}

// 2026-11-27: fit 100 C9 leaves the ring loose by 170 to 272 µm; it was "The bearing lasts longest" all the same.
TEST(Study, WhatMustNotBeIsNotPraised) {
  Order order{.ways = {way("As it is", "fit", "100 N7"), way("Loose", "fit", "100 C9")}};
  order.ground = Typed{"1.2 kN"};
  const Study s = done(order);
  EXPECT_TRUE(must_not_be(s.outcomes[1]).has_value());
  for (const Message& says : row(s, RowKey::words).cells[1].says) {
    EXPECT_NE(says.code, Code{"study.longest"});
    EXPECT_NE(says.code, Code{"study.widest"});
  }
  EXPECT_EQ(s.advice.way, 0);
}

// 2026-11-27: only the rotor before was looked at, and of that neither hub bore nor material: the hardest fitted bearing was passed over.
TEST(Study, TheBearingThatEndsFirstIsLookedForInEveryHub) {
  for (int changed = 0; changed < 5; ++changed) {
    ShaftSpec spec = five().spec();
    spec.loads.push_back({.station = std::nullopt, .force = newtons(1200), .direction = Angle{}});
    Rotor& last = spec.rotors.back();
    if (changed == 0) last.hub.bore.greatest = last.hub.bore.least + micrometres(2);
    if (changed == 1) last.hub.material.youngs_modulus = gigapascals(210);
    if (changed == 2) last.hub.roughness_loss = Length{};
    if (changed == 3) last.bearing.tolerance = ToleranceClass::p5;
    if (changed == 4) last.bearing.outer_ring_inside = millimetres(80);
    const Shaft shaft = *Shaft::make(spec);
    double least = 1e300;
    int first = 0;
    for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor) {
      const auto told = bearing_of(shaft, rotor);
      ASSERT_TRUE(told.has_value());
      if (told->turn->si("life") < least) least = told->turn->si("life"), first = rotor;
    }
    const auto outcome = outcome_of({.typed = {}, .shaft = shaft});
    ASSERT_TRUE(outcome.has_value());
    EXPECT_EQ(outcome->bearing->rotor, first) << changed;
  }
}

// 2026-11-27: it named x and z, which no definition has, and no line.
TEST(BearingOf, NamesWhatTheDefinitionCallsIt) {
  ShaftSpec spec = five().spec();
  spec.loads.push_back({.station = std::nullopt, .force = kilonewtons(900), .direction = Angle{}});
  spec.origins["load[1].force"] = {OriginKind::given, "mine.toml:31"};
  const auto crushed = bearing_of(*Shaft::make(spec), 1);
  ASSERT_FALSE(crushed.has_value());
  EXPECT_EQ(crushed.error().front().field, "load.force");
  ASSERT_TRUE(crushed.error().front().place.has_value());
  EXPECT_EQ(crushed.error().front().place->file, "mine.toml");
  EXPECT_EQ(crushed.error().front().place->line, 31);
  spec = five().spec();
  for (Rotor& rotor : spec.rotors) rotor.tip_radius = millimetres(20);
  const auto outcome = outcome_of({.typed = {}, .shaft = *Shaft::make(spec)});
  ASSERT_TRUE(outcome.has_value());
  EXPECT_EQ(outcome->bearing_problems.front().field, "rotor.tip_radius");
  EXPECT_EQ(outcome->bearing_problems.front().code, Code{"bearings.tips_inside"});
}

}  // namespace
}  // namespace flatwise::study
