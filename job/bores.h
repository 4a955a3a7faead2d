// bores.h: the bore of one rotor as measured, plane by plane: what the inspection judges and what the press is expected from.
#pragma once

#include <optional>
#include <vector>

#include "job/judge.h"

namespace flatwise::job {

struct PlaneMeasured {
  char plane = 'A';
  const Gauge* gauge = nullptr;
  const BoreReading* first = nullptr;  ///< For what is told once a plane: gauge, temperatures.
  Results<Working> working;            ///< Figure bore-at-plane.
};
/// Whether sizes may be compared and presses be expected from it: not where a reading is one that no bore can have.
[[nodiscard]] bool possible(const Working& plane);
/// The planes of a rotor that have readings, A before B.
[[nodiscard]] std::vector<PlaneMeasured> planes_measured(const Facts& facts, int rotor);

}  // namespace flatwise::job
