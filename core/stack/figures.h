// figures.h: the computations of this folder that a person may ask for.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise::stack {

/// stack-length, seated, open-joint, stack-slip, stack-drawn.
[[nodiscard]] std::span<const FigureSpec> figures();

}  // namespace flatwise::stack
