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

/// Expanded uncertainty in SI: a quantity of the input's kind, or a share of its value.
Result<double> expanded_of(std::string_view text, const InputSpec& spec, const Input& input) {
  const bool share = text.ends_with('%') && spec.kind != Kind::ratio;
  const Kind kind = share ? Kind::ratio : difference_kind(spec.kind);
  const Result<Entered> read = parse_quantity(text, kind, spec.name);
  if (!read) return tl::unexpected(read.error());
  const double expanded = share ? read->value.si * std::abs(std::get<AnyQuantity>(input.value).si) : read->value.si;
  if (!(expanded > 0)) return tl::unexpected(problem(Code{"doubt.not_above_nought"}, spec.name, text));
  return expanded;
}

Result<DoubtfulInput> read_plus_minus(const FigureSpec& spec, const InputSpec& wanted, const Split& split) {
  Result<Input> input = read_input(spec, trimmed(split.before));
  if (!input) return tl::unexpected(input.error());
  const Result<double> expanded = expanded_of(trimmed(split.after), wanted, *input);
  if (!expanded) return tl::unexpected(expanded.error());
  input->u = Uncertainty{*expanded / 2, std::nullopt, *expanded};
  return DoubtfulInput{*std::move(input), Shape::normal};
}

Result<DoubtfulInput> read_range(const FigureSpec& spec, const InputSpec& wanted, const Split& split) {
  Result<Input> input = read_input(spec, trimmed(split.before));
  if (!input) return tl::unexpected(input.error());
  const Result<Entered> end = parse_quantity(trimmed(split.after), wanted.kind, wanted.name);
  if (!end) return tl::unexpected(end.error());
  auto& value = std::get<AnyQuantity>(input->value);
  if (!(end->value.si > value.si))
    return tl::unexpected(
        problem(Code{"doubt.range_reversed"}, wanted.name, end->typed, {{"least", value}, {"greatest", end->value}}));
  const double half = (end->value.si - value.si) / 2;
  value.si += half;
  const double standard = half / std::numbers::sqrt3;
  // 95 % of a rectangular distribution lie within 0.95 of its half width.
  input->u = Uncertainty{standard, std::nullopt, 0.95 * half};
  return DoubtfulInput{*std::move(input), Shape::rectangular};
}

}  // namespace

bool has_doubt(std::string_view text) {
  return split_at_plus_minus(text).has_value() || split_at(text, kRange).has_value();
}

Result<DoubtfulInput> read_doubtful(const FigureSpec& spec, std::string_view text) {
  const auto plus_minus = split_at_plus_minus(text);
  const auto range = plus_minus ? std::nullopt : split_at(text, kRange);
  if (!plus_minus && !range) {
    Result<Input> input = read_input(spec, text);
    if (!input) return tl::unexpected(input.error());
    return DoubtfulInput{*std::move(input), Shape::normal};
  }
  const std::string_view name = text.substr(0, text.find('='));
  const InputSpec* wanted = quantity_named(spec, name);
  if (wanted == nullptr) {
    const bool known = std::ranges::find(spec.inputs, name, &InputSpec::name) != spec.inputs.end();
    if (known) return tl::unexpected(problem(Code{"doubt.not_a_quantity"}, name, text.substr(name.size())));
    return DoubtfulInput{given(name, std::string{text.substr(std::min(text.size(), name.size() + 1))}), Shape::normal};
  }
  Result<DoubtfulInput> read =
      plus_minus ? read_plus_minus(spec, *wanted, *plus_minus) : read_range(spec, *wanted, *range);
  if (read) read->input.typed = std::string{text.substr(name.size() + 1)};
  return read;
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
