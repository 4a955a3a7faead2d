// body.h: what a body of an entry may not say about this shaft, this workshop and this job. Internal to check_entry().
#pragma once

#include "job/job_state.h"

namespace flatwise::job::check_detail {

/// Parts, gauges and questions that are not there, and answers that do not fit their question. Fields are named "body.x".
[[nodiscard]] std::vector<Problem> problems_of_body(const Shaft& shaft, const Workshop& workshop, const JobState& state,
                                                    const Entry& entry);
/// Whether the hand is at the machine for it: such an entry waits for the safety questions.
[[nodiscard]] bool touches_machine(const EntryBody& body);

}  // namespace flatwise::job::check_detail
