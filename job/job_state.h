// job_state.h: the state of a job, folded from its entries. Pure, and the only place where an entry becomes a fact.
//
// Entries that answer the same question and are not pointed at by a later one are *live*. One live answer, or several that say
// the same: the fact holds. Several that differ: nobody wins, the fact does not hold, and somebody must decide by an entry that
// corrects them all.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "job/entry.h"
#include "job/judge.h"

namespace flatwise::job {

/// Live answers to one question, in the order they were stored.
struct LiveAnswers {
  std::vector<const Entry*> entries;
  bool agreed = true;  ///< All say the same.
  [[nodiscard]] const Entry& first() const { return *entries.front(); }
};

struct Decision {
  std::vector<int> open;
  std::string way;
  const Entry* entry = nullptr;
};

struct JobState {
  std::span<const Entry> entries;                                     ///< All, as stored; must outlive the state.
  std::map<std::string, LiveAnswers, std::less<>> live;               ///< By question_of().
  std::map<Id, std::vector<const Entry*>, std::less<>> corrected_by;  ///< What points at an entry.
  std::vector<const Entry*> added;  ///< Live entries without a question: photos, notes, orders.
  Bench bench;                      ///< What the rules look at; places say "entry 118".
  const BookedIn* booked = nullptr;
  const WayChosen* way = nullptr;  ///< Agreed decision, none while there is none.
  const CustomerSaid* customer = nullptr;
  const Released* released = nullptr;
  std::vector<bool> off;       ///< One a station: it is off at this moment.
  std::vector<bool> came_off;  ///< One a station: it left the shaft in this job.

  /// The one answer to a question, where there is one and it is agreed.
  template <class Body>
  [[nodiscard]] const Body* agreed(const std::string& question) const {
    const auto it = live.find(question);
    return it == live.end() || !it->second.agreed ? nullptr : std::get_if<Body>(&it->second.first().body);
  }
  [[nodiscard]] const LiveAnswers* answers(const std::string& question) const {
    const auto it = live.find(question);
    return it == live.end() ? nullptr : &it->second;
  }
  /// What was said in the place of an entry, in order; a part that goes back on replaces nothing: it did come off.
  [[nodiscard]] std::vector<const Entry*> replacing(const Entry& entry) const;
  /// It came behind the release: what was signed does not hold it, and it says so wherever it is told.
  [[nodiscard]] bool after_release(const Entry& entry) const;
};

/// The rotors that a job is about: those that came off, before that those that the way opens.
[[nodiscard]] std::vector<int> rotors_opened(const JobState& state);

/// Pieces of each part that were ordered and have not come in; negative: more came in than was ordered here.
using PartsDue = std::map<std::string, int, std::less<>>;
void add_due(PartsDue& due, const EntryBody& body);
[[nodiscard]] PartsDue parts_due(const JobState& state);

/// Folds entries, in the order stored, to the state. Replays 10^4 entries in milliseconds. Never fails: what is in the record
/// was checked when it was taken; an entry about a part the shaft does not have is left out of the facts.
[[nodiscard]] JobState fold(const Shaft& shaft, const Workshop& workshop, std::span<const Entry> entries);

/// The live entries that a new one with this body must point at (Entry::corrects): all of its question.
[[nodiscard]] std::vector<Id> live_answers_to(const JobState& state, const EntryBody& body);

/// Puts into the workshop's gauges what holds for this job: the certificate of the day of its readings, and who accepted the gauge
/// although past its date; `name_of` names a person.
void gauges_for(Workshop& workshop, const JobState& state, const std::function<std::string(const Id&)>& name_of);

/// What must hold before an entry is taken into a job, given what is in it already.
///
/// Refuses    A part, gauge or question that is not there; a value that no such part can have; `corrects` pointing at what
///            is not an entry of the same question; anything after release but a note; parts ordered before the
///            customer's yes; a part touched before the safety questions are answered yes; a release that is not forced
///            while something is open, a forced one without a reason, and one by somebody who had not seen all of the record; more
///            pieces than a tray or an order can hold; a gauge accepted although it is in date. Problems name the field.
[[nodiscard]] std::vector<Problem> check_entry(const Shaft& shaft, const Workshop& workshop, const JobState& state,
                                               const Entry& entry);

/// A job opened: definition, workshop, entries, and what follows from them. Owns all of it; not to be copied or moved once
/// the state points into the entries.
struct OpenJob {
  std::shared_ptr<const Shaft> definition;  ///< Shared by all jobs that go by it; never null.
  Workshop workshop;
  std::vector<Entry> entries;
  JobState state;
  JobReport report;  ///< All stages judged.
  const Shaft& shaft = *definition;
  [[nodiscard]] Facts facts() const { return {shaft, workshop, state.bench}; }
};

}  // namespace flatwise::job
