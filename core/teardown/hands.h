// hands.h: one station off, one station on. Shared by the tear-down and the way back; not for others.
#pragma once

#include <vector>

#include "core/teardown/steps.h"

namespace flatwise::teardown {

[[nodiscard]] Word end_word(End end);
/// Stations of a plan from one end, in the order in which they come off.
[[nodiscard]] std::vector<int> off_from(const Shaft& shaft, const Plan& plan, End end);
/// Appends the steps that take them off.
void unstack(std::vector<Step>& steps, const Shaft& shaft, const Plan& plan, End end);

/// The heaviest rotor that a plan takes off: what one pair of hands must be ready for.
[[nodiscard]] Mass heaviest(const Shaft& shaft, const Plan& plan);
/// The weight that is known when the shaft is lifted: the rotors that are on it. The shaft and what else is on it come on top.
[[nodiscard]] Message lift_caution(const Shaft& shaft, const State& state);
[[nodiscard]] bool has_hangers(const Shaft& shaft);

}  // namespace flatwise::teardown
