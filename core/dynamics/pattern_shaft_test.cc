// A shaft as a task, what is refused, and what mistakes do.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/dynamics/pattern_mistakes.h"
#include "core/dynamics/pattern_samples.h"
#include "core/dynamics/pattern_search.h"
#include "core/dynamics/tine_gap.h"
#include "core/shaft/shaft_samples.h"

namespace flatwise::dynamics {
namespace {

Shaft shaft_of(int rotors, double pitch_mm = 160, int flats = 6) {
  SampleShaft sample;
  sample.rotors = rotors;
  sample.flats = flats;
  sample.pitch_mm = pitch_mm;
  return Shaft::make(sample_shaft(sample)).value();
}
std::string refusal(const PatternTask& task) {
  const auto p = problem_with(task);
  return p ? std::string{p->code.id()} + " " + p->field : "none";
}
std::string refusal(const Shaft& shaft, const PatternWish& wish) {
  const auto task = pattern_task(shaft, wish);
  return task ? "none" : std::string{task.error().code.id()} + " " + task.error().field;
}

// Source: resultants() of the same shaft, which shares no sums with the search.
// Tolerance: 1e-12 of the sum of sizes.
TEST(PatternOfAShaft, LeavesWhatResultantsSay) {
  const Shaft shaft = shaft_of(5);
  const auto task = pattern_task(shaft);
  ASSERT_TRUE(task.has_value());
  const PatternSums sums{*task};
  for (const Places& places : {Places{0, 3, 0, 3, 0}, Places{0, 2, 3, 4, 0}, Places{1, 1, 2, 5, 4}}) {
    const Resultants r = resultants(shaft, tilt_of(places, 6));
    EXPECT_NEAR(sums.of(places), r.larger.si(), 1e-10);
    EXPECT_NEAR(sums.floor_rms(), r.floor_rms.si(), 1e-12 * r.floor_rms.si());
    EXPECT_NEAR(sums.floor_worst(), r.floor_worst.si(), 1e-12 * r.floor_worst.si());
  }
  EXPECT_EQ(find_pattern(*task)->best[0].left_si, 0);
}

// Source: tine_gaps() of what was found; at a pitch of 70 mm facing rotors of 230 mm at 5° would strike (W29: closing 40.1 mm).
// Tolerance: none, an inequality.
TEST(PatternOfAShaft, KeepsTheTineGap) {
  const Shaft shaft = shaft_of(6, 70);
  const auto task = pattern_task(shaft, {.least_gap = millimetres(2)});
  ASSERT_TRUE(task.has_value());
  const Places places = find_pattern(*task)->best[0].places;
  EXPECT_NE(places, (Places{0, 3, 0, 3, 0, 3}));
  for (const NeighbourGap& g : tine_gaps(shaft, tilt_of(places, 6))) EXPECT_GE(g.gap.gap, millimetres(2));
  EXPECT_EQ(find_pattern(*task)->proof, Proof::nought);  // Thirds come no nearer than 34.7 mm and leave nothing.
}

TEST(PatternOfAShaft, LeavesWhatStaysWhereItIs) {
  const Shaft shaft = shaft_of(7);
  const auto task = pattern_task(shaft, {.stays = {{3, 2}, {4, 2}}});
  ASSERT_TRUE(task.has_value());
  const auto found = find_pattern(*task);
  EXPECT_EQ(found->best[0].places[2], 1);
  EXPECT_EQ(found->best[0].places[3], 1);
  EXPECT_EQ(found->best[0].left_si, 0);
}

TEST(PatternOfAShaft, RefusesWhatCannotBeArranged) {
  EXPECT_EQ(refusal(shaft_of(5), {.stays = {{6, 1}}}), "pattern.stays_rotor stay");
  EXPECT_EQ(refusal(shaft_of(5), {.stays = {{5, 7}}}), "pattern.stays_flat stay");
  EXPECT_EQ(refusal(shaft_of(5), {.stays = {{5, 1}, {5, 2}}}), "pattern.stays_twice stay");
  EXPECT_EQ(refusal(shaft_of(5), {.least_gap = millimetres(-1)}), "input.negative least-gap");
  EXPECT_EQ(refusal(shaft_of(5), {.least_gap = millimetres(500)}), "pattern.no_gap least-gap");
  EXPECT_EQ(refusal(shaft_of(5, 70), {.least_gap = millimetres(2), .stays = {{2, 1}, {3, 4}}}), "pattern.no_way gap");
  EXPECT_EQ(refusal(shaft_of(1), {}), "pattern.rotors rotors");
  EXPECT_EQ(refusal(shaft_of(5), {.errors = {2, {}}}), "input.outside error-share");
  SampleShaft sample;
  ShaftSpec spec = sample_shaft(sample);
  spec.speed = {};
  EXPECT_EQ(refusal(Shaft::make(spec).value(), {}), "dynamics.too_slow speed");
}

TEST(PatternTask, RefusesWrongNumbers) {
  const PatternTask good = sample_task({});
  EXPECT_EQ(refusal(good), "none");
  const auto with = [&](auto change) {
    PatternTask task = good;
    change(task);
    return refusal(task);
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(with([](PatternTask& t) { t.positions = 1; }), "pattern.positions positions");
  EXPECT_EQ(with([](PatternTask& t) { t.positions = 25; }), "pattern.positions positions");
  EXPECT_EQ(with([](PatternTask& t) { t.rotors.resize(1); }), "pattern.rotors rotors");
  EXPECT_EQ(with([](PatternTask& t) { t.rotors.resize(241); }), "pattern.rotors rotors");
  EXPECT_EQ(with([&](PatternTask& t) { t.rotors[2].couple = newton_metres(nan); }), "input.outside couple");
  EXPECT_EQ(with([&](PatternTask& t) { t.rotors[2].force = newtons(1e300); }), "input.outside force");
  EXPECT_EQ(with([](PatternTask& t) { t.planes.b = t.planes.a; }), "dynamics.planes_together plane-b");
  EXPECT_EQ(with([](PatternTask& t) { t.kept.resize(3); }), "pattern.list_length stay");
  EXPECT_EQ(with([](PatternTask& t) { t.apart.resize(3); }), "pattern.list_length apart");
  EXPECT_EQ(with([](PatternTask& t) { t.apart.assign(5, 0); }), "pattern.no_way gap");
  EXPECT_EQ(with([](PatternTask& t) {
              for (RotatingSet& set : t.rotors) set.force = {}, set.couple = {};
            }),
            "pattern.nothing_turns couple");
}

// Source: resultants() and tine_gap() of the shaft with the mistake put into it by hand.
// Tolerance: 1e-9 of the force, 1e-12 m.
TEST(TimingMistakes, AreWhatTheMistakenShaftLeaves) {
  const Shaft shaft = shaft_of(4);
  const Places right{0, 3, 0, 3};
  const auto all = timing_mistakes(shaft, right);
  EXPECT_EQ(all.size(), 4u * 2 * 5);
  for (const TimingMistake& m : all) {
    if (m.kind != TimingMistake::Kind::rotor_turned) continue;
    Places wrong = right;
    wrong[static_cast<std::size_t>(m.rotor - 1)] = (wrong[static_cast<std::size_t>(m.rotor - 1)] + m.flats + 6) % 6;
    const Resultants r = resultants(shaft, tilt_of(wrong, 6));
    EXPECT_NEAR(m.left.larger.si(), r.larger.si(), 1e-9 * 20);
    EXPECT_NEAR(m.rise.si(), r.larger.si(), 1e-9 * 20);  // The right one leaves nothing.
    Length least = metres(1);
    for (const NeighbourGap& g : tine_gaps(shaft, tilt_of(wrong, 6)))
      if (g.rotor == m.rotor || g.rotor + 1 == m.rotor) least = std::min(least, g.gap.gap);
    EXPECT_NEAR(m.least_gap.si(), least.si(), 1e-12);
  }
}

// Source: by hand: half a turn out a rotor does not lean and presses with nothing, so the others leave one couple; the middle of halves
// a flat out leans by atan(tan 5° cos 30°) = 4.3329°.
// Tolerance: 1e-9 relative; the couple goes as sin a cos a less spin, 1e-3 for the change of the spin of a held rotor.
TEST(TimingMistakes, TakeTheMiddleOfHalvesThatAreOut) {
  const Shaft shaft = shaft_of(4);
  const auto all = timing_mistakes(shaft, Places{0, 3, 0, 3});
  const auto find = [&](int flats) {
    return *std::ranges::find_if(all, [&](const TimingMistake& m) {
      return m.kind == TimingMistake::Kind::half_out && m.rotor == 2 && m.flats == flats;
    });
  };
  const Rotor& r = shaft.rotor(2);
  const double one = rotating_couple({shaft.spec().speed, r.lean, r.across, r.along, spin_of(shaft, 2)})->si();
  EXPECT_NEAR(find(3).left.couple.size.si(), one, 1e-9 * one);
  const double lean = std::atan(std::tan(5 * M_PI / 180) * std::cos(M_PI / 6));
  EXPECT_NEAR(lean * 180 / M_PI, 4.3329, 5e-5);
  const double less = one * std::sin(lean) * std::cos(lean) / (std::sin(r.lean.radians()) * std::cos(r.lean.radians()));
  const double left = std::abs(std::complex<double>{one} - std::polar(less, M_PI / 6));
  EXPECT_NEAR(find(1).left.couple.size.si(), left, 1e-2 * one);
  EXPECT_NEAR(find(1).left.couple.size.si(), find(-1).left.couple.size.si(), 1e-9 * one);
}

}  // namespace
}  // namespace flatwise::dynamics
