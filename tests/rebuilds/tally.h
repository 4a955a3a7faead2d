// tally.h: many rebuilds counted by kind, what the stated uncertainty promises, and where the count falls short of it.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "tests/rebuilds/told.h"

namespace rebuilds {

struct Row {
  int put_in = 0, caught = 0, named = 0;
  int certain = 0, certain_named = 0;                     ///< Promise 1 - 10^-6 or more.
  int gauged = 0, called = 0, undecided = 0, passed = 0;  ///< The rest: called out, cannot tell, said nothing.
  double promised = 0, promised_variance = 0;             ///< Of called, over the gauged.
  double pass_allowed = 0, pass_variance = 0;             ///< Of passed.
};

struct Tally {
  std::array<Row, kKinds> rows;
  unsigned long long first_seed = 0;
  int rebuilds = 0, clean = 0, several = 0;
  int clean_discrete = 0, clean_called = 0, clean_undecided = 0, clean_decisions = 0;
  double called_allowed = 0, called_variance = 0;
  int mends = 0, mends_right = 0, other_stories = 0;
  std::vector<std::string> misses;  ///< Seed and reason, the first of each kind and all alarms, for people.

  void add(const Rebuild& rebuild, const Outcome& outcome);
};

/// The most that chance alone explains above an expected count once in a million: Bernstein's inequality.
[[nodiscard]] double above_by_chance(double variance);
/// Every way in which the count breaks its promise; empty when all is kept.
[[nodiscard]] std::vector<std::string> broken_promises(const Tally& tally);
/// Kinds whose row has fallen.
[[nodiscard]] std::vector<std::string> fallen_rows(const Tally& tally);

[[nodiscard]] std::string table(const Tally& tally);  ///< For the terminal.
[[nodiscard]] std::string page(const Tally& tally);   ///< docs/catch-rate.md

}  // namespace rebuilds
