// plan.h: what to open, side by side: sets for the failed rotors only, for everything disturbed, for all; and the steps.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/teardown/split.h"
#include "core/teardown/steps.h"
#include "core/timing/map.h"
#include "job/bench.h"

namespace flatwise::job {

struct Way {
  std::string_view name;  ///< "failed_only", "disturbed", "all"; word "way.<name>".
  teardown::Plan plan;
  WorkingPtr working;  ///< Figure removal-cost.
};

struct PlanReport {
  std::vector<Way> ways;
  std::size_t advised = 1;            ///< By the definition's policy: everything disturbed, unless it is off.
  std::vector<Message> says;          ///< From which end, and what the runner-up would cost.
  std::vector<teardown::Step> steps;  ///< Tear-down of the advised way.
  std::vector<teardown::Step> back;   ///< The way back.
};

/// The three ways alone, without what they cost shown and without the steps.
///
/// Refuses    No rotors; a number that is not there, or twice; rotors that obstacles hold from both ends.
[[nodiscard]] Results<teardown::Ways> ways_to_open(const Shaft& shaft, const Workshop& workshop,
                                                   std::span<const int> rotors);

/// The three ways with their workings, what is advised and what is said of it; `steps` and `back` stay empty.
///
/// Refuses    As ways_to_open().
[[nodiscard]] Results<PlanReport> offer(const Shaft& shaft, const Workshop& workshop, std::span<const int> rotors);

/// The plan for opening `rotors` of a complete shaft: the offer, with the steps of the advised way.
///
/// `reference`: how the shaft is timed, where the marks say so. Without it the way back names flats only where nothing stays
/// on the shaft that could set another reference.
///
/// Refuses    As ways_to_open().
[[nodiscard]] Results<PlanReport> plan(const Shaft& shaft, const Workshop& workshop, std::span<const int> rotors,
                                       std::optional<timing::Reference> reference = std::nullopt);

/// Rotors that a plan gives a new set, in their order.
[[nodiscard]] std::vector<int> rotors_renewed(const teardown::Plan& plan);

/// Flats that the rotors of a plan go back on; none where what stays on the shaft sets a reference that is not known here.
[[nodiscard]] std::vector<teardown::RotorFlats> flats_back(const Shaft& shaft, const teardown::Plan& plan,
                                                           std::optional<timing::Reference> reference);

}  // namespace flatwise::job
