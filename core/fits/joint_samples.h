// joint_samples.h: pressed joints for the tests of this folder.
#pragma once

#include "core/fits/lame.h"

namespace flatwise::fits {

inline constexpr Elastic kSteel{.youngs_modulus = gigapascals(207), .poisson = 0.3};
inline constexpr Elastic kCastIron{.youngs_modulus = gigapascals(110), .poisson = 0.26};

/// The joint of docs/worked/W1 and W3: the outer ring of a bearing in a hub of cast iron.
inline PressedJoint ring_120_in_iron_hub() {
  return {.diameter = millimetres(120),
          .ring_inside = millimetres(107),
          .hub_outside = millimetres(180),
          .ring = kSteel,
          .hub = kCastIron};
}

}  // namespace flatwise::fits
