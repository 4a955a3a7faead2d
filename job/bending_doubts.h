// bending_doubts.h: how well the forces at the hangers and the lowest critical speeds of a shaft are known, by the doubts of its
// definition.
#pragma once

#include <vector>

#include "core/doubt/of_shaft.h"

namespace flatwise::job {

/// Of each hanger its force at rest and its turning force ("hangers[0].rest", "hangers[0].turning"), and the lowest critical speed
/// either way ("forward", "backward"), as the definition's pattern stands; those that no doubt moves are left out.
///
/// Model      doubt::of_shaft() around beam::bending_of().
/// Returns    Empty where nothing is doubted or the shaft cannot be worked out as a beam.
[[nodiscard]] std::vector<doubt::ToldDoubt> bending_doubts(const Shaft& shaft);

}  // namespace flatwise::job
