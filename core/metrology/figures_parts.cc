#include "core/metrology/figures_parts.h"

#include <utility>

namespace flatwise::metrology {
namespace {

InputSpec temperature_input(std::string_view name, std::string_view symbol) {
  return between(name, symbol, Kind::temperature, celsius(-40).kelvin(), celsius(120).kelvin());
}

/// A temperature that was given carries its own uncertainty where its reader knew it, else the thermometer's.
Warmth warmth_from(const Given& in, std::string_view name) {
  if (!in.has(name)) return room(kelvin(in.si("room-temperature")), kelvins(in.si("room-half-width")));
  const Input& input = in.input(name);
  const Temperature read = kelvin(in.si(name));
  if (input.u) return {read, input.u->standard_si, true};
  return thermometer(read, kelvins(in.si("thermometer")));
}

}  // namespace

InputSpec size_input(std::string_view name, std::string_view symbol) {
  return above_nought(name, symbol, Kind::length, kMostLength);
}
InputSpec u_input(std::string_view name, std::string_view symbol) {
  return from_nought(name, symbol, Kind::length, kMostU);
}
InputSpec dof_input(std::string_view name) { return between(name, "ν", Kind::ratio, 1, kEndless); }
InputSpec assumed_word(std::string_view name, std::string_view word, std::span<const std::string_view> choices,
                       std::string_view why) {
  return assumed(one_of(name, {}, choices), std::string{word}, why);
}
InputSpec rule_input() { return assumed_word("rule", "guard_u", kRules, "ISO14253-1"); }
Rule rule_from(const Given& in) { return in.text("rule") == "one_sided" ? Rule::one_sided : Rule::guard_u; }

std::vector<InputSpec> thermal_inputs() {
  return {optional(temperature_input("part-temperature", "t_p")),
          optional(temperature_input("gauge-temperature", "t_g")),
          assumed(from_nought("thermometer", "U_t", Kind::temperature_rise, 20), any(kelvins(1)), kCommonPractice),
          assumed(temperature_input("room-temperature", "t_r"), any(celsius(20)), "ISO1"),
          assumed(from_nought("room-half-width", "a_r", Kind::temperature_rise, 50), any(kelvins(5)), kCommonPractice),
          assumed_word("together", "no", kYesNo, "independent gives the larger U"),
          assumed(from_nought("apart", "a_d", Kind::temperature_rise, 50), any(kelvins(1)), kCommonPractice),
          assumed(from_nought("part-expansion", "α_p", Kind::expansion, 100e-6), any_expansion(11.5e-6), "steel, GUM"),
          assumed(from_nought("gauge-expansion", "α_g", Kind::expansion, 100e-6), any_expansion(11.5e-6), "steel, GUM"),
          assumed(from_nought("expansion-half-width", "a_α", Kind::ratio, 1), any_ratio(0.1), kCommonPractice)};
}

ThermalState thermal_from(const Given& in) {
  const double half_width = in.si("expansion-half-width");
  return {.part = warmth_from(in, "part-temperature"),
          .gauge = warmth_from(in, "gauge-temperature"),
          .together = in.text("together") == "yes",
          .apart = kelvins(in.si("apart")),
          .part_expansion = {in.si("part-expansion"), half_width},
          .gauge_expansion = {in.si("gauge-expansion"), half_width}};
}

}  // namespace flatwise::metrology
