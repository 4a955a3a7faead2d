// check_entry: what may go into a record, given what is in it.
#include <algorithm>

#include "job/check/body.h"
#include "job/job_state.h"
#include "job/release.h"
#include "job/seen.h"

namespace flatwise::job {
namespace {

using Problems = std::vector<Problem>;

const Entry* find(const JobState& state, const Id& id) {
  const auto it = std::ranges::find(state.entries, id, &Entry::id);
  return it == state.entries.end() ? nullptr : &*it;
}

void check_order(const JobState& state, const Entry& entry, Problems& problems) {
  const bool books_in = std::holds_alternative<BookedIn>(entry.body);
  if (state.entries.empty()) {
    if (!books_in) problems.push_back(Problem{Code{"record.not_booked_in"}, "body.kind", {}, {}, std::nullopt});
    if (!entry.follows.empty())
      problems.push_back(Problem{Code{"record.follows_unknown"}, "follows", entry.follows, {}, std::nullopt});
    return;
  }
  if (books_in && entry.corrects.empty())
    problems.push_back(Problem{Code{"record.booked_already"}, "body.kind", {}, {}, std::nullopt});
  if (state.answers("released") != nullptr && !std::holds_alternative<NoteWritten>(entry.body))
    problems.push_back(Problem{Code{"record.released_already"}, "body.kind", {}, {}, std::nullopt});
  if (find(state, entry.follows) == nullptr)
    problems.push_back(Problem{Code{"record.follows_unknown"}, "follows", entry.follows, {}, std::nullopt});
}

/// The first entry, a release and what takes back stay: they are not answers that one can open again.
bool may_be_withdrawn(const EntryBody& body) {
  return !std::holds_alternative<BookedIn>(body) && !std::holds_alternative<Released>(body) &&
         !std::holds_alternative<Withdrawn>(body);
}

void check_corrects(const JobState& state, const Entry& entry, Problems& problems) {
  const bool withdraws = std::holds_alternative<Withdrawn>(entry.body);
  if (withdraws && entry.corrects.empty())
    problems.push_back(Problem{Code{"record.withdraws_nothing"}, "corrects", {}, {}, std::nullopt});
  const std::string question = question_of(entry.body);
  for (std::size_t i = 0; i < entry.corrects.size(); ++i) {
    const Id& id = entry.corrects[i];
    const std::string field = "corrects[" + std::to_string(i) + "]";
    const Entry* old = find(state, id);
    if (old == nullptr)
      problems.push_back(Problem{Code{"record.corrects_unknown"}, field, id, {}, std::nullopt});
    else if (std::ranges::count(entry.corrects, id) > 1)
      problems.push_back(Problem{Code{"record.corrects_twice"}, field, id, {}, std::nullopt});
    else if (withdraws && !may_be_withdrawn(old->body))
      problems.push_back(Problem{Code{"record.stays"}, field, id, {{"number", old->number}}, std::nullopt});
    else if (!withdraws &&
             (question_of(old->body) != question || (question.empty() && old->body.index() != entry.body.index())))
      problems.push_back(
          Problem{Code{"record.corrects_another_question"}, field, id, {{"number", old->number}}, std::nullopt});
  }
}

/// Power, stored energy, footing, tines: answered yes, and agreed, before a hand is at the machine.
void check_safe(const JobState& state, const Entry& entry, Problems& problems) {
  if (!check_detail::touches_machine(entry.body)) return;
  std::vector<Word> open;
  for (const Question& q : questions()) {
    if (q.stage != Stage::booking_in) continue;
    const std::string id{q.id};
    const auto* said = state.agreed<Answered>(question_of(Answered{id, 0, Reply::yes}));
    if (said == nullptr || said->reply != Reply::yes) open.push_back(Word{"question." + id});
  }
  if (!open.empty())
    problems.push_back(
        Problem{Code{"record.not_safe_yet"}, "body", {}, {{"questions", std::move(open)}}, std::nullopt});
}

/// Who releases has seen what he releases: what came in while his tablet slept may have opened something.
void check_seen(const JobState& state, const Entry& entry, Problems& problems) {
  if (!std::holds_alternative<Released>(entry.body)) return;
  if (const Entry* unseen = unseen_change(state, entry))
    problems.push_back(Problem{Code{"record.not_seen_yet"}, "follows", {}, {{"number", unseen->number}}, std::nullopt});
}

void check_release(const Shaft& shaft, const Workshop& workshop, const JobState& state, const Released& released,
                   Problems& problems) {
  if (released.forced) {
    if (released.reason.find_first_not_of(" \t\n") == std::string::npos)
      problems.push_back(Problem{Code{"record.reason_missing"}, "body.reason", {}, {}, std::nullopt});
    return;
  }
  const Facts facts{shaft, workshop, state.bench};
  const std::vector<Block> blocks = release_blocks(facts, state, judge_through(facts, Stage::release));
  if (blocks.empty()) return;
  std::vector<Word> stages;
  for (const Block& block : blocks) {
    const Word stage{"stage." + std::string{stage_name(block.stage)}};
    if (std::ranges::find(stages, stage) == stages.end()) stages.push_back(stage);
  }
  problems.push_back(Problem{Code{"record.still_open"},
                             "body.forced",
                             {},
                             {{"count", static_cast<int>(blocks.size())}, {"stages", std::move(stages)}},
                             std::nullopt});
}

}  // namespace

std::vector<Problem> check_entry(const Shaft& shaft, const Workshop& workshop, const JobState& state,
                                 const Entry& entry) {
  Problems problems;
  check_order(state, entry, problems);
  check_corrects(state, entry, problems);
  check_safe(state, entry, problems);
  check_seen(state, entry, problems);
  std::ranges::move(check_detail::problems_of_body(shaft, workshop, state, entry), std::back_inserter(problems));
  if (const auto* released = std::get_if<Released>(&entry.body))
    check_release(shaft, workshop, state, *released, problems);
  return problems;
}

}  // namespace flatwise::job
