// balance_search.h: the slow, sure way to the rest of a ring, for where plain Newton steps do not get there.
#pragma once

#include "core/bearings/balance_kernel.h"

namespace flatwise::bearings {

/// Comes to rest from `balance.at`.
///
/// Model      Steps of (stiffness + lambda) downhill on the same convex energy; lambda grows where a step overshoots and shrinks where it
///            does not, so a direction without stiffness (play, one ball alone) only slows it. First from a greater load let down by
///            eighths; where that ends early from `balance.at` itself; then from a preload let out by halves.
/// Inputs     unknowns: 3 (the tilt stays as given) or 5.
/// Returns    Whether the misfit became small enough.
[[nodiscard]] bool search_rest(const BallRing& ring, const BalanceTask& task, int unknowns, Balance& balance);

}  // namespace flatwise::bearings
