#include "core/metrology/decide.h"

#include <algorithm>
#include <cmath>

namespace flatwise::metrology {
namespace {

double factor(double dof, Rule rule) {
  return rule == Rule::guard_u ? coverage_factor(dof) : student_quantile(0.95, std::max(dof, 1.0));
}

/// Guard of a budget whose own variance is `share` of what it was.
double guard_of(const Budget& b, double share, double temperature_u_m, Rule rule) {
  const Component parts[] = {{b.own_u_m * std::sqrt(share), 1, b.own_dof}, {b.gauge_u_m}, {temperature_u_m}};
  const Combined c = combine(parts);
  return factor(c.dof, rule) * c.u + b.allowance_m * std::sqrt(share);
}

/// What is left for the gauge and its scatter once the temperatures have had their part; nought where nothing is.
double left_for_gauge(double margin_si, double temperature_u_m, Rule rule) {
  const double taken = factor(kEndless, rule) * temperature_u_m;
  return std::sqrt(std::max(0.0, margin_si * margin_si - taken * taken));
}

}  // namespace

Uncertainty Sized::uncertainty() const {
  Uncertainty u = expand({u_si, dof});
  u.expanded_si += allowance_si;
  return u;
}

double Sized::guard_si(Rule rule) const { return factor(dof, rule) * u_si + allowance_si; }

Judged judge(const Sized& value, const Bounds& limits, Rule rule) {
  Judged out;
  const auto take = [&](double limit_si, double margin, Judged::Against against) {
    if (out.against != Judged::Against::nothing && margin >= out.margin_si) return;
    out.against = against, out.margin_si = margin, out.limit_si = limit_si;
  };
  if (limits.least_si) take(*limits.least_si, value.value_si - *limits.least_si, Judged::Against::least);
  if (limits.greatest_si) take(*limits.greatest_si, *limits.greatest_si - value.value_si, Judged::Against::greatest);
  if (out.against == Judged::Against::nothing) return out;
  const double guard = value.guard_si(rule);
  out.answer = out.margin_si >= guard ? Answer::in : -out.margin_si > guard ? Answer::out : Answer::cannot_tell;
  return out;
}

Judged judge(const Sized& value, const SizeLimits& limits, Rule rule) {
  Bounds bounds;
  if (limits.least) bounds.least_si = limits.least->si();
  if (limits.greatest) bounds.greatest_si = limits.greatest->si();
  return judge(value, bounds, rule);
}

Answer worse(Answer a, Answer b) {
  if (a == Answer::out || b == Answer::out) return Answer::out;
  return a == Answer::cannot_tell || b == Answer::cannot_tell ? Answer::cannot_tell : Answer::in;
}

double conformance(const Sized& value, const SizeLimits& limits) {
  const auto below = [&](double limit) {
    // A value known exactly is on one side or the other.
    if (!(value.u_si > 0)) return value.value_si <= limit ? 1.0 : 0.0;
    const double z = (limit - value.value_si) / value.u_si;
    return value.dof > kEndless / 2 ? normal_cdf(z) : student_cdf(z, std::max(value.dof, 1.0));
  };
  const double under_greatest = limits.greatest ? below(limits.greatest->si()) : 1.0;
  const double under_least = limits.least ? below(limits.least->si()) : 0.0;
  return std::max(0.0, under_greatest - under_least);
}

Settle what_settles(const Budget& b, double margin_si, Rule rule) {
  const double wanted = std::abs(margin_si);
  if (!(wanted >= kFinestGauge_m)) return {};
  const bool open = b.temperature_if_taken_u_m < b.temperature_u_m;
  if (open && guard_of(b, 1, b.temperature_if_taken_u_m, rule) <= wanted) return {Remedy::take_temperatures};
  for (int more = b.round; more <= kMostMoreReadings; more += b.round) {
    const double share = static_cast<double>(b.readings) / (b.readings + more);
    if (guard_of(b, share, b.temperature_u_m, rule) <= wanted) return {Remedy::readings, more};
  }
  const double with_this_heat = left_for_gauge(wanted, b.temperature_u_m, rule);
  if (with_this_heat >= std::max(kFinestGauge_m, wanted / 2)) return {Remedy::gauge, 0, with_this_heat};
  const double with_heat_taken = left_for_gauge(wanted, std::min(b.temperature_u_m, b.temperature_if_taken_u_m), rule);
  if (open && with_heat_taken >= kFinestGauge_m) return {Remedy::temperatures_and_gauge, 0, with_heat_taken};
  if (with_this_heat >= kFinestGauge_m) return {Remedy::gauge, 0, with_this_heat};
  return {};
}

}  // namespace flatwise::metrology
