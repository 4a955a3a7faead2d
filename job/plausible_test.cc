// Readings that no part of a definition can give: refused, whatever unit they are typed in; all that a worn or wrong part gives is
// taken. Figures are computed from the sample's own sizes. Source: the ranges of job/README.md (common practice).
// Tolerance: none; a millionth beside each end.
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/units/parse.h"
#include "job/check/plausible.h"
#include "job/job_samples.h"

namespace flatwise::job {
namespace {

class Plausible : public testing::Test {
 protected:
  Plausible() {
    record.book_in();
    record.answer(Stage::booking_in);
  }
  /// Fields of what is wrong with a body as the next entry.
  std::string refused(EntryBody body) {
    const auto job = record.open();
    Entry e;
    e.id = "new";
    e.by = "someone";
    e.follows = job->entries.back().id;
    e.body = std::move(body);
    std::string out;
    for (const Problem& p : check_entry(job->shaft, job->workshop, job->state, e))
      out += std::string{p.code.id()} + " " + p.field + "; ";
    return out;
  }
  static Entered typed(const std::string& text, Kind kind) { return parse_quantity(text, kind, "x").value(); }
  static Entered si(double value, Kind kind) { return {{value, kind}, {}, "x"}; }
  static BoreRead bore(const Entered& diameter) { return {1, 'A', 1, 4, diameter, "G1"}; }

