#include "core/bearings/figures.h"

#include <algorithm>
#include <cmath>

#include "core/bearings/figures_parts.h"

namespace flatwise::bearings {
namespace {

constexpr std::string_view kHubs[] = {"centred", "free"};
constexpr std::string_view kHeld[] = {"carried", "hanging"};
constexpr std::string_view kBallsFrom[] = {"estimated", "counted"};
constexpr double kMostSize = 2;  // m, like the sizes of the other folders.

Result<Computed> compute_geometry(const Given& in) {
  const Length bore = length_of(in, "bearing-bore"), outside = length_of(in, "bearing-outside");
  BearingInside known{.ball_diameter = length_if_given(in, "ball-diameter"),
                      .pitch_diameter = length_if_given(in, "pitch-diameter"),
                      .groove_inner = in.si("inner-groove-share"),
                      .groove_outer = in.si("outer-groove-share")};
  if (in.has("balls")) known.balls = static_cast<int>(std::lround(in.si("balls")));
  if (in.has("ball-share")) known.ball_diameter = in.si("ball-share") * (outside - bore);
  const auto b = estimated_bearing(bore, outside, known);
  if (!b) return as_input(b.error());
  Computed out{
      .values = {any(b->ball), any_count(b->balls), any(b->pitch), any(b->inner_groove), any(b->outer_groove)}};
  if (!in.has("balls") || in.has("ball-share"))
    out.findings.push_back(
        {Code{"bearings.estimated"}, Severity::note, {{"count", b->balls}, {"ball", any(b->ball)}}, {}, std::nullopt});
  return out;
}

}  // namespace

tl::unexpected<Problem> as_input(Problem problem) {
  std::ranges::replace(problem.field, '_', '-');
  constexpr std::pair<std::string_view, std::string_view> kOther[] = {{"ball", "ball-diameter"},
                                                                      {"pitch", "pitch-diameter"},
                                                                      {"clearance", "clearance-greatest"},
                                                                      {"diameter", "joint-diameter"},
                                                                      {"interference", "interference-greatest"}};
  for (const auto& [kernel, figure] : kOther)
    if (problem.field == kernel) problem.field = figure;
  return tl::unexpected(std::move(problem));
}

std::vector<InputSpec> inside_inputs() {
  return {between("balls", "Z", Kind::count, kFewestBalls, kMostBalls),
          above_nought("ball-diameter", "D_w", Kind::length, 1),
          above_nought("pitch-diameter", "d_m", Kind::length, kMostSize),
          above_nought("inner-groove", "r_i", Kind::length, 1), above_nought("outer-groove", "r_e", Kind::length, 1)};
}

Result<BallBearing> inside_from(const Given& in) {
  const BallBearing b{static_cast<int>(std::lround(in.si("balls"))), length_of(in, "ball-diameter"),
                      length_of(in, "pitch-diameter"), length_of(in, "inner-groove"), length_of(in, "outer-groove")};
  if (auto bad = problem_with(b)) return as_input(*std::move(bad));
  if (auto bad = balls_overlap(b)) return as_input(*std::move(bad));
  return b;
}

FigureSpec geometry_figure() {
  const auto groove = [](std::string_view name, std::string_view symbol) {
    return assumed(between(name, symbol, Kind::ratio, 0.501, 0.6), any_ratio(kGrooveShare), kCommonPractice);
  };
  return {.name = "bearing-geometry",
          .formula =
              "what is not known: d_m = (d + D)/2; D_w = share (D − d); Z = round(1 + 188°/(2 asin(D_w/d_m))); r_i = "
              "f_i D_w; r_e = f_e D_w",
          .inputs = {above_nought("bearing-bore", "d", Kind::length, kMostSize),
                     above_nought("bearing-outside", "D", Kind::length, kMostSize),
                     optional(above_nought("ball-diameter", "D_w", Kind::length, 1)),
                     instead_of(assumed(between("ball-share", "share", Kind::ratio, 0.1, 0.45), any_ratio(kBallShare),
                                        kCommonPractice),
                                "ball-diameter"),
                     optional(above_nought("pitch-diameter", "d_m", Kind::length, kMostSize)),
                     optional(between("balls", "Z", Kind::count, kFewestBalls, kMostBalls)),
                     groove("inner-groove-share", "f_i"), groove("outer-groove-share", "f_e")},
          .outputs = {{"ball-diameter", "D_w", Kind::length},
                      {"balls", "Z", Kind::count},
                      {"pitch-diameter", "d_m", Kind::length},
                      {"inner-groove", "r_i", Kind::length},
                      {"outer-groove", "r_e", Kind::length}},
          .sources = {"common practice"},
          .compute = compute_geometry,
          .example = {{"bearing-bore=55 mm", "bearing-outside=100 mm"}, "ball-diameter=13.725 mm"}};
}

// --- how the rotor is rocked ------------------------------------------------------------------------------------------

std::vector<InputSpec> rocked_inputs() {
  return {between("balls", "Z", Kind::count, kFewestBalls, kMostBalls),
          assumed(one_of("balls-from", "from", kBallsFrom), std::string{"estimated"}, kOwnRule),
          above_nought("ball-diameter", "D_w", Kind::length, 1),
          assumed(between("ball-doubt", "u_Dw", Kind::ratio, 0, 0.3), any_ratio(0.05), kCommonPractice),
          above_nought("pitch-diameter", "d_m", Kind::length, kMostSize),
          above_nought("inner-groove", "r_i", Kind::length, 1),
          above_nought("outer-groove", "r_e", Kind::length, 1),
          assumed(between("groove-doubt", "u_r", Kind::ratio, 0, 0.02), any_ratio(0.005), kCommonPractice),
          above_nought("radius", "R", Kind::length, 10),
          assumed(one_of("hub", "hub", kHubs), std::string{"centred"}, kCommonPractice),
          assumed(one_of("held", "held", kHeld), std::string{"carried"}, kCommonPractice),
          optional(from_nought("push", "P", Kind::force, kMostForce)),
          optional(above_nought("weight", "W", Kind::force, kMostForce))};
}

Result<Rocked> rocked_from(const Given& in) {
  Rocked r;
  r.bearing = {static_cast<int>(std::lround(in.si("balls"))), length_of(in, "ball-diameter"),
               length_of(in, "pitch-diameter"), length_of(in, "inner-groove"), length_of(in, "outer-groove")};
  if (auto bad = problem_with(r.bearing)) return as_input(*std::move(bad));
  r.factor = in.text("balls-from") == "counted" ? tilt_factor(r.bearing.balls) : tilt_factor_about(r.bearing.balls);
  // Two grooves, each its own doubt as a share of the ball; root of the sum of squares, as half widths.
  const double share = groove_reach(r.bearing) / r.bearing.ball;
  r.reach_doubt = std::min(0.9, std::hypot(in.si("ball-doubt"), std::sqrt(2.0) * in.si("groove-doubt") / share));
  r.radius = length_of(in, "radius");
  if (!(r.radius > 0.5 * r.bearing.pitch))
    return tl::unexpected(Problem{Code{"bearings.radius_inside"},
                                  "radius",
                                  {},
                                  {{"radius", any(r.radius)}, {"pitch", any(0.5 * r.bearing.pitch)}},
                                  std::nullopt});
  r.hub = in.text("hub") == "free" ? Hub::free : Hub::centred;
  if (in.text("held") != "hanging") return r;
  if (!in.has("weight"))
    return tl::unexpected(Problem{Code{"bearings.hanging_needs_weight"}, "weight", {}, {}, std::nullopt});
  r.hanging = Hanging{in.has("push") ? in.si("push") / in.si("weight") : 0.0, r.radius};
  return r;
}

double share_at(const Rocked& r, Length clearance, Angle carried) {
  return r.hanging && clearance > Length{} ? hanging_share(*r.hanging, clearance, carried) : 1.0;
}

Rocked with_reach(Rocked rocked, double share) {
  const Length more = 0.5 * share * groove_reach(rocked.bearing);
  rocked.bearing.inner_groove = rocked.bearing.inner_groove + more;
  rocked.bearing.outer_groove = rocked.bearing.outer_groove + more;
  return rocked;
}

Result<Length> swing_at(const Rocked& r, Length clearance, double factor) {
  if (!(clearance > Length{})) return Length{};
  const auto tilt = free_tilt(r.bearing, clearance, factor);
  if (!tilt) return as_input(tilt.error());
  return 2.0 * tilt->radians() * share_at(r, clearance, *tilt) * r.radius *
         dial_factor(r.hub, r.bearing, clearance, r.radius);
}

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> all{
      geometry_figure(),          bearing_ratings_figure(),     fitted_clearance_figure(),
      rim_play_figure(),          clearance_from_play_figure(), ball_contact_figure(),
      load_distribution_figure(), static_safety_figure(),       bearing_life_figure(),
      bearing_turn_figure(),      bearing_grease_figure(),      defect_rates_figure()};
  return all;
}

}  // namespace flatwise::bearings
