// opening.h: a job read from the store and put together. Internal to the desk.
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "desk/definitions.h"
#include "desk/desk.h"

namespace flatwise::desk {

/// What a job needs beside its entries, as the store has it.
struct Surroundings {
  Workshop workshop;
  std::vector<job::Person> people;
};

/// A job opened, and what it was opened in.
struct Whole {
  Opened opened;
  std::shared_ptr<const Surroundings> around;
};

[[nodiscard]] inline tl::unexpected<Refusal> fault(job::StoreFault f) {
  return tl::unexpected(Refusal{{}, std::move(f)});
}

[[nodiscard]] Done<std::shared_ptr<const Surroundings>> surroundings(job::Store& store);
[[nodiscard]] Done<std::vector<job::Entry>> entries_of(job::Store& store, const job::Id& job);
/// The booking that holds: the last that nothing corrects. Every job has one, since its first entry books it in.
[[nodiscard]] const job::BookedIn* booking(std::span<const job::Entry> entries);
/// The definition that a job goes by. Missing: no such version.
[[nodiscard]] Done<std::shared_ptr<const Shaft>> shaft_of(job::Store& store, const job::Id& version,
                                                          Definitions& definitions);
/// The workshop as the job sees it: its gauges as they stand by what the job's entries say.
[[nodiscard]] Workshop workshop_of(const Surroundings& around, const job::JobState& state);

/// `state`: the fold of these very entries, where there is one already; else they are folded.
[[nodiscard]] std::unique_ptr<job::OpenJob> put_together(std::shared_ptr<const Shaft> shaft, const Surroundings& around,
                                                         std::vector<job::Entry> entries,
                                                         std::optional<job::JobState> state);
/// The row as it follows from the entries alone.
[[nodiscard]] job::JobRow row_of(const job::OpenJob& job, const job::Standing& standing, const job::Id& id);

[[nodiscard]] Done<Whole> open_whole(job::Store& store, const job::Id& id, Definitions& definitions);

}  // namespace flatwise::desk
