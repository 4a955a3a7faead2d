// figures.h: what this folder can be asked: limits and tables, interference, pressing, reading back, heating, creep.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise::fits {

/// fit-limits, ring-outside, clearance-group, interference, press-pressure, press-force, shop-friction, press-readback,
/// heating, ring-creep, hub-yielding, ring-on-half, metal, creep-load, press-curve, press-curve-read. Source keys: section "fits" of docs/sources.md.
[[nodiscard]] std::span<const FigureSpec> figures();

}  // namespace flatwise::fits
