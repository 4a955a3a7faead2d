#include "core/working/input_specs.h"

#include <utility>

namespace flatwise {

InputSpec between(std::string_view name, std::string_view symbol, Kind kind, double least_si, double greatest_si) {
  return {.name = name, .symbol = symbol, .kind = kind, .least_si = least_si, .greatest_si = greatest_si};
}

InputSpec above_nought(std::string_view name, std::string_view symbol, Kind kind, double greatest_si) {
  InputSpec spec = between(name, symbol, kind, 0, greatest_si);
  spec.above_least = true;
  return spec;
}

InputSpec from_nought(std::string_view name, std::string_view symbol, Kind kind, double greatest_si) {
  return between(name, symbol, kind, 0, greatest_si);
}

InputSpec one_of(std::string_view name, std::string_view symbol, std::span<const std::string_view> choices) {
  return {.name = name, .symbol = symbol, .choices = choices};
}

InputSpec free_text(std::string_view name, std::string_view symbol) {
  return {.name = name, .symbol = symbol, .text = true};
}

InputSpec optional(InputSpec spec) {
  spec.optional = true;
  return spec;
}

InputSpec repeated(InputSpec spec) {
  spec.repeated = true;
  return spec;
}

InputSpec assumed(InputSpec spec, Value value, std::string_view from) {
  spec.assumed = std::move(value);
  spec.assumed_from = from;
  return spec;
}

InputSpec instead_of(InputSpec spec, std::string_view other) {
  spec.instead = other;
  return spec;
}

std::vector<InputSpec> joined(std::initializer_list<std::vector<InputSpec>> lists) {
  std::vector<InputSpec> all;
  for (const auto& list : lists) all.insert(all.end(), list.begin(), list.end());
  return all;
}

Length length_of(const Given& in, std::string_view name) { return Length::from_si(in.si(name)); }

std::optional<Length> length_if_given(const Given& in, std::string_view name) {
  return in.has(name) ? std::optional{length_of(in, name)} : std::nullopt;
}

std::optional<std::vector<double>> one_each(const Given& in, std::string_view name, std::size_t count,
                                            std::optional<double> missing) {
  std::vector<double> values = in.all_si(name);
  if (values.empty() && missing) values.assign(count, *missing);
  if (values.size() == 1) values.assign(count, double{values.front()});  // A copy: assign may clear first.
  return values.size() == count ? std::optional{std::move(values)} : std::nullopt;
}

}  // namespace flatwise
