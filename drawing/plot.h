// plot.h: a curve that answers one question, on a scale with figures: for the screen and for paper alike.
//
//   const DisplayList picture = plot({.title = "Hanger M, turning load", .question = "How far away is the peak?",
//                                     .x = {.words = "shaft speed, /min", .from = 0, .to = 800},
//                                     .y = {.words = "lbf", .from = 0, .to = 40},
//                                     .curves = {{.id = "as-built", .points = ...}},
//                                     .here = PlotPlace{.x = 480, .y = 6, .words = {"work, 480 /min", "6 lbf"}}},
//                                    {.width = 120, .height = 90});
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drawing/display_list.h"

namespace flatwise::drawing {

/// Numbers of an axis are in the unit that its words name. Its ends are drawn where the nearest even figures lie.
struct PlotAxis {
  std::string words;
  double from = 0, to = 1;
};

/// Points in the order they are joined. What lies beyond the scale is cut off at its edge.
struct Curve {
  std::string id, name;
  std::vector<Point> points;
  bool chosen = false;  ///< Drawn heavy.
};

/// What lies between two curves over the same x: filled, its bounds dashed.
struct PlotBand {
  std::string id;
  std::vector<double> x, low, high;
};

/// 'You are here': a line across the scale in the colour of what is next, a dot at y, and its figure beside it.
struct PlotPlace {
  double x = 0;
  std::optional<double> y{};
  std::vector<std::string> words{};
};

/// A range of x to stay out of, hatched.
struct KeepOut {
  double from = 0, to = 0;
  std::vector<std::string> words{};
};

/// One thing that happened: a cross, an open circle (it goes on), or a cross in the colour of what was read.
enum class MarkForm { cross, circle, read };
struct PlotMark {
  Point at;
  MarkForm form = MarkForm::cross;
  std::string id{}, words{};
};

struct Plot {
  std::string title{}, question{};
  PlotAxis x{}, y{};
  std::vector<Curve> curves{};
  std::vector<PlotBand> bands{};
  std::vector<KeepOut> keep_out{};
  std::vector<PlotMark> marks{};
  std::optional<PlotPlace> here{};
};

struct PlotSize {
  double width = 120, height = 90;  ///< mm, with head and figures.
};

/// Draws it. No legend: each curve's name stands where it is furthest from everything else.
/// Ids     "here", "axis-x", "axis-y", those of curves ("curve-<id>"), bands ("band-<id>"), marks ("mark-<id>"), and those by
///         which the page reads a place off the scale: "figure-x", "figure-y" (a figure each), "words-x", "words-y".
[[nodiscard]] DisplayList plot(const Plot& plot, const PlotSize& size = {});

/// Curves that nowhere differ by more than `share` of the scale become one, with both names: two names on one line are
/// told as one line. Keeps the order of the first of each.
[[nodiscard]] std::vector<Curve> merged(std::vector<Curve> curves, const PlotAxis& y, double share = 0.004);

/// Even figures of a scale: steps of 1, 2 or 5 times a power of ten, three to six of them, the ends included.
struct Steps {
  double from = 0, to = 1, step = 1;
  int decimals = 0;  ///< That the step needs.
  [[nodiscard]] int count() const;
};
/// Inputs     Finite ends, from < to; else CORE_CHECK.
[[nodiscard]] Steps even_steps(double from, double to);
/// A figure of a scale: thousands apart, minus as U+2212.
[[nodiscard]] std::string scale_figure(double value, int decimals);

}  // namespace flatwise::drawing
