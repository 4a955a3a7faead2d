// loads.h: what presses on the shaft: at rest in space (weight, belt, soil) and turning with it (rotors, unbalance).
//
// Directions count clockwise seen from end A: of loads at rest from straight up, so weight acts at 180°; of what turns with
// the shaft from flat 1.
#pragma once

#include <span>
#include <vector>

#include "core/beam/mesh.h"
#include "core/beam/model.h"

namespace flatwise::beam {

/// At rest in space.
struct Load {
  Length at;
  Force force;
  Angle direction = degrees(180);
};

/// Turning with the shaft, at a speed w: force unbalance w², couple by_square w² + by_speed w, both at the azimuth. As in
/// core/dynamics: couple positive in the sense of a force out at the azimuth on the B side.
struct Turning {
  Length at;
  Angle azimuth;
  Unbalance unbalance;
  double couple_by_square_kg_m2 = 0;
  double couple_by_speed_kg_m2_s = 0;
};

/// A rotor that leans: what it turns with, from its body, its lean and where it leans to. At any speed the same as
/// rotating_force and rotating_couple of core/dynamics.
[[nodiscard]] Turning turning_of(const Body& body, Angle lean, Angle azimuth);

/// Loads by node as the kernel takes them: (out, slope) by (real, imaginary).
struct NodeLoads {
  std::vector<double> by_square, by_speed;
};
/// Own weight of shaft and bodies where asked, and the loads; in by_square.
///
/// Refuses    A load where the mesh has no node; not finite.
[[nodiscard]] Result<NodeLoads> loads_at_rest(const Mesh& mesh, std::span<const Load> loads, bool own_weight);
[[nodiscard]] Result<NodeLoads> loads_turning(const Mesh& mesh, std::span<const Turning> turning);

}  // namespace flatwise::beam
