#include "core/working/figure.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/units/near.h"

namespace flatwise {
namespace {

const Input* first_of(const std::vector<Input>& inputs, std::string_view name) {
  const auto it = std::ranges::find_if(inputs, [&](const Input& i) { return i.name == name; });
  return it == inputs.end() ? nullptr : &*it;
}

const InputSpec* spec_of(const FigureSpec& figure, std::string_view name) {
  const auto it = std::ranges::find_if(figure.inputs, [&](const InputSpec& s) { return s.name == name; });
  return it == figure.inputs.end() ? nullptr : &*it;
}

std::string text_of(const Input& input) {
  if (!input.typed.empty()) return input.typed;
  if (const auto* text = std::get_if<std::string>(&input.value)) return *text;
  return {};
}

Problem unknown_input(const FigureSpec& figure, const Input& input) {
  std::vector<std::string_view> names;
  for (const InputSpec& s : figure.inputs) names.push_back(s.name);
  std::vector<std::string> listed(names.begin(), names.end());
  return {Code{"figure.input_unknown"},
          input.name,
          text_of(input),
          {{"near", std::string{nearest(input.name, names)}}, {"names", std::move(listed)}},
          std::nullopt};
}

Problem out_of_range(const InputSpec& spec, const Input& input, AnyQuantity value) {
  Args args{{"value", value}, {"open", spec.above_least ? 1 : 0}};
  const bool has_least = std::isfinite(spec.least_si), has_greatest = std::isfinite(spec.greatest_si);
  if (has_least) args.emplace_back("least", AnyQuantity{spec.least_si, spec.kind});
  if (has_greatest) args.emplace_back("greatest", AnyQuantity{spec.greatest_si, spec.kind});
  return {Code{"figure.input_range"}, input.name, text_of(input), std::move(args), std::nullopt};
}

std::optional<Problem> check_choice(const InputSpec& spec, const Input& input) {
  const auto* text = std::get_if<std::string>(&input.value);
  if (text != nullptr && std::ranges::find(spec.choices, *text) != spec.choices.end()) return std::nullopt;
  std::vector<std::string> choices(spec.choices.begin(), spec.choices.end());
  return Problem{
      Code{"figure.input_choice"}, input.name, text_of(input), {{"choices", std::move(choices)}}, std::nullopt};
}

std::optional<Problem> check_text(const Input& input) {
  if (const auto* text = std::get_if<std::string>(&input.value); text != nullptr && !text->empty()) return std::nullopt;
  return Problem{Code{"figure.input_kind"}, input.name, text_of(input), {{"wanted", Word{"kind.text"}}}, std::nullopt};
}

std::optional<Problem> check_value(const InputSpec& spec, const Input& input) {
  if (!spec.choices.empty()) return check_choice(spec, input);
  if (spec.text) return check_text(input);
  const auto* quantity = std::get_if<AnyQuantity>(&input.value);
  if (quantity == nullptr || quantity->kind != spec.kind) {
    Args args{{"wanted", Word{"kind." + std::string{kind_name(spec.kind)}}}};
    return Problem{Code{"figure.input_kind"}, input.name, text_of(input), std::move(args), std::nullopt};
  }
  if (!std::isfinite(quantity->si))
    return Problem{Code{"figure.input_not_finite"}, input.name, text_of(input), {}, std::nullopt};
  const bool above = spec.above_least ? quantity->si > spec.least_si : quantity->si >= spec.least_si;
  if (!above || !(quantity->si <= spec.greatest_si)) return out_of_range(spec, input, *quantity);
  return std::nullopt;
}

bool has(const std::vector<Input>& inputs, std::string_view name) {
  return !name.empty() && first_of(inputs, name) != nullptr;
}

/// Nothing is put in place of what was left out where the figure does without it, or another input says the same.
bool may_be_left_out(const InputSpec& spec, const std::vector<Input>& inputs) {
  return spec.optional || has(inputs, spec.instead);
}

/// Orders the inputs as the spec does, fills what is assumed, and collects every problem.
std::vector<Input> in_order(const FigureSpec& figure, std::vector<Input>&& inputs, std::vector<Problem>& problems) {
  for (const Input& input : inputs) {
    const InputSpec* spec = spec_of(figure, input.name);
    if (spec == nullptr)
      problems.push_back(unknown_input(figure, input));
    else if (has(inputs, spec->instead))
      problems.push_back({Code{"figure.input_instead"},
                          input.name,
                          text_of(input),
                          {{"other", std::string{spec->instead}}},
                          std::nullopt});
  }
  std::vector<Input> ordered;
  ordered.reserve(inputs.size() + figure.inputs.size());
  for (const InputSpec& spec : figure.inputs) {
    int seen = 0;
    for (Input& input : inputs) {
      if (input.name != spec.name) continue;
      if (++seen > 1 && !spec.repeated)
        problems.push_back({Code{"figure.input_twice"}, input.name, text_of(input), {}, std::nullopt});
      if (auto problem = check_value(spec, input)) problems.push_back(*std::move(problem));
      if (input.symbol.empty()) input.symbol = spec.symbol;
      ordered.push_back(std::move(input));
      input.name = spec.name;  // What was moved from is still known by its name, and matches no other spec.
    }
    if (seen > 0 || may_be_left_out(spec, inputs)) continue;
    if (spec.assumed) {
      Origin origin{OriginKind::assumed, std::string{spec.assumed_from}};
      ordered.push_back(
          {std::string{spec.name}, std::string{spec.symbol}, *spec.assumed, std::move(origin), {}, {}, {}});
    } else {
      Args args{{"wanted", Word{"kind." + std::string{kind_name(spec.kind)}}}};
      if (!spec.choices.empty()) args = {{"wanted", Word{"kind.choice"}}};
      if (spec.text) args = {{"wanted", Word{"kind.text"}}};
      problems.push_back({Code{"figure.input_missing"}, std::string{spec.name}, {}, std::move(args), std::nullopt});
    }
  }
  return ordered;
}

}  // namespace

bool Given::has(std::string_view name) const { return first_of(inputs_, name) != nullptr; }

const Input& Given::input(std::string_view name) const {
  const Input* found = first_of(inputs_, name);
  CORE_CHECK(found != nullptr);
  return *found;
}

double Given::si(std::string_view name) const {
  const auto* quantity = std::get_if<AnyQuantity>(&input(name).value);
  CORE_CHECK(quantity != nullptr);
  return quantity->si;
}

const std::string& Given::text(std::string_view name) const {
  const auto* text = std::get_if<std::string>(&input(name).value);
  CORE_CHECK(text != nullptr);
  return *text;
}

std::vector<double> Given::all_si(std::string_view name) const {
  std::vector<double> values;
  for (const Input& input : inputs_)
    if (input.name == name) values.push_back(std::get<AnyQuantity>(input.value).si);
  return values;
}

std::vector<std::string> Given::all_text(std::string_view name) const {
  std::vector<std::string> values;
  for (const Input& input : inputs_)
    if (input.name == name) values.push_back(std::get<std::string>(input.value));
  return values;
}

Results<Working> evaluate(const FigureSpec& spec, std::vector<Input> inputs) {
  std::vector<Problem> problems;
  Given checked{in_order(spec, std::move(inputs), problems)};
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  Result<Computed> computed = spec.compute(checked);
  if (!computed) return tl::unexpected(std::vector<Problem>{std::move(computed.error())});
  CORE_CHECK(computed->values.size() == spec.outputs.size());
  Working working{std::string{spec.name},        std::move(checked).take(), {}, std::string{spec.formula}, spec.sources,
                  std::move(computed->findings), computed->answer};
  for (std::size_t i = 0; i < spec.outputs.size(); ++i) {
    const OutputSpec& out = spec.outputs[i];
    if (const auto* quantity = std::get_if<AnyQuantity>(&computed->values[i])) CORE_CHECK(!std::isnan(quantity->si));
    std::optional<Uncertainty> u;
    if (i < computed->u.size()) u = computed->u[i];
    working.outputs.push_back({std::string{out.name}, std::string{out.symbol}, std::move(computed->values[i]), u});
  }
  return working;
}

Input given(std::string_view name, AnyQuantity value, Origin origin) {
  return {std::string{name}, {}, value, std::move(origin), {}, {}, {}};
}
Input given(std::string_view name, std::string text, Origin origin) {
  return {std::string{name}, {}, std::move(text), std::move(origin), {}, {}, {}};
}
Input measured(std::string_view name, AnyQuantity value, std::string where, std::string typed) {
  return {std::string{name}, {}, value, {OriginKind::measured, std::move(where)}, {}, std::move(typed), {}};
}
Input computed(std::string_view name, std::string_view output, WorkingPtr from) {
  CORE_CHECK(from != nullptr);
  const Output* out = from->output(output);
  CORE_CHECK(out != nullptr);
  return {std::string{name}, {}, out->value, {OriginKind::computed, from->figure}, out->u, {}, std::move(from)};
}

}  // namespace flatwise
