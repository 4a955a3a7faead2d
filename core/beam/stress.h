// stress.h: nominal bending and torsional stress at places on the shaft.
#pragma once

#include <span>
#include <vector>

#include "core/beam/bending.h"

namespace flatwise::beam {

/// Torque that goes in or comes out at a place, positive in the sense the shaft turns. The sum should be nought; what is
/// left is told, not shared out.
struct TorqueAt {
  Length at;
  Torque torque;
};

struct StressAt {
  Length at;
  Pressure at_rest;     ///< Bending by loads at rest: every corner feels it as a swing of this size each turn.
  Pressure turning;     ///< Bending by what turns with the shaft: steady for each corner.
  Pressure torsion;     ///< Greatest shear of the larger torque beside the place.
  Pressure equivalent;  ///< Sum of both bendings with torsion, by von Mises' rule.
};

/// Stress at every node of the mesh, from end A.
///
/// Model      Nominal: no notch, keyway, thread or press fit. Both moments by the corner modulus, because a corner comes round
///            into their plane each turn; the weaker section where two meet. Bending greatest at a corner, torsion at the
///            middle of a flat: joining them is on the safe side.
/// Refuses    A place without a node.
[[nodiscard]] Result<std::vector<StressAt>> stresses(const Mesh& mesh, const Bent& at_rest, const Bent& turning,
                                                     std::span<const TorqueAt> torques);

}  // namespace flatwise::beam
