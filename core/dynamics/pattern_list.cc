#include "core/dynamics/pattern_list.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

namespace flatwise::dynamics {
namespace {

using Phasor = PatternSums::Phasor;
constexpr std::int64_t kRowsLookedAt = 100'000;
constexpr std::size_t kMostSimple = 2000;
constexpr double kMostGoneThrough = 50'000;
constexpr int kRowsByHangers = 32;  ///< So many are looked for at least where hangers choose among them.

/// Farthest point from nought of `middle` plus every choice of plus or minus each generator.
double farthest(Phasor middle, std::vector<Phasor> generators) {
  Phasor corner;
  for (Phasor& g : generators) {
    if (g.imag() < 0 || (g.imag() == 0 && g.real() < 0)) g = -g;  // Either sign is an error; all into the upper half.
    corner += g;
  }
  std::ranges::sort(generators, {}, [](Phasor g) { return std::arg(g); });
  double most = std::max(std::abs(middle + corner), std::abs(middle - corner));
  for (const Phasor& g : generators) {  // From corner to corner round half of the polygon; the other half is its image.
    corner -= 2.0 * g;
    most = std::max({most, std::abs(middle + corner), std::abs(middle - corner)});
  }
  return most;
}

double worst_in_plane(const PatternSums& sums, const StatedErrors& errors, std::span<const int> places,
                      std::size_t plane) {
  Phasor middle = sums.constant()[plane];
  std::vector<Phasor> generators;
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Phasor share = sums.own(static_cast<int>(i))[plane] * sums.directions()[static_cast<std::size_t>(places[i])];
    middle += share;
    if (share == Phasor{}) continue;
    generators.push_back(errors.share * share);
    generators.push_back(Phasor{0, errors.azimuth.radians()} * share);
  }
  return farthest(middle, std::move(generators));
}

PatternRow row_of(const Kept& kept, const PatternSums& sums, const PatternTask& task) {
  PatternRow row{kept.places, kept.left_si, worst_left(sums, task.errors, kept.places), kept.simplicity};
  if (!task.hangers.empty()) row.pressed = hardest_pressed(task, kept.places);
  return row;
}

/// Every arrangement under the floor, where they are few enough to go through all of them.
void add_all(std::vector<Kept>& pool, const PatternTask& task, const PatternSums& sums) {
  const std::size_t first = task.turn_is_free() ? 1 : 0;  // All images of a turn are one.
  const auto turned = static_cast<double>(task.rotors.size() - first);
  if (std::pow(static_cast<double>(task.positions), turned) > kMostGoneThrough) return;
  Places places(task.rotors.size(), 0);
  for (;;) {
    if (const double left = sums.of(places); left <= sums.floor_rms() && task.allows(places)) {
      Places image = first_image(places, task);
      const Simplicity simplicity = simplicity_of(image, task.positions);
      pool.push_back({std::move(image), left, simplicity});
    }
    std::size_t i = first;
    while (i < places.size() && ++places[i] == task.positions) places[i++] = 0;
    if (i == places.size()) return;
  }
}

/// Simple arrangements under the floor, from the simplest, whole levels.
void add_simple(std::vector<Kept>& pool, const PatternTask& task, const PatternSums& sums, int wanted) {
  std::vector<Kept> simple;
  SimpleScan scan{task, sums, sums.floor_rms(), [&](const Places& places) {
                    const double left = sums.of(places);
                    if (left <= sums.floor_rms() && simple.size() < kMostSimple) {
                      Places image = first_image(places, task);
                      const Simplicity simplicity = simplicity_of(image, task.positions);
                      simple.push_back({std::move(image), left, simplicity});
                    }
                    return sums.floor_rms();
                  }};
  std::int64_t rows = kRowsLookedAt;
  for (int level = 1; level <= scan.levels() && static_cast<int>(simple.size()) < 2 * wanted; ++level)
    if (!scan.level(level, rows)) break;
  std::ranges::move(simple, std::back_inserter(pool));
}

/// Those under the floor by what they press the hangers with, as far as that can be measured, then by simplicity; of the equally simple
/// ones the more robust first. The most robust of all stays in.
void rank(PatternList& list, std::vector<Kept> pool, const PatternTask& task, const PatternSums& sums, int wanted) {
  std::ranges::sort(pool, {}, &Kept::places);
  const auto twice = std::ranges::unique(pool, {}, &Kept::places);
  pool.erase(twice.begin(), twice.end());
  list.under_floor = static_cast<int>(pool.size());
  std::vector<PatternRow> rows;
  for (const Kept& kept : pool) rows.push_back(row_of(kept, sums, task));
  const auto step = [&](const PatternRow& r) {
    return r.pressed ? reaction_step(r.pressed->force_n, list.hangers_floor) : 0.0;
  };
  std::ranges::sort(rows, [&](const PatternRow& p, const PatternRow& q) {
    return std::tuple{step(p), std::tie(p.simplicity, p.worst_si, p.places)} <
           std::tuple{step(q), std::tie(q.simplicity, q.worst_si, q.places)};
  });
  const PatternRow robust = *std::ranges::min_element(rows, {}, &PatternRow::worst_si);
  if (rows.size() > static_cast<std::size_t>(wanted)) rows.resize(static_cast<std::size_t>(wanted));
  if (std::ranges::find(rows, robust.places, &PatternRow::places) == rows.end()) rows.back() = robust;
  list.rows = std::move(rows);
}

}  // namespace

