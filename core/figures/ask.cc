#include "core/figures/ask.h"

#include <algorithm>

#include "core/units/parse.h"

namespace flatwise {

Result<Input> read_input(const FigureSpec& spec, std::string_view text) {
  const std::size_t equals = text.find('=');
  if (equals == std::string_view::npos || equals == 0)
    return tl::unexpected(Problem{Code{"figure.input_form"}, "input", std::string{text}, {}, std::nullopt});
  const std::string_view name = text.substr(0, equals);
  const std::string typed{text.substr(equals + 1)};
  const auto wanted = std::ranges::find(spec.inputs, name, &InputSpec::name);
  if (wanted == spec.inputs.end() || !wanted->choices.empty() || wanted->text) {
    Input word = given(name, typed);
    word.typed = typed;
    return word;
  }
  const Result<Entered> entered = parse_quantity(typed, wanted->kind, name);
  if (!entered) return tl::unexpected(entered.error());
  Input input = given(name, entered->value);
  input.typed = typed;
  return input;
}

}  // namespace flatwise
