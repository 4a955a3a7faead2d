#include <algorithm>
#include <utility>

#include "core/metrology/figures_parts.h"
#include "core/metrology/findings.h"
#include "core/working/measure_better.h"

namespace flatwise::metrology {
namespace {

AnyQuantity length(double m) { return {m, Kind::length}; }
std::string text_if_given(const Given& in, std::string_view name) {
  return in.has(name) ? in.text(name) : std::string{};
}
Standing standing_from(const Given& in) {
  const std::string& text = in.text("gauge-date");
  return text == "overdue" ? Standing::overdue : text == "accepted" ? Standing::accepted : Standing::in_date;
}

std::vector<InputSpec> gauge_inputs() {
  return {u_input("calibration", "U_cal"),
          u_input("resolution", "d"),
          optional(u_input("repeatability", "s")),
          optional(between("repeatability-readings", "n_s", Kind::count, kLeastStudy, 1e6)),
          optional(u_input("ring-calibration", "U_ring")),
          assumed_word("gauge-date", "in_date", kStandings, "no date was given"),
          optional(free_text("gauge", {})),
          optional(free_text("until", {})),
          optional(free_text("accepted-by", {}))};
}

Result<GaugeFacts> gauge_from(const Given& in) {
  if (in.has("repeatability") != in.has("repeatability-readings")) {
    const bool has_s = in.has("repeatability");
    return tl::unexpected(Problem{
        Code{"metrology.study_incomplete"}, has_s ? "repeatability-readings" : "repeatability", {}, {}, std::nullopt});
  }
  GaugeFacts gauge{.calibration = Length::from_si(in.si("calibration")),
                   .resolution = Length::from_si(in.si("resolution")),
                   .repeatability = length_if_given(in, "repeatability"),
                   .ring = length_if_given(in, "ring-calibration").value_or(Length{}),
                   .standing = standing_from(in)};
  if (gauge.repeatability) gauge.repeatability_readings = static_cast<int>(in.si("repeatability-readings"));
  return gauge;
}

/// Readings and directions are given in the same order, as many of one as of the other.
Result<std::vector<Reading>> readings_from(const Given& in) {
  std::vector<Reading> readings;
  std::size_t directions = 0;
  for (const Input& input : in.inputs())
    if (input.name == "reading") readings.push_back({Length::from_si(std::get<AnyQuantity>(input.value).si), {}});
  for (const Input& input : in.inputs()) {
    if (input.name != "direction") continue;
    if (directions < readings.size()) readings[directions].direction = radians(std::get<AnyQuantity>(input.value).si);
    ++directions;
  }
  if (directions == readings.size()) return readings;
  Args args{{"readings", static_cast<std::int64_t>(readings.size())},
            {"directions", static_cast<std::int64_t>(directions)}};
  return tl::unexpected(Problem{Code{"metrology.pairs"}, "direction", {}, std::move(args), std::nullopt});
}

std::vector<std::optional<Uncertainty>> uncertainties_of(const PlaneJudged& p) {
  std::vector<std::optional<Uncertainty>> u{p.mean.uncertainty(), p.least.uncertainty(), p.greatest.uncertainty()};
  u.push_back(p.ovality ? std::optional{p.ovality->uncertainty()} : std::nullopt);
  u.resize(5);
  u.push_back(expand(p.own));  // Its degrees of freedom ride along for the taper.
  u.resize(9);
  // Without a scatter the rest is not the uncertainty of anything.
  if (p.obstacles.no_scatter) u.assign(9, std::nullopt);
  return u;
}

/// Readings, gauge and temperatures, whichever makes most of it; what is not known makes none.
void say_what_to_measure(const PlaneJudged& p, std::vector<Finding>& findings) {
  if (p.obstacles.no_scatter) return;
  const std::pair<const char*, double> parts[] = {{"metrology.doubt_readings", p.own.u},
                                                  {"metrology.doubt_gauge", p.gauge_u_m},
                                                  {"metrology.doubt_temperatures", p.temperature_u_m}};
  double whole = 0;
  for (const auto& [word, u] : parts) whole += u * u;
  const auto& most = *std::ranges::max_element(parts, {}, &std::pair<const char*, double>::second);
  if (!(whole > 0)) return;
  if (auto finding = measure_better_finding({.input = Word{most.first}, .part = most.second * most.second / whole}))
    findings.push_back(*std::move(finding));
}

Result<Computed> compute_plane(const Given& in) {
  const auto gauge = gauge_from(in);
  if (!gauge) return tl::unexpected(gauge.error());
  const auto readings = readings_from(in);
  if (!readings) return tl::unexpected(readings.error());
  const Rule rule = rule_from(in);
  const PlaneReadings plane{.readings = *readings,
                            .gauge = *gauge,
                            .thermal = thermal_from(in),
                            .limits = {length_if_given(in, "least"), length_if_given(in, "greatest")},
                            .ovality_limit = length_if_given(in, "ovality-limit"),
                            .rule = rule,
                            .furthest = kelvins(in.si("furthest")),
                            .thermometer = kelvins(in.si("thermometer"))};
  const auto judged = judge_plane(plane);
  if (!judged) return tl::unexpected(judged.error());
  const PlaneJudged& p = *judged;
  const bool any_limit = plane.limits.least || plane.limits.greatest || plane.ovality_limit;
  const double u_size = std::max(p.least.uncertainty().expanded_si, p.greatest.uncertainty().expanded_si);
  Computed out{.values = {length(p.mean.value_si), length(p.least.value_si), length(p.greatest.value_si),
                          length(p.ovality ? p.ovality->value_si : p.spread_m), length(u_size), length(p.own.u),
                          length(p.gauge_u_m), length(p.temperature_u_m),
                          std::string{any_limit ? answer_text(p.answer) : "not_judged"}},
               .u = uncertainties_of(p)};
  out.findings = plane_findings(p, rule,
                                {.plane = text_if_given(in, "plane"),
                                 .gauge = text_if_given(in, "gauge"),
                                 .until = text_if_given(in, "until"),
                                 .accepted_by = text_if_given(in, "accepted-by")});
  say_what_to_measure(p, out.findings);
  if (any_limit) out.answer = p.answer;
  return out;
}

FigureSpec plane_figure() {
  return {
      .name = "bore-at-plane",
      .formula = "D(θ) = D0 + (e/2) cos 2(θ − θ0);  D20 = D (1 + α_g (t_g − 20 °C) − α_p (t_p − 20 °C));  U = k u + a",
      .inputs = joined({{optional(one_of("plane", {}, kPlanes)), repeated(size_input("reading", "D")),
                         repeated(between("direction", "θ", Kind::angle, -100, 100))},
                        gauge_inputs(),
                        thermal_inputs(),
                        {optional(size_input("least", "LL")), optional(size_input("greatest", "UL")),
                         optional(size_input("ovality-limit", "e_max")), rule_input(),
                         assumed(from_nought("furthest", "Δt_max", Kind::temperature_rise, 100), any(kelvins(15)),
                                 kCommonPractice)}}),
      .outputs = {{"mean", "D0", Kind::length},
                  {"least-size", "D_min", Kind::length},
                  {"greatest-size", "D_max", Kind::length},
                  {"ovality", "e", Kind::length},
                  {"U-size", "U", Kind::length},
                  {"mean-own", "u_own", Kind::length},
                  {"gauge-u", "u_g", Kind::length},
                  {"temperature-u", "u_t", Kind::length},
                  {"answer", "", Kind::ratio, true}},
      .sources = {"GUM", "ISO14253-1", "ISO1", "ISO8015"},
      .compute = compute_plane,
      .example = {
          {"reading=99.985 mm", "direction=0°", "reading=99.984 mm", "direction=45°", "reading=99.986 mm",
           "direction=90°", "reading=99.985 mm", "direction=135°", "calibration=2 µm", "resolution=1 µm",
           "repeatability=1 µm", "repeatability-readings=10", "part-temperature=22 °C", "gauge-temperature=22 °C",
           "part-expansion=10.5e-6 /K", "least=99.955 mm", "greatest=99.99 mm", "ovality-limit=17.5 µm"},
          "mean=99.985 mm"}};
}

/// Planes in the order A, B and, where there is a third, the middle.
Result<Planes> planes_from(const Given& in) {
  std::vector<PlaneMean> planes;
  const double gauge_u = in.si("gauge-u"), temperature_u = in.si("temperature-u");
  for (const double mean : in.all_si("mean"))
    planes.push_back({.mean_m = mean, .own = {}, .gauge_u_m = gauge_u, .temperature_u_m = temperature_u});
  std::size_t own = 0;
  for (const Input& input : in.inputs()) {
    if (input.name != "own") continue;
    if (own < planes.size()) {
      planes[own].own.u = std::get<AnyQuantity>(input.value).si;
      if (input.u && input.u->degrees_of_freedom) planes[own].own.dof = *input.u->degrees_of_freedom;
    }
    ++own;
  }
  const std::vector<double> dof = in.has("own-dof") ? in.all_si("own-dof") : std::vector<double>{};
  for (std::size_t i = 0; i < std::min(dof.size(), planes.size()); ++i) planes[i].own.dof = dof[i];
  const bool counts_agree = own == planes.size() && (dof.empty() || dof.size() == planes.size());
  if (planes.size() < 2 || planes.size() > 3 || !counts_agree) {
    Args args{{"means", static_cast<std::int64_t>(planes.size())}, {"owns", static_cast<std::int64_t>(own)}};
    return tl::unexpected(Problem{Code{"metrology.planes"}, "mean", {}, std::move(args), std::nullopt});
  }
  Planes out;
  out.a = planes[0];
  out.b = planes[1];
  if (planes.size() == 3) out.middle = planes[2];
  out.same_gauge = in.text("same-gauge") == "yes";
  out.same_temperatures = in.text("same-temperatures") == "yes";
  out.limit = length_if_given(in, "limit");
  out.rule = rule_from(in);
  return out;
}

Result<Computed> compute_taper(const Given& in) {
  const auto planes = planes_from(in);
  if (!planes) return tl::unexpected(planes.error());
  const auto judged = judge_taper(*planes);
  if (!judged) return tl::unexpected(judged.error());
  const TaperJudged& t = *judged;
  Computed out{.values = {length(t.taper.value_si), length(t.mean.value_si),
                          length(t.bell_mouth ? std::max(0.0, t.bell_mouth->value_si) : 0.0),
                          std::string{planes->limit ? answer_text(t.answer) : "not_judged"}},
               .u = {t.taper.uncertainty(), t.mean.uncertainty(),
                     t.bell_mouth ? std::optional{t.bell_mouth->uncertainty()} : std::nullopt, std::nullopt},
               .findings = taper_findings(t, planes->rule)};
  if (planes->limit) out.answer = t.answer;
  if (standing_from(in) != Standing::overdue || !planes->limit) return out;
  for (Finding& f : out.findings) {
    if (f.severity == Severity::out) f.instruction.reset();
    f.severity = Severity::cannot_tell;
  }
  out.findings.insert(out.findings.begin(), overdue_finding(t.answer, {}, Word{"metrology.both_planes"}));
  out.answer = Answer::cannot_tell;
  out.values.back() = std::string{answer_text(Answer::cannot_tell)};
  return out;
}

FigureSpec taper_figure() {
  return {.name = "bore-taper",
          .formula = "T = |D0_A − D0_B|;  u² = u_own,A² + u_own,B² (the same gauge and temperatures cancel)",
          .inputs = {repeated(size_input("mean", "D0")), repeated(u_input("own", "u_own")),
                     optional(repeated(dof_input("own-dof"))),
                     assumed(u_input("gauge-u", "u_g"), any(Length{}), "cancels in the taper"),
                     assumed(u_input("temperature-u", "u_t"), any(Length{}), "cancels in the taper"),
                     assumed_word("same-gauge", "yes", kYesNo, kCommonPractice),
                     assumed_word("same-temperatures", "yes", kYesNo, kCommonPractice),
                     optional(size_input("limit", "T_max")), rule_input(),
                     assumed_word("gauge-date", "in_date", kStandings, "no date was given")},
          .outputs = {{"taper", "T", Kind::length},
                      {"mean", "D0", Kind::length},
                      {"bell-mouth", "b", Kind::length},
                      {"answer", "", Kind::ratio, true}},
          .sources = {"GUM", "ISO14253-1"},
          .compute = compute_taper,
          .example = {{"mean=99.985 mm", "own=0.8 µm", "mean=99.991 mm", "own=0.8 µm", "limit=17.5 µm"}, "taper=6 µm"}};
}

}  // namespace

std::vector<FigureSpec> bore_figures() { return {plane_figure(), taper_figure()}; }

}  // namespace flatwise::metrology
