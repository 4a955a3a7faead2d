// figures.h: the computations of this folder that a person may ask for, and the same for a whole shaft.
#pragma once

#include <span>
#include <vector>

#include "core/beam/of_shaft.h"
#include "core/working/figure.h"

namespace flatwise::beam {

/// polygon-section, shaft-deflection, hanger-reactions, critical-speeds.
[[nodiscard]] std::span<const FigureSpec> figures();

/// polygon-section, shaft-deflection, hanger-reactions and critical-speeds of a whole shaft, every input with its origin.
[[nodiscard]] Result<std::vector<Working>> bending_workings(const Shaft& shaft, const ShaftBeam& of);

}  // namespace flatwise::beam
