#include "core/dynamics/pattern_explain.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace flatwise::dynamics {
namespace {

using Rotors = std::vector<std::int64_t>;

Places stepped(const PatternTask& task, int step) {
  Places places;
  for (int i = 0; i < task.count(); ++i) places.push_back(i * step % task.positions);
  return places;
}

bool all_alike(const PatternTask& task, const PatternSums& sums) {
  for (int i = 1; i < sums.count(); ++i)
    if (!sums.alike(0, i)) return false;
  return task.turn_is_free();
}

/// The step that the whole row takes; none where there is more than one.
std::optional<int> one_step(const Places& places, int positions) {
  const int step = step_of(places[0], places[1], positions);
  for (std::size_t i = 2; i < places.size(); ++i)
    if (step_of(places[i - 1], places[i], positions) != step) return std::nullopt;
  return step;
}

void say_what(const PatternTask& task, const PatternRow& row, std::vector<Message>& out) {
  const std::optional<int> step = one_step(row.places, task.positions);
  const std::vector<int> flats = flats_of(row.places);
  if (step && 2 * *step == task.positions) return out.push_back({Code{"pattern.is_facing"}, {}});
  if (step && *step == 0) return out.push_back({Code{"pattern.is_all_alike"}, {}});
  if (step)
    return out.push_back(
        {Code{"pattern.is_step"},
         {{"flats", std::abs(*step)}, {"way", Word{*step > 0 ? "way.clockwise" : "way.counter_clockwise"}}}});
  out.push_back({Code{"pattern.is_listed"}, {{"flats", Rotors(flats.begin(), flats.end())}}});
}

/// One rotor each from `parts` positions that share the turn evenly, the first of them `from`; none where one is missing.
Rotors take_group(std::vector<Rotors>& at, std::size_t from, std::size_t parts) {
  const std::size_t apart = at.size() / parts;
  Rotors group;
  for (std::size_t k = 0; k < parts; ++k)
    if (!at[from + k * apart].empty()) group.push_back(at[from + k * apart].front());
  if (group.size() < parts) return {};
  for (std::size_t k = 0; k < parts; ++k) at[from + k * apart].erase(at[from + k * apart].begin());
  std::ranges::sort(group);
  return group;
}

/// Pairs that face each other and threes a third of a turn apart, where the whole row comes apart into such.
void say_groups(const PatternTask& task, const PatternRow& row, std::vector<Message>& out) {
  const auto n = static_cast<std::size_t>(task.positions);
  std::vector<Rotors> at(n);
  for (std::size_t i = 0; i < row.places.size(); ++i)
    at[static_cast<std::size_t>(row.places[i])].push_back(static_cast<std::int64_t>(i) + 1);
  std::vector<Message> groups;
  for (const std::size_t parts : {std::size_t{2}, std::size_t{3}})
    for (std::size_t from = 0; n % parts == 0 && from < n / parts; ++from)
      for (Rotors group = take_group(at, from, parts); !group.empty(); group = take_group(at, from, parts))
        groups.push_back({parts == 2 ? Code{"pattern.pair"} : Code{"pattern.three"}, {{"rotors", group}}});
  if (std::ranges::all_of(at, &Rotors::empty)) std::ranges::move(groups, std::back_inserter(out));
}

void say_proof(const PatternTask& task, const PatternList& list, std::vector<Message>& out) {
  const AnyQuantity least = left_of(task, list.least.left_si);
  int turned = 0;
  for (int i = 0; i < task.count(); ++i) turned += task.keeps(i) ? 0 : 1;
  switch (list.proof) {
    case Proof::nought:
      return out.push_back({Code{"pattern.proof_nought"}, {}});
    case Proof::complete:
      return out.push_back(
          {Code{"pattern.proof_complete"}, {{"least", least}, {"positions", task.positions}, {"rotors", turned}}});
    case Proof::under_floor:
      return out.push_back({Code{"pattern.proof_under_floor"},
                            {{"least", least}, {"floor", left_of(task, list.floor_rms)}, {"turned", list.turned}}});
    case Proof::none:
      return out.push_back({Code{"pattern.proof_none"}, {{"least", least}}});
  }
}

/// What facing and thirds would leave, and why; neighbours that may not face.
void say_simple(const PatternTask& task, const PatternSums& sums, std::vector<Message>& out) {
  const bool alike = all_alike(task, sums);
  const int n = task.positions, rotors = task.count();
  const auto left = [&](int step) { return left_of(task, sums.of(stepped(task, step))); };
  if (n % 2 == 0 && task.turn_is_free()) {
    if (!task.allows(stepped(task, n / 2)))
      out.push_back({Code{"pattern.facing_strikes"}, {}});
    else if (!alike)
      out.push_back({Code{"pattern.facing_unlike"}, {{"left", left(n / 2)}}});
    else if (rotors % 2 == 0)
      out.push_back({Code{"pattern.facing_even"}, {{"rotors", rotors}}});
    else
      out.push_back({Code{"pattern.facing_odd"}, {{"rotors", rotors}, {"left", left(n / 2)}}});
  }
  if (n % 3 != 0 || !alike || !task.allows(stepped(task, n / 3))) return;
  if (rotors % 3 == 0)
    out.push_back({Code{"pattern.thirds_even"}, {{"rotors", rotors}}});
  else
    out.push_back({Code{"pattern.thirds_odd"}, {{"rotors", rotors}, {"left", left(n / 3)}}});
}

/// What the hangers decided, where they were asked.
void say_hangers(const PatternTask& task, const PatternList& list, std::vector<Message>& out) {
  const PatternRow& row = list.rows.front();
  if (!row.pressed) return;
  const std::string& label = task.hangers[static_cast<std::size_t>(row.pressed->hanger)].label;
  const Args args{
      {"hanger", label}, {"force", any(newtons(row.pressed->force_n))}, {"floor", any(newtons(list.hangers_floor))}};
  out.push_back({list.errors_decide ? Code{"pattern.by_hangers"} : Code{"pattern.hangers_follow"}, args});
}

}  // namespace

AnyQuantity left_of(const PatternTask& task, double left_si) {
  return {left_si, task.judged == Judged::couple ? Kind::torque : Kind::force};
}

std::vector<Message> explain(const PatternTask& task, const PatternList& list) {
  const PatternSums sums{task};
  const PatternRow& row = list.rows.front();
  std::vector<Message> out;
  say_what(task, row, out);
  if (all_alike(task, sums) && row.left_si == 0 && !one_step(row.places, task.positions)) say_groups(task, row, out);
  say_proof(task, list, out);
  say_simple(task, sums, out);
  if (list.errors_decide)
    out.push_back(
        {Code{"pattern.errors_decide"}, {{"floor", left_of(task, list.floor_rms)}, {"count", list.under_floor}}});
  else if (next_is_proven(list, sums))
    out.push_back({Code{"pattern.runner_up"}, {{"left", left_of(task, list.rows[1].left_si)}}});
  say_hangers(task, list, out);
  return out;
}

}  // namespace flatwise::dynamics
