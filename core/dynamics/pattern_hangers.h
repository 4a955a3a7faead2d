// pattern_hangers.h: what an arrangement turns each hanger with: the second thing it is judged by, where the first cannot be measured.
#pragma once

#include <span>

#include "core/dynamics/pattern_task.h"

namespace flatwise::dynamics {

/// The hanger that is pressed hardest.
struct Pressed {
  int hanger = 0;  ///< Place in PatternTask::hangers.
  double force_n = 0;
};

/// Model      The shaft bends and its hangers give as whoever made the rows had it; the reaction is the sum of the rotors' numbers in their
///            directions.
/// Inputs     A task with hangers.
/// Accuracy   32 eps of the sum of sizes.
[[nodiscard]] Pressed hardest_pressed(const PatternTask& task, std::span<const int> places);

/// What the stated errors leave anyway in the worst hanger, root mean square, N: as the floor of the planes is made.
[[nodiscard]] double hangers_floor(const PatternTask& task);

/// In whole floors above the first one: two of one step cannot be told apart by measuring. Without a floor the force itself.
[[nodiscard]] double reaction_step(double force_n, double floor_n);

}  // namespace flatwise::dynamics
