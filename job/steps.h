// steps.h: the steps of a job, tear-down and way back, with keys that stay the same while the plan does, and what is done.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/teardown/steps.h"
#include "core/timing/map.h"
#include "job/job_state.h"

namespace flatwise::job {

/// Key of a step: its code and the stations it is about, by index + 1: "teardown.take_off/1-2-3"; a second step with the same code and
/// stations has "#2" behind it.
struct JobStep {
  std::string key;
  teardown::Step step;
  std::vector<int> moves;               ///< Stations (index + 1) that leave the shaft by it, or come back on it.
  const LiveAnswers* answer = nullptr;  ///< What was said of it; none: nobody did it yet.
  [[nodiscard]] bool done() const;      ///< Answered yes, agreed.
};

/// The steps of the way that was chosen, in the order of the hands. None while there is no agreed way.
/// `reference`: as for plan(): how the shaft is timed, where the marks say so.
[[nodiscard]] std::vector<JobStep> job_steps(const Shaft& shaft, const Workshop& workshop, const JobState& state,
                                             Phase phase, std::optional<timing::Reference> reference = std::nullopt);

/// The way that was chosen, worked out once for a state: its plan, and the steps off and back.
struct ChosenWay {
  teardown::Plan plan;
  std::vector<JobStep> off, back;
  [[nodiscard]] const std::vector<JobStep>& steps(Phase phase) const { return phase == Phase::teardown ? off : back; }
};
/// None while there is no agreed way. Points into the state, which must outlive it.
[[nodiscard]] std::optional<ChosenWay> chosen_way(const Shaft& shaft, const Workshop& workshop, const JobState& state);

/// What saying yes to a step records: the step itself, and each station that it takes off or puts on.
[[nodiscard]] std::vector<EntryBody> entries_of_step(const JobStep& step, Phase phase);

/// The plan for the rotors of the way that was chosen, opened as `said`. What left the shaft before that was said stays in it.
///
/// Refuses    As teardown::opened_as(). None: nobody has chosen a way.
[[nodiscard]] std::optional<Result<teardown::Plan>> plan_opened(const Shaft& shaft, const Workshop& workshop,
                                                                const JobState& state, const Opened& said);

/// The plan of the way that was chosen, opened as somebody said where that goes; none while there is none.
[[nodiscard]] std::optional<teardown::Plan> chosen_plan(const Shaft& shaft, const Workshop& workshop,
                                                        const JobState& state);

}  // namespace flatwise::job
