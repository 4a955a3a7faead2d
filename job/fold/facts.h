// facts.h: live answers put into the bench's facts, where the rules look. Internal to the fold.
#pragma once

#include "job/job_state.h"

namespace flatwise::job::fold_detail {

/// Fills state.bench from state.live, state.off and state.came_off.
void fill_bench(const Shaft& shaft, const Workshop& workshop, JobState& state);

}  // namespace flatwise::job::fold_detail