bool next_is_proven(const PatternList& list, const PatternSums& sums) {
  if (list.rows.size() < 2) return false;
  const double next = list.rows[1].left_si;
  return next <= list.seen_to || next <= list.least.left_si + sums.rounding();
}

double worst_left(const PatternSums& sums, const StatedErrors& errors, std::span<const int> places) {
  const double a = worst_in_plane(sums, errors, places, 0), b = worst_in_plane(sums, errors, places, 1);
  return sums.judged() == Judged::both_planes ? std::hypot(a, b) : std::max(a, b);
}

Result<PatternList> list_patterns(const PatternTask& task, int rows, const Effort& effort) {
  CORE_CHECK(rows >= 2);
  const int seen = task.hangers.empty() ? rows : std::max(rows, kRowsByHangers);
  auto found = find_pattern(task, 2 * seen, effort);
  if (!found) return tl::unexpected(std::move(found.error()));
  const PatternSums sums{task};
  PatternList list;
  list.least = found->best.front();
  list.proof = found->proof;
  list.arrangements = found->arrangements;
  list.seen_to = found->seen_to;
  list.turned = found->turned;
  list.floor_rms = sums.floor_rms();
  list.floor_worst = sums.floor_worst();
  if (!task.hangers.empty()) list.hangers_floor = hangers_floor(task);
  std::vector<Kept> under;
  for (const Kept& kept : found->best)
    if (kept.left_si <= sums.floor_rms()) under.push_back(kept);
  list.errors_decide = under.size() > 1 || found->proof == Proof::under_floor;
  list.under_floor = static_cast<int>(under.size());
  if (list.errors_decide) {
    if (!task.hangers.empty()) add_all(under, task, sums);
    add_simple(under, task, sums, seen);
    rank(list, std::move(under), task, sums, rows);
  } else {
    for (const Kept& kept : found->best)
      // A row beyond what was seen of all is nobody's next: others may stand before it.
      if (list.rows.size() < static_cast<std::size_t>(rows) && (list.seen_to == 0 || kept.left_si <= list.seen_to))
        list.rows.push_back(row_of(kept, sums, task));
  }
  const auto robust = std::ranges::min_element(list.rows, {}, &PatternRow::worst_si);
  list.robust = static_cast<std::size_t>(robust - list.rows.begin());
  return list;
}

}  // namespace flatwise::dynamics
