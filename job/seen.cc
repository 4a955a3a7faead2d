#include "job/seen.h"

#include <algorithm>
#include <ranges>

namespace flatwise::job {
namespace {

bool only_adds(const EntryBody& body) {
  return std::holds_alternative<NoteWritten>(body) || std::holds_alternative<PhotoTaken>(body);
}

bool takes_back_only_notes(const JobState& state, const Entry& entry) {
  if (!std::holds_alternative<Withdrawn>(entry.body) || entry.corrects.empty()) return false;
  return std::ranges::all_of(entry.corrects, [&](const Id& id) {
    const auto it = std::ranges::find(state.entries, id, &Entry::id);
    return it != state.entries.end() && only_adds(it->body);
  });
}

}  // namespace

Seen::Seen(const JobState& state, const Entry& by) : by_{&by} {
  // From the end: what is followed is nearly always near it.
  for (const Entry& entry : std::views::reverse(state.entries))
    if (entry.id == by.follows) {
      last_ = &entry;
      return;
    }
}

bool changes_what_was_signed(const JobState& state, const Entry& entry) {
  if (only_adds(entry.body) || takes_back_only_notes(state, entry)) return false;
  if (std::holds_alternative<Signed>(entry.body) || std::holds_alternative<Released>(entry.body)) return false;
  const auto* look = std::get_if<SecondLook>(&entry.body);
  return look == nullptr || look->right != Reply::yes;
}

const Entry* unseen_change(const JobState& state, const Entry& by) {
  const Seen seen{state, by};
  for (const Entry& entry : state.entries) {
    if (&entry == &by) break;
    if (!seen(entry) && changes_what_was_signed(state, entry)) return &entry;
  }
  return nullptr;
}

const CustomerSaid* customer_on_way(const JobState& state) {
  const LiveAnswers* said = state.answers("customer_said");
  if (said == nullptr || !said->agreed) return nullptr;
  const LiveAnswers* way = state.answers("way_chosen");
  if (way != nullptr && !way->agreed) return nullptr;
  // Several that say the same: one that saw it is enough.
  for (const Entry* answer : said->entries)
    if (way == nullptr || (&way->first() < answer && Seen{state, *answer}(way->first())))
      return &std::get<CustomerSaid>(answer->body);
  return nullptr;
}

bool customer_agreed(const JobState& state) {
  const CustomerSaid* said = customer_on_way(state);
  return said != nullptr && said->reply == Reply::yes;
}

}  // namespace flatwise::job
