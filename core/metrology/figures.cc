#include "core/metrology/figures.h"

#include <cmath>
#include <utility>

#include "core/metrology/figures_parts.h"
#include "core/metrology/findings.h"
#include "core/metrology/gauge.h"
#include "core/metrology/roundness.h"

namespace flatwise::metrology {
namespace {

AnyQuantity length(double m) { return {m, Kind::length}; }

Result<Computed> compute_temperature(const Given& in) {
  const ThermalState state = thermal_from(in);
  if (auto problem = check_thermal(state)) return tl::unexpected(*std::move(problem));
  const Correction c = to_20(state);
  const double read = in.si("length");
  const Uncertainty u = expand({read * c.u_relative});
  return Computed{.values = {length(read * (1 + c.relative)), length(read * c.relative)}, .u = {u, u}};
}

FigureSpec temperature_figure() {
  return {.name = "temperature-correction",
          .formula = "L20 = L (1 + α_g (t_g − 20 °C) − α_p (t_p − 20 °C))",
          .inputs = joined({{size_input("length", "L")}, thermal_inputs()}),
          .outputs = {{"length-at-20", "L20", Kind::length}, {"correction", "ΔL", Kind::length}},
          .sources = {"ISO1", "GUM"},
          .compute = compute_temperature,
          .example = {{"length=120 mm", "part-temperature=32 °C", "gauge-temperature=32 °C",
                       "part-expansion=10.5e-6 /K", "gauge-expansion=11.5e-6 /K"},
                      "length-at-20=120.00144 mm"}};
}

Result<Computed> compute_decision(const Given& in) {
  const SizeLimits limits{length_if_given(in, "least"), length_if_given(in, "greatest")};
  if (!limits.least && !limits.greatest)
    return tl::unexpected(Problem{Code{"metrology.no_limits"}, "least", {}, {}, std::nullopt});
  if (limits.least && limits.greatest && !(*limits.least < *limits.greatest)) {
    Args args{{"least", any(*limits.least)}, {"greatest", any(*limits.greatest)}};
    return tl::unexpected(Problem{Code{"metrology.limits_crossed"}, "greatest", {}, std::move(args), std::nullopt});
  }
  const Rule rule = rule_from(in);
  const double dof = in.has("dof") ? in.si("dof") : kEndless;
  const Sized value{.value_si = in.si("value"), .u_si = in.si("expanded") / coverage_factor(dof), .dof = dof};
  const Judged judged = judge(value, limits, rule);
  Computed out{.values = {any_ratio(conformance(value, limits)), length(value.guard_si(rule)),
                          length(std::abs(judged.margin_si)), std::string{answer_text(judged.answer)}},
               .answer = judged.answer};
  if (judged.answer == Answer::in) return out;
  Args args{{"value", length(value.value_si)},
            {"uncertainty", length(value.guard_si(rule))},
            {"limit", length(judged.limit_si)},
            {"by", length(std::abs(judged.margin_si))}};
  if (judged.answer == Answer::out) {
    out.findings.push_back({Code{"metrology.value_out"}, Severity::out, std::move(args), {}, std::nullopt});
    return out;
  }
  const bool hopeless = std::abs(judged.margin_si) < kFinestGauge_m;
  const Settle settle{hopeless ? Remedy::none : Remedy::gauge, 0, std::abs(judged.margin_si)};
  out.findings.push_back({Code{"metrology.value_cannot_tell"},
                          Severity::cannot_tell,
                          std::move(args),
                          {},
                          settle_message(settle, false, Word{"metrology.plane_this"})});
  return out;
}

FigureSpec decision_figure() {
  return {
      .name = "decision",
      .formula = "in: LL + U ≤ y ≤ UL − U;  out: y + U < LL or y − U > UL;  P = F((UL − y)/u) − F((LL − y)/u)",
      .inputs = {size_input("value", "y"), u_input("expanded", "U"), optional(dof_input("dof")),
                 optional(size_input("least", "LL")), optional(size_input("greatest", "UL")), rule_input()},
      .outputs = {{"conformance", "P", Kind::ratio},
                  {"guard", "g", Kind::length},
                  {"margin", "m", Kind::length},
                  {"answer", "", Kind::ratio, true}},
      .sources = {"ISO14253-1", "JCGM106"},
      .compute = compute_decision,
      .example = {{"value=80.018 mm", "expanded=11.76 µm", "least=80 mm", "greatest=80.03 mm"}, "conformance=0.976"}};
}

Result<Computed> compute_expanded(const Given& in) {
  const std::vector<double> u = in.all_si("u");
  const std::vector<double> dof = in.has("dof") ? in.all_si("dof") : std::vector<double>(u.size(), kEndless);
  if (dof.size() != u.size()) {
    Args args{{"count", static_cast<std::int64_t>(u.size())}, {"dofs", static_cast<std::int64_t>(dof.size())}};
    return tl::unexpected(Problem{Code{"metrology.dof_pairs"}, "dof", {}, std::move(args), std::nullopt});
  }
  std::vector<Component> parts;
  for (std::size_t i = 0; i < u.size(); ++i) parts.push_back({u[i], 1, dof[i]});
  const Combined c = combine(parts);
  const double k = coverage_factor(c.dof, in.si("coverage"));
  return Computed{.values = {length(k * c.u), length(c.u), any_ratio(std::floor(c.dof)), any_ratio(k)}};
}

FigureSpec expanded_figure() {
  return {.name = "expanded-uncertainty",
          .formula = "u² = Σ u_i²;  ν = u⁴ / Σ (u_i⁴/ν_i), truncated;  U = t(ν) u",
          .inputs = {repeated(u_input("u", "u")), optional(repeated(dof_input("dof"))),
                     assumed(between("coverage", "p", Kind::ratio, 0.5, 0.9999), any_ratio(0.95), "GUM")},
          .outputs = {{"expanded", "U", Kind::length},
                      {"standard", "u", Kind::length},
                      {"dof-effective", "ν", Kind::ratio},
                      {"factor", "k", Kind::ratio}},
          .sources = {"GUM"},
          .compute = compute_expanded,
          .example = {{"u=0.025 µm", "dof=18", "u=0.0097 µm", "dof=25.6", "u=0.0029 µm", "dof=50", "u=0.0166 µm",
                       "dof=2", "coverage=0.99"},
                      "expanded=0.0925 µm"}};
}

Result<Computed> compute_study(const Given& in) {
  std::vector<Length> readings;
  for (const double r : in.all_si("reading")) readings.push_back(Length::from_si(r));
  const auto study = gauge_study(readings);
  if (!study) return tl::unexpected(study.error());
  return Computed{.values = {length(study->scatter.s_m), any(study->mean), any_ratio(study->scatter.dof)}};
}

FigureSpec study_figure() {
  return {.name = "gauge-repeatability",
          .formula = "s² = Σ (x − x̄)² / (n − 1)",
          .inputs = {repeated(size_input("reading", "x"))},
          .outputs = {{"repeatability", "s", Kind::length}, {"mean", "x̄", Kind::length}, {"dof", "ν", Kind::ratio}},
          .sources = {"GUM"},
          .compute = compute_study,
          .example = {{"reading=99.985 mm", "reading=99.984 mm", "reading=99.986 mm"}, "repeatability=1 µm"}};
}

Result<Computed> compute_v_block(const Given& in) {
  const auto factor = v_block_factor(static_cast<int>(in.si("lobes")), radians(in.si("v-angle")));
  if (!factor) return tl::unexpected(factor.error());
  return Computed{.values = {any_ratio(*factor)}};
}

FigureSpec v_block_figure() {
  return {.name = "roundness-factor",
          .formula = "F = 1 + cos(n (90° + v/2)) / sin(v/2)",
          .inputs = {between("lobes", "n", Kind::count, 1, 100),
                     between("v-angle", "v", Kind::angle, degrees(1).radians(), degrees(179).radians())},
          .outputs = {{"factor", "F", Kind::ratio}},
          .sources = {"Roundness"},
          .compute = compute_v_block,
          .example = {{"lobes=3", "v-angle=90°"}, "factor=2"}};
}

}  // namespace

std::span<const FigureSpec> figures() {
  static const std::vector<FigureSpec> kFigures = [] {
    std::vector<FigureSpec> all = bore_figures();
    for (const auto make : {decision_figure, temperature_figure, expanded_figure, study_figure, v_block_figure})
      all.push_back(make());
    for (FigureSpec& figure : run_figures()) all.push_back(std::move(figure));
    return all;
  }();
  return kFigures;
}

}  // namespace flatwise::metrology
