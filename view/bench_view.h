// bench_view.h: what the bench screen shows of a job, as JSON (schemas/api/openapi.json, BenchView). Pure: the same for server,
// tests and, later, the core in the browser.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "job/former_run.h"
#include "job/job_state.h"
#include "job/next.h"
#include "job/store.h"
#include "wire/json.h"

namespace flatwise::view {

using wire::Json;

/// What is asked for: where the eye is and how it is spoken to.
struct Screen {
  std::optional<job::Stage> stage;  ///< None: the present stage.
  std::optional<int> station;       ///< Index; none: where the next step is.
  End from = End::a;                ///< Where the mechanic stands.
  std::optional<int> step;          ///< Of the tear-down or the way back, from 1; none: the first not done.
  std::string by;                   ///< The person at the bench; empty: nobody has signed on.
  Voice voice;
  Day today;  ///< For gauges' dates and what is late.
};

/// Everything of one job a screen is made from. Nothing is copied; all must outlive the call.
struct Subject {
  const job::OpenJob& job;
  const job::Standing& standing;
  const job::JobRow& row;
  const std::map<job::Id, std::string>& people;  ///< Names.
  std::string machine, customer;                 ///< Names.
  std::span<const job::BearingLife> lives =
      {};                                      ///< Of the machine's bearings, for what their age says; may be left out.
  std::optional<double> hours = std::nullopt;  ///< Of the machine now.
  std::vector<job::FormerRun> former_runs =
      {};                                   ///< Of the machine's jobs before this one, newest first; for the test run.
  std::map<job::Id, job::Role> roles = {};  ///< Of the people; who is not in it counts as one who may do it.
};

[[nodiscard]] Json bench_view(const Subject& subject, const Screen& screen);

}  // namespace flatwise::view
