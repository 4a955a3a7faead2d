// figures.h: the computations of this folder that a person may ask for.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise::fasteners {

/// stress-area, proof-load, torque-preload, torque-for-preload, torque-full, stack-compression, bar-pull,
/// wrench-setting, multiplier-ratio, torque-reached, sleeve-stiffness, angle-turn, settling, second-pull, own-nut-factor.
[[nodiscard]] std::span<const FigureSpec> figures();

}  // namespace flatwise::fasteners
