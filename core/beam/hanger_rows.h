// hanger_rows.h: what each rotor turns each hanger with, one number a pair, for choosing among arrangements.
#pragma once

#include <vector>

#include "core/dynamics/pattern_task.h"
#include "core/shaft/shaft.h"

namespace flatwise::beam {

/// The rows of a shaft at its speed, hangers from end A.
///
/// Model      bent_turning() of each rotor alone, leaning towards flat 1. Both planes across the shaft are alike and nothing damps, so a
///            reaction lies along its rotor's azimuth or straight against it, and an arrangement's is the sum in its directions.
/// Refuses    What Mesh::make() refuses (nothing or one hanger alone to hold the shaft) and bent_turning().
/// Accuracy   As bent_turning().
[[nodiscard]] Result<std::vector<dynamics::HangerRow>> hanger_rows(const Shaft& shaft);

}  // namespace flatwise::beam
