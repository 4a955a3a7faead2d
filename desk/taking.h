// taking.h: one attempt to take entries into a job. Internal to the desk.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/opening.h"

namespace flatwise::desk {

struct Taken {
  job::Appended appended;
  std::optional<Whole> now;  ///< The job with its new entries, put together already; none where nothing was new.
  std::size_t changes = 0;   ///< How many rows of Store::changes() it made.
};

/// Checks entries, one after the other, against the job as it will be, and stores all or none.
///
/// `known`: the job as it is in the store; none: it is read. The append holds only while nobody else wrote into the job.
[[nodiscard]] Done<Taken> take_once(job::Store& store, const job::Id& id, const std::vector<job::Entry>& given,
                                    const std::optional<std::string>& only_if_head, Definitions& definitions,
                                    const Whole* known);

}  // namespace flatwise::desk
