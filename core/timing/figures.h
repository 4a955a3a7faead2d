// figures.h: what of this folder a person may compute alone.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise::timing {

[[nodiscard]] std::span<const FigureSpec> figures();

}  // namespace flatwise::timing
