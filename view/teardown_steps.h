// teardown_steps.h: the steps of the tear-down as the sheet and the next-step line need them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/steps.h"
#include "view/bench_view.h"

namespace flatwise::view {

[[nodiscard]] const std::vector<job::JobStep>& teardown_steps(const Subject& subject);
/// Index of the first step that is not done; their count when all are.
[[nodiscard]] int first_not_done(const std::vector<job::JobStep>& steps);
/// The station that a step is about: the last it moves, else the first it names; `step` from 1, none: the first not
/// done. None: it is about the whole shaft.
[[nodiscard]] std::optional<int> station_in_hand(const Subject& subject, std::optional<int> step);
/// "Stop point: step 14, rotor 4 off."; empty where nothing stays on.
[[nodiscard]] std::string stop_words(const Subject& subject, const Screen& screen,
                                     const std::vector<job::JobStep>& steps);
/// Action that says a step is done: the step and what it takes off, in one record; then the step after it.
[[nodiscard]] Json done_action(const Subject& subject, const Screen& screen, const std::vector<job::JobStep>& steps,
                               int at);

}  // namespace flatwise::view
