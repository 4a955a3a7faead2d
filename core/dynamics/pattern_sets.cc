#include "core/dynamics/pattern_sets.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <utility>

namespace flatwise::dynamics {
namespace {

using Phasor = PatternSums::Phasor;
constexpr double kMostNumbers = 2e7;
constexpr std::size_t kMostSets = 16;
constexpr int kMostSteps = 20'000;

struct Counting {
  const PatternSums& sums;
  double share_a, share_b;  ///< Of one rotor.
  Phasor rest_a, rest_b;    ///< Of all that is not turned.
  int half;                 ///< n / 2.
  std::vector<int> more{};  ///< How many more stand at position k than at k + n/2.
  double best = std::numeric_limits<double>::infinity();
  std::vector<std::vector<int>> found{};

  [[nodiscard]] double left(Phasor z) const { return sums.of(rest_a + share_a * z, rest_b + share_b * z); }

  void offer(double left_si) {
    if (left_si < best - sums.rounding()) found.clear();
    if (left_si <= best + sums.rounding() && found.size() < kMostSets) found.push_back(more);
    best = std::min(best, left_si);
  }

  /// The last number of all: what is left is convex in it, so going downhill from the middle finds its least.
  void last(Phasor z, int spare) {
    const Phasor d = sums.directions()[static_cast<std::size_t>(half - 1)];
    const double squares = share_a * share_a + share_b * share_b;
    const Phasor wanted = -(share_a * rest_a + share_b * rest_b) / squares;
    const double middle = std::clamp((std::conj(d) * (wanted - z)).real(), -1.0 * spare, 1.0 * spare);
    int x = -spare + 2 * static_cast<int>(std::lround(0.5 * (middle + spare)));
    const auto at = [&](int value) { return left(z + static_cast<double>(value) * d); };
    for (const int way : {-2, 2})
      while (std::abs(x + way) <= spare && at(x + way) < at(x)) x += way;
    for (const int value : {x, x - 2, x + 2}) {
      if (std::abs(value) > spare || !(at(value) <= best + sums.rounding())) continue;
      more[static_cast<std::size_t>(half - 1)] = value;
      offer(at(value));
    }
  }

  void down(int k, Phasor z, int spare) {
    if (k == half - 1) return last(z, spare);
    for (int x = -spare; x <= spare; ++x) {
      more[static_cast<std::size_t>(k)] = x;
      down(k + 1, z + static_cast<double>(x) * sums.directions()[static_cast<std::size_t>(k)], spare - std::abs(x));
    }
  }
};

/// Positions behind the numbers: what is spare stands opposite in pairs.
Places places_of(const std::vector<int>& more, const Halves& halves) {
  std::vector<int> all;
  const int half = static_cast<int>(more.size());
  for (int k = 0; k < half; ++k)
    for (int i = 0; i < std::abs(more[static_cast<std::size_t>(k)]); ++i)
      all.push_back(more[static_cast<std::size_t>(k)] > 0 ? k : k + half);
  while (all.size() < halves.free.size()) all.insert(all.end(), {0, half});
  Places places = halves.places;
  for (std::size_t i = 0; i < halves.free.size(); ++i) places[static_cast<std::size_t>(halves.free[i])] = all[i];
  return places;
}

struct Ordering {
  const PatternTask& task;
  const PatternSums& sums;
  std::vector<int> kind;                ///< Of each rotor: the first one alike.
  std::vector<std::vector<int>> spare;  ///< By kind and position: how many are still to be placed.
  Places places;
  int steps = 0;

  /// Positions for a rotor, the likeliest first.
  [[nodiscard]] std::vector<int> tries(int rotor) const {
    std::vector<int> out;
    const auto at = static_cast<std::size_t>(rotor);
    const auto& of_kind = spare[static_cast<std::size_t>(kind[at])];
    for (int p = 0; p < task.positions; ++p)
      if (of_kind[static_cast<std::size_t>(p)] > 0 && (!task.keeps(rotor) || *task.kept[at] == p)) out.push_back(p);
    if (rotor == 0) return out;
    const auto cost = [&](int p) {
      const int step = step_of(places[at - 1], p, task.positions);
      const bool again = rotor > 1 && step == step_of(places[at - 2], places[at - 1], task.positions);
      return again ? -2 : 2 * step == task.positions ? -1 : std::abs(step);
    };
    std::ranges::stable_sort(out, {}, cost);
    std::erase_if(out, [&](int p) { return !task.may_follow(rotor, places[at - 1], p); });
    return out;
  }

  bool down(int rotor) {
    if (rotor == task.count()) return true;
    if (++steps > kMostSteps) return false;
    const auto at = static_cast<std::size_t>(rotor);
    for (const int p : tries(rotor)) {
      auto& left = spare[static_cast<std::size_t>(kind[at])][static_cast<std::size_t>(p)];
      --left;
      places[at] = p;
      if (down(rotor + 1)) return true;
      ++left;
    }
    return false;
  }
};

}  // namespace

std::optional<LeastSets> least_by_counts(const PatternTask& task, const PatternSums& sums, const Halves& halves) {
  if (task.positions % 2 != 0 || halves.free.empty()) return std::nullopt;
  const int first = halves.free.front(), half = task.positions / 2;
  if (!std::ranges::all_of(halves.free, [&](int i) { return sums.alike(first, i); })) return std::nullopt;
  const auto [a, b] = sums.own(first);
  if (!(a * a + b * b > 0)) return std::nullopt;
  double numbers = 1;
  for (int k = 1; k < half; ++k) numbers *= 2.0 * static_cast<double>(halves.free.size()) / k + 1;
  if (numbers > kMostNumbers) return std::nullopt;
  Counting counting{sums, a, b, sums.constant()[0], sums.constant()[1], half};
  for (int i = 0; i < task.count(); ++i) {
    if (std::ranges::find(halves.free, i) != halves.free.end()) continue;
    const Phasor d = sums.directions()[static_cast<std::size_t>(halves.places[static_cast<std::size_t>(i)])];
    counting.rest_a += sums.own(i)[0] * d;
    counting.rest_b += sums.own(i)[1] * d;
  }
  counting.more.assign(static_cast<std::size_t>(half), 0);
  counting.down(0, {}, static_cast<int>(halves.free.size()));
  LeastSets out{counting.best, {}};
  for (const auto& more : counting.found) out.sets.push_back(places_of(more, halves));
  return out;
}

std::optional<Places> order_of(const PatternTask& task, const PatternSums& sums, const Places& set) {
  const auto n = static_cast<std::size_t>(task.positions);
  Ordering ordering{task, sums, {}, std::vector(set.size(), std::vector<int>(n, 0)), set};
  for (int i = 0; i < task.count(); ++i) {
    int kind = 0;
    while (kind < i && !(sums.alike(kind, i) && task.keeps(kind) == task.keeps(i))) ++kind;
    ordering.kind.push_back(kind);
    ++ordering.spare[static_cast<std::size_t>(kind)][static_cast<std::size_t>(set[static_cast<std::size_t>(i)])];
  }
  if (!ordering.down(0)) return std::nullopt;
  return ordering.places;
}

}  // namespace flatwise::dynamics
