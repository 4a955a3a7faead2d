#include "core/metrology/bore.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/metrology/findings.h"
#include "core/metrology/taper.h"
#include "tests/support/test_table.h"

namespace flatwise::metrology {
namespace {

std::vector<Reading> readings_of(std::vector<double> micrometres_over_100, std::vector<double> directions) {
  std::vector<Reading> out;
  for (std::size_t i = 0; i < directions.size(); ++i)
    out.push_back({millimetres(100 + micrometres_over_100[i] * 1e-3), degrees(directions[i])});
  return out;
}
const std::vector<double> kFour{0, 45, 90, 135};

/// A good gauge, everything at 20 °C, limits of 100 N7 (ISO 286-2: −10 and −45 µm).
PlaneReadings plane_of(const std::vector<Reading>& readings) {
  return {.readings = readings,
          .gauge = {.calibration = micrometres(2),
                    .resolution = micrometres(1),
                    .repeatability = micrometres(1),
                    .repeatability_readings = 10},
          .thermal = {.part = thermometer(celsius(20), kelvins(1)),
                      .gauge = thermometer(celsius(20), kelvins(1)),
                      .part_expansion = {10.5e-6},
                      .gauge_expansion = {11.5e-6}},
          .limits = {millimetres(99.955), millimetres(99.990)},
          .ovality_limit = micrometres(17.5)};
}
std::vector<std::string> codes(const PlaneJudged& p) {
  std::vector<std::string> out;
  for (const Finding& f : plane_findings(p, Rule::guard_u, {.plane = "A"})) out.emplace_back(f.code.id());
  return out;
}
bool says(const PlaneJudged& p, std::string_view code) { return std::ranges::count(codes(p), code) == 1; }
std::string instruction(const PlaneJudged& p, std::string_view code) {
  for (const Finding& f : plane_findings(p, Rule::guard_u, {}))
    if (f.code.id() == code && f.instruction) return std::string{f.instruction->code.id()};
  return "";
}

PlaneReadings plane_of(const TestRow& row, const std::vector<Reading>& readings) {
  const auto u = [&](const char* name) { return metres(number(row, name)); };
  return {.readings = readings,
          .gauge = {.calibration = u("calibration"),
                    .resolution = u("resolution"),
                    .repeatability = u("s"),
                    .repeatability_readings = static_cast<int>(number(row, "n_s")),
                    .ring = u("ring")},
          .thermal = {.part = thermometer(celsius(number(row, "tp")), kelvins(2 * number(row, "u_tp"))),
                      .gauge = thermometer(celsius(number(row, "tg")), kelvins(2 * number(row, "u_tg"))),
                      .part_expansion = {number(row, "ap")},
                      .gauge_expansion = {number(row, "ag")}}};
}

// Source: tests/data/metrology_scipy.py (scipy 1.10.1): least squares by singular values, sensitivities by shifting each
// influence, factors from stats.t, the round bore's bound from stats.f.
// Tolerance: values 6e-8 of the length (the linear correction leaves out (α Δt)² and α_p Δt α_g Δt); U 2e-4 relative, and
// one step of truncated degrees of freedom is never within that.
TEST(Plane, AgreesWithAnIndependentComputation) {
  for (const TestRow& row : test_table("metrology_scipy_planes.csv")) {
    std::vector<Reading> readings;
    const auto directions = numbers(row, "directions_deg"), read = numbers(row, "readings_m");
    for (std::size_t i = 0; i < read.size(); ++i) readings.push_back({metres(read[i]), degrees(directions[i])});
    const auto p = judge_plane(plane_of(row, readings));
    ASSERT_TRUE(p);
    const double size = number(row, "mean") * 6e-8;
    EXPECT_NEAR(p->mean.value_si, number(row, "mean"), size);
    EXPECT_NEAR(p->mean.u_si, number(row, "u_mean"), 2e-4 * number(row, "u_mean"));
    EXPECT_NEAR(p->mean.uncertainty().expanded_si, number(row, "U_mean"), 2e-4 * number(row, "U_mean"));
    EXPECT_NEAR(p->least.value_si, number(row, "least"), size);
    EXPECT_NEAR(p->greatest.value_si, number(row, "greatest"), size);
    EXPECT_NEAR(p->least.uncertainty().expanded_si, number(row, "U_least"), 5e-4 * number(row, "U_least"));
    EXPECT_NEAR(p->greatest.uncertainty().expanded_si, number(row, "U_greatest"), 5e-4 * number(row, "U_greatest"));
    EXPECT_NEAR(p->ovality->value_si, number(row, "ovality"), 5e-4 * number(row, "U_ovality"));
    EXPECT_NEAR(p->ovality->uncertainty().expanded_si, number(row, "U_ovality"), 1e-3 * number(row, "U_ovality"));
  }
}

// Source: docs/worked/W13-bore-at-plane.md, by hand. Tolerance: the digits of the sheet.
TEST(Plane, OfTheHandSheetIsReproduced) {
  const auto readings = readings_of({-15, -16, -14, -15}, kFour);
  PlaneReadings in = plane_of(readings);
  in.thermal.part.value = in.thermal.gauge.value = celsius(22);
  const auto p = judge_plane(in).value();
  EXPECT_NEAR(p.mean.value_si, 99.9852e-3, 1e-9);
  EXPECT_NEAR(p.mean.u_si, 1.412e-6, 1e-9);
  EXPECT_NEAR(p.greatest.u_si, 1.593e-6, 1e-9);
  EXPECT_NEAR(p.greatest.uncertainty().expanded_si, 3.8725e-6, 1e-9);
  EXPECT_NEAR(p.ovality->value_si, 0, 1e-12);
  EXPECT_EQ(p.answer, Answer::in);
  EXPECT_TRUE(codes(p).empty());
}

// Source: an exact form put in, no scatter: closed form D0 ± e/2. Tolerance: 1e-12 m, rounding on 0.1 m.
TEST(Form, IsFoundExactlyFromAnyThreeDirections) {
  for (const auto& directions :
       std::vector<std::vector<double>>{kFour, {0, 60, 120}, {0, 45, 90}, {200, 290, 20, 335}}) {
    std::vector<Reading> readings;
    for (const double d : directions)
      readings.push_back({metres(0.1 + 10e-6 * std::cos(2 * degrees(d - 30).radians())), degrees(d)});
    const auto form = fit_form(readings).value();
    ASSERT_TRUE(form.fitted);
    EXPECT_NEAR(form.mean_m, 0.1, 1e-12);
    EXPECT_NEAR(form.amplitude_m(), 10e-6, 1e-12);
    EXPECT_NEAR(form.greatest_at().degrees(), 30, 1e-4);
  }
  // Greatest less least of four readings 45° apart misses up to 29 % of an oval; the form does not.
  const auto four =
      readings_of({10 * std::cos(2 * degrees(22.5).radians()), 10 * std::cos(2 * degrees(22.5).radians()),
                   -10 * std::cos(2 * degrees(22.5).radians()), -10 * std::cos(2 * degrees(22.5).radians())},
                  kFour);
  const auto form = fit_form(four).value();
  EXPECT_NEAR(2 * form.amplitude_m(), 20e-6, 1e-12);
  EXPECT_NEAR(form.greatest_direction_m - form.least_direction_m, std::sqrt(0.5) * 20e-6, 1e-12);
}

TEST(Form, IsNotFittedFromDirectionsThatDoNotOpenIt) {
  for (const auto& directions :
       std::vector<std::vector<double>>{{0}, {0, 90}, {0, 90, 180}, {0, 1, 2, 90}, {0, 20, 40}, {0, 180.5, 359, 91}}) {
    const auto readings = readings_of(std::vector<double>(directions.size(), -20), directions);
    const auto p = judge_plane(plane_of(readings)).value();
    EXPECT_FALSE(p.enough_directions) << directions.size();
    EXPECT_EQ(p.size, Answer::in);
    EXPECT_EQ(p.answer, Answer::cannot_tell);
    EXPECT_TRUE(says(p, p.directions < 3 ? "metrology.too_few_directions" : "metrology.directions_too_close"));
  }
  const auto worn = readings_of({15, 16}, {0, 90});
  EXPECT_EQ(judge_plane(plane_of(worn))->answer, Answer::out) << "too few directions do not hide a worn bore";
}

// Source: standard deviation of 1, 2 and 3 µm, which is 1 µm with two degrees of freedom.
// Tolerance: 1e-6 relative.
TEST(Scatter, ComesFromTheStudyOrThreeRepeatsOrSparesAndNeverFromTwo) {
  const auto from = [](const std::vector<Reading>& r) { return scatter_of(fit_form(r).value(), std::nullopt); };
  EXPECT_EQ(from(readings_of({1, 2, 1, 2}, kFour)).from, Scatter::From::none) << "one to spare is not enough";
  EXPECT_EQ(from(readings_of({1, 2, 1, 2, 3, 2, 1, 1}, {0, 0, 45, 45, 90, 90, 135, 135})).from,
            Scatter::From::residual);
  EXPECT_EQ(from(readings_of({1, 2, 1, 2}, {0, 0, 90, 90})).from, Scatter::From::none) << "pairs only";
  const Scatter repeats = from(readings_of({1, 2, 3, 9, 5}, {0, 180, 0, 45, 90}));
  EXPECT_EQ(repeats.from, Scatter::From::repeats);
  EXPECT_NEAR(repeats.s_m, 1e-6, 1e-12);
  EXPECT_EQ(repeats.dof, 2);
  const auto readings = readings_of({-20, -21, -20, -21}, kFour);
  PlaneReadings in = plane_of(readings);
  in.gauge.repeatability.reset();
  const auto p = judge_plane(in).value();
  EXPECT_EQ(p.answer, Answer::cannot_tell);
  EXPECT_EQ(instruction(p, "metrology.no_scatter"), "metrology.read_three_times");
}

// Source: ISO 14253-1 guard U; U = 3.9 µm of W13 at both limits of 100 N7. Tolerance: none, answers only.
TEST(Plane, IsInOutOrCannotTellByItsGuard) {
  const auto at = [](double micrometres_over) {
    const auto readings = readings_of(std::vector<double>(4, micrometres_over), kFour);
    return judge_plane(plane_of(readings)).value();
  };
  EXPECT_EQ(at(-27).answer, Answer::in);
  EXPECT_EQ(at(-12).answer, Answer::cannot_tell);
  EXPECT_EQ(at(-8).answer, Answer::cannot_tell);
  EXPECT_EQ(at(-2).answer, Answer::out);
  EXPECT_TRUE(says(at(-2), "metrology.bore_over"));
  EXPECT_TRUE(says(at(-53), "metrology.bore_under"));
  EXPECT_EQ(instruction(at(-2), "metrology.bore_over"), "metrology.set_aside");
  EXPECT_TRUE(says(at(-12), "metrology.cannot_tell"));
}

// Source: the readings are greatest at 0°.
// Tolerance: 1°, far under the step of 45°.
TEST(Plane, FindsAnOvalBoreThatIsInsideItsSizes) {
  const auto readings = readings_of({-14, -27, -40, -27}, kFour);
  const auto p = judge_plane(plane_of(readings)).value();
  EXPECT_EQ(p.size, Answer::in);
  EXPECT_EQ(p.form, Answer::out);
  EXPECT_TRUE(says(p, "metrology.oval"));
  EXPECT_TRUE(p.direction_known);
  EXPECT_NEAR(p.greatest_at.degrees(), 0, 1);
}

TEST(Plane, TooHotOverdueOrFarOffIsNeverInNorOut) {
  const auto good = readings_of({-27, -27, -27, -27}, kFour), worn = readings_of({20, 20, 20, 20}, kFour);
  for (const auto* readings : {&good, &worn}) {
    PlaneReadings hot = plane_of(*readings);
    hot.thermal.part.value = celsius(45);
    EXPECT_EQ(judge_plane(hot)->answer, Answer::cannot_tell);
    EXPECT_EQ(instruction(*judge_plane(hot), "metrology.too_far_from_20"), "metrology.let_it_stand");
    PlaneReadings overdue = plane_of(*readings);
    overdue.gauge.standing = Standing::overdue;
    const auto p = judge_plane(overdue).value();
    EXPECT_EQ(p.answer, Answer::cannot_tell);
    EXPECT_EQ(p.would_be, readings == &good ? Answer::in : Answer::out);
    for (const Finding& f : plane_findings(p, Rule::guard_u, {})) EXPECT_NE(f.severity, Severity::out) << f.code.id();
    overdue.gauge.standing = Standing::accepted;
    EXPECT_EQ(judge_plane(overdue)->answer, p.would_be);
    EXPECT_TRUE(says(*judge_plane(overdue), "metrology.gauge_accepted"));
  }
  std::vector<Reading> slip = good;
  slip[2].diameter = millimetres(3.9358);
  EXPECT_TRUE(says(judge_plane(plane_of(slip)).value(), "metrology.far_off"));
  EXPECT_EQ(judge_plane(plane_of(slip))->answer, Answer::cannot_tell);
}

// Source: the reading in the groove, 100 mm − 2 µm.
// Tolerance: 1 nm.
TEST(Plane, ReadingsThatDisagreeAreReadAgainAndThenBelieved) {
  const auto once = readings_of({-27, -27, -27, -5}, kFour);
  const auto p = judge_plane(plane_of(once)).value();
  EXPECT_TRUE(says(p, "metrology.readings_disagree"));
  EXPECT_EQ(p.answer, Answer::cannot_tell);
  const auto slip = readings_of({-27, -27, -27, -27, -14}, {0, 45, 90, 135, 135});
  EXPECT_TRUE(judge_plane(plane_of(slip))->obstacles.disagree) << "one reading of a pair";
  const auto twice = readings_of({-27, -27, -27, -2, -27, -27, -27, -2}, {0, 45, 90, 135, 0, 45, 90, 135});
  const auto q = judge_plane(plane_of(twice)).value();
  EXPECT_TRUE(says(q, "metrology.not_two_lobed"));
  EXPECT_NEAR(q.greatest.value_si, 99.998e-3, 1e-9) << "the groove itself, not the form through it";
  EXPECT_EQ(q.answer, Answer::out);
}

// Source: W15 by hand. Tolerance: whole readings.
TEST(Settle, NamesTheLeastTroubleThatWouldDecide) {
  const Budget scatter{.own_u_m = 2e-6, .gauge_u_m = 0.5e-6, .readings = 4, .round = 4};
  const Settle more = what_settles(scatter, 3e-6, Rule::guard_u);
  EXPECT_EQ(more.remedy, Remedy::readings);
  EXPECT_EQ(more.readings, 4) << "u = √(2² 4/8 + 0.5²) = 1.5 µm, U = 2.94 µm";
  const Budget calibration{.own_u_m = 0.5e-6, .gauge_u_m = 3e-6, .readings = 4, .round = 4};
  const Settle finer = what_settles(calibration, 3e-6, Rule::guard_u);
  EXPECT_EQ(finer.remedy, Remedy::gauge) << "more readings cannot settle what the calibration leaves open";
  EXPECT_NEAR(finer.holds_m, 3e-6, 1e-12);
  const Budget heat{.own_u_m = 0.5e-6,
                    .gauge_u_m = 0.5e-6,
                    .temperature_u_m = 4.5e-6,
                    .temperature_if_taken_u_m = 0.8e-6,
                    .readings = 4,
                    .round = 4};
  EXPECT_EQ(what_settles(heat, 3e-6, Rule::guard_u).remedy, Remedy::take_temperatures);
  EXPECT_EQ(what_settles(heat, 1.8e-6, Rule::guard_u).remedy, Remedy::temperatures_and_gauge);
  EXPECT_EQ(what_settles(calibration, 0.3e-6, Rule::guard_u).remedy, Remedy::none);
}

TEST(Settle, WhatItAsksForDoesSettleIt) {
  // The remedy is taken and the plane judged again with the same diameters: no longer cannot tell.
  for (double over = -14; over < -6; over += 0.25) {
    const auto readings = readings_of(std::vector<double>(4, over), kFour);
    PlaneReadings in = plane_of(readings);
    in.gauge.repeatability = micrometres(3);
    const auto p = judge_plane(in).value();
    if (p.greatest_judged.answer != Answer::cannot_tell) continue;
    std::vector<Reading> taken = readings;
    if (p.settle_greatest.remedy == Remedy::readings) {
      for (int i = 0; i < p.settle_greatest.readings; ++i) taken.push_back(readings[static_cast<std::size_t>(i % 4)]);
    } else if (p.settle_greatest.remedy == Remedy::gauge) {
      in.gauge = {.calibration = Length::from_si(p.settle_greatest.holds_m * 0.5),
                  .resolution = micrometres(0.1),
                  .repeatability = Length::from_si(p.settle_greatest.holds_m * 0.2),
                  .repeatability_readings = 30};
    } else {
      continue;
    }
    in.readings = taken;
    EXPECT_NE(judge_plane(in)->greatest_judged.answer, Answer::cannot_tell) << over;
  }
}

TEST(Decision, OneSidedRuleNeedsLessRoomThanTheDefault) {
  const SizeLimits limits{millimetres(80), millimetres(80.03)};
  const Sized value{.value_si = 80.0195e-3, .u_si = 6e-6};
  EXPECT_EQ(judge(value, limits, Rule::one_sided).answer, Answer::in);
  EXPECT_EQ(judge(value, limits, Rule::guard_u).answer, Answer::cannot_tell);
  EXPECT_EQ(worse(Answer::out, Answer::cannot_tell), Answer::out);
  EXPECT_EQ(worse(Answer::in, Answer::cannot_tell), Answer::cannot_tell);
  EXPECT_EQ(judge(value, Bounds{}, Rule::guard_u).answer, Answer::in);
}

// Source: W14 by hand. Tolerance: digits of the sheet.
TEST(Taper, CancelsWhatBothPlanesShare) {
  Planes planes;
  planes.a = {.mean_m = 99.985e-3, .own = {0.6e-6, 36}, .gauge_u_m = 1e-6, .temperature_u_m = 4.5e-6};
  planes.b = {.mean_m = 99.968e-3, .own = {0.6e-6, 36}, .gauge_u_m = 1e-6, .temperature_u_m = 4.5e-6};
  planes.limit = micrometres(14);
  const auto t = judge_taper(planes).value();
  EXPECT_NEAR(t.taper.value_si, 17e-6, 1e-12);
  EXPECT_NEAR(t.taper.u_si, 0.8485e-6, 1e-10);
  EXPECT_FALSE(t.wider_at_b);
  EXPECT_EQ(t.answer, Answer::out);
  EXPECT_NEAR(t.mean.u_si, 4.629e-6, 1e-9) << "in the mean nothing common cancels";
  planes.same_gauge = planes.same_temperatures = false;
  EXPECT_NEAR(judge_taper(planes)->taper.u_si, 6.574e-6, 1e-9);
  EXPECT_EQ(judge_taper(planes)->answer, Answer::cannot_tell);
  const Answer in_answers[] = {Answer::in, Answer::in};
  EXPECT_EQ(judge_bore(in_answers, t), Answer::out);
}

TEST(Taper, SeesABellMouthThatTheEndsAloneDoNot) {
  Planes planes;
  planes.a = planes.b = {.mean_m = 99.985e-3, .own = {0.6e-6, 36}};
  planes.middle = PlaneMean{.mean_m = 99.965e-3, .own = {0.6e-6, 36}};
  planes.limit = micrometres(14);
  const auto t = judge_taper(planes).value();
  EXPECT_EQ(t.taper_judged.answer, Answer::in);
  EXPECT_EQ(t.bell_judged.answer, Answer::out);
  EXPECT_EQ(taper_findings(t, Rule::guard_u).at(0).code.id(), "metrology.bell_mouth");
}

TEST(Plane, RefusesBadInputAndNamesTheField) {
  const auto good = readings_of({-27, -27, -27, -27}, kFour);
  const auto field_of = [](const PlaneReadings& in) {
    const auto p = judge_plane(in);
    return p ? std::string{"none"} : p.error().field;
  };
  const auto spoilt = [&](auto change) {
    PlaneReadings in = plane_of(good);
    change(in);
    return field_of(in);
  };
  const double nan = std::nan("");
  EXPECT_EQ(spoilt([](PlaneReadings& in) { in.readings = {}; }), "reading");
  EXPECT_EQ(spoilt([&](PlaneReadings& in) { in.gauge.calibration = metres(nan); }), "calibration");
  EXPECT_EQ(spoilt([](PlaneReadings& in) { in.gauge.resolution = metres(-1e-6); }), "resolution");
  EXPECT_EQ(spoilt([](PlaneReadings& in) { in.gauge.repeatability_readings = 2; }), "repeatability-readings");
  EXPECT_EQ(spoilt([&](PlaneReadings& in) { in.thermal.part.value = kelvin(nan); }), "part-temperature");
  EXPECT_EQ(spoilt([](PlaneReadings& in) { in.thermal.gauge_expansion.per_kelvin = 1; }), "gauge-expansion");
  EXPECT_EQ(spoilt([](PlaneReadings& in) { std::swap(in.limits.least, in.limits.greatest); }), "greatest");
  EXPECT_EQ(spoilt([](PlaneReadings& in) { in.ovality_limit = Length{}; }), "ovality-limit");
  auto bad = good;
  bad[1].diameter = metres(nan);
  EXPECT_EQ(field_of(plane_of(bad)), "reading");
  bad = good;
  bad[1].direction = radians(nan);
  EXPECT_EQ(field_of(plane_of(bad)), "direction");
  EXPECT_EQ(field_of(plane_of(std::vector<Reading>(1001, good[0]))), "reading");
}

}  // namespace
}  // namespace flatwise::metrology
