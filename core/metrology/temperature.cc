#include "core/metrology/temperature.h"

#include <cmath>

#include "core/units/guards.h"

namespace flatwise::metrology {
namespace {

double above_20(const Warmth& warmth) { return (warmth.value - kReferenceTemperature).kelvins(); }
double u_of(const Expansion& e) { return rectangular(e.per_kelvin * e.relative_half_width); }

Correction apart_from_each_other(const ThermalState& s) {
  const double part = above_20(s.part), gauge = above_20(s.gauge);
  const double up = u_of(s.part_expansion), ug = u_of(s.gauge_expansion);
  const Component parts[] = {{s.part.standard_k, s.part_expansion.per_kelvin},
                             {s.gauge.standard_k, s.gauge_expansion.per_kelvin},
                             {up, part},
                             {ug, gauge},
                             second_order(1, up, s.part.standard_k),
                             second_order(1, ug, s.gauge.standard_k)};
  return {s.gauge_expansion.per_kelvin * gauge - s.part_expansion.per_kelvin * part, combine(parts).u};
}

/// One temperature for both: the measured one where only one was measured, the mean where both were.
Correction with_each_other(const ThermalState& s) {
  const bool use_part = s.part.measured || !s.gauge.measured;
  const bool both = s.part.measured && s.gauge.measured;
  if (both) return apart_from_each_other(s);  // Two thermometer readings say more than that they stood together.
  const Warmth& common = use_part ? s.part : s.gauge;
  const double rise = above_20(common), up = u_of(s.part_expansion), ug = u_of(s.gauge_expansion);
  const double ap = s.part_expansion.per_kelvin, ag = s.gauge_expansion.per_kelvin;
  // Whichever was not taken differs from the common temperature by the small difference.
  const double difference_acts_on = use_part ? ag : ap;
  const Component parts[] = {{common.standard_k, ag - ap},
                             {rectangular(s.apart.kelvins()), difference_acts_on},
                             {up, rise},
                             {ug, rise},
                             second_order(1, up, common.standard_k),
                             second_order(1, ug, common.standard_k)};
  return {(ag - ap) * rise, combine(parts).u};
}

std::optional<Problem> check_warmth(std::string_view field, const Warmth& warmth) {
  if (auto p = outside(field, any(warmth.value), celsius(-40).kelvin(), celsius(120).kelvin())) return p;
  return negative(field, any(kelvins(warmth.standard_k)));
}
std::optional<Problem> check_expansion(std::string_view field, const Expansion& expansion) {
  if (auto p = outside(field, any_expansion(expansion.per_kelvin), 0, 100e-6)) return p;
  return outside("expansion-half-width", any_ratio(expansion.relative_half_width), 0, 1);
}

}  // namespace

Warmth thermometer(Temperature read, TemperatureRise expanded) { return {read, from_k2(expanded.kelvins()), true}; }
Warmth room(Temperature setting, TemperatureRise half_width) {
  return {setting, rectangular(half_width.kelvins()), false};
}

Correction to_20(const ThermalState& state) {
  return state.together ? with_each_other(state) : apart_from_each_other(state);
}

std::optional<Problem> check_thermal(const ThermalState& state) {
  if (auto p = check_warmth("part-temperature", state.part)) return p;
  if (auto p = check_warmth("gauge-temperature", state.gauge)) return p;
  if (auto p = negative("apart", any(state.apart))) return p;
  if (auto p = check_expansion("part-expansion", state.part_expansion)) return p;
  return check_expansion("gauge-expansion", state.gauge_expansion);
}

Farthest farthest_from_20(const ThermalState& state) {
  const double part = std::abs(above_20(state.part)), gauge = std::abs(above_20(state.gauge));
  return gauge > part ? Farthest{kelvins(gauge), true} : Farthest{kelvins(part), false};
}

bool too_far_from_20(const ThermalState& state, TemperatureRise furthest) {
  constexpr double kRounding = 1e-9;  // 35 °C is exactly 15 K away, whatever 308.15 − 293.15 gives.
  return farthest_from_20(state).from_20.kelvins() > furthest.kelvins() + kRounding;
}

}  // namespace flatwise::metrology
