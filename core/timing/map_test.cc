#include "core/timing/map.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <numbers>

#include "core/timing/figures.h"
#include "core/timing/timing_samples.h"

namespace flatwise::timing {
namespace {

/// Common practice: facing marks of neighbours lie on the same flat; the rule in two lines.
TEST(Map, FacingOnAHexagonSaysOddAndEven) {
  const Shaft shaft = sample(9, 6, facing());
  const auto m = map(shaft);
  ASSERT_TRUE(m);
  for (std::size_t i = 0; i + 1 < m->rotors.size(); ++i) EXPECT_EQ(m->rotors[i].flat_b, m->rotors[i + 1].flat_a);
  ASSERT_EQ(m->rule.size(), 2U);
  EXPECT_EQ(m->rule[0], (Message{Code{"timing.rule_odd"}, {{"flat_a", 1}, {"flat_b", 4}}}));
  EXPECT_EQ(m->rule[1], (Message{Code{"timing.rule_even"}, {{"flat_a", 4}, {"flat_b", 1}}}));
  EXPECT_TRUE(m->turn_free);
  EXPECT_FALSE(m->hand_free);
}

/// Common practice: three rotors stepped by a third of a turn, two flats of a hexagon, one flat being 60 degrees.
// Source: common practice. Tolerance: 1e-12 degrees, rounding.
TEST(Map, ThreeRotorsSteppedByAThird) {
  const Shaft shaft = sample(3, 6, step(2));
  const auto m = map(shaft);
  ASSERT_TRUE(m);
  EXPECT_EQ(m->rotors[1].flat_a, 3);
  EXPECT_EQ(m->rotors[2].flat_a, 5);
  EXPECT_NEAR((azimuth_of_flat(3, 6) - azimuth_of_flat(1, 6)).degrees(), 120, 1e-12);
  EXPECT_NEAR((azimuth_of_flat(2, 6) - azimuth_of_flat(1, 6)).degrees(), 60, 1e-12);
  EXPECT_EQ(m->rule.size(), 3U);
  EXPECT_TRUE(m->hand_free);
}

TEST(Map, ListedKeepsItsFlatsAndItsHand) {
  const Shaft shaft = sample(5, 6, listed({2, 5, 2, 4, 6}));
  const auto m = map(shaft);
  ASSERT_TRUE(m);
  EXPECT_EQ(m->reference.first_flat, 2);
  EXPECT_EQ(m->rotors[3].flat_a, 4);
  EXPECT_EQ(m->rule.size(), 4U);
  EXPECT_EQ(m->rule[0].args[0], Arg("rotors", std::vector<std::int64_t>{1, 3}));
  EXPECT_EQ(map(shaft, Reference{.first_flat = 2, .as_listed = false}).error().code, Code{"timing.hand_fixed"});
  EXPECT_EQ(map(shaft, Reference{.first_flat = 7}).error().code, Code{"timing.flat_range"});
}

TEST(Map, AFirstFlatIsKept) {
  const Shaft shaft = sample(4, 8, step(2), 3);
  EXPECT_EQ(map(shaft)->rotors[0].flat_a, 3);
  EXPECT_FALSE(map(shaft)->turn_free);
  EXPECT_EQ(map(shaft, Reference{.first_flat = 4}).error().code, Code{"timing.first_flat_fixed"});
}

/// A flat drawn at an azimuth from A stands, from B, at the same height on the other side of the upright.
// Source: geometry of a mirror in the upright through flat 1. Tolerance: 1e-12, rounding of sine and cosine.
RC_GTEST_PROP(MapProperty, ViewsFromTheTwoEndsMirror, ()) {
  const int flats = 2 * *rc::gen::inRange(2, 13);
  const Shaft shaft = sample(*rc::gen::inRange(1, 9), flats, step(*rc::gen::inRange(1, flats)));
  const auto m = map(shaft, Reference{.first_flat = *rc::gen::inRange(1, flats + 1)});
  for (const RotorMarks& marks : m->rotors) {
    const double a = azimuth_of_flat(marks.flat_a, flats).radians(),
                 b = azimuth_of_flat(marks.place_a_from_b, flats).radians();
    RC_ASSERT(std::abs(std::sin(a) + std::sin(b)) < 1e-12);
    RC_ASSERT(std::abs(std::cos(a) - std::cos(b)) < 1e-12);
    RC_ASSERT(place_seen_from(End::b, marks.place_b_from_b, flats) == marks.flat_b);
  }
}

const FigureSpec& figure(std::string_view name) {
  for (const FigureSpec& f : figures())
    if (f.name == name) return f;
  ADD_FAILURE() << name;
  return figures().front();
}

// Source: common practice, one flat of a hexagon is 60 degrees.
// Tolerance: 1e-12, rounding.
TEST(Figures, PairingErrorAnswers) {
  const auto w = evaluate(figure("pairing-error"),
                          {given("flat-a", any_count(4)), given("flat-b", any_count(2)), given("flats", any_count(6))});
  ASSERT_TRUE(w);
  EXPECT_EQ(w->si("flats-out"), 1);
  EXPECT_NEAR(w->si("angle"), std::numbers::pi / 3, 1e-12);
  EXPECT_EQ(w->answer, Answer::out);
  EXPECT_FALSE(evaluate(figure("pairing-error"),
                        {given("flat-a", any_count(4)), given("flat-b", any_count(2)), given("flats", any_count(5))}));
  EXPECT_FALSE(evaluate(figure("pairing-error"),
                        {given("flat-a", any_ratio(4)), given("flat-b", any_count(2)), given("flats", any_count(6))}));
  EXPECT_EQ(evaluate(figure("pairing-error"), {given("flat-a", AnyQuantity{1.5, Kind::count}),
                                               given("flat-b", any_count(2)), given("flats", any_count(6))})
                .error()[0]
                .code,
            Code{"timing.not_whole"});
}

// Source: spherical law of cosines, 5 degrees and one flat of six: 4.995238 degrees.
// Tolerance: 1e-6 degrees, the last digit given.
TEST(Figures, KinkMarksTheAllowedMisalignmentAssumed) {
  const auto w = evaluate(
      figure("kink"), {given("lean", any(degrees(5))), given("flats-out", any_count(1)), given("flats", any_count(6))});
  ASSERT_TRUE(w);
  EXPECT_NEAR(w->si("kink") * 180 / std::numbers::pi, 4.995238, 1e-6);
  EXPECT_EQ(w->input("misalignment")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(w->answer, Answer::out);
  ASSERT_EQ(w->findings.size(), 1U);
}

TEST(Figures, TimingMapFollowsEveryPattern) {
  const auto flat_a = [](std::vector<Input> more) {
    more.push_back(given("rotors", any_count(5)));
    more.push_back(given("flats", any_count(6)));
    more.push_back(given("rotor", any_count(4)));
    const auto w = evaluate(figure("timing-map"), std::move(more));
    return w ? w->si("flat-a") : -1;
  };
  EXPECT_EQ(flat_a({given("pattern", "facing")}), 4);
  EXPECT_EQ(flat_a({given("pattern", "step"), given("step", any_count(2))}), 1);
  EXPECT_EQ(flat_a({given("pattern", "step")}), -1);
  std::vector<Input> list{given("pattern", "listed"), given("first-flat", any_count(2))};
  for (const int f : {2, 5, 2, 4, 6}) list.push_back(given("listed", any_count(f)));
  EXPECT_EQ(flat_a(list), 4);
  list.pop_back();
  EXPECT_EQ(flat_a(list), -1);
}

TEST(Figures, MarkSeenFromMirrors) {
  const auto place = [](int flat, const char* end) {
    return evaluate(figure("mark-seen-from"),
                    {given("flat", any_count(flat)), given("flats", any_count(6)), given("end", end)})
        ->si("place");
  };
  EXPECT_EQ(place(2, "A"), 2);
  EXPECT_EQ(place(2, "B"), 6);
  EXPECT_EQ(place(1, "B"), 1);
  EXPECT_EQ(place(4, "B"), 4);
}

}  // namespace
}  // namespace flatwise::timing
