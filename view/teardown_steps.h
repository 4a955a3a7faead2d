// teardown_steps.h: the steps of the tear-down and of the way back as their sheets and the next-step line need them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "job/steps.h"
#include "view/bench_view.h"
#include "view/blocks.h"

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

/// Head of the cautions of a step: what the hand is about to do.
[[nodiscard]] std::string before_words(const Screen& screen, const teardown::Step& step);
/// The first step of the way back that is not done, where the next-step line names it; nullptr where it names something else.
[[nodiscard]] const job::JobStep* way_back_step(const Subject& subject);
/// Action that says a step of the way back is done: the step and what it puts on, in one record; then `then`. Null where it is done, or
/// must be answered in words.
[[nodiscard]] Json put_on_action(const Subject& subject, const Screen& screen, const job::JobStep& step,
                                 const std::optional<GoTo>& then = std::nullopt);

}  // namespace flatwise::view
