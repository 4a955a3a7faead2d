// response.h: what the hangers feel and how far the shaft bends over a range of speeds.
#pragma once

#include <span>
#include <vector>

#include "core/beam/loads.h"
#include "core/beam/mesh.h"
#include "core/lanes/lanes.h"

namespace flatwise::beam {

/// Turning amplitudes at one speed.
struct ResponsePoint {
  AngularSpeed speed;
  std::vector<Force> hangers;  ///< One a hanger, in the beam's order.
  std::vector<Length> out;     ///< One a watched place.
};

inline constexpr int kMostSpeeds = 100'000;

struct ResponseAt {
  std::span<const AngularSpeed> speeds;
  std::span<const Length> watched = {};
};
/// The turning loads at each of these speeds, by block elimination, eight speeds at once.
///
/// Model      As bent_turning(). Travel over the ground stays as it is while the speed changes.
/// Refuses    Speeds not above nought or over Mesh::fastest(), more than 100,000; a watched place without a node.
/// Source     [Timoshenko-beam]; scipy's banded solver in tests/data/beam_scipy.py.
[[nodiscard]] Result<std::vector<ResponsePoint>> response(const Mesh& mesh, std::span<const Turning> turning,
                                                          const ResponseAt& at, lanes::Width width = lanes::widest());

}  // namespace flatwise::beam
