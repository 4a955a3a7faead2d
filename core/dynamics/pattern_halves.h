// pattern_halves.h: the least of all arrangements, by halves: what one half of the rotors leaves must be undone by the other.
// Inside core/dynamics only.
#pragma once

#include <cstdint>
#include <vector>

#include "core/dynamics/pattern_keeper.h"

namespace flatwise::dynamics {

/// What a search may use. Reaching a bound is told, never passed over.
struct Effort {
  double sums_a_half = 2.0e7;             ///< Gone through, not kept.
  std::size_t points_a_half = 1'750'000;  ///< Kept: about 130 MiB for both halves at once.
  std::int64_t tests = 2'000'000'000;     ///< Pairs looked at.
};

/// Which rotors are turned by the search, and whether like ones may change places in it.
struct Halves {
  std::vector<int> free;  ///< Rotors from 0; all others are where `places` has them.
  Places places;
  bool sets_only = false;  ///< Like rotors are told apart by none: each set of positions once, in any order of them.
};

/// Whether a search by halves of these rotors stays within the effort.
[[nodiscard]] bool fits(const PatternTask& task, const PatternSums& sums, const Halves& halves, const Effort& effort);

/// What a search by halves has proven.
struct Seen {
  bool least = false;  ///< The keeper's best is the least of the free rotors' arrangements.
  double to = 0;       ///< Whatever leaves no more than this has been offered; 0 where the effort ran out before.
};

/// Offers the keeper every arrangement of the free rotors that is not over its limit.
///
/// Model      Every sum of the left half is a point, every sum of the right half another; the pairs nearest to opposite are the
///            arrangements that leave the least. The n positions' turns and mirror images leave a set of sums as it is, so
///            only one of 2n sectors is gone through. Nearness in single precision only says what to look at; the keeper
///            works each arrangement out anew. The reach begins where a handful of pairs is to be expected, and grows until
///            something is found: all that leaves less than what was found has then been seen. For the rows after the least it grows on,
///            as far as a bounded effort goes.
/// Source     E. Horowitz, S. Sahni (1974), [Halves]; checked against going through them all (tests).
[[nodiscard]] Seen search_halves(const PatternTask& task, const PatternSums& sums, const Halves& halves,
                                 const Effort& effort, Keeper& keeper);

}  // namespace flatwise::dynamics
