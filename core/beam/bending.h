// bending.h: how far the shaft bends, what its hangers carry and what bends it where, at rest and turning.
#pragma once

#include <span>
#include <vector>

#include "core/beam/loads.h"
#include "core/beam/mesh.h"

namespace flatwise::beam {

/// What a hanger feels: the force the shaft presses on it with, and a couple where it is clamped.
struct Reaction {
  Length at;
  Force size;
  Angle direction;
  Torque couple;
};

/// One node of the bent line.
struct LinePoint {
  Length at;
  Length out;       ///< How far from straight.
  Angle direction;  ///< Where to.
  Angle slope;
  Torque moment;  ///< Bending moment in the shaft; the larger side where a couple makes it jump.
  Force shear;    ///< The larger side too.
};

struct Bent {
  std::vector<Reaction> reactions;  ///< One a hanger, in the beam's order.
  std::vector<LinePoint> line;      ///< One a node, from end A.

  [[nodiscard]] const LinePoint& greatest_out() const;
};

/// Loads at rest, with or without the shaft's and the bodies' own weight.
///
/// Model      Linear, small bending; hangers as in model.h. Directions are in space.
/// Accuracy   Nodes are exact for loads at nodes (the element's shape is the beam's own solution) to rounding: 1e-9 of the
///            largest over 100 elements.
[[nodiscard]] Result<Bent> bent_at_rest(const Mesh& mesh, std::span<const Load> loads, bool own_weight = true);

/// What turns with the shaft, at one speed: the bent line keeps its shape and turns. No damping.
///
/// Model      (K - w² M_forward) x = f: rotors on their own bearings with I_t - (s/W) I_p, the shaft with -rho I.
/// Returns    Directions count from flat 1. On a critical speed itself there is no answer but a very large one.
/// Refuses    Speed not above nought, or over Mesh::fastest(): the elements are too long for it.
[[nodiscard]] Result<Bent> bent_turning(const Mesh& mesh, std::span<const Turning> turning, AngularSpeed speed);

}  // namespace flatwise::beam
