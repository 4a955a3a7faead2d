// A shaft as a task of arranging, and what makes a task unusable.
#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/dynamics/pattern_task.h"
#include "core/dynamics/tine_gap.h"
#include "core/units/guards.h"

namespace flatwise::dynamics {
namespace {

constexpr int kMostPositions = 24, kMostRotors = 240;
constexpr double kMostSize = 1e30, kLeastSize = 1e-100;  // N, N m, m: squares and quotients of such stay finite.

Problem refused(Code code, std::string field, Args args) {
  return {code, std::move(field), {}, std::move(args), std::nullopt};
}

std::optional<Problem> wrong_sets(const std::vector<RotatingSet>& sets) {
  for (const RotatingSet& set : sets) {
    if (auto p = outside("position", any(set.position), -kMostSize, kMostSize)) return p;
    if (auto p = outside("force", any(set.force), -kMostSize, kMostSize)) return p;
    if (auto p = outside("couple", any(set.couple), -kMostSize, kMostSize)) return p;
    if (auto p = not_finite("azimuth", any(set.azimuth))) return p;
  }
  return std::nullopt;
}

std::optional<Problem> wrong_numbers(const PatternTask& task) {
  if (task.positions < 2 || task.positions > kMostPositions)
    return refused(Code{"pattern.positions"}, "positions", {{"given", task.positions}, {"greatest", kMostPositions}});
  if (task.count() < 2 || task.count() > kMostRotors)
    return refused(Code{"pattern.rotors"}, "rotors", {{"given", task.count()}, {"greatest", kMostRotors}});
  if (auto p = wrong_sets(task.rotors)) return p;
  if (auto p = wrong_sets(task.unbalances)) return p;
  if (!(std::abs((task.planes.b - task.planes.a).si()) >= 1e-3))
    return refused(Code{"dynamics.planes_together"}, "plane-b", {{"a", any(task.planes.a)}, {"b", any(task.planes.b)}});
  if (auto p = outside("error-share", any_ratio(task.errors.share), 0, 1)) return p;
  if (auto p = outside("error-azimuth", any(task.errors.azimuth), 0, 1)) return p;
  return std::nullopt;
}

std::optional<Problem> wrong_row(const HangerRow& row, int rotors) {
  if (row.rotors_n.size() != static_cast<std::size_t>(rotors))
    return refused(Code{"pattern.list_length"}, "hangers",
                   {{"given", static_cast<std::int64_t>(row.rotors_n.size())}, {"wanted", rotors}});
  double sum = std::abs(row.fixed_n);
  for (const double force : row.rotors_n) sum += std::abs(force);
  return outside("hangers", any(newtons(sum)), 0, kMostSize);
}

std::optional<Problem> wrong_lists(const PatternTask& task) {
  const auto rotors = static_cast<std::size_t>(task.count());
  if (!task.kept.empty() && task.kept.size() != rotors)
    return refused(Code{"pattern.list_length"}, "stay",
                   {{"given", static_cast<std::int64_t>(task.kept.size())}, {"wanted", task.count()}});
  if (!task.apart.empty() && task.apart.size() + 1 != rotors)
    return refused(Code{"pattern.list_length"}, "apart",
                   {{"given", static_cast<std::int64_t>(task.apart.size())}, {"wanted", task.count() - 1}});
  for (const HangerRow& row : task.hangers)
    if (auto p = wrong_row(row, task.count())) return p;
  for (std::size_t i = 0; i < task.kept.size(); ++i)
    if (task.kept[i] && (*task.kept[i] < 0 || *task.kept[i] >= task.positions))
      return refused(Code{"pattern.stays_flat"}, "stay",
                     {{"rotor", static_cast<int>(i) + 1}, {"flat", *task.kept[i] + 1}, {"greatest", task.positions}});
  return std::nullopt;
}

/// Position by position: which can be reached past the rotors that stay.
std::optional<Problem> no_way_through(const PatternTask& task) {
  const auto n = static_cast<std::size_t>(task.positions);
  std::vector<bool> reached(n, true);
  for (int i = 0; i < task.count(); ++i) {
    std::vector<bool> next(n, false);
    for (int place = 0; place < task.positions; ++place) {
      if (task.keeps(i) && *task.kept[static_cast<std::size_t>(i)] != place) continue;
      for (int before = 0; before < task.positions && !next[static_cast<std::size_t>(place)]; ++before)
        next[static_cast<std::size_t>(place)] =
            i == 0 || (reached[static_cast<std::size_t>(before)] && task.may_follow(i, before, place));
    }
    if (std::ranges::find(next, true) == next.end())
      return refused(Code{"pattern.no_way"}, "gap", {{"rotor", i}, {"next", i + 1}});
    reached = std::move(next);
  }
  return std::nullopt;
}

/// Ways that two neighbours may stand apart: those that leave the least gap. A way and its mirror image leave the same.
Result<std::uint32_t> ways_apart(const Shaft& shaft, int number, Length least_gap) {
  const auto row = [&](int rotor, int place) {
    const Rotor& r = shaft.rotor(rotor);
    return TineRow{r.tip_radius, r.tine_width, r.lean, azimuth_of_flat(place + 1, shaft.flats())};
  };
  const Length pitch = shaft.rotor_position(number + 1) - shaft.rotor_position(number);
  std::uint32_t ways = 0;
  Length most;
  for (int k = 0; k <= shaft.flats() / 2; ++k) {
    const auto gap = tine_gap(pitch, row(number, 0), row(number + 1, k));
    if (!gap) return tl::unexpected(gap.error());
    if (gap->gap >= least_gap) ways |= 1u << k;
    most = k == 0 ? gap->gap : std::max(most, gap->gap);
  }
  if (ways == 0)
    return tl::unexpected(
        refused(Code{"pattern.no_gap"}, "least-gap",
                {{"rotor", number}, {"next", number + 1}, {"given", any(least_gap)}, {"most", any(most)}}));
  return ways;
}

std::optional<Problem> keep(PatternTask& task, const Stays& stays) {
  if (stays.rotor < 1 || stays.rotor > task.count())
    return refused(Code{"pattern.stays_rotor"}, "stay", {{"given", stays.rotor}, {"greatest", task.count()}});
  auto& place = task.kept[static_cast<std::size_t>(stays.rotor - 1)];
  if (place) return refused(Code{"pattern.stays_twice"}, "stay", {{"rotor", stays.rotor}});
  if (stays.flat < 1 || stays.flat > task.positions)
    return refused(Code{"pattern.stays_flat"}, "stay",
                   {{"rotor", stays.rotor}, {"flat", stays.flat}, {"greatest", task.positions}});
  place = stays.flat - 1;
  return std::nullopt;
}

}  // namespace

std::optional<Problem> problem_with(const PatternTask& task) {
  if (auto p = wrong_numbers(task)) return p;
  if (auto p = wrong_lists(task)) return p;
  const PatternSums sums{task};
  bool turns = false;
  for (int i = 0; i < sums.count(); ++i)
    turns = turns || std::abs(sums.own(i)[0]) > kLeastSize || std::abs(sums.own(i)[1]) > kLeastSize;
  if (!turns) return refused(Code{"pattern.nothing_turns"}, "couple", {});
  return no_way_through(task);
}

Result<PatternTask> pattern_task(const Shaft& shaft, const PatternWish& wish) {
  if (shaft.rotor_count() < 2)
    return tl::unexpected(
        refused(Code{"pattern.rotors"}, "rotors", {{"given", shaft.rotor_count()}, {"greatest", kMostRotors}}));
  if (!(shaft.spec().speed.radians_per_second() > 0))
    return tl::unexpected(refused(Code{"dynamics.too_slow"}, "speed", {{"value", any(shaft.spec().speed)}}));
  if (auto p = negative("least-gap", any(wish.least_gap))) return tl::unexpected(*std::move(p));
  PatternTask task{.positions = shaft.flats(),
                   .rotors = rotating_sets(shaft, std::vector<Angle>(static_cast<std::size_t>(shaft.rotor_count()))),
                   .unbalances = {},
                   .planes = planes_of(shaft),
                   .judged = wish.judged,
                   .errors = wish.errors,
                   .hangers = wish.hangers};
  const auto rotors = task.rotors.begin() + shaft.rotor_count();
  task.unbalances.assign(rotors, task.rotors.end());
  task.rotors.erase(rotors, task.rotors.end());
  for (int number = 1; number < shaft.rotor_count(); ++number) {
    const auto ways = ways_apart(shaft, number, wish.least_gap);
    if (!ways) return tl::unexpected(ways.error());
    task.apart.push_back(*ways);
  }
  if (!wish.stays.empty()) task.kept.resize(task.rotors.size());
  for (const Stays& stays : wish.stays)
    if (auto p = keep(task, stays)) return tl::unexpected(*std::move(p));
  if (auto p = problem_with(task)) return tl::unexpected(*std::move(p));
  return task;
}

}  // namespace flatwise::dynamics
