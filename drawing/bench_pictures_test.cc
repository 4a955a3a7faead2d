// Pictures of the bench: lengths, sizes, forces and readings stand at one scale, and what is out is never drawn inside.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/shaft/shaft_samples.h"
#include "drawing/bars.h"
#include "drawing/bench_pictures.h"
#include "drawing/end_view.h"
#include "drawing/list_samples.h"

namespace flatwise::drawing {
namespace {

constexpr double kWidth = 92;

Shaft nine() { return *Shaft::make(sample_shaft()); }

std::vector<Arc> arcs(const DisplayList& list, const std::string& id) { return items_of<Arc>(list, id); }
double left(const Path& path) { return std::ranges::min(path.points, {}, &Point::x).x; }
double right(const Path& path) { return std::ranges::max(path.points, {}, &Point::x).x; }
double top(const Path& path) { return std::ranges::min(path.points, {}, &Point::y).y; }
double bottom(const Path& path) { return std::ranges::max(path.points, {}, &Point::y).y; }
double x_of(const DisplayList& list, const std::string& id) { return left(paths(list, id).at(0)); }

// Source: closed form: places on the bar are proportional to the figures; a third of the tolerance in is a third of the way.
// Tolerance: kTight.
TEST(AnswerBar, StandsToScaleBetweenItsLimits) {
  const DisplayList list = answer_bar(
      {.least = 99.955, .greatest = 99.990, .value = 99.955 + 0.035 / 3, .expanded = 0.005, .answer = Answer::in},
      kWidth);
  const double low = x_of(list, "limit-least"), high = x_of(list, "limit-greatest");
  EXPECT_NEAR(high - low, kWidth / 2, kTight);  // Half the tolerance beyond each limit.
  const auto dots = arcs(list, "reading");
  ASSERT_EQ(dots.size(), 1U);
  EXPECT_NEAR(dots[0].centre.x, low + (high - low) / 3, 1e-7);
  EXPECT_EQ(dots[0].look.ink, Ink::in);
  const Path whisker = paths(list, "whisker").at(0);
  EXPECT_NEAR(right(whisker) - left(whisker), 2 * 0.005 / 0.035 * (high - low), 1e-6);
  EXPECT_TRUE(inside(list));
}

TEST(AnswerBar, NeverDrawsAReadingThatIsOutInsideTheLimits) {
  for (const double value : {99.94, 99.90, 90.0, 99.9901, 100.01, 100.05, 120.0}) {
    const DisplayList list = answer_bar(
        {.least = 99.955, .greatest = 99.990, .value = value, .expanded = 0.001, .answer = Answer::out}, kWidth);
    const double low = x_of(list, "limit-least"), high = x_of(list, "limit-greatest");
    const auto dots = arcs(list, "reading");
    const auto beyond = paths(list, "reading");
    ASSERT_EQ(dots.size() + beyond.size(), 1U) << value;
    const double at = dots.empty() ? (left(beyond[0]) + right(beyond[0])) / 2 : dots[0].centre.x;
    EXPECT_TRUE(value < 99.955 ? at < low : at > high) << value;
    EXPECT_TRUE(inside(list)) << value;
  }
}

TEST(AnswerBar, ShowsADotHalfFilledWhereItCannotTell) {
  const DisplayList list = answer_bar({.least = 1, .greatest = 2, .value = 2, .expanded = 0.1}, kWidth);
  EXPECT_EQ(arcs(list, "reading").at(0).look.fill, Fill::sheet);
  EXPECT_EQ(arcs(list, "reading").at(0).look.ink, Ink::tell);
}

TEST(AnswerBar, TakesOneLimitAndTheReadingBefore) {
  const DisplayList list = answer_bar({.greatest = 0.15, .value = 0.09, .answer = Answer::in, .before = 0.31}, kWidth);
  EXPECT_TRUE(paths(list, "limit-least").empty());
  EXPECT_LT(arcs(list, "reading").at(0).centre.x, x_of(list, "limit-greatest"));
  EXPECT_GT(arcs(list, "before").at(0).centre.x, x_of(list, "limit-greatest"));
}

// Source: closed form: the figures of the stack of the sheet, in inches; distances are proportional.
// Tolerance: 1e-7 mm, from differences of figures near 66.
TEST(LengthScale, KeepsBandGapAndReadingAtOneScale) {
  const LengthScale s{
      .least = 65.886, .greatest = 65.926, .open_from = 65.946, .one_open = 65.966, .value = 65.95, .expanded = 0.03};
  const DisplayList list = length_scale(s, 120);
  const double a = x_of(list, "limit-least"), b = x_of(list, "limit-greatest");
  const double scale = (b - a) / 0.040;
  EXPECT_NEAR(x_of(list, "open-from") - b, 0.020 * scale, 1e-7);
  EXPECT_NEAR(x_of(list, "one-open") - b, 0.040 * scale, 1e-7);
  EXPECT_NEAR(arcs(list, "reading").at(0).centre.x - a, 0.064 * scale, 1e-7);
  const Path whisker = paths(list, "whisker").at(0);
  EXPECT_NEAR(right(whisker) - left(whisker), 0.060 * scale, 1e-7);
  EXPECT_TRUE(inside(list));
}

// Source: closed form: heights are proportional to the chances.
// Tolerance: kTight.
TEST(ChanceBars, AreAsHighAsTheirChance) {
  const ChanceBars bars{
      .from = 0,
      .to = 10,
      .joints = {{.joint = 2, .at = 3, .chance = 0.06}, {.joint = 5, .at = 7, .chance = 0.18, .first = true}},
      .names = {{5, "2"}}};
  const DisplayList list = chance_bars(bars, kWidth);
  const Path low = paths(list, "joint-2").at(0), high = paths(list, "joint-5").at(0);
  EXPECT_NEAR((bottom(high) - top(high)) / (bottom(low) - top(low)), 3.0, kTight);
  EXPECT_EQ(high.look.fill, Fill::next);
  EXPECT_LT(right(low), left(high));
}

TEST(RunBars, PassTheLimitOnlyWhereTheReadingDoes) {
  const DisplayList list = run_bars(
      {.rows = {{"run-1", "A", "47", 47}, {"run-2", "M", "75", 75}}, .limit = 70, .limit_words = "70"}, kWidth);
  const double limit = x_of(list, "limit-greatest");
  EXPECT_LT(right(paths(list, "run-1").at(0)), limit);
  EXPECT_GT(right(paths(list, "run-2").at(0)), limit);
}

// Source: the construction: a value stands as far along the scale as the bar of the same value reaches.
// Tolerance: kTight.
TEST(RunBars, TheLastGoodRunIsALineOnTheSameScale) {
  const DisplayList list = run_bars(
      {.rows = {{"run-1", "A", "47", 47, 60}, {"run-2", "M", "60", 60}}, .limit = 70, .limit_words = "70"}, kWidth);
  EXPECT_NEAR(x_of(list, "run-1-good"), right(paths(list, "run-2").at(0)), kTight);
  EXPECT_TRUE(paths(list, "run-2-good").empty());
  // One that was higher than all that is read now is still on the drawing.
  const DisplayList low = run_bars({.rows = {{"run-1", "A", "1", 1, 50}}, .limit = {}, .limit_words = {}}, kWidth);
  EXPECT_LT(x_of(low, "run-1-good"), kWidth);
}

// Source: closed form: a clamping band of 36,000 to 48,000 lbf on a scale to 104,000.
// Tolerance: kTight.
TEST(BandBar, LiesToScaleUpToProof) {
  const DisplayList list = band_bar({.least = 36000, .greatest = 48000, .end = 104000}, kWidth);
  const Path band = paths(list, "band").at(0);
  EXPECT_NEAR((right(band) - left(band)) / (kWidth - 0.6), 12.0 / 104.0, kTight);
  EXPECT_NEAR(x_of(list, "notch"), (left(band) + right(band)) / 2, kTight);
}

// Source: the definition: hub 150 mm outside and bearing 100 mm outside stand at one scale on the tray.
// Tolerance: kTight.
TEST(Tray, DrawsItsPiecesAtOneScale) {
  const Shaft shaft = nine();
  const TrayDrawing drawn = tray(shaft, 3,
                                 {{TrayPart::hub, TrayState::reused, "tray-hub", {}},
                                  {TrayPart::half, TrayState::fresh, "tray-half-a", {}},
                                  {TrayPart::bearing, TrayState::fresh, "tray-bearing", {}},
                                  {TrayPart::ring, TrayState::wanted, "tray-ring-b", {}}},
                                 190);
  const double bearing = shaft.rotor(3).bearing.outside.si() * 1e3;
  EXPECT_NEAR(arcs(drawn.list, "tray-bearing").at(0).radius * 2, bearing * drawn.scale, kTight);
  EXPECT_GT(arcs(drawn.list, "tray-hub").at(0).radius, arcs(drawn.list, "tray-bearing").at(0).radius);
  EXPECT_EQ(arcs(drawn.list, "tray-half-a").at(0).look.fill, Fill::renew);
  EXPECT_EQ(arcs(drawn.list, "tray-hub").at(0).look.fill, Fill::sheet);
  EXPECT_TRUE(inside(drawn.list));
  const bool dashed = std::ranges::any_of(drawn.list.items, [](const Item& item) {
    const auto* arc = std::get_if<Arc>(&item);
    return arc != nullptr && arc->look.stroke == Stroke::wanted && arc->look.ink == Ink::next;
  });
  EXPECT_TRUE(dashed);
}

// The tool on the right picture touches the outer ring and nothing else; on the wrong one the inner.
// Source: the picture's own parts: two of them touch. Common practice: only the outer ring is pressed on.
// Tolerance: kTight, rounding of a few sums.
TEST(PressSection, PutsTheToolOnTheRingItSays) {
  const Shaft shaft = nine();
  const Station& station = shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(4))];
  for (const bool on_outer : {true, false}) {
    const DisplayList list = press_section(station, shaft.rotor(4), {.on_outer = on_outer}, kWidth);
    const Path outer = paths(list, "outer-ring").at(1), inner = paths(list, "inner-ring").at(1);
    const Path tool = paths(list, "tool").at(1);  // Right side.
    const Path& under = on_outer ? outer : inner;
    const Path& other = on_outer ? inner : outer;
    EXPECT_NEAR(bottom(tool), top(under), kTight);
    EXPECT_GE(left(tool), left(under) - kTight);
    EXPECT_LE(right(tool), right(under) + kTight);
    EXPECT_TRUE(right(tool) <= left(other) + kTight || left(tool) >= right(other) - kTight);
    EXPECT_EQ(paths(list, "force-way").empty(), on_outer);
    EXPECT_TRUE(inside(list)) << on_outer;
    // Its stop is in before the bearing is home.
    EXPECT_GT(top(paths(list, "stop-ring").at(0)), bottom(outer));
  }
}

