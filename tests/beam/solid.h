// solid.h: a whole shaft as a solid for the finite-element program calculix-ccx: its deck, and what it answers.
#pragma once

#include <string>
#include <vector>

#include "core/beam/of_shaft.h"

namespace flatwise::beam_tests {

/// The deck of a polygon bar of quadratic bricks, hangers that hold the middle of their section, bodies as two point masses each on a
/// section that stays plane and rigid, weight and loads at rest; then its lowest natural frequencies.
///
/// Model      Nothing of a beam in it: the section is a polygon of bricks. Each body's two masses lie along the axis, so that mass,
///            offset and transverse inertia are the body's; nothing spins.
[[nodiscard]] std::string solid_deck(const Shaft& shaft, const beam::ShaftBeam& of);

struct SolidAnswer {
  std::vector<double> reactions_n;  ///< Upwards, one a hanger, in the beam's order.
  std::vector<double> modes_rad_s;  ///< Bending alone: those that come in pairs, one of each.
};
/// Runs the deck in a folder. Empty where the program is not there or did not answer.
[[nodiscard]] SolidAnswer solve_solid(const std::string& folder, const std::string& deck, std::size_t hangers);

}  // namespace flatwise::beam_tests
