#include "job/steps.h"

#include <algorithm>
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

}  // namespace

bool JobStep::done() const {
  if (answer == nullptr || !answer->agreed) return false;
  const auto* said = std::get_if<StepDone>(&answer->first().body);
  return said != nullptr && said->reply == Reply::yes;
}

std::optional<teardown::Plan> chosen_plan(const Shaft& shaft, const Workshop& workshop, const JobState& state) {
  if (state.way == nullptr) return std::nullopt;
  Results<PlanReport> planned = plan(shaft, workshop, state.way->open);
  if (!planned) return std::nullopt;
  const auto it = std::ranges::find(planned->ways, state.way->way, &Way::name);
  if (it == planned->ways.end()) return std::nullopt;
  return std::move(it->plan);
}

std::vector<JobStep> job_steps(const Shaft& shaft, const Workshop& workshop, const JobState& state, Phase phase,
                               std::optional<timing::Reference> reference) {
  const std::optional<teardown::Plan> chosen = chosen_plan(shaft, workshop, state);
  if (!chosen) return {};
  std::vector<teardown::Step> steps =
      phase == Phase::teardown
          ? teardown::tear_down_steps(shaft, teardown::all_on(shaft), *chosen)
          : teardown::assembly_steps(shaft, *chosen, flats_back(shaft, *chosen, std::move(reference)));
  std::map<std::string, int> seen;
  std::vector<JobStep> out;
  for (teardown::Step& step : steps) {
    std::string key = key_of(step, seen);
    std::vector<int> moves = moves_of(step, *chosen);
    const LiveAnswers* answer = state.answers(question_of(StepDone{phase, key, Reply::yes}));
    out.push_back({std::move(key), std::move(step), std::move(moves), answer});
  }
  return out;
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
