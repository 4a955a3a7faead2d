// simulate.h: so many rebuilds from a seed, through the program, counted.
#pragma once

#include "tests/rebuilds/runner.h"
#include "tests/rebuilds/tally.h"

namespace rebuilds {

[[nodiscard]] Texts texts_of(const Rebuild& rebuild);
/// What the program says of a rebuild. A value that the reader refuses by name is corrected, and the files are read again, as
/// anybody would.
[[nodiscard]] AllTold said_of(const Rebuild& rebuild);
[[nodiscard]] Tally simulate(unsigned long long first_seed, int count, const Break& broken);

}  // namespace rebuilds
