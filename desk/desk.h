// desk.h: what server and shell do with the record: open a job, take entries into it, list what waits. The one place where store,
// definitions, fold and rules meet; no SQL, no HTTP, no clock of its own.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "job/job_state.h"
#include "job/next.h"
#include "job/store.h"

namespace flatwise::desk {

/// Why something asked of the desk was not done: problems of what was sent, or the store's fault.
struct Refusal {
  std::vector<Problem> problems;  ///< Empty: see fault.
  std::optional<job::StoreFault> fault;
};
template <class T>
using Done = tl::expected<T, Refusal>;

/// A job with its row and what follows from it.
struct Opened {
  std::unique_ptr<const job::OpenJob> job;
  job::Standing standing;
  job::JobRow row;
};

[[nodiscard]] Done<Opened> open_job(job::Store& store, const job::Id& id);

/// Takes entries into a job: checked one after the other against the state as it will be, stored all or none, the row of the job
/// and the stock brought along. Entries that are stored already are answered as stored.
///
/// Refuses    What job::check_entry refuses; an unknown person; `only_if_head` that is not the head (StoreFault::changed).
[[nodiscard]] Done<job::Appended> take(job::Store& store, const job::Id& id, std::vector<job::Entry> entries,
                                       const std::optional<std::string>& only_if_head = std::nullopt);

/// Makes the row of a job anew from its entries and puts it in the store: what a list shows may be dropped at any time.
[[nodiscard]] Done<job::JobRow> project_again(job::Store& store, const job::Id& id);

/// "customer": as JobRow::waiting has it.
[[nodiscard]] std::string_view waiting_name(job::Waiting waiting);

}  // namespace flatwise::desk
