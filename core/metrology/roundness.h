// roundness.h: what a V-block and a dial show of a shaft with lobes. Two-point diameters do not see odd lobes at all;
// this is the way to see them.
#pragma once

#include "core/units/angle.h"
#include "core/units/problem.h"

namespace flatwise::metrology {

/// Factor by which the dial's total movement exceeds the out-of-roundness itself, three-point summit method.
///
/// Model      r(θ) = R + a cos nθ in a symmetrical V, dial on the bisector opposite the V: F = 1 + cos(n (90° + v/2)) /
///            sin(v/2). Under nought: the dial moves the other way.
/// Inputs     lobes 1 to 100; included angle 1 to 179°.
/// Source     Derived in docs/worked/W16-v-block.md (nought at one lobe, as a shifted circle must give); the kind of
///            table that ISO 4292 holds, which was not read.
[[nodiscard]] Result<double> v_block_factor(int lobes, Angle included);

}  // namespace flatwise::metrology
