// Plots: figures stand where their values are, nothing leaves the sheet, and what is said is told from the others.
#include "drawing/plot.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "drawing/couple_arrows.h"
#include "drawing/list_samples.h"

namespace flatwise::drawing {
namespace {

std::vector<Text> texts(const DisplayList& list) { return items_of<Text>(list); }
const Text* text_of(const std::vector<Text>& all, const std::string& words) {
  const auto found = std::ranges::find(all, words, &Text::text);
  return found == all.end() ? nullptr : &*found;
}

Plot sample() {
  Curve square{.id = "square", .name = "square", .points = {}};
  Curve line{.id = "line", .name = "line", .points = {}};
  for (int i = 0; i <= 80; ++i) {
    square.points.push_back({i * 10.0, i * i / 160.0});
    line.points.push_back({i * 10.0, i / 4.0});
  }
  return {.title = "Title",
          .question = "A question?",
          .x = {.words = "speed, /min", .from = 0, .to = 800},
          .y = {.words = "N", .from = 0, .to = 40},
          .curves = {square, line},
          .here = PlotPlace{.x = 480, .y = 14.4, .words = {"work"}}};
}

// Source: common practice: scales step by 1, 2 or 5 times a power of ten.
// Tolerance: exact to rounding, kTight.
TEST(EvenSteps, StepByOneTwoOrFive) {
  for (const auto& [from, to] : {std::pair{0.0, 800.0}, std::pair{0.0, 1.0}, std::pair{-3.0, 7.2}, std::pair{0.0, 3e-5},
                                 std::pair{99.9, 100.1}, std::pair{0.0, 123456.0}}) {
    const Steps s = even_steps(from, to);
    const double power = std::pow(10.0, std::floor(std::log10(s.step) + 1e-9));
    const double factor = s.step / power;
    EXPECT_TRUE(std::abs(factor - 1) < 1e-9 || std::abs(factor - 2) < 1e-9 || std::abs(factor - 5) < 1e-9) << s.step;
    EXPECT_LE(s.from, from + kTight);
    EXPECT_GE(s.to, to - kTight);
    EXPECT_GE(s.count(), 3);
    EXPECT_LE(s.count(), 8);
  }
}

TEST(ScaleFigure, ReadsAsOnAScale) {
  EXPECT_EQ(scale_figure(0, 0), "0");
  EXPECT_EQ(scale_figure(-0.0, 1), "0.0");
  EXPECT_EQ(scale_figure(1500, 0), "1500");
  EXPECT_EQ(scale_figure(12500, 0), "12 500");
  EXPECT_EQ(scale_figure(-2.5, 1), "−2.5");
}

// Source: closed form: on a straight scale a point at 3/4 of x and the line's 15 of 40 stand at those shares of the axes.
// Tolerance: kTight.
TEST(Plot, PointsStandAtTheirValues) {
  const DisplayList list = plot(sample());
  const Path x = paths(list, "axis-x").at(0), y = paths(list, "axis-y").at(0);
  const auto curve = paths(list, "curve-line").at(0);
  const double left = x.points[0].x, right = x.points[1].x, top = y.points[0].y, bottom = y.points[1].y;
  EXPECT_NEAR(curve.points[60].x, left + 0.75 * (right - left), kTight);
  EXPECT_NEAR(curve.points[60].y, bottom - 15.0 / 40 * (bottom - top), kTight);
  EXPECT_NEAR(paths(list, "here").at(0).points[0].x, left + 0.6 * (right - left), kTight);
}

TEST(Plot, NothingLeavesTheSheet) {
  Plot wild = sample();
  for (Point& p : wild.curves[0].points) p.y *= 50;
  wild.bands = {{.id = "wide", .x = {0, 400, 900}, .low = {-50, 0, 10}, .high = {10, 100, 500}}};
  wild.keep_out = {{.from = 600, .to = 2000, .words = {"keep out:", "within 25 %"}}};
  EXPECT_TRUE(inside(plot(wild)));
  EXPECT_TRUE(inside(plot(wild, {.width = 84, .height = 70})));
}

TEST(Plot, NamesStandApartFromCurvesAndFromEachOther) {
  const auto all = texts(plot(sample()));
  const Text* square = text_of(all, "square");
  const Text* line = text_of(all, "line");
  ASSERT_NE(square, nullptr);
  ASSERT_NE(line, nullptr);
  EXPECT_GT(std::hypot(square->at.x - line->at.x, square->at.y - line->at.y), 4);
}

// 2026-11-27: of a shaft whose ways leave nothing, the name of the curve lay across the dashed floor and hid it.
TEST(Plot, NamesKeepOffTheBoundsOfABand) {
  Plot p = sample();
  p.marks.clear(), p.here.reset(), p.keep_out.clear();
  p.y = {.words = "lbf", .from = 0, .to = 0.06};
  Curve none{.id = "1", .name = "all ways alike: below the dashed floor", .points = {}};
  PlotBand floor{.id = "floor", .x = {}, .low = {}, .high = {}};
  for (int i = 0; i <= 63; ++i) {
    none.points.push_back({10.0 * i, 0});
    floor.x.push_back(10.0 * i), floor.low.push_back(0), floor.high.push_back(0.056 * i * i / 3969);
  }
  p.curves = {none};
  p.bands = {floor};
  const DisplayList list = plot(p);
  const auto all = texts(list);
  const Text* name = text_of(all, none.name);
  ASSERT_NE(name, nullptr);
  const double wide = 0.56 * name->size * static_cast<double>(none.name.size());
  for (const Path& path : items_of<Path>(list)) {
    if (path.look.stroke != Stroke::hidden) continue;
    for (const Point& at : path.points)
      EXPECT_FALSE(at.x > name->at.x && at.x < name->at.x + wide && at.y > name->at.y - 0.8 * name->size &&
                   at.y < name->at.y)
          << at.x << " " << at.y;
  }
}

TEST(Merged, TwoNamesOnOneCurveAreOneCurve) {
  Plot p = sample();
  p.curves.push_back(p.curves[0]);
  p.curves.back().name = "again";
  for (Point& point : p.curves.back().points) point.y += 0.1;
  const auto kept = merged(p.curves, p.y);
  ASSERT_EQ(kept.size(), 2U);
  EXPECT_EQ(kept[0].name, "square, again");
  EXPECT_EQ(merged(p.curves, {.words = "", .from = 0, .to = 1}).size(), 3U);
}

// Source: vector sum; facing rotors of an odd number leave one, a closed star leaves none (job facts of engineering: thirds).
// Tolerance: kTight.
TEST(CoupleArrows, WhatIsLeftIsHeavyAndAClosedOneIsARing) {
  const auto arrows = [](std::vector<double> azimuths) {
    CoupleArrows of{.rotors = {}, .floor = 0.05};
    for (const double a : azimuths) of.rotors.push_back({static_cast<int>(of.rotors.size()) + 1, 1, a});
    return couple_arrows(of, 60, 40);
  };
  const DisplayList facing = arrows({0, 180, 0, 180, 0});
  EXPECT_EQ(paths(facing, "left-over").size(), 2U);
  const DisplayList closed = arrows({0, 120, 180, 240, 0});
  EXPECT_TRUE(paths(closed, "left-over").empty());
  EXPECT_TRUE(inside(facing) && inside(closed));
  // Arrows that lie on one another are drawn beside each other.
  EXPECT_GT(std::abs(paths(facing, "rotor-1").at(0).points[0].x - paths(facing, "rotor-3").at(0).points[0].x), 1);
}

// Source: closed form: bars are as long as their loads.
// Tolerance: kTight.
TEST(BallLoads, BarsAreAsLongAsTheLoads) {
  const DisplayList list =
      ball_loads({.balls = {{0, 10}, {90, 5}, {180, 0}, {270, 2.5}}, .ball_share = 0.2, .greatest_words = "10 kN"}, 60);
  const auto length = [&](const std::string& id) {
    const Path bar = paths(list, id).at(0);
    return std::hypot(bar.points[1].x - bar.points[0].x, bar.points[1].y - bar.points[0].y);
  };
  EXPECT_NEAR(length("ball-2"), length("greatest") / 2, kTight);
  EXPECT_NEAR(length("ball-4"), length("greatest") / 4, kTight);
  EXPECT_TRUE(paths(list, "ball-3").empty());
  EXPECT_TRUE(inside(list));
}

}  // namespace
}  // namespace flatwise::drawing
