// figures.h: the computations of this folder that a person may ask for.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise::metrology {

/// bore-at-plane, bore-taper, decision, temperature-correction, expanded-uncertainty, gauge-repeatability,
/// roundness-factor.
[[nodiscard]] std::span<const FigureSpec> figures();

}  // namespace flatwise::metrology
