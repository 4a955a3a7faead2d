// Clearance that a new bearing keeps once it is fitted and runs.
#include "core/bearings/figures_parts.h"
#include "core/bearings/fitted.h"

namespace flatwise::bearings {
namespace {

constexpr double kMostSize = 2;  // m

void say_closed(const ClearanceLeft& left, std::vector<Finding>& findings) {
  const Args args{{"least", any(left.least)}, {"greatest", any(left.greatest)}};
  const Message measure{Code{"bearings.measure_the_bore"}, {}};
  if (!(left.greatest > Length{}))
    findings.push_back({Code{"bearings.no_clearance_left"}, Severity::note, args, {}, measure});
  else if (!(left.least > Length{}))
    findings.push_back({Code{"bearings.may_have_no_clearance"}, Severity::note, args, {}, measure});
  else
    return;
  // What took most of it.
  const auto cause = left.warm_loss > left.outer_loss && left.warm_loss > left.inner_loss ? Word{"bearings.by_warmth"}
                     : left.inner_loss > left.outer_loss                                  ? Word{"bearings.by_seat"}
                                                                                          : Word{"bearings.by_hub"};
  findings.push_back({Code{"bearings.clearance_taken_by"}, Severity::note, {{"cause", cause}}, {}, std::nullopt});
}

Pressed outer_from(const Given& in) {
  return {.joint = {.diameter = length_of(in, "joint-diameter"),
                    .ring_inside = length_of(in, "ring-inside"),
                    .hub_outside = length_of(in, "hub-outside"),
                    .ring = {pascals(in.si("ring-modulus")), in.si("ring-poisson")},
                    .hub = {pascals(in.si("hub-modulus")), in.si("hub-poisson")}},
          .least = length_of(in, "interference-least"),
          .greatest = length_of(in, "interference-greatest"),
          .flattened = length_of(in, "roughness-loss")};
}

/// The inner fit is told whole or not at all: its three sizes belong together.
Result<std::optional<Pressed>> inner_from(const Given& in) {
  constexpr std::string_view kTogether[] = {"seat-diameter", "inner-raceway", "seat-interference-greatest"};
  int told = 0;
  std::string_view missing;
  for (const std::string_view name : kTogether) in.has(name) ? void(++told) : void(missing = name);
  if (told == 0) return std::nullopt;
  if (told < 3)
    return tl::unexpected(Problem{Code{"bearings.seat_not_whole"}, std::string{missing}, {}, {}, std::nullopt});
  const fits::Elastic steel{pascals(in.si("ring-modulus")), in.si("ring-poisson")};
  const fits::Elastic seat{pascals(in.si("seat-modulus")), in.si("ring-poisson")};
  const Length greatest = length_of(in, "seat-interference-greatest");
  return Pressed{.joint = {.diameter = length_of(in, "seat-diameter"),
                           .ring_inside = length_of(in, "seat-inside"),
                           .hub_outside = length_of(in, "inner-raceway"),
                           .ring = seat,
                           .hub = steel},
                 .least = length_if_given(in, "seat-interference-least").value_or(greatest),
                 .greatest = greatest,
                 .flattened = length_of(in, "seat-roughness-loss")};
}

tl::unexpected<Problem> as_fitted(Problem problem) {
  constexpr std::pair<std::string_view, std::string_view> kSeat[] = {{"seat.diameter", "seat-diameter"},
                                                                     {"seat.ring_inside", "seat-inside"},
                                                                     {"seat.hub_outside", "inner-raceway"},
                                                                     {"warmer", "warmer"}};
  for (const auto& [kernel, figure] : kSeat)
    if (problem.field == kernel) problem.field = figure;
  return as_input(std::move(problem));
}

Result<Computed> compute_fitted(const Given& in) {
  const auto inner = inner_from(in);
  if (!inner) return tl::unexpected(inner.error());
  const FittedTask task{.group = {length_of(in, "group-least"), length_of(in, "group-greatest")},
                        .outer = outer_from(in),
                        .inner = *inner,
                        .inner_loss = {length_of(in, "inner-loss-least"), length_of(in, "inner-loss-greatest")},
                        .warmer = kelvins(in.si("warmer")),
                        .expansion = in.si("expansion")};
  const auto left = clearance_left(task);
  if (!left) return as_fitted(left.error());
  Computed out{.values = {any(left->least), any(left->mean), any(left->greatest), any(left->outer_loss),
                          any(left->inner_loss), any(left->warm_loss)}};
  say_closed(*left, out.findings);
  return out;
}

std::vector<InputSpec> outer_inputs() {
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

std::vector<InputSpec> seat_inputs() {
  return {optional(between("seat-interference-least", "δs1", Kind::length, -1e-2, 1e-2)),
          optional(between("seat-interference-greatest", "δs2", Kind::length, -1e-2, 1e-2)),
          assumed(from_nought("seat-roughness-loss", "loss_s", Kind::length, 1e-3), any(Length{}), kCommonPractice),
          optional(above_nought("seat-diameter", "d", Kind::length, kMostSize)),
          assumed(from_nought("seat-inside", "d_0", Kind::length, kMostSize), any(Length{}), kCommonPractice),
          optional(above_nought("inner-raceway", "d_r", Kind::length, kMostSize)),
          assumed(above_nought("seat-modulus", "E_s", Kind::pressure, 1e12), any(gigapascals(207)), "Shigley9"),
          assumed(between("warmer", "ΔT", Kind::temperature_rise, -200, 200), AnyQuantity{0, Kind::temperature_rise},
                  kOwnRule),
          assumed(from_nought("expansion", "α", Kind::expansion, 1e-4), any_expansion(11.5e-6), "LinearExpansion")};
}

}  // namespace

FigureSpec fitted_clearance_figure() {
  return {
      .name = "fitted-clearance",
      .formula =
          "G = G_group − Δ_o − Δ_i − α ΔT d_i; Δ_o what pressing closes the outer raceway by: 2 p d_i D²/(E_i (D² − "
          "d_i²)) with p "
          "from δ − loss; Δ_i what the seat opens the inner raceway by: 2 p d² d_r/(E_i (d_r² − d²)); least with δ2, "
          "greatest with δ1",
      .inputs = joined({outer_inputs(), seat_inputs()}),
      .outputs = {{"least", "G_min", Kind::length},
                  {"mean", "G", Kind::length},
                  {"greatest", "G_max", Kind::length},
                  {"outer-loss", "Δ_o", Kind::length},
                  {"inner-loss", "Δ_i", Kind::length},
                  {"warm-loss", "Δ_T", Kind::length}},
      .sources = {"ISO5753-1", "Shigley9", "LinearExpansion"},
      .compute = compute_fitted,
      .example = {{"group-least=23 µm", "group-greatest=43 µm", "interference-least=0 µm",
                   "interference-greatest=30 µm", "roughness-loss=3 µm", "joint-diameter=100 mm", "ring-inside=86.5 mm",
                   "hub-outside=150 mm", "hub-modulus=110 GPa", "hub-poisson=0.26"},
                  "least=7.57 µm"}};
}

}  // namespace flatwise::bearings