  static constexpr const char* kNo = "record.not_possible body.";
  SampleRecord record;
};

// The bearing of the sample is 100 mm outside.
TEST_F(Plausible, ABoreIsNearItsBearing) {
  for (const char* good : {"100 mm", "3.937 in", "3 15/16 in", "51 mm", "199 mm", "7 in", "2 in"})
    EXPECT_EQ(refused(bore(typed(good, Kind::length))), "") << good;
  for (const char* bad : {"999 in", "3.937 mm", "393.7 mm", "1 in", "8 in", "49.9 mm", "201 mm", "15/16 in"})
    EXPECT_EQ(refused(bore(typed(bad, Kind::length))), std::string{kNo} + "diameter; ") << bad;
}

TEST_F(Plausible, TheRefusalSaysWhatIsAllowed) {
  const auto job = record.open();
  Entry e;
  e.id = "new", e.by = "someone", e.follows = job->entries.back().id, e.body = bore(typed("999 in", Kind::length));
  const auto problems = check_entry(job->shaft, job->workshop, job->state, e);
  ASSERT_EQ(problems.size(), 1U);
  const auto arg = [&](std::string_view name) {
    for (const auto& [key, value] : problems[0].args)
      if (key == name) return std::get<AnyQuantity>(value).si;
    return -1.0;
  };
  EXPECT_DOUBLE_EQ(arg("least"), 0.050);
  EXPECT_DOUBLE_EQ(arg("greatest"), 0.200);
  EXPECT_DOUBLE_EQ(arg("value"), 999 * 0.0254);
}

TEST_F(Plausible, LengthsAreNearTheirParts) {
  double stack = 0;
  for (const Station& s : record.shaft().stations())
    if (s.kind != StationKind::nut) stack += s.length.nominal.si();
  EXPECT_EQ(refused(StackRead{si(stack * 1.9, Kind::length), "L1"}), "");
  EXPECT_EQ(refused(StackRead{si(stack / 25.4, Kind::length), "L1"}), std::string{kNo} + "length; ");
  EXPECT_EQ(refused(StackRead{si(stack * 25.4, Kind::length), "L1"}), std::string{kNo} + "length; ");
  const int rotor = record.station("1"), spacer = record.station("S1");
  EXPECT_EQ(refused(PartMeasured{rotor, Half::a, typed("34 mm", Kind::length), "L1"}), "");
  EXPECT_EQ(refused(PartMeasured{rotor, Half::a, typed("34 in", Kind::length), "L1"}), std::string{kNo} + "length; ");
  const double length = record.shaft().stations()[static_cast<std::size_t>(spacer) - 1].length.nominal.si();
  EXPECT_EQ(refused(PartMeasured{spacer, {}, si(length * 2.1, Kind::length), "L1"}), std::string{kNo} + "length; ");
  EXPECT_EQ(refused(PartMeasured{spacer, {}, si(length * 0.6, Kind::length), "L1"}), "");
}

TEST_F(Plausible, PlayForceTorqueAndRun) {
  EXPECT_EQ(refused(PlayRead{1, typed("115 mm", Kind::length), "L1", {}}), std::string{});  // Half of 230 mm.
  EXPECT_EQ(refused(PlayRead{1, typed("116 mm", Kind::length), "L1", {}}), std::string{kNo} + "swing; ");
  EXPECT_EQ(refused(PlayRead{1, typed("1 mm", Kind::length), "L1", typed("461 mm", Kind::length)}),
            std::string{kNo} + "radius; ");
  EXPECT_EQ(refused(Pressed{1, typed("4 kN", Kind::force), "P1"}), "");
  EXPECT_EQ(refused(Pressed{1, typed("4000 kN", Kind::force), "P1"}), std::string{kNo} + "force; ");
  const double wanted = record.shaft().spec().nuts.front().torque.si();
  const auto pull = [&](double torque, double multiplier) {
    return NutPulled{record.shaft().spec().nuts.front().end,
                     TorquePull::With::wrench,
                     si(torque, Kind::torque),
                     "W1",
                     {},
                     {},
                     {},
                     {},
                     multiplier};
  };
  EXPECT_EQ(refused(pull(wanted / 100, 1)), "");
  EXPECT_EQ(refused(pull(wanted * 4.9, 1)), "");
  EXPECT_EQ(refused(pull(wanted * 5.1, 1)), std::string{kNo} + "shown; ");
  EXPECT_EQ(refused(pull(wanted * 0.6, 10)), std::string{kNo} + "shown; ");
  NutPulled bar = pull(wanted * 1.1, 1);
  bar.with = TorquePull::With::bar;
  bar.gauge = {};
  bar.shown = si(wanted * 1.1, Kind::force);
  bar.tool_length = si(1.0, Kind::length);
  EXPECT_EQ(refused(bar), "");
  bar.tool_length = si(5.0, Kind::length);
  EXPECT_EQ(refused(bar), std::string{kNo} + "shown; ");
  EXPECT_EQ(refused(RunRead{RunQuantity::room, 0, typed("140 °F", Kind::temperature), ""}), "");
  EXPECT_EQ(refused(RunRead{RunQuantity::room, 0, typed("142 °F", Kind::temperature), ""}),
            std::string{kNo} + "value; ");
  EXPECT_EQ(refused(RunRead{RunQuantity::vibration, 0, typed("11 mm/s", Kind::speed), ""}), "");
  EXPECT_EQ(refused(RunRead{RunQuantity::vibration, 0, typed("11 in/s", Kind::speed), ""}),
            std::string{kNo} + "value; ");
  EXPECT_EQ(refused(RunRead{RunQuantity::minutes, 0, typed("30 min", Kind::time), ""}), "");
  EXPECT_EQ(refused(RunRead{RunQuantity::minutes, 0, typed("30 h", Kind::time), ""}), std::string{kNo} + "value; ");
  EXPECT_EQ(refused(TemperatureRead{1, Measured::part, typed("151 °C", Kind::temperature), "T1"}),
            std::string{kNo} + "temperature; ");
}

/// Refused exactly outside the range, and the unit it was typed in makes no difference.
RC_GTEST_FIXTURE_PROP(Plausible, ABoreIsRefusedExactlyOutsideHalfToDouble, ()) {
  const double factor = std::pow(10.0, *rc::gen::inRange(-2000, 2001) / 1000.0);
  const double metres = 0.100 * factor;
  RC_PRE(std::abs(factor - 0.5) > 1e-6 && std::abs(factor - 2) > 1e-6);
  const std::string wanted = factor > 0.5 && factor < 2 ? "" : std::string{kNo} + "diameter; ";
  RC_ASSERT(refused(bore(typed(std::to_string(metres * 1e3) + " mm", Kind::length))) == wanted);
  RC_ASSERT(refused(bore(typed(std::to_string(metres / 0.0254) + " in", Kind::length))) == wanted);
}

/// A definition of any size takes its own sizes, and a fraction of an inch near them.
RC_GTEST_PROP(PlausibleSizes, EveryPartTakesItsOwnSize, ()) {
  const SampleRecord sample{{.rotors = *rc::gen::inRange(1, 9), .pitch_mm = 1.0 * *rc::gen::inRange(120, 400)}};
  for (std::size_t i = 0; i < sample.shaft().stations().size(); ++i) {
    const Station& s = sample.shaft().stations()[i];
    PartMeasured part{static_cast<int>(i) + 1, {}, {any(s.length.nominal), {}, "x"}, "L1"};
    if (s.kind == StationKind::rotor) {
      part.half = Half::b;
      part.length.value = any(sample.shaft().rotor(s.rotor + 1).half.nominal);
    }
    for (const auto& reading : check_detail::readings_of(sample.shaft(), part)) {
      RC_ASSERT(reading.range.holds(reading.value));
      const double sixteenths = std::round(reading.value.si / 0.0254 * 16);
      RC_ASSERT(reading.range.holds({std::max(1.0, sixteenths) / 16 * 0.0254, Kind::length}));
    }
  }
}

}  // namespace
}  // namespace flatwise::job
