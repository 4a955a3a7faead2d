// How often a spot in a bearing is met.
#include "core/bearings/defects.h"
#include "core/bearings/figures_parts.h"

namespace flatwise::bearings {
namespace {

constexpr double kMostTurning = 1e4;  // rad/s

Result<Computed> compute_defects(const Given& in) {
  // The grooves do not matter here: any that holds the ball.
  const Length ball = length_of(in, "ball-diameter"), groove = 0.52 * ball;
  const BallBearing bearing{static_cast<int>(in.si("balls")), ball, length_of(in, "pitch-diameter"), groove, groove};
  const auto rates = defect_rates({.bearing = bearing,
                                   .contact = radians(in.si("contact-angle")),
                                   .inner = radians_per_second(in.si("inner-speed")),
                                   .outer = radians_per_second(in.si("outer-speed"))});
  if (!rates) {
    Problem problem = rates.error();
    if (problem.field == "contact") problem.field = "contact-angle";
    if (problem.field == "outer") problem.field = "outer-speed";
    return as_input(std::move(problem));
  }
  return Computed{
      .values = {any(rates->outer), any(rates->inner), any(rates->cage), any(rates->ball), any(rates->ball_spot)}};
}

}  // namespace

FigureSpec defect_rates_figure() {
  return {
      .name = "defect-frequencies",
      .formula =
          "γ = D_w cos β/d_m; f_o = Z/2 |n_i − n_o| (1 − γ); f_i = Z/2 |n_i − n_o| (1 + γ); f_c = |n_i (1 − γ) + n_o "
          "(1 + γ)|/2; f_b = d_m/(2 D_w) |n_i − n_o| (1 − γ²)",
      .inputs = {between("balls", "Z", Kind::count, kFewestBalls, kMostBalls),
                 above_nought("ball-diameter", "D_w", Kind::length, 1),
                 above_nought("pitch-diameter", "d_m", Kind::length, 2),
                 assumed(between("contact-angle", "β", Kind::angle, 0, 0.7853), AnyQuantity{0, Kind::angle}, kOwnRule),
                 between("inner-speed", "n_i", Kind::angular_speed, -kMostTurning, kMostTurning),
                 assumed(between("outer-speed", "n_o", Kind::angular_speed, -kMostTurning, kMostTurning),
                         AnyQuantity{0, Kind::angular_speed}, kOwnRule)},
      .outputs = {{"outer", "f_o", Kind::frequency},
                  {"inner", "f_i", Kind::frequency},
                  {"cage", "f_c", Kind::frequency},
                  {"ball", "f_b", Kind::frequency},
                  {"ball-spot", "2 f_b", Kind::frequency}},
      .sources = {"RollingKinematics"},
      .compute = compute_defects,
      .example = {{"balls=8", "ball-diameter=10 mm", "pitch-diameter=50 mm", "inner-speed=1800 rpm"}, "outer=96 Hz"}};
}

}  // namespace flatwise::bearings
