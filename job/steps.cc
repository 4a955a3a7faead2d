#include "job/steps.h"

#include <algorithm>
#include <array>
#include <map>

#include "job/plan.h"

namespace flatwise::job {
namespace {

constexpr std::string_view kOnFlats = "teardown.put_rotor_on_flats", kOn = "teardown.put_rotor_on";

/// The same step whether its flats are known yet or not.
std::string key_of(const teardown::Step& step, std::map<std::string, int>& seen) {
  const std::string_view code = step.what.code.id();
  std::string key{code == kOnFlats ? kOn : code};
  for (std::size_t i = 0; i < step.stations.size(); ++i)
    key += (i == 0 ? "/" : "-") + std::to_string(step.stations[i] + 1);
  const int times = ++seen[key];
  return times == 1 ? key : key + "#" + std::to_string(times);
}

/// A step about a station that stays, or about what it hides, moves nothing.
std::vector<int> moves_of(const teardown::Step& step, const teardown::Plan& plan) {
  std::vector<int> moves;
  if (step.what.code == Code{"teardown.fit_before"}) return moves;
  for (const int station : step.stations)
    if (std::ranges::find(plan.stations, station) != plan.stations.end()) moves.push_back(station + 1);
  return moves;
}

/// Steps with their keys, what they move, and what was said of them.
std::vector<JobStep> told(std::vector<teardown::Step> steps, const teardown::Plan& plan, const JobState& state,
                          Phase phase) {
  std::map<std::string, int> seen;
  std::vector<JobStep> out;
  out.reserve(steps.size());
  for (teardown::Step& step : steps) {
    std::string key = key_of(step, seen);
    std::vector<int> moves = moves_of(step, plan);
    const LiveAnswers* answer = state.answers(question_of(StepDone{phase, key, Reply::yes}));
    out.push_back({std::move(key), std::move(step), std::move(moves), answer});
  }
  return out;
}

/// Stations that had come off before an entry, counted from each end.
teardown::Split off_before(const Shaft& shaft, const JobState& state, int number) {
  const std::size_t size = shaft.stations().size();
  std::vector<bool> off(size, false);
  for (const Entry& entry : state.entries) {
    const auto* taken = std::get_if<TakenOff>(&entry.body);
    if (taken == nullptr || entry.number >= number || taken->station < 1) continue;
    const auto i = static_cast<std::size_t>(taken->station) - 1;
    if (i < size && state.came_off[i]) off[i] = true;
  }
  const auto from_a = std::ranges::find(off, false) - off.begin();
  const auto from_b = std::find(off.rbegin(), off.rend(), false) - off.rbegin();
  return {static_cast<int>(from_a), static_cast<int>(from_b)};
}

std::optional<teardown::Plan> planned(const Shaft& shaft, const Workshop& workshop, const JobState& state) {
  if (state.way == nullptr) return std::nullopt;
  Results<teardown::Ways> ways = ways_to_open(shaft, workshop, state.way->open);
  if (!ways) return std::nullopt;
  if (state.way->way == "failed_only") return std::move(ways->failed_only);
  if (state.way->way == "disturbed") return std::move(ways->disturbed);
  if (state.way->way == "all") return std::move(ways->all);
  return std::nullopt;
}

std::vector<JobStep> steps_off(const Shaft& shaft, const teardown::Plan& plan, const JobState& state) {
  return told(teardown::tear_down_steps(shaft, teardown::all_on(shaft), plan), plan, state, Phase::teardown);
}

/// A job that was released before the way back led into the frame is as complete as it was that day.
std::vector<JobStep> as_released(std::vector<JobStep> steps) {
  constexpr std::array<std::string_view, 4> kIntoFrame{"teardown.lift_in", "teardown.lift_in_plain",
                                                       "teardown.stands_away", "teardown.belts_on"};
  const auto into_frame = [&](const JobStep& s) { return std::ranges::find(kIntoFrame, s.key) != kIntoFrame.end(); };
  const bool asked = std::ranges::any_of(steps, [&](const JobStep& s) { return into_frame(s) && s.answer != nullptr; });
  if (!asked) std::erase_if(steps, into_frame);
  return steps;
}

std::vector<JobStep> steps_back(const Shaft& shaft, const teardown::Plan& plan, const JobState& state,
                                std::optional<timing::Reference> reference) {
  std::vector<teardown::Step> steps =
      teardown::assembly_steps(shaft, plan, flats_back(shaft, plan, std::move(reference)));
  // What waits for the nuts is asked before the run ("guards_on"): asked here it would keep the torque waiting for itself.
  std::erase_if(steps, [](const teardown::Step& s) { return s.after_torque; });
  std::vector<JobStep> back = told(std::move(steps), plan, state, Phase::assembly);
  return state.released == nullptr ? back : as_released(std::move(back));
}

}  // namespace

bool JobStep::done() const {
  if (answer == nullptr || !answer->agreed) return false;
  const auto* said = std::get_if<StepDone>(&answer->first().body);
  return said != nullptr && said->reply == Reply::yes;
}

std::optional<Result<teardown::Plan>> plan_opened(const Shaft& shaft, const Workshop& workshop, const JobState& state,
                                                  const Opened& said) {
  const std::optional<teardown::Plan> plan = planned(shaft, workshop, state);
  if (!plan) return std::nullopt;
  const bool failed_only = state.way->way == "failed_only", all = state.way->way == "all";
  const LiveAnswers* live = state.answers("opened_by");
  const int number = live == nullptr ? static_cast<int>(state.entries.size()) + 1 : live->first().number;
  const teardown::Wanted wanted{all ? std::span<const int>{plan->rotors} : std::span<const int>{state.way->open},
                                failed_only ? teardown::Renew::failed_only : teardown::Renew::disturbed,
                                {said.from, said.rotors_from_a, off_before(shaft, state, number)}};
  return teardown::opened_as(shaft, teardown::all_on(shaft), wanted, {workshop.rate_per_hour, workshop.currency});
}

std::optional<teardown::Plan> chosen_plan(const Shaft& shaft, const Workshop& workshop, const JobState& state) {
  if (state.bench.opened)
    if (auto opened = plan_opened(shaft, workshop, state, *state.bench.opened); opened && *opened)
      return **std::move(opened);
  return planned(shaft, workshop, state);
}

std::vector<JobStep> job_steps(const Shaft& shaft, const Workshop& workshop, const JobState& state, Phase phase,
                               std::optional<timing::Reference> reference) {
  const std::optional<teardown::Plan> chosen = chosen_plan(shaft, workshop, state);
  if (!chosen) return {};
  return phase == Phase::teardown ? steps_off(shaft, *chosen, state)
                                  : steps_back(shaft, *chosen, state, std::move(reference));
}

std::optional<ChosenWay> chosen_way(const Shaft& shaft, const Workshop& workshop, const JobState& state) {
  std::optional<teardown::Plan> chosen = chosen_plan(shaft, workshop, state);
  if (!chosen) return std::nullopt;
  ChosenWay way{*std::move(chosen), {}, {}};
  way.off = steps_off(shaft, way.plan, state);
  way.back = steps_back(shaft, way.plan, state, std::nullopt);
  return way;
}

std::vector<EntryBody> entries_of_step(const JobStep& step, Phase phase) {
  std::vector<EntryBody> out{StepDone{phase, step.key, Reply::yes}};
  for (const int station : step.moves) {
    if (phase == Phase::teardown)
      out.emplace_back(TakenOff{station});
    else
      out.emplace_back(PutOn{station});
  }
  return out;
}

}  // namespace flatwise::job
