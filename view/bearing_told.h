// bearing_told.h: what the wobble does to the bearing of one rotor, in a line: the same figure as `flatwise bearing` tells. For the bench
// sheet of the rotor and the page of its machine. Inside view/ only.
#pragma once

#include <vector>

#include "view/blocks.h"

namespace flatwise::view {

/// Life as a band in hours and seasons (not known where no load from the ground is defined), greatest contact stress, static safety, with
/// the working; under them what was assumed, and
/// that it decides no release. Where it cannot be worked out: why.
[[nodiscard]] std::vector<Json> bearing_told(const Shaft& shaft, int rotor, const Voice& voice);

}  // namespace flatwise::view
