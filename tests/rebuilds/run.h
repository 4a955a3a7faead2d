// run.h: the test run of a rebuild, and how well its thermometer and its meter know what they read.
#pragma once

#include "tests/rebuilds/truth.h"

namespace rebuilds {

/// What the definition asks, and how the shaft ran; all in order.
void draw_run(Rebuild& to, Random& random);
void read_run(Rebuild& to);

/// Standard uncertainty of a hanger's heat above the room, by the textbook: two readings taken as independent.
[[nodiscard]] double rise_known(const Rebuild& rebuild);
[[nodiscard]] double vibration_known(const Rebuild& rebuild, double read);
/// Readings above `+1` are out, below `-1` they are in; between, nobody can tell.
[[nodiscard]] double rise_bound(const Rebuild& rebuild, double sign);
[[nodiscard]] double vibration_bound(const Rebuild& rebuild, double sign);
/// The chance that a rise is read above a bound.
[[nodiscard]] double rise_chance_above(const Rebuild& rebuild, double rise, double bound);

}  // namespace rebuilds
