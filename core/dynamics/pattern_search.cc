#include "core/dynamics/pattern_search.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/dynamics/pattern_sets.h"

namespace flatwise::dynamics {
namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();
constexpr std::int64_t kFirstRows = 20'000, kMoreRows = 300'000;
constexpr int kFirstTurned = 10;

struct Seeking {
  const PatternTask& task;
  const PatternSums& sums;
  const Effort& effort;
  Keeper& keeper;
  SimpleScan scan;
  int level = 0;  ///< Simple arrangements up to here are known.

  Seeking(const PatternTask& t, const PatternSums& s, const Effort& e, Keeper& k)
      : task{t}, sums{s}, effort{e}, keeper{k}, scan{t, s, kNone, [&k](const Places& p) { return k.offer(p); }} {}

  void simple_ones(int to, std::int64_t rows) {
    while (level < std::min(to, scan.levels()) && scan.level(level + 1, rows)) ++level;
  }

  [[nodiscard]] Halves all_free(bool sets_only) const {
    Halves halves{{}, Places(task.rotors.size(), 0), sets_only};
    for (int i = 0; i < task.count(); ++i) {
      if (task.keeps(i))
        halves.places[static_cast<std::size_t>(i)] = *task.kept[static_cast<std::size_t>(i)];
      else
        halves.free.push_back(i);
    }
    return halves;
  }

  [[nodiscard]] bool some_alike(const Halves& halves) const {
    for (const int i : halves.free)
      for (const int j : halves.free)
        if (i < j && sums.alike(i, j)) return true;
    return false;
  }

  /// Which sets of positions leave the least, whatever the order along the shaft; none where that is too much.
  [[nodiscard]] std::optional<LeastSets> least_sets() const {
    const Halves halves = all_free(true);
    if (auto counted = least_by_counts(task, sums, halves)) return counted;
    if (!fits(task, sums, halves, effort)) return std::nullopt;
    PatternTask any_order = task;
    any_order.apart.clear();
    Keeper sets{any_order, sums, 16, kNone};
    if (!search_halves(any_order, sums, halves, effort, sets).least) return std::nullopt;
    LeastSets out{sets.best(), {}};
    for (const Kept& k : sets.sorted())
      if (k.left_si <= out.left_si + sums.rounding()) out.sets.push_back(k.places);
    return out;
  }

  /// Like rotors: the least by sets, then an order of one that leaves it. True: proven.
  bool by_sets() {
    const std::optional<LeastSets> least = least_sets();
    if (!least) return false;
    const auto reached = [&] { return keeper.best() <= least->left_si + sums.rounding(); };
    for (std::int64_t rows = kMoreRows; !reached() && level < scan.levels();) {
      if (!scan.level(level + 1, rows)) break;
      ++level;
    }
    for (const Places& set : least->sets) {
      if (reached()) break;
      if (const auto order = order_of(task, sums, set)) keeper.offer(*order);
    }
    return reached();
  }

  [[nodiscard]] bool limits_ways() const {
    const std::uint32_t all = (2u << (task.positions / 2)) - 1;
    return std::ranges::any_of(task.apart, [&](std::uint32_t ways) { return (ways & all) != all; });
  }

  /// So many of the free rotors: spread along the shaft, so that they reach both planes; or the last ones, between which all ways
  /// are open where neighbours limit each other.
  [[nodiscard]] Halves chosen(const Places& base, int turned, bool spread) const {
    const std::vector<int> free = all_free(false).free;
    Halves halves{{free.end() - turned, free.end()}, base, false};
    for (std::size_t i = 0; spread && i < halves.free.size(); ++i)
      halves.free[i] = free[i * free.size() / halves.free.size()];
    return halves;
  }

  /// As many as are to be kept leave less than errors do.
  [[nodiscard]] bool enough() const {
    return keeper.best() <= sums.floor_rms() && (keeper.most() == 1 || keeper.limit() <= sums.floor_rms());
  }

  /// More and more rotors by halves, the others as the best simple arrangement has them, until enough are under the floor.
  int some(bool spread) {
    const Places base = keeper.sorted().front().places;
    const int all = static_cast<int>(all_free(false).free.size());
    int turned = std::min(kFirstTurned, all);
    while (turned > 2 && !fits(task, sums, chosen(base, turned, spread), effort)) turned -= 2;
    for (; turned <= all && fits(task, sums, chosen(base, turned, spread), effort); turned += 2) {
      const bool within_effort = search_halves(task, sums, chosen(base, turned, spread), effort, keeper).least;
      if (enough() || !within_effort) return turned;
    }
    return std::min(turned - 2, all);
  }
};

Proof search(Seeking& seeking, const PatternSums& sums, PatternFound& found) {
  int& turned = found.turned;
  seeking.keeper.offer(some_arrangement(seeking.task));
  seeking.simple_ones(2, kFirstRows);
  if (seeking.keeper.best() == 0) return Proof::nought;
  const Halves all = seeking.all_free(false);
  turned = static_cast<int>(all.free.size());
  if (seeking.some_alike(all) && seeking.by_sets()) return seeking.keeper.best() == 0 ? Proof::nought : Proof::complete;
  const Seen seen = fits(seeking.task, sums, all, seeking.effort)
                        ? search_halves(seeking.task, sums, all, seeking.effort, seeking.keeper)
                        : Seen{};
  if (seen.least) {
    found.seen_to = seen.to;
    return seeking.keeper.best() == 0 ? Proof::nought : Proof::complete;
  }
  if (seeking.keeper.best() == 0) return Proof::nought;  // The effort went into others that leave as little.
  for (const bool spread : {!seeking.limits_ways(), seeking.limits_ways()})
    if (!(seeking.keeper.best() <= sums.floor_rms())) turned = seeking.some(spread);
  return seeking.keeper.best() <= sums.floor_rms() ? Proof::under_floor : Proof::none;
}

}  // namespace

Result<PatternFound> find_pattern(const PatternTask& task, int keep, const Effort& effort) {
  if (auto p = problem_with(task)) return tl::unexpected(*std::move(p));
  CORE_CHECK(keep >= 1);
  const PatternSums sums{task};
  Keeper keeper{task, sums, keep, kNone};
  Seeking seeking{task, sums, effort, keeper};
  PatternFound found;
  found.proof = search(seeking, sums, found);
  found.best = keeper.sorted();
  const double free = static_cast<double>(seeking.all_free(false).free.size());
  found.arrangements = std::pow(static_cast<double>(task.positions), free);
  return found;
}

}  // namespace flatwise::dynamics