// Source: closed form: a tool for the outer ring lies between the ring's inside and its outside.
TEST(PressSection, SaysWhatToolFits) {
  const Shaft shaft = nine();
  const ToolRing ring = tool_ring(shaft.rotor(1));
  EXPECT_LT(ring.inside, ring.outside);
  EXPECT_LT(ring.outside, shaft.rotor(1).bearing.outside);
  EXPECT_GT(ring.inside, shaft.rotor(1).bearing.bore);
}

// Source: closed form: arrows are proportional to forces, bars to lengths, over all ways.
// Tolerance: kTight.
TEST(TorqueWays, ShareTheirScales) {
  const auto drawn =
      torque_ways({{.bar = metres(1.5), .pull = newtons(800), .too_much = true},
                   {.bar = metres(1.2), .extension = metres(0.6), .pull = newtons(670), .too_much = true},
                   {.bar = metres(1.5), .multiplier = 4, .pull = newtons(200), .advised = true}},
                  newtons(400), "one", 180);
  ASSERT_EQ(drawn.ways.size(), 3U);
  const auto arrow = [&](std::size_t i) {
    const Path p = paths(drawn.ways[i], "pull").at(0);
    return bottom(p) - top(p);
  };
  const auto bar = [&](std::size_t i, const char* id) {
    const Path p = paths(drawn.ways[i], id).at(0);
    return right(p) - left(p);
  };
  EXPECT_NEAR(arrow(0) / arrow(2), 4.0, kTight);
  EXPECT_NEAR(bar(0, "bar") / bar(1, "bar"), 1.25, kTight);
  EXPECT_NEAR(bar(1, "bar") / bar(1, "extension"), 2.0, kTight);
  // What one person can hold crosses the arrow that is too much, and stands above the one that is not.
  EXPECT_GT(top(paths(drawn.ways[0], "one-person").at(0)), top(paths(drawn.ways[0], "pull").at(0)));
  EXPECT_LT(top(paths(drawn.ways[2], "one-person").at(0)), top(paths(drawn.ways[2], "pull").at(0)));
  for (const DisplayList& way : drawn.ways) EXPECT_TRUE(inside(way));
}

