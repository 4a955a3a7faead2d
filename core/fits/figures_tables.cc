#include <string>

#include "core/fits/bearing_tables.h"
#include "core/fits/figures_parts.h"
#include "core/fits/interference.h"
#include "core/fits/iso286.h"

namespace flatwise::fits {
namespace {

InputSpec size_input(std::string_view name, std::string_view symbol, double greatest_mm) {
  return between(name, symbol, Kind::length, 3e-3, greatest_mm * 1e-3);
}

std::size_t place_of(const std::string& word, std::span<const std::string_view> words) {
  for (std::size_t i = 0; i < words.size(); ++i)
    if (words[i] == word) return i;
  CORE_CHECK(false);
  return 0;
}

Result<Computed> compute_fit_limits(const Given& in) {
  const auto limits = limits_of_fit(length_of(in, "nominal"), in.text("class"));
  if (!limits) return tl::unexpected(limits.error());
  return Computed{.values = {any(limits->least), any(limits->greatest)}};
}

FigureSpec fit_limits_figure() {
  return {.name = "fit-limits",
          .formula = "least = D + EI (shaft: d + ei); greatest = D + ES (shaft: d + es)",
          .inputs = {size_input("nominal", "D", 500), free_text("class", "class")},
          .outputs = {{"least", "D_min", Kind::length}, {"greatest", "D_max", Kind::length}},
          .sources = {"ISO286-1", "ISO286-2"},
          .compute = compute_fit_limits,
          .example = {{"nominal=90 mm", "class=N7"}, "least=89.955 mm"}};
}

Result<Computed> compute_ring_outside(const Given& in) {
  const auto tolerance = static_cast<ToleranceClass>(place_of(in.text("tolerance"), kToleranceClasses));
  const auto limits = ring_outside_limits(length_of(in, "outside"), tolerance);
  const auto runout = outer_ring_runout(length_of(in, "outside"), tolerance);
  if (!limits) return tl::unexpected(limits.error());
  if (!runout) return tl::unexpected(runout.error());
  return Computed{.values = {any(limits->least), any(limits->greatest), any(*runout)}};
}

FigureSpec ring_outside_figure() {
  return {.name = "ring-outside",
          .formula = "D + Δ_Dmp, by diameter step and class",
          .inputs = {size_input("outside", "D", 500),
                     assumed(one_of("tolerance", "class", kToleranceClasses), std::string{"normal"}, kCommonPractice)},
          .outputs = {{"least", "D_min", Kind::length},
                      {"greatest", "D_max", Kind::length},
                      {"runout", "K_ea", Kind::length}},
          .sources = {"ISO492"},
          .compute = compute_ring_outside,
          .example = {{"outside=90 mm", "tolerance=normal"}, "least=89.985 mm"}};
}

Result<Computed> compute_ring_bore(const Given& in) {
  const auto tolerance = static_cast<ToleranceClass>(place_of(in.text("tolerance"), kToleranceClasses));
  const auto limits = ring_bore_limits(length_of(in, "bore"), tolerance);
  if (!limits) return tl::unexpected(limits.error());
  return Computed{.values = {any(limits->least), any(limits->greatest)}};
}

FigureSpec ring_bore_figure() {
  return {.name = "ring-bore",
          .formula = "d + Δ_dmp, by diameter step and class",
          .inputs = {size_input("bore", "d", 500),
                     assumed(one_of("tolerance", "class", kToleranceClasses), std::string{"normal"}, kCommonPractice)},
          .outputs = {{"least", "d_min", Kind::length}, {"greatest", "d_max", Kind::length}},
          .sources = {"ISO492"},
          .compute = compute_ring_bore,
          .example = {{"bore=55 mm", "tolerance=normal"}, "least=54.985 mm"}};
}

Result<Computed> compute_clearance_group(const Given& in) {
  const auto group = static_cast<ClearanceGroup>(place_of(in.text("group"), kClearanceGroups));
  const auto found = radial_clearance(length_of(in, "bore"), group);
  if (!found) return tl::unexpected(found.error());
  return Computed{.values = {any(found->least), any(found->greatest)}};
}

FigureSpec clearance_group_figure() {
  return {.name = "clearance-group",
          .formula = "G_r, by bore step and group",
          .inputs = {size_input("bore", "d", 200),
                     assumed(one_of("group", "group", kClearanceGroups), std::string{"CN"}, kCommonPractice)},
          .outputs = {{"least", "G_min", Kind::length}, {"greatest", "G_max", Kind::length}},
          .sources = {"ISO5753-1"},
          .compute = compute_clearance_group,
          .example = {{"bore=55 mm", "group=CN"}, "least=8 µm"}};
}

// A bore that comes with its uncertainty brings it along; a typed one must be told it.
Result<Length> bore_uncertainty(const Given& in) {
  if (in.has("bore-uncertainty")) return length_of(in, "bore-uncertainty");
  if (in.input("bore").u) return metres(in.input("bore").u->expanded_si);
  return tl::unexpected(Problem{Code{"fits.bore_uncertainty_missing"}, "bore-uncertainty", {}, {}, std::nullopt});
}

void judge_interference(const InterferenceRange& range, std::vector<Finding>& findings) {
  if (range.greatest <= Length{})
    findings.push_back({Code{"fits.ring_loose"},
                        Severity::out,
                        {{"least", any(-range.greatest)}, {"greatest", any(-range.least)}},
                        {},
                        Message{Code{"fits.do_not_fit_loose"}, {}}});
  else if (range.least <= Length{})
    findings.push_back({Code{"fits.ring_may_be_loose"},
                        Severity::note,
                        {{"clearance", any(-range.least)}, {"interference", any(range.greatest)}},
                        {},
                        Message{Code{"fits.measure_ring"}, {}}});
}

Result<Computed> compute_interference(const Given& in) {
  const auto expanded = bore_uncertainty(in);
  if (!expanded) return tl::unexpected(expanded.error());
  const Mating mating{.hole = around(length_of(in, "bore"), *expanded),
                      .shaft = {.least = length_of(in, "ring-least"), .greatest = length_of(in, "ring-greatest")}};
  const auto range = interference(mating);
  if (!range) return as_input(range.error());
  Computed out{.values = {any(range->mean), any(range->least), any(range->greatest)}};
  judge_interference(*range, out.findings);
  return out;
}

FigureSpec interference_figure() {
  return {
      .name = "interference",
      .formula = "δ_min = D_ring,min − (D_bore + U); δ_max = D_ring,max − (D_bore − U); δ = (δ_min + δ_max)/2",
      .inputs = {above_nought("bore", "D_bore", Kind::length, 2),
                 optional(from_nought("bore-uncertainty", "U", Kind::length, 1e-3)),
                 above_nought("ring-least", "D_ring,min", Kind::length, 2),
                 above_nought("ring-greatest", "D_ring,max", Kind::length, 2)},
      .outputs = {{"mean", "δ", Kind::length}, {"least", "δ_min", Kind::length}, {"greatest", "δ_max", Kind::length}},
      .sources = {"ISO286-1", "ISO492"},
      .compute = compute_interference,
      .example = {{"bore=119.970 mm", "bore-uncertainty=4 µm", "ring-least=119.985 mm", "ring-greatest=120 mm"},
                  "mean=22.5 µm"}};
}

}  // namespace

std::vector<FigureSpec> table_figures() {
  return {fit_limits_figure(), ring_outside_figure(), ring_bore_figure(), clearance_group_figure(),
          interference_figure()};
}

}  // namespace flatwise::fits
