// service.h: when a shaft is to be looked at again, by its definition and the hour meter at a job.
#pragma once

#include <optional>

#include "job/job_state.h"

namespace flatwise::job {

/// What the definition says of the next time, with what the meter will then show. What is not known is not guessed.
struct NextDue {
  Service by;                  ///< As the definition has it.
  std::optional<Time> meter;   ///< What the meter showed at the job.
  std::optional<Time> due_at;  ///< What it will show when the shaft is due: the meter at the job and the interval.
};
/// None where the definition says nothing of it.
[[nodiscard]] std::optional<NextDue> next_due(const Service& service, std::optional<Time> meter);
/// The same after this job, by the meter told at its booking in.
[[nodiscard]] std::optional<NextDue> next_due(const Shaft& shaft, const JobState& state);

}  // namespace flatwise::job
