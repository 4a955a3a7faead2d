// figures.h: what the tests of the folders' figures ask of them. A folder cannot use the catalogue, which stands above it.
#pragma once

#include <algorithm>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/units/parse.h"
#include "core/working/figure.h"

namespace flatwise {

inline const FigureSpec& figure_named(std::span<const FigureSpec> figures, std::string_view name) {
  const auto it = std::ranges::find(figures, name, &FigureSpec::name);
  CORE_CHECK(it != figures.end());
  return *it;
}

/// "bore=99.98 mm" to an input of the spec.
inline Input input_of(const FigureSpec& spec, std::string_view text) {
  const auto at = text.find('=');
  const std::string name{text.substr(0, at)}, value{text.substr(at + 1)};
  const auto input = std::ranges::find(spec.inputs, name, &InputSpec::name);
  CORE_CHECK(input != spec.inputs.end());
  if (input->text || !input->choices.empty()) return given(input->name, value);
  const auto entered = parse_quantity(value, input->kind, name);
  CORE_CHECK(entered.has_value());
  return given(input->name, entered->value);
}
inline std::vector<Input> inputs_of(const FigureSpec& spec, const std::vector<std::string_view>& texts) {
  std::vector<Input> inputs;
  for (const std::string_view text : texts) inputs.push_back(input_of(spec, text));
  return inputs;
}

/// A figure's example with some of its inputs changed or added: {"hub-yield=20 MPa"}.
inline Results<Working> example_with(const FigureSpec& spec, const std::vector<std::string_view>& changes) {
  std::vector<Input> inputs = inputs_of(spec, spec.example.inputs);
  for (const Input& change : inputs_of(spec, changes)) {
    std::erase_if(inputs, [&](const Input& i) { return i.name == change.name; });
    inputs.push_back(change);
  }
  return evaluate(spec, inputs);
}
inline bool says(const Results<Working>& working, std::string_view code) {
  return working && std::ranges::any_of(working->findings, [&](const Finding& f) { return f.code.id() == code; });
}

inline std::string text_out(const Working& working, std::string_view name) {
  return std::get<std::string>(working.output(name)->value);
}
/// Code of the first problem; "none" where it was computed.
inline std::string first_code(const Results<Working>& working) {
  return working ? "none" : std::string{working.error().at(0).code.id()};
}

}  // namespace flatwise
