// board.h: the workshop board: what each machine waits for, worst first (schemas/api/openapi.json, Board).
#pragma once

#include <span>
#include <string>
#include <vector>

#include "job/job_state.h"
#include "job/next.h"
#include "job/store.h"
#include "wire/json.h"

namespace flatwise::view {

/// One job of the board. Nothing is copied; all must outlive the call.
struct BoardJob {
  const job::OpenJob& job;
  const job::Standing& standing;
  const job::JobRow& row;
  std::string machine, customer;  ///< Names.
};

/// Worst first: stopped, cannot tell, customer, parts, bench, ready for release; within that the earlier due. All shafts at one
/// scale. `today`: for what is late.
[[nodiscard]] wire::Json board_view(const Workshop& workshop, std::span<const BoardJob> jobs, Day today,
                                    const Voice& voice);

/// Strips of shafts that nobody has opened, in outline and all at one scale, in their order: a DisplayList each.
[[nodiscard]] std::vector<wire::Json> strips_at_one_scale(std::span<const Shaft> shafts);

}  // namespace flatwise::view
