// hand_over.h: the hand-over record of a job, filled from its entries, the rules' report and what still stands open.
#pragma once

#include <functional>
#include <map>
#include <string>

#include "job/job_state.h"
#include "job/next.h"
#include "paper/sheets.h"

namespace flatwise::paper {

struct HandOverOrder {
  const job::OpenJob* job = nullptr;
  const job::Standing* standing = nullptr;
  std::map<job::Id, std::string> people;  ///< Names.
  std::string machine{}, customer{};      ///< Names.
  Head head;
  /// A moment as it is to be read, in the workshop's time: "3 Feb 14:20".
  std::function<std::string(job::Instant)> when;
};

[[nodiscard]] HandOverSheet hand_over(const HandOverOrder& order);

}  // namespace flatwise::paper
