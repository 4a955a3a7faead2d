#include "core/metrology/figures_parts.h"

#include <utility>

namespace flatwise::metrology {
namespace {

InputSpec temperature_input(std::string_view name, std::string_view symbol) {
  return {.name = name,
          .symbol = symbol,
          .kind = Kind::temperature,
          .least_si = celsius(-40).kelvin(),
          .greatest_si = celsius(120).kelvin(),
          .optional = true};
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
  return {.name = name,
          .symbol = symbol,
          .kind = Kind::length,
          .least_si = 0,
          .greatest_si = kMostLength,
          .above_least = true};
}
InputSpec u_input(std::string_view name, std::string_view symbol) {
  return {.name = name, .symbol = symbol, .kind = Kind::length, .least_si = 0, .greatest_si = kMostU};
}
InputSpec may_be_given(InputSpec spec) {
  spec.optional = true;
  return spec;
}
InputSpec repeated(InputSpec spec) {
  spec.repeated = true;
  return spec;
}
InputSpec assumed_value(std::string_view name, std::string_view symbol, Value value, double least_si,
                        double greatest_si, std::string_view why) {
  return {.name = name,
          .symbol = symbol,
          .kind = std::get<AnyQuantity>(value).kind,
          .least_si = least_si,
          .greatest_si = greatest_si,
          .assumed = value,
          .assumed_from = why};
}
InputSpec assumed_word(std::string_view name, std::string_view word, std::span<const std::string_view> choices,
                       std::string_view why) {
  return {.name = name, .symbol = {}, .assumed = Value{std::string{word}}, .assumed_from = why, .choices = choices};
}
InputSpec rule_input() { return assumed_word("rule", "guard_u", kRules, "ISO14253-1"); }
Rule rule_from(const Given& in) { return in.text("rule") == "one_sided" ? Rule::one_sided : Rule::guard_u; }
std::optional<Length> length_if_given(const Given& in, std::string_view name) {
  return in.has(name) ? std::optional{Length::from_si(in.si(name))} : std::nullopt;
}

std::vector<InputSpec> thermal_inputs() {
  return {
      temperature_input("part-temperature", "t_p"),
      temperature_input("gauge-temperature", "t_g"),
      assumed_value("thermometer", "U_t", any(kelvins(1)), 0, 20, kPractice),
      assumed_value("room-temperature", "t_r", any(celsius(20)), celsius(-40).kelvin(), celsius(120).kelvin(), "ISO1"),
      assumed_value("room-half-width", "a_r", any(kelvins(5)), 0, 50, kPractice),
      assumed_word("together", "no", kYesNo, "independent gives the larger U"),
      assumed_value("apart", "a_d", any(kelvins(1)), 0, 50, kPractice),
      assumed_value("part-expansion", "α_p", any_expansion(11.5e-6), 0, 100e-6, "steel, GUM"),
      assumed_value("gauge-expansion", "α_g", any_expansion(11.5e-6), 0, 100e-6, "steel, GUM"),
      assumed_value("expansion-half-width", "a_α", any_ratio(0.1), 0, 1, kPractice)};
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

std::vector<InputSpec> all_of(std::initializer_list<std::vector<InputSpec>> lists) {
  std::vector<InputSpec> out;
  for (const auto& list : lists) out.insert(out.end(), list.begin(), list.end());
  return out;
}

}  // namespace flatwise::metrology
