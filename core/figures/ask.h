// ask.h: a figure asked in text, "bore=99.98 mm": what the shell, the page and the test of the examples have in common.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "core/working/figure.h"

namespace flatwise {

/// "name=value" to an input of this figure, read as the kind its spec wants.
///
/// Refuses    Text without a name before '='; a value that is not of that kind. A name that the figure does not have goes
///            on as a word: evaluate() names it, and the near one.
[[nodiscard]] Result<Input> read_input(const FigureSpec& spec, std::string_view text);

/// Reads all inputs and evaluates. All that cannot be read is told at once, before anything is computed.
[[nodiscard]] Results<Working> ask(const FigureSpec& spec, std::span<const std::string> texts);

}  // namespace flatwise
