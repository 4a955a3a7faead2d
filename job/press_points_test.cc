// Force over the way in: points of a press as entries, and what they say, on the invented sample shaft.
#include <gtest/gtest.h>

#include <algorithm>

#include "job/job_samples.h"
#include "job/press_path.h"

namespace flatwise::job {
namespace {

Entered quantity(AnyQuantity value) { return {value, {}, "x"}; }

struct PressedJob {
  SampleRecord record;
  WorkingPtr band;

  PressedJob() {
    record.do_all();
    const auto open = record.open();
    for (const StageReport& stage : open->report.stages)
      for (const Shown& shown : stage.workings)
        if (shown.working->figure == "press-force") band = shown.working;
  }
  /// Points at even steps; `share` of the middle of the band at home, over the share of the width that is in.
  void read(double (*share)(double in), int count = 6) {
    const fits::PressPath path = press_path_of(*band);
    const double home = 0.5 * (band->si("force-least") + band->si("force-greatest"));
    for (int i = 1; i <= count; ++i) {
      const double in = static_cast<double>(i) / count;
      record.write(PressPointRead{1, i, quantity(any(path.lead + in * path.pressing.width)),
                                  quantity(any(newtons(home * share(in)))), "P1"});
    }
  }
  [[nodiscard]] std::vector<std::string> said() const {
    std::vector<std::string> codes;
    const auto open = record.open();
    for (const StageReport& stage : open->report.stages)
      for (const Finding& f : stage.findings)
        if (f.code.id().starts_with("fits.curve_") || f.code.id() == "press.curve_few") codes.emplace_back(f.code.id());
    return codes;
  }
};

bool has(const std::vector<std::string>& codes, std::string_view code) {
  return std::ranges::find(codes, code) != codes.end();
}

// Source: the band itself (Lame and friction, checked in core/fits): even points in its middle lie in it, three times as much does not.
// Tolerance: none, the finding itself.
TEST(PressPoints, AreHeldAgainstTheBand) {
  PressedJob even;
  ASSERT_NE(even.band, nullptr);
  even.read([](double in) { return in; });
  EXPECT_TRUE(has(even.said(), "fits.curve_inside") || has(even.said(), "fits.curve_near"));
  PressedJob high;
  high.read([](double in) { return 3 * in; });
  EXPECT_TRUE(has(high.said(), "fits.curve_above"));
  PressedJob late;
  late.read([](double in) { return in * in * in; });
  EXPECT_TRUE(has(late.said(), "fits.curve_bends_up"));
}

TEST(PressPoints, FewSayNothingAndBlockNothing) {
  PressedJob job;
  job.read([](double in) { return in; }, 3);
  EXPECT_EQ(job.said(), std::vector<std::string>{"press.curve_few"});
}

TEST(PressPoints, GoFromTheFoldToTheBenchInTheirOrder) {
  PressedJob job;
  job.read([](double in) { return in; });
  const auto open = job.record.open();
  ASSERT_EQ(open->state.bench.press_points.size(), 6U);
  for (std::size_t i = 1; i < 6; ++i)
    EXPECT_LT(open->state.bench.press_points[i - 1].travel.value.value.si,
              open->state.bench.press_points[i].travel.value.value.si);
  // The same point read again corrects the one before.
  const PressPointRead again{1, 6, quantity(any(millimetres(23))), quantity(any(newtons(100))), "P1"};
  job.record.write(again, "bench", job.record.live(again));
  EXPECT_EQ(job.record.open()->state.bench.press_points.size(), 6U);
}

TEST(PressPoints, TheRamStopsAtEvenFiguresOfTheRule) {
  Rotor rotor = sample_rotor(5);
  rotor.bearing.width = millimetres(21);
  EXPECT_EQ(press_stops(rotor, UnitSystem::metric),
            (std::vector<std::string>{"6 mm", "10 mm", "15 mm", "19 mm", "23 mm"}));
  EXPECT_EQ(press_stops(rotor, UnitSystem::inch),
            (std::vector<std::string>{"1/4 in", "7/16 in", "9/16 in", "3/4 in", "7/8 in"}));
}

}  // namespace
}  // namespace flatwise::job