// The circles to be tapped carry the ids of their flats and keep clear of each other, from either end.
TEST(EndViewToTap, HasACircleAFlat) {
  const Shaft shaft = nine();
  for (const End end : {End::a, End::b}) {
    const DisplayList list =
        end_view(pair_of(shaft, 4), {.flat_a = 4, .flat_b = 2, .wanted_a = 4, .wanted_b = 1},
                 {.seen_from = end, .size = 100, .number_size = 6, .circle = 7, .colour = true, .id = "rotor-4"});
    std::vector<Arc> circles;
    for (int flat = 1; flat <= 6; ++flat) {
      const auto found = arcs(list, "rotor-4-flat-" + std::to_string(flat));
      ASSERT_EQ(found.size(), 1U) << flat;
      circles.push_back(found[0]);
    }
    EXPECT_EQ(circles[0].look.stroke, Stroke::wanted);
    // Clockwise from end A, anticlockwise from end B.
    EXPECT_EQ(circles[1].centre.x > list.width / 2, end == End::a);
    for (std::size_t i = 0; i < circles.size(); ++i) {
      const Arc& next = circles[(i + 1) % circles.size()];
      EXPECT_GT(std::hypot(circles[i].centre.x - next.centre.x, circles[i].centre.y - next.centre.y), 14);
    }
    EXPECT_TRUE(inside(list));
  }
}

}  // namespace
}  // namespace flatwise::drawing
