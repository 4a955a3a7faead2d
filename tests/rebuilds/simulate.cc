#include "tests/rebuilds/simulate.h"

namespace rebuilds {

Texts texts_of(const Rebuild& rebuild) {
  Random random{rebuild.seed ^ 0x5ad5ad5adU};
  return write(rebuild, random);
}

Tally simulate(unsigned long long first_seed, int count, const Break& broken) {
  Tally tally;
  tally.first_seed = first_seed;
  for (int i = 0; i < count; ++i) {
    const Rebuild rebuild = make_rebuild(first_seed + static_cast<unsigned long long>(i));
    tally.add(rebuild, compare(rebuild, ask_program(texts_of(rebuild), broken)));
  }
  return tally;
}

}  // namespace rebuilds
