#include "job/job_state.h"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

#include "job/entry_fields.h"
#include "job/fold/facts.h"
#include "job/gauges.h"

namespace flatwise::job {
namespace {

/// What points at what, and what is left standing.
void find_live(JobState& state) {
  for (const Entry& entry : state.entries)
    for (const Id& id : entry.corrects) state.corrected_by[id].push_back(&entry);
  for (const Entry& entry : state.entries) {
    if (state.corrected_by.contains(entry.id) || std::holds_alternative<Withdrawn>(entry.body)) continue;
    const std::string question = question_of(entry.body);
    if (question.empty())
      state.added.push_back(&entry);
    else
      state.live[question].entries.push_back(&entry);
  }
  for (auto& [question, answers] : state.live)
    answers.agreed = std::ranges::all_of(answers.entries,
                                         [&](const Entry* e) { return same_answer(answers.first().body, e->body); });
}

/// Off and on again is the course of the work, not a correction.
bool goes_on(const EntryBody& before, const EntryBody& after) {
  return (std::holds_alternative<TakenOff>(before) && std::holds_alternative<PutOn>(after)) ||
         (std::holds_alternative<PutOn>(before) && std::holds_alternative<TakenOff>(after));
}

bool withdrawn(const JobState& state, const Id& id) {
  const auto it = state.corrected_by.find(id);
  return it != state.corrected_by.end() &&
         std::ranges::any_of(it->second, [](const Entry* by) { return std::holds_alternative<Withdrawn>(by->body); });
}

/// A station came off where somebody said so and did not take it back. It is off while that stands, and where two disagree: a part
/// that may be off is not on.
void find_off(const Shaft& shaft, JobState& state) {
  const std::size_t count = shaft.stations().size();
  state.came_off.assign(count, false);
  state.off.assign(count, false);
  for (const Entry& entry : state.entries) {
    const auto* off = std::get_if<TakenOff>(&entry.body);
    if (off == nullptr || off->station < 1 || static_cast<std::size_t>(off->station) > count) continue;
    if (!withdrawn(state, entry.id)) state.came_off[static_cast<std::size_t>(off->station) - 1] = true;
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (!state.came_off[i]) continue;
    const LiveAnswers* live = state.answers(question_of(PutOn{static_cast<int>(i) + 1}));
    state.off[i] = live == nullptr || !live->agreed || std::holds_alternative<TakenOff>(live->first().body);
  }
}

}  // namespace

void add_due(PartsDue& due, const EntryBody& body) {
  if (const auto* ordered = std::get_if<Ordered>(&body)) due[ordered->part_number] += ordered->count;
  if (const auto* received = std::get_if<Received>(&body)) due[received->part_number] -= received->count;
}

PartsDue parts_due(const JobState& state) {
  PartsDue due;
  for (const Entry* entry : state.added) add_due(due, entry->body);
  return due;
}

std::vector<int> rotors_opened(const JobState& state) {
  if (!state.bench.came_off.empty() || state.way == nullptr) return state.bench.came_off;
  return state.way->open;
}

bool JobState::after_release(const Entry& entry) const {
  return std::ranges::any_of(
      entries, [&](const Entry& e) { return e.number < entry.number && std::holds_alternative<Released>(e.body); });
}

std::vector<const Entry*> JobState::replacing(const Entry& entry) const {
  const auto it = corrected_by.find(entry.id);
  if (it == corrected_by.end()) return {};
  std::vector<const Entry*> out = it->second;
  std::erase_if(out, [&](const Entry* by) { return goes_on(entry.body, by->body); });
  return out;
}

JobState fold(const Shaft& shaft, const Workshop& workshop, std::span<const Entry> entries) {
  JobState state;
  state.entries = entries;
  find_live(state);
  find_off(shaft, state);
  fold_detail::fill_bench(shaft, workshop, state);
  state.booked = state.agreed<BookedIn>("booked_in");
  state.way = state.agreed<WayChosen>("way_chosen");
  state.customer = state.agreed<CustomerSaid>("customer_said");
  state.released = state.agreed<Released>("released");
  return state;
}

std::vector<Id> live_answers_to(const JobState& state, const EntryBody& body) {
  std::vector<Id> ids;
  const std::string question = question_of(body);
  if (const LiveAnswers* live = question.empty() ? nullptr : state.answers(question))
    for (const Entry* entry : live->entries) ids.push_back(entry->id);
  return ids;
}

void gauges_for(Workshop& workshop, const JobState& state, const std::function<std::string(const Id&)>& name_of) {
  for (Gauge& gauge : workshop.gauges) {
    certify_for(gauge, state.bench.date);
    const std::string question = question_of(GaugeAccepted{gauge.id, {}});
    if (state.agreed<GaugeAccepted>(question) != nullptr)
      gauge.accepted_overdue_by = name_of(state.answers(question)->first().by);
  }
}

}  // namespace flatwise::job
