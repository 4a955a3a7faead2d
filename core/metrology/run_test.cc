// The test run's two figures: heat above the room, vibration; at the limit ± U on either side.
#include "core/metrology/run.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

#include "core/metrology/figures.h"
#include "tests/support/figures.h"

namespace flatwise::metrology {
namespace {

constexpr InstrumentRead thermometer(double celsius_read) {
  return {.value_si = celsius_read + 273.15, .calibration_si = 0.5, .resolution_si = 0.1};
}

Working run_of(std::string_view figure, const std::vector<std::string_view>& inputs) {
  const FigureSpec& spec = figure_named(figures(), figure);
  return evaluate(spec, inputs_of(spec, inputs)).value();
}
std::string problem_of(std::string_view figure, const std::vector<std::string_view>& inputs) {
  const FigureSpec& spec = figure_named(figures(), figure);
  return first_code(evaluate(spec, inputs_of(spec, inputs)));
}

// Source: GUM 5.1.2, 4.3.7 and F.2.2.1 by hand: u² = 2 (0.5/2)² + 2 · 0.1²/12 = 0.126667 K², u = 0.355903 K; U = 1.959964 u
//         = 0.697557 K.
// Tolerance: the digits of the sum.
TEST(RunRise, PutsBothThermometersTogether) {
  const auto rise = rise_above(thermometer(40), thermometer(14));
  ASSERT_TRUE(rise);
  EXPECT_NEAR(rise->value_si, 26, 1e-9);
  EXPECT_NEAR(rise->u_si, 0.355903, 1e-6);
  EXPECT_NEAR(rise->uncertainty().expanded_si, 0.697557, 1e-6);
}

// Source: GUM G.4.1 by hand: s = 0.3 K from 5 readings beside 0.355903 K: u = 0.465475 K, ν = 4 · 0.0469466/0.0081 = 23.18,
//         truncated 23; t(23, 95 %) = 2.0687 (Student's table).
// Tolerance: the digits of the table.
TEST(RunRise, AStudyBringsItsScatterAndItsFewDegreesOfFreedom) {
  InstrumentRead hanger = thermometer(40);
  hanger.scatter = Component{0.3, 1, 4};
  const auto rise = rise_above(hanger, thermometer(14));
  ASSERT_TRUE(rise);
  EXPECT_NEAR(rise->u_si, 0.465475, 1e-6);
  EXPECT_NEAR(rise->uncertainty().expanded_si, 2.0687 * 0.465475, 1e-4);
}

TEST(RunRise, WithoutACertificateNothingIsKnown) {
  InstrumentRead bare = thermometer(40);
  bare.calibration_si.reset();
  EXPECT_FALSE(rise_above(bare, thermometer(14)));
  EXPECT_FALSE(rise_above(thermometer(40), bare));
  EXPECT_FALSE(sized_from(bare));
}

struct AtTheLimit {
  double of_u;  ///< Where the value stands, in U from the limit.
  Answer answer;
};
// Source: ISO 14253-1: in up to the limit less U, out from the limit and U on, between them cannot tell.
// Tolerance: a thousandth of U on either side of each edge.
constexpr AtTheLimit kEdges[] = {{-1.001, Answer::in},         {-0.999, Answer::cannot_tell}, {0, Answer::cannot_tell},
                                 {0.999, Answer::cannot_tell}, {1.001, Answer::out},          {-30, Answer::in}};

TEST(RunRise, IsJudgedAtItsLimitLikeEveryOtherReading) {
  const double u = rise_above(thermometer(0), thermometer(0))->uncertainty().expanded_si;
  for (const AtTheLimit& at : kEdges) {
    const auto rise = rise_above(thermometer(60 + at.of_u * u), thermometer(20));
    EXPECT_EQ(judge(*rise, Bounds{.greatest_si = 40}, Rule::guard_u).answer, at.answer) << at.of_u;
  }
}

TEST(RunVibration, IsJudgedAtItsLimitLikeEveryOtherReading) {
  const auto read = [](double v) { return InstrumentRead{v, 0.12e-3, 0.1e-3}; };
  const double u = sized_from(read(0))->uncertainty().expanded_si;
  for (const AtTheLimit& at : kEdges) {
    const auto value = sized_from(read(4.5e-3 + at.of_u * u));
    EXPECT_EQ(judge(*value, Bounds{.greatest_si = 4.5e-3}, Rule::guard_u).answer, at.answer) << at.of_u;
  }
}

/// How often a hanger that truly stands `beyond_K` past its limit is called in, and how often out, over seeded runs.
struct Called {
  double in = 0, out = 0;
};
Called called(double beyond_K, bool without_doubt = false) {
  constexpr int kRuns = 20'000;
  std::mt19937_64 random{20816};
  std::normal_distribution<double> calibration{0, 0.25};  // U = 0.5 K, k = 2.
  const auto shown = [&](double truth) { return std::round((truth + calibration(random)) * 10) / 10; };
  std::uniform_real_distribution<double> room{-5, 30}, limit{39.95, 40.05};  // Not always on a step of the display.
  Called count;
  for (int run = 0; run < kRuns; ++run) {
    const double cold = room(random), most = limit(random);
    auto rise = *rise_above(thermometer(shown(cold + most + beyond_K)), thermometer(shown(cold)));
    if (without_doubt) rise.u_si = 0;
    const Answer answer = judge(rise, Bounds{.greatest_si = most}, Rule::guard_u).answer;
    count.in += answer == Answer::in, count.out += answer == Answer::out;
  }
  return {count.in / kRuns, count.out / kRuns};
}

// Source: ISO 14253-1 with U at 95 % two-sided: on the limit each wrong answer falls in 2.5 % of runs, and two U away hardly
//         ever (1.96 + 1.96 standard deviations, under 1 in 10,000). Standard deviation of the count over 20,000 runs: 0.11 %.
// Tolerance: five standard deviations.
TEST(RunRise, SimulatedRunsAreCalledWronglyAsRarelyAsUPromises) {
  const Called on_the_limit = called(0);
  EXPECT_NEAR(on_the_limit.in, 0.025, 0.006);
  EXPECT_NEAR(on_the_limit.out, 0.025, 0.006);
  EXPECT_LT(called(1.4).in, 0.001);
  EXPECT_GT(called(1.4).out, 0.95);
  EXPECT_LT(called(-1.4).out, 0.001);
  EXPECT_GT(called(0, true).in, 0.4) << "a judge that leaves out the doubt must be seen here";
}

// Source: ISO 20816-3, the boundaries of its two groups on rigid and on flexible supports, from memory; the same as in
//         ISO 10816-3.
// Tolerance: exact; a value on a boundary lies in the better zone.
TEST(VibrationZone, HasTheBoundariesOfTheStandard) {
  struct Row {
    MachineGroup group;
    Support support;
    double ab, bc, cd;
  };
  constexpr Row kRows[] = {{MachineGroup::large, Support::rigid, 2.3, 4.5, 7.1},
                           {MachineGroup::large, Support::flexible, 3.5, 7.1, 11.0},
                           {MachineGroup::medium, Support::rigid, 1.4, 2.8, 4.5},
                           {MachineGroup::medium, Support::flexible, 2.3, 4.5, 7.1}};
  for (const Row& row : kRows) {
    const auto zone = [&](double mm_s) { return vibration_zone(Speed::from_si(mm_s * 1e-3), row.group, row.support); };
    EXPECT_EQ(zone(0), Zone::a);
    EXPECT_EQ(zone(row.ab), Zone::a);
    EXPECT_EQ(zone(row.ab + 0.01), Zone::b);
    EXPECT_EQ(zone(row.bc), Zone::b);
    EXPECT_EQ(zone(row.bc + 0.01), Zone::c);
    EXPECT_EQ(zone(row.cd), Zone::c);
    EXPECT_EQ(zone(row.cd + 0.01), Zone::d);
  }
}

TEST(RunFigures, SayWhatIsOutAndWhatWouldSettleIt) {
  const std::vector<std::string_view> both{"room=14 °C",
                                           "hanger-calibration=0.5 K",
                                           "room-calibration=0.5 K",
                                           "hanger-resolution=0.1 K",
                                           "room-resolution=0.1 K",
                                           "greatest=40 K"};
  const auto with = [&](std::string_view hanger) {
    std::vector<std::string_view> all = both;
    all.push_back(hanger);
    return run_of("run-rise", all);
  };
  const Working out = with("hanger=60 °C");
  EXPECT_EQ(out.answer, Answer::out);
  ASSERT_EQ(out.findings.size(), 1U);
  EXPECT_EQ(out.findings[0].code, Code{"metrology.rise_out"});
  EXPECT_EQ(out.findings[0].instruction->code, Code{"metrology.find_the_heat"});
  const Working near = with("hanger=53.5 °C");
  EXPECT_EQ(near.answer, Answer::cannot_tell);
  EXPECT_EQ(near.findings.at(0).instruction->code, Code{"metrology.settle_thermometer"});
  const Working hopeless = with("hanger=54.05 °C");
  EXPECT_EQ(hopeless.answer, Answer::cannot_tell);
  EXPECT_EQ(hopeless.findings.at(0).instruction->code, Code{"metrology.settle_run_none"});
  const Working in = with("hanger=40 °C");
  EXPECT_EQ(in.answer, Answer::in);
  EXPECT_TRUE(in.findings.empty());
  ASSERT_TRUE(in.outputs.front().u);
}

TEST(RunFigures, CannotTellWithoutACertificateAndJudgeNothingWithoutALimit) {
  const Working bare = run_of("run-vibration", {"vibration=1 mm/s", "greatest=4.5 mm/s"});
  EXPECT_EQ(bare.answer, Answer::cannot_tell);
  EXPECT_EQ(bare.findings.at(0).code, Code{"metrology.vibration_no_certificate"});
  EXPECT_FALSE(bare.outputs.front().u);
  const Working free = run_of("run-vibration", {"vibration=5 mm/s", "calibration=0.1 mm/s"});
  EXPECT_FALSE(free.answer);
  EXPECT_EQ(text_out(free, "zone"), "C");
  ASSERT_EQ(free.findings.size(), 1U);
  EXPECT_EQ(free.findings[0].severity, Severity::note) << "a zone is advice";
  EXPECT_EQ(free.input("support")->origin.kind, OriginKind::assumed);
  EXPECT_EQ(text_out(run_of("run-vibration", {"vibration=5 mm/s", "support=rigid"}), "zone"), "D");
  EXPECT_FALSE(run_of("run-rise", {"hanger=90 °C", "room=20 °C"}).answer);
}

TEST(RunFigures, RefuseWhatCannotBe) {
  EXPECT_EQ(problem_of("run-vibration", {"vibration=2 m/s"}), "figure.input_range");
  EXPECT_EQ(problem_of("run-rise", {"hanger=400 °C", "room=14 °C"}), "figure.input_range");
  EXPECT_EQ(problem_of("run-rise", {"hanger=40 °C"}), "figure.input_missing");
  EXPECT_EQ(problem_of("run-vibration", {"vibration=1 mm/s", "repeatability=0.1 mm/s"}), "metrology.study_incomplete");
  EXPECT_EQ(problem_of("run-vibration", {"vibration=1 mm/s", "greatest=0 mm/s"}), "figure.input_range");
}

}  // namespace
}  // namespace flatwise::metrology
