// simulate.h: so many rebuilds from a seed, through the program, counted.
#pragma once

#include "tests/rebuilds/runner.h"
#include "tests/rebuilds/tally.h"

namespace rebuilds {

[[nodiscard]] Texts texts_of(const Rebuild& rebuild);
[[nodiscard]] Tally simulate(unsigned long long first_seed, int count, const Break& broken);

}  // namespace rebuilds
