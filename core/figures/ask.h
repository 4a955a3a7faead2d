// ask.h: an input of a figure in text, "bore=99.98 mm". Figures are asked through core/doubt, which takes inputs in doubt too.
#pragma once

#include <string_view>

#include "core/working/figure.h"

namespace flatwise {

/// "name=value" to an input of this figure, read as the kind its spec wants.
///
/// Refuses    Text without a name before '='; a value that is not of that kind. A name that the figure does not have goes
///            on as a word: evaluate() names it, and the near one.
[[nodiscard]] Result<Input> read_input(const FigureSpec& spec, std::string_view text);

}  // namespace flatwise
