#include "core/metrology/taper.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::metrology {
namespace {

std::optional<Problem> check_mean(const PlaneMean& plane) {
  if (auto p = not_above_nought("mean", any(metres(plane.mean_m)))) return p;
  if (auto p = negative("own", any(metres(plane.own.u)))) return p;
  if (auto p = negative("gauge-u", any(metres(plane.gauge_u_m)))) return p;
  return negative("temperature-u", any(metres(plane.temperature_u_m)));
}

std::optional<Problem> check(const Planes& planes) {
  if (auto p = check_mean(planes.a)) return p;
  if (auto p = check_mean(planes.b)) return p;
  if (planes.middle)
    if (auto p = check_mean(*planes.middle)) return p;
  return planes.limit ? not_above_nought("limit", any(*planes.limit)) : std::nullopt;
}

/// Uncertainty of a difference of two means: their own parts, and of the rest what the planes do not share.
Combined difference(const Planes& planes, const PlaneMean& x, const PlaneMean& y) {
  const double gauge = planes.same_gauge ? 0 : 1, heat = planes.same_temperatures ? 0 : 1;
  const Component parts[] = {{x.own.u, 1, x.own.dof}, {y.own.u, 1, y.own.dof},   {x.gauge_u_m, gauge},
                             {y.gauge_u_m, gauge},    {x.temperature_u_m, heat}, {y.temperature_u_m, heat}};
  return combine(parts);
}

/// The common parts stay whole in the mean of both ends; the larger of each where they differ.
Sized mean_of(const PlaneMean& a, const PlaneMean& b) {
  const Component parts[] = {{a.own.u, 0.5, a.own.dof},
                             {b.own.u, 0.5, b.own.dof},
                             {std::max(a.gauge_u_m, b.gauge_u_m)},
                             {std::max(a.temperature_u_m, b.temperature_u_m)}};
  const Combined c = combine(parts);
  return {(a.mean_m + b.mean_m) / 2, c.u, c.dof, 0};
}

/// More readings in each plane make the planes' own parts smaller.
Settle settle(const Combined& c, const Planes& planes, double margin_si) {
  const int n = std::max(1, std::min(planes.a.readings, planes.b.readings));
  return what_settles({.own_u_m = c.u, .own_dof = c.dof, .readings = n, .round = n}, margin_si, planes.rule);
}

}  // namespace

PlaneMean plane_mean(const PlaneJudged& plane) {
  return {plane.mean.value_si, plane.own, plane.gauge_u_m, plane.temperature_u_m, plane.readings};
}

Result<TaperJudged> judge_taper(const Planes& planes) {
  if (auto problem = check(planes)) return tl::unexpected(*std::move(problem));
  TaperJudged out;
  const Combined taper = difference(planes, planes.a, planes.b);
  const SizeLimits limits{.least = std::nullopt, .greatest = planes.limit};
  out.taper = {std::abs(planes.a.mean_m - planes.b.mean_m), taper.u, taper.dof, 0};
  out.wider_at_b = planes.b.mean_m > planes.a.mean_m;
  out.mean = mean_of(planes.a, planes.b);
  out.taper_judged = judge(out.taper, limits, planes.rule);
  out.answer = out.taper_judged.answer;
  if (out.answer == Answer::cannot_tell) out.settle_taper = settle(taper, planes, out.taper_judged.margin_si);
  if (!planes.middle) return out;
  const PlaneMean& end = planes.a.mean_m < planes.b.mean_m ? planes.a : planes.b;
  const Combined bell = difference(planes, end, *planes.middle);
  // The smaller end was chosen because it is the smaller: half the tail for each of the two.
  const double chosen = (student_quantile(0.9875, bell.dof) - student_quantile(0.975, bell.dof)) * bell.u;
  out.bell_mouth = Sized{end.mean_m - planes.middle->mean_m, bell.u, bell.dof, chosen};
  out.bell_judged = judge(*out.bell_mouth, limits, planes.rule);
  if (out.bell_judged.answer == Answer::cannot_tell) out.settle_bell = settle(bell, planes, out.bell_judged.margin_si);
  out.answer = worse(out.answer, out.bell_judged.answer);
  return out;
}

Answer judge_bore(std::span<const Answer> planes, const TaperJudged& taper) {
  Answer all = taper.answer;
  for (const Answer plane : planes) all = worse(all, plane);
  return all;
}

}  // namespace flatwise::metrology
