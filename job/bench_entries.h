// bench_entries.h: a bench as it was read from a file, as the entries that say the same: so that shell, API and page keep the same
// record. And bodies as entries, each pointing at what it replaces.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "job/entry.h"

namespace flatwise::job {

/// The bodies, in the order of the bench, whose fold gives the same facts and so the same report. Booking in is not among them:
/// a bench does not know machine and definition.
///
/// Model      Where a file says a thing twice, the one that the rules look at is kept. Temperatures are told once a rotor. The
///            directions of bore readings go to whole steps of a half turn divided by up to 360.
[[nodiscard]] std::vector<EntryBody> entries_of(const Shaft& shaft, const Bench& bench);

struct Author {
  Id job, by;
  std::string on;
  Instant at;                ///< Of the first entry.
  std::int64_t step_ms = 0;  ///< From one to the next.
};
/// Bodies as entries of one author, one after the other behind those that are in the job already: numbered, each following
/// the one before it and pointing at all that answered its question so far. `next_id` gives a new id each time.
[[nodiscard]] std::vector<Entry> as_entries(std::span<const Entry> before, std::vector<EntryBody> bodies,
                                            const Author& author, const std::function<Id(Instant)>& next_id);

}  // namespace flatwise::job
