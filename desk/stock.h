// stock.h: what a job has done to the stock, from its state; a new entry moves the difference. Internal to the desk.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "job/job_state.h"
#include "job/store.h"

namespace flatwise::desk {

/// Change of what lies on the shelf and of what is on order, against a job that never was.
struct Effect {
  int shelf = 0, order = 0;
  friend bool operator==(const Effect&, const Effect&) = default;
};
using Effects = std::map<std::string, Effect, std::less<>>;  ///< By part number.

/// Ordered adds to the order; Received moves from the order to the shelf; Laid takes new pieces from the shelf, LeftOver
/// puts them back. Only what stands counts, so a correction or withdrawal undoes what it points at. Two counts that differ: the
/// first holds until somebody decides. Old snap rings that go back come from the machine, not from the shelf.
[[nodiscard]] Effects stock_effects(const Shaft& shaft, const job::JobState& state);

/// A version 8 UUID (RFC 9562: of one's own making) that follows from a text: what an entry brings about has the same id each time.
[[nodiscard]] job::Id id_after(const std::string& of);

/// The moves from one state to the next, by the entry that made them; their ids follow from entry and part.
[[nodiscard]] std::vector<job::StockMove> moves_between(const Effects& before, const Effects& after,
                                                        const job::Entry& by);

}  // namespace flatwise::desk
