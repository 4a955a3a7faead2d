#include "core/stack/seat.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <random>
#include <string>

#include "core/stack/figures.h"
#include "tests/support/figures.h"

namespace flatwise::stack {
namespace {

// Source: the rule in order (README); numbers of the sheet of W24: band 65.906 ± 0.020 in, step 0.060 in.
Seat seat_of(double measured_in, double u_in, double gap_in = 0.060) {
  return judge_seat({inches(measured_in), inches(u_in), {inches(65.886), inches(65.926)}, inches(gap_in)})->seat;
}

TEST(JudgeSeat, GivesTheFourAnswersInOrder) {
  EXPECT_EQ(seat_of(65.95, 0.03), Seat::cannot_tell);
  EXPECT_EQ(seat_of(65.95, 0.01), Seat::not_seated);
  EXPECT_EQ(seat_of(65.91, 0.01), Seat::seated);
  EXPECT_EQ(seat_of(65.91, 0.03), Seat::seated);
  EXPECT_EQ(seat_of(65.85, 0.03), Seat::contradiction);
  EXPECT_EQ(seat_of(65.87, 0.03), Seat::seated);
  EXPECT_EQ(seat_of(65.91, 0.03, 0.05), Seat::cannot_tell);
  EXPECT_EQ(seat_of(65.99, 0.03), Seat::not_seated);
}

TEST(JudgeSeat, SaysHowFineAGaugeWouldSettleIt) {
  const Band band{millimetres(1000), millimetres(1000.4)};
  const auto at = [&](double y, double u, double g) {
    return judge_seat({millimetres(y), millimetres(u), band, millimetres(g)}).value();
  };
  for (const double y : {1000.2, 1000.6, 1000.9}) {
    const auto judged = at(y, 1.0, 0.75);
    ASSERT_EQ(judged.seat, Seat::cannot_tell) << y;
    ASSERT_TRUE(judged.expanded_wanted.has_value()) << y;
    EXPECT_NE(at(y, judged.expanded_wanted->si() * 1e3 * 0.999, 0.75).seat, Seat::cannot_tell) << y;
    EXPECT_EQ(at(y, judged.expanded_wanted->si() * 1e3 * 1.001, 0.75).seat, Seat::cannot_tell) << y;
  }
  EXPECT_FALSE(at(1000.3, 0.2, 0.2).expanded_wanted.has_value());
}

TEST(JudgeSeat, RefusesAndNamesTheField) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const Band band{millimetres(1000), millimetres(1001)};
  EXPECT_EQ(judge_seat({metres(nan), metres(0), band, metres(1)}).error().field, "measured");
  EXPECT_EQ(judge_seat({metres(1), metres(-1), band, metres(1)}).error().field, "measured-u");
  EXPECT_EQ(judge_seat({metres(1), metres(0), band, metres(0)}).error().field, "least-gap");
  EXPECT_EQ(judge_seat({metres(1), metres(0), {band.greatest, band.least}, metres(1)}).error().field, "band-least");
}

// The guard of the rule, by simulation: a seated stack is called not seated, and one with a gap of least size seated, no
// oftener than the two 95 % bands allow together.
// Source: simulation with the standard library's generator, fixed seed.
// Tolerance: each error under 5 in 100 (2.5 in 100 a side of each band, both may add up).
TEST(JudgeSeat, ErrsNoOftenerThanItSays) {
  std::vector<StackPart> parts(20, {.nominal = millimetres(80), .above = millimetres(0.1), .below = millimetres(0.1)});
  const Band band = StackLength::of(parts)->band();
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> even(-1, 1);
  std::normal_distribution<double> normal;
  int false_alarms = 0, missed = 0, told_seated = 0;
  constexpr int kDraws = 20000;
  for (int draw = 0; draw < kDraws; ++draw) {
    double length_m = 1.6 + normal(random) * 5e-5;
    for (std::size_t i = 0; i < parts.size(); ++i) length_m += 1e-4 * even(random);
    const auto seat = [&](double gap_m) {
      return judge_seat({metres(length_m + gap_m), micrometres(100), band, micrometres(1200)})->seat;
    };
    false_alarms += seat(0) == Seat::not_seated || seat(0) == Seat::contradiction ? 1 : 0;
    told_seated += seat(0) == Seat::seated ? 1 : 0;
    missed += seat(1.2e-3) == Seat::seated ? 1 : 0;
  }
  EXPECT_LT(false_alarms, kDraws * 0.05);
  EXPECT_LT(missed, kDraws * 0.05);
  EXPECT_GT(told_seated, kDraws * 0.5);
}

TEST(Explain, FindsMissingDoubledAndExchangedParts) {
  std::vector<StackPart> parts;
  for (const double mm : {100.0, 50.0, 100.0, 32.0, 50.0}) parts.push_back({.nominal = millimetres(mm)});
  const auto missing = explain(millimetres(-49.9), millimetres(0.3), parts).value();
  ASSERT_EQ(missing.size(), 2U);
  EXPECT_EQ(missing[0].kind, SlipKind::missing);
  EXPECT_EQ(missing[0].parts, (std::vector<int>{1, 4}));
  EXPECT_EQ(missing[1].kind, SlipKind::exchanged);
  EXPECT_EQ(missing[1].parts, (std::vector<int>{0, 2}));
  EXPECT_EQ(missing[1].instead, (std::vector<int>{1, 4}));
  const auto doubled = explain(millimetres(32.1), millimetres(0.3), parts).value();
  ASSERT_EQ(doubled.size(), 1U);
  EXPECT_EQ(doubled[0].kind, SlipKind::doubled);
  EXPECT_EQ(doubled[0].parts, (std::vector<int>{3}));
  EXPECT_TRUE(explain(millimetres(7), millimetres(0.3), parts)->empty());
  EXPECT_FALSE(explain(millimetres(7), millimetres(0.3), {}));
  EXPECT_FALSE(explain(metres(std::numeric_limits<double>::quiet_NaN()), millimetres(0.3), parts));
}

const FigureSpec& spec_of(std::string_view name) { return figure_named(figures(), name); }

// Source: the four-part stack-up of sum_test.cc.
// Tolerance: 1e-9 relative.
TEST(StackFigures, LengthShowsBandAndWorstCase) {
  std::vector<Input> inputs;
  for (const double mm : {100, 50, 30, 50}) inputs.push_back(given("length", any(millimetres(mm))));
  for (const double mm : {0.10, 0.05, 0.03, 0.05}) {
    inputs.push_back(given("above", any(millimetres(mm))));
    inputs.push_back(given("below", any(millimetres(mm))));
  }
  const auto w = evaluate(spec_of("stack-length"), inputs).value();
  EXPECT_NEAR(w.si("nominal"), 0.23, 1e-12);
  EXPECT_NEAR(w.si("worst-greatest") - w.si("nominal"), 0.23e-3, 1e-12);
  EXPECT_NEAR(w.si("band-greatest") - w.si("nominal"), 0.137530970168e-3, 1e-11);
  inputs.pop_back();
  EXPECT_EQ(evaluate(spec_of("stack-length"), inputs).error().at(0).code.id(), "stack.values_uneven");
}

TEST(StackFigures, SeatedAnswersAndSaysWhatSettlesIt) {
  const auto at = [](double y, double u) {
    return evaluate(spec_of("seated"),
                    {given("measured", any(inches(y))), given("measured-u", any(inches(u))),
                     given("band-least", any(inches(65.886))), given("band-greatest", any(inches(65.926))),
                     given("least-gap", any(inches(0.06)))})
        .value();
  };
  EXPECT_EQ(std::get<std::string>(at(65.95, 0.03).outputs[0].value), "cannot_tell");
  EXPECT_EQ(at(65.95, 0.03).findings.at(0).instruction->code.id(), "stack.finer_gauge");
  EXPECT_EQ(at(65.95, 0.03).answer, Answer::cannot_tell);
  EXPECT_EQ(at(65.90, 0.01).answer, Answer::in);
  EXPECT_EQ(at(65.99, 0.01).answer, Answer::out);
  EXPECT_EQ(std::get<std::string>(at(65.80, 0.01).outputs[0].value), "contradiction");
}

TEST(StackFigures, OpenJointNamesTheJointAndRefusesOneThatIsNot) {
  std::vector<Input> inputs(4, given("length", any(millimetres(100))));
  inputs.push_back(given("above", any(millimetres(0.1))));
  inputs.push_back(given("below", any(millimetres(0.1))));
  inputs.push_back(given("measured", any(millimetres(401.5))));
  inputs.push_back(given("measured-u", any(millimetres(0.1))));
  inputs.push_back(given("joint-changed", any_count(2)));
  inputs.push_back(given("feeler-not", any_count(2)));
  inputs.push_back(given("feeler-in", any_count(3)));
  const auto w = evaluate(spec_of("open-joint"), inputs).value();
  EXPECT_EQ(w.si("joint"), 3);
  EXPECT_GT(w.si("chance"), 0.99);
  EXPECT_EQ(w.findings.at(0).instruction->code.id(), "stack.look_first");
  inputs.push_back(given("feeler-in", any_count(4)));
  EXPECT_EQ(evaluate(spec_of("open-joint"), inputs).error().at(0).code.id(), "stack.no_such_joint");
  inputs.back() = given("feeler-in", any_count(2));
  EXPECT_EQ(evaluate(spec_of("open-joint"), inputs).error().at(0).code.id(), "stack.feeler_twice");
}

TEST(StackFigures, SlipNamesTheStory) {
  const auto w = evaluate(spec_of("stack-slip"),
                          {given("length", any(millimetres(100))), given("length", any(millimetres(32))),
                           given("difference", any(millimetres(-32.1))), given("within", any(millimetres(0.5)))})
                     .value();
  EXPECT_EQ(std::get<std::string>(w.outputs[0].value), "missing");
  EXPECT_EQ(w.findings.at(0).code.id(), "stack.may_be_missing");
}

}  // namespace
}  // namespace flatwise::stack
