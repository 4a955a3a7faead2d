// The text of a doubtful input: "bore=99.968 mm ± 4 µm", "bore=99.96 mm .. 99.98 mm".
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/doubt/doubt.h"
#include "core/figures/ask.h"
#include "core/units/parse.h"

namespace flatwise::doubt {
namespace {

constexpr std::array<std::string_view, 2> kPlusMinus{"±", "+-"};
constexpr std::string_view kRange = "..";

struct Split {
  std::string_view before, after;
};
std::optional<Split> split_at(std::string_view text, std::string_view mark) {
  const std::size_t at = text.find(mark);
  if (at == std::string_view::npos) return std::nullopt;
  return Split{text.substr(0, at), text.substr(at + mark.size())};
}
std::optional<Split> split_at_plus_minus(std::string_view text) {
  for (const std::string_view mark : kPlusMinus)
    if (const auto split = split_at(text, mark)) return split;
  return std::nullopt;
}

std::string_view trimmed(std::string_view text) {
  while (text.starts_with(' ')) text.remove_prefix(1);
  while (text.ends_with(' ')) text.remove_suffix(1);
  return text;
}

Problem problem(Code code, std::string_view field, std::string_view given, Args args = {}) {
  return {code, std::string{field}, std::string{given}, std::move(args), std::nullopt};
}

/// The spec of a quantity that can be doubtful; nothing for words, counts and names that are not there.
const InputSpec* quantity_named(const FigureSpec& spec, std::string_view name) {
  const auto found = std::ranges::find(spec.inputs, name, &InputSpec::name);
  if (found == spec.inputs.end() || !found->choices.empty() || found->text || found->kind == Kind::count)
    return nullptr;
  return &*found;
}

/// Expanded uncertainty in SI: a quantity of the value's kind, or a share of the value.
Result<double> expanded_of(std::string_view text, const AnyQuantity& value, std::string_view field) {
  const bool share = text.ends_with('%') && value.kind != Kind::ratio;
  const Kind kind = share ? Kind::ratio : difference_kind(value.kind);
  const Result<Entered> read = parse_quantity(text, kind, field);
  if (!read) return tl::unexpected(read.error());
  const double expanded = share ? read->value.si * std::abs(value.si) : read->value.si;
  if (!(expanded > 0)) return tl::unexpected(problem(Code{"doubt.not_above_nought"}, field, text));
  return expanded;
}

Result<DoubtfulQuantity> read_plus_minus(const Split& split, Kind kind, std::string_view field) {
  Result<Entered> middle = parse_quantity(trimmed(split.before), kind, field);
  if (!middle) return tl::unexpected(middle.error());
  const Result<double> expanded = expanded_of(trimmed(split.after), middle->value, field);
  if (!expanded) return tl::unexpected(expanded.error());
  return DoubtfulQuantity{*std::move(middle), Uncertainty{*expanded / 2, std::nullopt, *expanded}, Shape::normal};
}

Result<DoubtfulQuantity> read_range(const Split& split, Kind kind, std::string_view field) {
  Result<Entered> middle = parse_quantity(trimmed(split.before), kind, field);
  if (!middle) return tl::unexpected(middle.error());
  const Result<Entered> end = parse_quantity(trimmed(split.after), kind, field);
  if (!end) return tl::unexpected(end.error());
  AnyQuantity& value = middle->value;
  if (!(end->value.si > value.si))
    return tl::unexpected(
        problem(Code{"doubt.range_reversed"}, field, end->typed, {{"least", value}, {"greatest", end->value}}));
  const double half = (end->value.si - value.si) / 2;
  value.si += half;
  middle->nm.reset();
  // 95 % of a rectangular distribution lie within 0.95 of its half width.
  return DoubtfulQuantity{*std::move(middle), Uncertainty{half / std::numbers::sqrt3, std::nullopt, 0.95 * half},
                          Shape::rectangular};
}

}  // namespace

bool has_doubt(std::string_view text) {
  return split_at_plus_minus(text).has_value() || split_at(text, kRange).has_value();
}

Result<DoubtfulQuantity> read_doubtful_quantity(std::string_view text, Kind kind, std::string_view field) {
  Result<DoubtfulQuantity> read;
  if (const auto plus_minus = split_at_plus_minus(text)) {
    read = read_plus_minus(*plus_minus, kind, field);
  } else if (const auto range = split_at(text, kRange)) {
    read = read_range(*range, kind, field);
  } else {
    Result<Entered> exact = parse_quantity(text, kind, field);
    if (!exact) return tl::unexpected(exact.error());
    return DoubtfulQuantity{*std::move(exact), std::nullopt, Shape::normal};
  }
  if (read) read->middle.typed = std::string{text};
  return read;
}

Result<DoubtfulInput> read_doubtful(const FigureSpec& spec, std::string_view text) {
  const auto plain = [&]() -> Result<DoubtfulInput> {
    Result<Input> input = read_input(spec, text);
    if (!input) return tl::unexpected(input.error());
    return DoubtfulInput{*std::move(input), Shape::normal};
  };
  if (!has_doubt(text)) return plain();
  const std::string_view name = text.substr(0, text.find('='));
  const std::string_view typed = text.substr(std::min(text.size(), name.size() + 1));
  const InputSpec* wanted = quantity_named(spec, name);
  if (wanted == nullptr) {
    const bool known = std::ranges::find(spec.inputs, name, &InputSpec::name) != spec.inputs.end();
    if (known) return tl::unexpected(problem(Code{"doubt.not_a_quantity"}, name, text.substr(name.size())));
    return DoubtfulInput{given(name, std::string{typed}), Shape::normal};
  }
  Result<DoubtfulQuantity> read = read_doubtful_quantity(typed, wanted->kind, name);
  if (!read) return tl::unexpected(std::move(read.error()));
  DoubtfulInput input{given(name, read->middle.value), read->shape};
  input.input.u = read->u;
  input.input.typed = read->middle.typed;
  return input;
}

Results<Doubted> ask_with_doubt(const FigureSpec& spec, std::span<const std::string> texts, const Options& options) {
  std::vector<DoubtfulInput> inputs;
  std::vector<Problem> problems;
  for (const std::string& text : texts) {
    Result<DoubtfulInput> input = read_doubtful(spec, text);
    if (input)
      inputs.push_back(*std::move(input));
    else
      problems.push_back(std::move(input.error()));
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return with_doubt(spec, std::move(inputs), options);
}

}  // namespace flatwise::doubt
