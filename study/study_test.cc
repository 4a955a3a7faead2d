// study_test.cc: ways of one shaft beside each other, against an independent model, closed forms, and what must be refused.
#include "study/study.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "study/pictures.h"
#include "study/study_samples.h"

namespace flatwise::study {
namespace {

// Source: a model of 800 particles of such a rotor, moved by its rotation alone, computed apart from this program: one couple 13.57
// N·m; facing and thirds of five leave one, 3.6 lbf at each of two hangers 839 mm apart; flats 1, 3, 4, 5, 1 leave none; gaps 3.38
// in facing, 3.59 in else.
// Tolerance: half a unit of the last digit that it gives.
TEST(Study, FiveRotorsThreeWaysAsAParticleModelHasThem) {
  const Study s = done(three_ways());
  const Row& couple = row(s, RowKey::couple);
  EXPECT_NEAR(couple.cells[0].value->si, 13.57, 0.005);
  EXPECT_NEAR(couple.cells[1].value->si, 13.57, 0.005);
  EXPECT_FALSE(couple.cells[2].value.has_value());
  EXPECT_NEAR(s.outcomes[2].arranged.left.couple.size.si(), 0, 1e-9);
  const double pounds = pounds_force(1).si();
  for (const std::size_t left : {0U, 1U}) EXPECT_NEAR(row(s, RowKey::hanger).cells[left].value->si / pounds, 3.6, 0.05);
  const Row& gap = row(s, RowKey::gap);
  EXPECT_NEAR(gap.cells[0].value->si / 0.0254, 3.38, 0.005);
  EXPECT_NEAR(gap.cells[1].value->si / 0.0254, 3.59, 0.005);
  EXPECT_NEAR(gap.cells[2].value->si / 0.0254, 3.59, 0.005);
}

TEST(Study, TheQuietOneIsAdvisedAndSaysWhy) {
  const Study s = done(three_ways());
  ASSERT_EQ(s.advice.way, 2);
  EXPECT_EQ(s.advice.because.code, Code{"study.because_quiet"});
  EXPECT_EQ(s.advice.lines, "pattern = { flats = [1, 3, 4, 5, 1] }");
  const AdviceSaid said = study::said(s, inch_voice());
  EXPECT_EQ(said.does, "Take “The quiet one”: half A on flats 1, 3, 4, 5 and 1, half B opposite.");
  EXPECT_NE(said.because.find("3.64\u00a0lbf"), std::string::npos) << said.because;
  EXPECT_NE(said.waits.find("lead"), std::string::npos);
}

TEST(Study, WhatDoesNotDifferHasNoRow) {
  Order order = three_ways();
  order.ground = Typed{"1.2 kN"};
  const Study s = done(order);
  for (const RowKey key : {RowKey::life, RowKey::press, RowKey::clearance, RowKey::speed, RowKey::lean})
    EXPECT_FALSE(has_row(s, key)) << name_of(key);
  EXPECT_FALSE(plot(s, PlotKey::life).differs);
  EXPECT_TRUE(plot(s, PlotKey::hanger).differs);
  EXPECT_TRUE(s.plots.front().differs);
}

// Source: closed form: the couple I_t W² sin a cos a - I_p s W sin a with s = v/R, shared over 839 mm between the hangers.
// Tolerance: 1e-9 relative: rounding.
TEST(Study, TheCurveOfTheHangerIsTheClosedForm) {
  const Study s = done(three_ways());
  const Trace& facing = plot(s, PlotKey::hanger).traces[0];
  const double a = 5 * std::numbers::pi / 180, spin = (6.0 / 3.6) / 0.230;
  for (std::size_t i = 1; i < facing.x.size(); ++i) {
    const double w = facing.x[i];
    const double couple = 0.085 * w * w * std::sin(a) * std::cos(a) - 0.160 * spin * w * std::sin(a);
    EXPECT_NEAR(facing.y[i], std::abs(couple) / 0.839, 1e-9 * (1 + std::abs(couple)));
  }
}

// Source: closed form: five like couples C, each off by a rectangular error of half width e, leave C e sqrt(5/3) root mean square (JCGM
// 100, 4.3.7: e/sqrt 3 each).
// Tolerance: 1e-9 relative: rounding.
TEST(Study, TheFloorIsMadeOfTheErrorsThatAreStated) {
  Order order = three_ways();
  order.error_share = Typed{"3 %"};
  order.error_azimuth = Typed{"0°"};
  const Study s = done(order), as_assumed = done(three_ways());
  const double one = s.outcomes[0].arranged.couples[0].si();
  EXPECT_NEAR(s.outcomes[2].arranged.couple_floor.si(), one * 0.03 * std::sqrt(5.0 / 3), 1e-9 * one);
  EXPECT_GT(s.outcomes[2].arranged.left.floor_rms, as_assumed.outcomes[2].arranged.left.floor_rms);
  EXPECT_GT(plot(s, PlotKey::hanger).floor.back(), plot(as_assumed, PlotKey::hanger).floor.back());
  EXPECT_EQ(s.notes.front().code, Code{"study.note_floor_said"});
  EXPECT_EQ(as_assumed.notes.front().code, Code{"study.note_floor"});
  const Input& share = *s.outcomes[0].arranged.couple->input("error-share");
  EXPECT_EQ(share.origin.kind, OriginKind::given);
  EXPECT_EQ(as_assumed.outcomes[0].arranged.couple->input("error-share")->origin.kind, OriginKind::assumed);
}

TEST(Study, ErrorsSoLargeThatNothingCanBeMeasuredLeaveNothingToChoose) {
  Order order = three_ways();
  order.error_share = Typed{"100 %"};
  const Study s = done(order);
  for (const Outcome& o : s.outcomes) EXPECT_TRUE(o.arranged.quiet());
}

// Source: closed form: with no change but the speed of held rotors, couples go as its square (ISO 21940-11's rigid rotor).
// Tolerance: 1e-9 relative.
TEST(Study, HeldRotorsLeaveAsTheSquareOfTheSpeed) {
  const Study s = done({.ways = {way("Slow", "speed", "240 /min"), way("Quick", "speed", "480 /min")}},
                       *Shaft::make(sample_shaft({.rotors = 5})));
  const Row& couple = row(s, RowKey::couple);
  EXPECT_NEAR(couple.cells[1].value->si, 4 * couple.cells[0].value->si, 1e-9 * couple.cells[1].value->si);
  EXPECT_EQ(s.advice.way, 1) << "the definition's speed: half of it is other work";
}

// Source: ISO 5753-1: C4 has more clearance than C3, C3 than CN (60 mm: 10 to 28... µm by group); the play of a rim grows with it.
// Tolerance: none, an order.
TEST(Study, MoreClearanceIsMorePlay) {
  const Study s = done({.ways = {way("As it is", "clearance", "C3"), way("Wide", "clearance", "C4")}});
  ASSERT_TRUE(has_row(s, RowKey::clearance) && has_row(s, RowKey::play));
  EXPECT_GT(row(s, RowKey::clearance).cells[1].to->si, row(s, RowKey::clearance).cells[0].to->si);
  EXPECT_GT(row(s, RowKey::play).cells[1].to->si, row(s, RowKey::play).cells[0].to->si);
  EXPECT_FALSE(has_row(s, RowKey::press)) << "the fit is the same";
}

// Source: friction by definition and Lamé: with friction of 0.08 to 0.18 one interference spans 0.18/0.08 of force.
// Tolerance: 1e-9 relative.
TEST(Study, AnInterferenceSaidIsPressedWithFrictionsSpan) {
  const Study s = done({.ways = {way("Light", "fit", "20 µm"), way("Tight", "fit", "40 µm")}});
  const Cell& press = row(s, RowKey::press).cells[0];
  EXPECT_NEAR(press.to->si / press.value->si, 0.18 / 0.08, 1e-9);
  const Trace& light = plot(s, PlotKey::press).traces[0];
  EXPECT_NEAR(light.high.back(), press.to->si, 1e-5 * press.to->si);
  EXPECT_GT(row(s, RowKey::clearance).cells[0].value->si, row(s, RowKey::clearance).cells[1].value->si);
}

// Source: the figure bearing-turn, which tests/data/bearings_turn.csv holds against scipy.
// Tolerance: 1e-12 relative: the same sums.
TEST(Study, TheCurveOfLifeMeetsTheTableAndItsWorking) {
  Order order{.ways = {way("As it is", "speed", "480 /min"), way("Lean less", "lean", "3°")}};
  order.ground = Typed{"1.2 kN"};
  const Study s = done(order);
  for (std::size_t i = 0; i < 2; ++i) {
    const Beared& bearing = *s.outcomes[i].bearing;
    ASSERT_NE(bearing.turn, nullptr);
    EXPECT_NEAR(bearing.turn->si("life"), bearing.life.basic.si(), 1e-12 * bearing.life.basic.si());
    const PlotData& life = plot(s, PlotKey::life);
    EXPECT_EQ(life.spots[i].y, bearing.life.basic.si());
    // What lubricant and dirt make of it: the ends of the class, at the way's own speed as in the table.
    EXPECT_EQ(life.traces[i].low.size(), life.traces[i].y.size());
    for (std::size_t k = 0; k < life.traces[i].y.size(); ++k) EXPECT_LE(life.traces[i].low[k], life.traces[i].high[k]);
    EXPECT_EQ(row(s, RowKey::life).cells[i].detail->args[0], (Arg{"least", any(bearing.life.least)}));
    // Falling with speed, and through the spot.
    for (std::size_t k = 1; k < life.traces[i].y.size(); ++k) EXPECT_LT(life.traces[i].y[k], life.traces[i].y[k - 1]);
  }
}

TEST(Study, WithoutALoadFromTheGroundNoLifeIsSaidAndNoneDecides) {
  const Study s = done({.ways = {way("As it is", "speed", "480 /min"), way("Slower", "speed", "300 /min")}});
  EXPECT_FALSE(has_row(s, RowKey::life)) << "not known in both: alike";
  EXPECT_TRUE(std::ranges::none_of(s.plots, [](const PlotData& p) { return p.key == PlotKey::life; }));
  for (const Outcome& o : s.outcomes) EXPECT_EQ(o.bearing->life_said(), std::nullopt);
  const AdviceSaid said = study::said(s, inch_voice());
  EXPECT_EQ(said.because.find("bearing"), std::string::npos) << said.because;
}

// Source: statics: in balance the balls' pushes add up to the load on the ring (tests of load_distribution).
// Tolerance: none, signs and counts.
TEST(Study, EveryBallIsThereAndSomeCarry) {
  const Study s = done(three_ways());
  for (const auto& balls : plot(s, PlotKey::balls).balls) {
    EXPECT_EQ(static_cast<int>(balls.size()), s.outcomes[0].bearing->inside.balls);
    EXPECT_TRUE(std::ranges::any_of(balls, [](const BallAt& b) { return b.load > Force{}; }));
  }
}

TEST(Study, ABearingThatCannotCarryItSaysWhyAndIsNotAdvised) {
  Order order{.ways = {way("Light", "speed", "480 /min"), way("Wide", "clearance", "0.9 mm")}};
  const Study s = done(order);
  EXPECT_FALSE(s.outcomes[1].bearing.has_value());
  EXPECT_FALSE(s.outcomes[1].bearing_problems.empty());
  EXPECT_TRUE(row(s, RowKey::life).cells[1].bad);
  EXPECT_EQ(s.advice.way, 0);
}

TEST(Study, UsualWaysAreOfUse) {
  const Study s = done({});
  EXPECT_EQ(s.count(), 3);  // The sample is facing: facing, thirds, the quiet one.
  EXPECT_EQ(s.advice.way, 2);
  const Study one = done({}, *Shaft::make(sample_shaft({.rotors = 1})));
  EXPECT_EQ(one.count(), 2);
}

// --- Refused -----------------------------------------------------------------------------------------------------------

void refused(const Order& order, const std::string& field, Code code) {
  const Results<Study> s = study(five(), order);
  ASSERT_FALSE(s.has_value()) << field;
  EXPECT_EQ(s.error().front().field, field);
  EXPECT_EQ(s.error().front().code, code) << std::string{s.error().front().code.id()};
  const SaidProblem said = say(s.error().front(), {});
  EXPECT_FALSE(said.read.empty() || said.allowed.empty() || said.mend.empty());
}
Order beside(TypedWay other) { return {.ways = {stands("Facing", "facing"), std::move(other)}}; }

TEST(Refused, WaysThatAreNoStudy) {
  refused({.ways = {stands("Facing", "facing")}}, "ways", Code{"study.count"});
  Order seven;
  for (int i = 0; i < 7; ++i) seven.ways.push_back(way(std::to_string(i), "speed", std::to_string(400 + i) + " /min"));
  refused(seven, "ways", Code{"study.count"});
  refused(beside({.name = {"Nothing"}}), "ways[1].name", Code{"study.nothing_changed"});
  refused(beside(stands("facing", "step 2")), "ways[1].name", Code{"study.name_twice"});
  refused(beside(stands("Other", "1 4 1 4 1")), "ways[1].name", Code{"study.ways_alike"});
  refused(beside(stands(" ", "step 2")), "ways[1].name", Code{"study.name"});
  refused(beside(stands(std::string(61, 'x'), "step 2")), "ways[1].name", Code{"study.name"});
}

TEST(Refused, ValuesThatCannotBe) {
  refused(beside(stands("P", "sideways")), "ways[1].pattern", Code{"study.pattern"});
  refused(beside(stands("P", "1 3 4 5")), "ways[1].pattern", Code{"shaft.list_length"});
  refused(beside(stands("P", "1 3 4 5 7")), "ways[1].pattern", Code{"shaft.flat_range"});
  refused(beside(stands("P", "step 6")), "ways[1].pattern", Code{"shaft.step_range"});
  refused(beside(way("L", "lean", "31°")), "ways[1].lean", Code{"input.outside"});
  refused(beside(way("L", "lean", "0°")), "ways[1].lean", Code{"study.upright"});
  refused(beside(way("L", "lean", "0.05°")), "ways[1].lean", Code{"study.upright"});
  refused(beside(way("S", "speed", "0 /min")), "ways[1].speed", Code{"input.outside"});
  refused(beside(way("C", "clearance", "C9")), "ways[1].clearance", Code{"study.clearance"});
  refused(beside(way("C", "clearance", "5 mm")), "ways[1].clearance", Code{"input.outside"});
  refused(beside(way("F", "fit", "100 Q9")), "ways[1].fit", Code{"study.fit"});
  refused(beside(way("F", "fit", "90 N7")), "ways[1].fit", Code{"fits.two_nominals"});
}

TEST(Refused, ErrorsThatCannotBe) {
  for (const auto& [text, code] :
       std::vector<std::pair<std::string, Code>>{{"101 %", Code{"input.outside"}}, {"-1 %", Code{"input.outside"}}}) {
    Order order = three_ways();
    order.error_share = Typed{text};
    refused(order, "error_share", code);
  }
  Order order = three_ways();
  order.error_azimuth = Typed{"31°"};
  refused(order, "error_azimuth", Code{"input.outside"});
  order.error_azimuth = Typed{"a bit"};
  order.ground = Typed{"12 furlongs"};
  const Results<Study> both = study(five(), order);
  ASSERT_FALSE(both.has_value());
  EXPECT_EQ(both.error().size(), 2U);
}

TEST(Refused, EveryProblemAtOnce) {
  Order order = beside(way("L", "lean", "31°"));
  order.ways.push_back(way("S", "speed", "quick"));
  const Results<Study> s = study(five(), order);
  ASSERT_FALSE(s.has_value());
  EXPECT_EQ(s.error().size(), 2U);
}

// --- Shown -------------------------------------------------------------------------------------------------------------

TEST(Pictures, WaysOnOneCurveAreNamedAsOne) {
  const Study s = done(three_ways());
  const drawing::DisplayList list = picture_of(s, plot(s, PlotKey::hanger), {});
  bool found = false;
  for (const drawing::Item& item : list.items)
    if (const auto* text = std::get_if<drawing::Text>(&item)) found = found || text->text == "Facing, Thirds";
  EXPECT_TRUE(found);
}

TEST(Csv, ALineAPointAndTheWayOnEach) {
  const Study s = done(three_ways());
  for (const PlotData& p : s.plots) {
    const std::string csv = csv_of(s, p);
    const auto lines = static_cast<std::size_t>(std::ranges::count(csv, '\n'));
    std::size_t points = 1;
    for (const Trace& trace : p.traces) points += trace.x.size();
    for (const auto& balls : p.balls) points += balls.size();
    EXPECT_EQ(lines, points) << name_of(p.key);
    EXPECT_NE(csv.find("\"The quiet one\","), std::string::npos);
  }
}

TEST(Said, ThreeFiguresThatCount) {
  const Voice inch = inch_voice(), metric;
  EXPECT_EQ(figure_text(any(newton_metres(13.5706)), inch), "10.0\u00a0ft·lb");
  EXPECT_EQ(figure_text(any(newtons(16.175)), inch), "3.64\u00a0lbf");
  EXPECT_EQ(figure_text(any(newtons(16.175)), metric), "16.2\u00a0N");
  EXPECT_EQ(figure_text(any(minutes(60.0 * 12345)), metric), figure_text(any(minutes(60.0 * 11999)), metric));
}

}  // namespace
}  // namespace flatwise::study
