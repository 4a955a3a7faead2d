// lanes_samples.h: a kernel for the test of the lanes: sum of square roots.
#pragma once

#include "core/lanes/lanes.h"

namespace flatwise::lanes {

FLATWISE_KERNEL(double root_sum(const double* values, int count))
/// As seen by the compiler of that build: doubles that fit one register.
FLATWISE_KERNEL(int doubles_at_once())

}  // namespace flatwise::lanes
