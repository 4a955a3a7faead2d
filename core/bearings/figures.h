// figures.h: what this folder can be asked: the inside of a bearing, its clearance once fitted, and the play at the rim.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise::bearings {

/// bearing-geometry, fitted-clearance, rim-play, clearance-from-play. Source keys: section "bearings" of docs/sources.md.
[[nodiscard]] std::span<const FigureSpec> figures();

}  // namespace flatwise::bearings
