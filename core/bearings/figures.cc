#include "core/bearings/figures.h"

#include <algorithm>
#include <cmath>

#include "core/bearings/figures_parts.h"
#include "core/fits/interference.h"
#include "core/fits/lame.h"

namespace flatwise::bearings {
namespace {

constexpr std::string_view kHubs[] = {"centred", "free"};
constexpr std::string_view kBallsFrom[] = {"estimated", "counted"};
constexpr double kMostSize = 2;  // m, like the sizes of the other folders.

/// A kernel's problem with the figure's name of the field.
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

Result<Computed> compute_geometry(const Given& in) {
  const auto b = estimated_bearing(length_of(in, "bearing-bore"), length_of(in, "bearing-outside"), in.si("ball-share"),
                                   in.si("groove-share"));
  if (!b) return as_input(b.error());
  Computed out{.values = {any(b->ball), any_count(b->balls), any(b->pitch), any(b->inner_groove)}};
  out.findings.push_back(
      {Code{"bearings.estimated"}, Severity::note, {{"count", b->balls}, {"ball", any(b->ball)}}, {}, std::nullopt});
  return out;
}

// --- clearance once fitted --------------------------------------------------------------------------------------------

/// By how much pressing with an interference closes the outer raceway.
Result<Length> closing(const fits::PressedJoint& joint, Length interference, Length loss) {
  const Length pressed = fits::after_flattening(interference, loss);
  if (!(pressed > Length{})) return Length{};
  const auto pressure = fits::contact_pressure(joint, pressed);
  if (!pressure) return tl::unexpected(pressure.error());
  const auto change = fits::outer_raceway_change(joint, *pressure);
  if (!change) return tl::unexpected(change.error());
  return -*change;
}

fits::PressedJoint joint_from(const Given& in) {
  return {.diameter = length_of(in, "joint-diameter"),
          .ring_inside = length_of(in, "ring-inside"),
          .hub_outside = length_of(in, "hub-outside"),
          .ring = {pascals(in.si("ring-modulus")), in.si("ring-poisson")},
          .hub = {pascals(in.si("hub-modulus")), in.si("hub-poisson")}};
}

Problem reversed(std::string_view field, AnyQuantity least, AnyQuantity greatest) {
  return {Code{"bearings.range_reversed"}, std::string{field}, {}, {{"least", least}, {"greatest", greatest}}, {}};
}

void say_closed(Length least, Length greatest, std::vector<Finding>& findings) {
  const Args args{{"least", any(least)}, {"greatest", any(greatest)}};
  if (!(greatest > Length{}))
    findings.push_back(
        {Code{"bearings.no_clearance_left"}, Severity::note, args, {}, Message{Code{"bearings.measure_the_bore"}, {}}});
  else if (!(least > Length{}))
    findings.push_back({Code{"bearings.may_have_no_clearance"},
                        Severity::note,
                        args,
                        {},
                        Message{Code{"bearings.measure_the_bore"}, {}}});
}

Result<Computed> compute_fitted(const Given& in) {
  for (const auto& [least, greatest] :
       {std::pair{"group-least", "group-greatest"}, std::pair{"interference-least", "interference-greatest"},
        std::pair{"inner-loss-least", "inner-loss-greatest"}})
    if (in.si(least) > in.si(greatest))
      return tl::unexpected(reversed(greatest, any(length_of(in, least)), any(length_of(in, greatest))));
  const fits::PressedJoint joint = joint_from(in);
  if (auto bad = fits::check_joint(joint)) return as_input(*std::move(bad));
  const Length flattened = length_of(in, "roughness-loss");
  const auto little = closing(joint, length_of(in, "interference-least"), flattened);
  const auto much = closing(joint, length_of(in, "interference-greatest"), flattened);
  if (!little) return as_input(little.error());
  if (!much) return as_input(much.error());
  const Length least = length_of(in, "group-least") - *much - length_of(in, "inner-loss-greatest");
  const Length greatest = length_of(in, "group-greatest") - *little - length_of(in, "inner-loss-least");
  Computed out{.values = {any(least), any(0.5 * (least + greatest)), any(greatest), any(*much)}};
  say_closed(least, greatest, out.findings);
  return out;
}

std::vector<InputSpec> fitted_inputs() {
  const auto size = [](std::string_view name, std::string_view symbol) {
    return above_nought(name, symbol, Kind::length, kMostSize);
  };
  const auto loss = [](std::string_view name, std::string_view symbol) {
    return assumed(from_nought(name, symbol, Kind::length, 1e-3), any(Length{}), kCommonPractice);
  };
  return {from_nought("group-least", "G1", Kind::length, 1e-2),
          from_nought("group-greatest", "G2", Kind::length, 1e-2),
          between("interference-least", "δ1", Kind::length, -1e-2, 1e-2),
          between("interference-greatest", "δ2", Kind::length, -1e-2, 1e-2),
          from_nought("roughness-loss", "loss", Kind::length, 1e-3),
          size("joint-diameter", "D"),
          size("ring-inside", "d_i"),
          above_nought("hub-outside", "D_h", Kind::length, 10),
          assumed(above_nought("ring-modulus", "E_i", Kind::pressure, 1e12), any(gigapascals(207)), "Shigley9"),
          assumed(from_nought("ring-poisson", "ν_i", Kind::ratio, 0.5), any_ratio(0.3), "Shigley9"),
          above_nought("hub-modulus", "E_o", Kind::pressure, 1e12),
          assumed(from_nought("hub-poisson", "ν_o", Kind::ratio, 0.5), any_ratio(0.3), kCommonPractice),
          loss("inner-loss-least", "Δi1"),
          loss("inner-loss-greatest", "Δi2")};
}

}  // namespace

FigureSpec geometry_figure() {
  return {.name = "bearing-geometry",
          .formula = "d_m = (d + D)/2; D_w = share (D − d); Z = round(1 + 188°/(2 asin(D_w/d_m))); r = groove D_w",
          .inputs = {above_nought("bearing-bore", "d", Kind::length, kMostSize),
                     above_nought("bearing-outside", "D", Kind::length, kMostSize),
                     assumed(between("ball-share", "share", Kind::ratio, 0.1, 0.45), any_ratio(kBallShare),
                             kCommonPractice),
                     assumed(between("groove-share", "groove", Kind::ratio, 0.501, 0.6), any_ratio(kGrooveShare),
                             kCommonPractice)},
          .outputs = {{"ball-diameter", "D_w", Kind::length},
                      {"balls", "Z", Kind::count},
                      {"pitch-diameter", "d_m", Kind::length},
                      {"groove-radius", "r", Kind::length}},
          .sources = {"common practice"},
          .compute = compute_geometry,
          .example = {{"bearing-bore=55 mm", "bearing-outside=100 mm"}, "ball-diameter=13.725 mm"}};
}

FigureSpec fitted_clearance_figure() {
  return {
      .name = "fitted-clearance",
      .formula =
          "G = G_group − Δ_o − Δ_i; Δ_o what pressing closes the outer raceway by: 2 p d_i D²/(E_i (D² − d_i²)) with p "
          "from δ − loss; least with δ2, greatest with δ1",
      .inputs = fitted_inputs(),
      .outputs = {{"least", "G_min", Kind::length},
                  {"mean", "G", Kind::length},
                  {"greatest", "G_max", Kind::length},
                  {"outer-loss", "Δ_o", Kind::length}},
      .sources = {"ISO5753-1", "Shigley9"},
      .compute = compute_fitted,
      .example = {{"group-least=23 µm", "group-greatest=43 µm", "interference-least=0 µm",
                   "interference-greatest=30 µm", "roughness-loss=3 µm", "joint-diameter=100 mm", "ring-inside=86.5 mm",
                   "hub-outside=150 mm", "hub-modulus=110 GPa", "hub-poisson=0.26"},
                  "least=7.57 µm"}};
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
          assumed(one_of("hub", "hub", kHubs), std::string{"centred"}, kCommonPractice)};
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
  return r;
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
  return 2.0 * tilt->radians() * r.radius * dial_factor(r.hub, r.bearing, clearance, r.radius);
}

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> all{geometry_figure(), fitted_clearance_figure(), rim_play_figure(),
                                           clearance_from_play_figure()};
  return all;
}

}  // namespace flatwise::bearings
