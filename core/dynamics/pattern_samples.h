// pattern_samples.h: invented rotors to arrange, for tests. Header only; not part of the library.
#pragma once

#include <limits>
#include <random>

#include "core/dynamics/pattern_task.h"

namespace flatwise::dynamics {

struct SampleRotors {
  int rotors = 6;
  int positions = 6;
  std::uint32_t seed = 1;
  double spread = 0.2;  ///< Couples within so much of 10 N m, either way.
  double force_n = 0;   ///< Forces of offsets, up to so much.
  Judged judged = Judged::larger_plane;
};
inline PatternTask sample_task(const SampleRotors& sample) {
  std::mt19937 random(sample.seed);
  std::uniform_real_distribution<double> even(-1, 1);
  PatternTask task;
  task.positions = sample.positions;
  task.judged = sample.judged;
  for (int i = 0; i < sample.rotors; ++i) {
    const double couple = 10 * (1 + sample.spread * even(random)), force = sample.force_n * even(random);
    task.rotors.push_back({metres(0.2 + 0.16 * i), Angle{}, newtons(force), newton_metres(couple)});
  }
  task.planes = {metres(0), metres(0.4 + 0.16 * sample.rotors)};
  return task;
}

/// The least of all arrangements, every one of them looked at.
inline double least_of_all(const PatternTask& task) {
  const PatternSums sums{task};
  Places places(task.rotors.size(), 0);
  double least = std::numeric_limits<double>::infinity();
  for (;;) {
    if (task.allows(places)) least = std::min(least, sums.of(places));
    std::size_t i = 0;
    while (i < places.size() && ++places[i] == task.positions) places[i++] = 0;
    if (i == places.size()) return least;
  }
}

}  // namespace flatwise::dynamics
