#include "tests/rebuilds/simulate.h"

namespace rebuilds {

Texts texts_of(const Rebuild& rebuild) {
  Random random{rebuild.seed ^ 0x5ad5ad5adU};
  return write(rebuild, random);
}

AllTold said_of(const Rebuild& rebuild) {
  Texts texts = texts_of(rebuild);
  AllTold told = ask_program(texts);
  if (told.refused.size() != 1) return told;
  for (const Mistake& m : rebuild.mistakes) {
    if (m.typed.empty() || told.refused.front().find(" " + m.typed + " line") == std::string::npos) continue;
    const std::size_t at = texts.readings.find("\"" + m.typed + "\"");
    texts.readings.replace(at + 1, m.typed.size(), m.right);
    AllTold again = ask_program(texts);
    again.corrected.push_back(m.typed);
    return again;
  }
  return told;
}

Tally simulate(unsigned long long first_seed, int count, const Break& broken) {
  Tally tally;
  tally.first_seed = first_seed;
  for (int i = 0; i < count; ++i) {
    const Rebuild rebuild = make_rebuild(first_seed + static_cast<unsigned long long>(i));
    tally.add(rebuild, compare(rebuild, broken_by(broken, said_of(rebuild))));
  }
  return tally;
}

}  // namespace rebuilds
