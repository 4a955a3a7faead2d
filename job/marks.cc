#include "job/marks.h"

#include <algorithm>

namespace flatwise::job {
namespace {

bool contains(const std::vector<int>& list, int value) { return std::ranges::find(list, value) != list.end(); }

}  // namespace

Result<timing::Reading> marks_reading(const Facts& facts) {
  timing::Reading reading;
  reading.rotors.resize(static_cast<std::size_t>(facts.shaft.rotor_count()));
  for (int r = 1; r <= facts.shaft.rotor_count(); ++r)
    reading.rotors[static_cast<std::size_t>(r) - 1].fixed = !contains(facts.bench.came_off, r);
  for (const MarkRead& m : facts.bench.marks) {
    timing::Marks& marks = reading.rotors[static_cast<std::size_t>(m.rotor) - 1];
    (m.half == Half::a ? marks.a : marks.b) = m.flat.value;
  }
  Result<teardown::State> state = teardown::with_rotors_off(facts.shaft, facts.bench.still_off, facts.bench.new_set);
  if (!state) return tl::unexpected(std::move(state.error()));
  reading.state = *std::move(state);
  reading.prices = {facts.workshop.rate_per_hour, facts.workshop.currency};
  // A mirrored row has the mirrored resultants and the same gaps, unless something else on the shaft has its own azimuth.
  reading.mirror_is_same = facts.shaft.spec().unbalances.empty() && !facts.shaft.spec().pattern.first_flat;
  return reading;
}

}  // namespace flatwise::job
