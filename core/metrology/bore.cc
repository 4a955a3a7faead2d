#include "core/metrology/bore.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::metrology {
namespace {

/// No worn hub is off by this much and was still running: the unit or a digit is wrong. Common practice.
constexpr double kFarOffShare = 0.02;
constexpr double kFarOff_m = 0.5e-3;

std::optional<Problem> check_limits(const PlaneReadings& in) {
  if (in.limits.least)
    if (auto p = not_above_nought("least", any(*in.limits.least))) return p;
  if (in.limits.greatest)
    if (auto p = not_above_nought("greatest", any(*in.limits.greatest))) return p;
  if (in.ovality_limit)
    if (auto p = not_above_nought("ovality-limit", any(*in.ovality_limit))) return p;
  if (in.limits.least && in.limits.greatest && !(*in.limits.least < *in.limits.greatest)) {
    Args args{{"least", any(*in.limits.least)}, {"greatest", any(*in.limits.greatest)}};
    return Problem{Code{"metrology.limits_crossed"}, "greatest", {}, std::move(args), std::nullopt};
  }
  if (auto p = negative("furthest", any(in.furthest))) return p;
  return negative("thermometer", any(in.thermometer));
}

std::optional<Problem> check_all(const PlaneReadings& in) {
  if (auto p = check_gauge(in.gauge)) return p;
  if (auto p = check_thermal(in.thermal)) return p;
  return check_limits(in);
}

bool far_off(const PlaneReadings& in) {
  const auto off = [&](const Reading& r) {
    const double d = r.diameter.si();
    const auto beyond = [&](double limit, double by) { return by > std::max(kFarOffShare * limit, kFarOff_m); };
    return (in.limits.least && beyond(in.limits.least->si(), in.limits.least->si() - d)) ||
           (in.limits.greatest && beyond(in.limits.greatest->si(), d - in.limits.greatest->si()));
  };
  return std::ranges::any_of(in.readings, off);
}

/// What all sizes of the plane share, and the scatter of one reading with its resolution.
struct Shared {
  double calibration_u = 0, resolution_u = 0, temperature_u = 0, temperature_if_taken_u = 0;
  double correction = 1;
  Scatter one_reading;
};

double temperature_if_taken(const PlaneReadings& in) {
  ThermalState taken = in.thermal;
  if (!taken.part.measured) taken.part = thermometer(taken.part.value, in.thermometer);
  if (!taken.gauge.measured) taken.gauge = thermometer(taken.gauge.value, in.thermometer);
  return to_20(taken).u_relative;
}

Shared shared_by(const PlaneReadings& in, const Scatter& scatter, double size_m, const Correction& correction) {
  const Component calibration[] = {{from_k2(in.gauge.calibration.si())}, {from_k2(in.gauge.ring.si())}};
  const double resolution = from_resolution(in.gauge.resolution.si());
  // Degrees of freedom stay the study's own: a study that came out small by luck would lend itself too many.
  const double one_u = std::hypot(scatter.s_m, resolution);
  return {.calibration_u = combine(calibration).u,
          .resolution_u = resolution,
          .temperature_u = size_m * correction.u_relative,
          .temperature_if_taken_u = size_m * std::min(correction.u_relative, temperature_if_taken(in)),
          .correction = 1 + correction.relative,
          .one_reading = {scatter.from, one_u, scatter.dof}};
}

Sized size_from(const Estimate& e, const Shared& s) {
  const Component parts[] = {{e.own_u_m, 1, e.own_dof}, {s.calibration_u}, {s.resolution_u}, {s.temperature_u}};
  const Combined c = combine(parts);
  return {e.value_m * s.correction, c.u, c.dof, e.allowance_m};
}

Budget budget_of(const Estimate& e, const Shared& s, const PlaneJudged& p) {
  const Component gauge[] = {{s.calibration_u}, {s.resolution_u}};
  return {.own_u_m = e.own_u_m,
          .own_dof = e.own_dof,
          .gauge_u_m = combine(gauge).u,
          .temperature_u_m = s.temperature_u,
          .temperature_if_taken_u_m = s.temperature_if_taken_u,
          .allowance_m = e.allowance_m,
          .readings = p.readings,
          .round = p.directions};
}

/// Readings taken twice that stand off the form are the bore's own shape: its sizes then reach out to them.
void reach_out(const Form& form, FormEstimates& e) {
  e.least.value_m = std::min(e.least.value_m, form.least_direction_m);
  e.greatest.value_m = std::max(e.greatest.value_m, form.greatest_direction_m);
}

void judge_sizes(const PlaneReadings& in, const FormEstimates& e, const Shared& s, PlaneJudged& p) {
  const SizeLimits low{.least = in.limits.least, .greatest = std::nullopt};
  const SizeLimits high{.least = std::nullopt, .greatest = in.limits.greatest};
  p.least_judged = judge(p.least, low, in.rule);
  p.greatest_judged = judge(p.greatest, high, in.rule);
  if (p.least_judged.answer == Answer::cannot_tell)
    p.settle_least = what_settles(budget_of(e.least, s, p), p.least_judged.margin_si, in.rule);
  if (p.greatest_judged.answer == Answer::cannot_tell)
    p.settle_greatest = what_settles(budget_of(e.greatest, s, p), p.greatest_judged.margin_si, in.rule);
  p.size = worse(p.least_judged.answer, p.greatest_judged.answer);
}

void judge_form(const PlaneReadings& in, const FormEstimates& e, const Shared& s, PlaneJudged& p) {
  if (!p.enough_directions) {
    p.form = Answer::cannot_tell;
    return;
  }
  const Estimate& o = *e.ovality;
  p.ovality = Sized{o.value_m * s.correction, o.own_u_m, o.own_dof, o.allowance_m};
  const SizeLimits limits{.least = std::nullopt, .greatest = in.ovality_limit};
  p.ovality_judged = judge(*p.ovality, limits, in.rule);
  p.form = p.ovality_judged.answer;
  if (p.form != Answer::cannot_tell) return;
  const Budget budget{.own_u_m = o.own_u_m,
                      .own_dof = o.own_dof,
                      .allowance_m = o.allowance_m,
                      .readings = p.readings,
                      .round = p.directions};
  p.settle_ovality = what_settles(budget, p.ovality_judged.margin_si, in.rule);
}

void take_facts(const PlaneReadings& in, const Form& form, PlaneJudged& p) {
  p.spread_m = form.greatest_direction_m - form.least_direction_m;
  p.greatest_at = form.greatest_at();
  p.readings = form.readings;
  p.directions = form.directions;
  p.enough_directions = form.fitted;
  p.scatter = scatter_of(form, study_of(in.gauge));
  p.correction = to_20(in.thermal);
  p.farthest = farthest_from_20(in.thermal);
  p.standing = in.gauge.standing;
  p.obstacles = {.too_far_from_20 = too_far_from_20(in.thermal, in.furthest),
                 .far_off = far_off(in),
                 .no_scatter = p.scatter.from == Scatter::From::none,
                 .disagree = false,
                 .overdue = in.gauge.standing == Standing::overdue};
}

void take_sizes(const FormEstimates& e, const Shared& s, PlaneJudged& p) {
  p.mean = size_from(e.mean, s);
  p.least = size_from(e.least, s);
  p.greatest = size_from(e.greatest, s);
  p.direction_known = e.direction_known;
  const Component own[] = {{e.mean.own_u_m, 1, e.mean.own_dof}, {s.resolution_u}};
  p.own = combine(own);
  p.gauge_u_m = s.calibration_u;
  p.temperature_u_m = s.temperature_u;
}

}  // namespace

Result<PlaneJudged> judge_plane(const PlaneReadings& in) {
  if (auto problem = check_all(in)) return tl::unexpected(*std::move(problem));
  const Result<Form> form = fit_form(in.readings);
  if (!form) return tl::unexpected(form.error());
  PlaneJudged p;
  take_facts(in, *form, p);
  const Shared shared = shared_by(in, p.scatter, form->mean_m, p.correction);
  FormEstimates estimates = estimates_of(*form, shared.one_reading);
  if (!p.obstacles.no_scatter) {
    const Discord discord = discord_of(*form, shared.one_reading);
    // An odd shape is believed once every direction has shown it twice; until then it may be a slip.
    p.not_two_lobed = discord.form && form->all_repeated && !discord.repeats;
    p.obstacles.disagree = discord.repeats || (discord.form && !form->all_repeated);
  }
  if (p.not_two_lobed) reach_out(*form, estimates);
  take_sizes(estimates, shared, p);
  judge_sizes(in, estimates, shared, p);
  judge_form(in, estimates, shared, p);
  p.would_be = worse(p.size, p.form);
  p.answer = p.obstacles.any() ? Answer::cannot_tell : p.would_be;
  return p;
}

}  // namespace flatwise::metrology
