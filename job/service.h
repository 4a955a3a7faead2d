// service.h: when a shaft is to be looked at again, by its definition and the hour meter at a job.
#pragma once

#include <optional>
#include <vector>

#include "job/judge.h"

namespace flatwise::job {

/// What the definition says of the next time, with what the meter will then show. What is not known is not guessed.
struct NextDue {
  Service by;                 ///< As the definition has it.
  std::optional<Time> meter;  ///< What the meter showed at the job.
  WorkingPtr due;  ///< "next-due": what it will show when the shaft is due; nullptr without meter or interval.

  [[nodiscard]] std::optional<Time> due_at() const;
};
/// It in words, for paper and page: when, or what is known of it where nobody read the meter or no interval is given; and from what.
struct DueSaid {
  Message when;
  std::vector<Message> because;
};
[[nodiscard]] DueSaid said(const NextDue& due);
/// `meter`: "meter" of the figure, with its origin; none where nobody read it. Nullopt where the definition says nothing.
[[nodiscard]] std::optional<NextDue> next_due(const Shaft& shaft, std::optional<Input> meter);
/// The same after this job, by the meter told at its booking in.
[[nodiscard]] std::optional<NextDue> next_due(const Shaft& shaft, const Bench& bench);

}  // namespace flatwise::job
