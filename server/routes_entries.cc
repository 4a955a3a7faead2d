// Entries of a job: read, and taken in. What is answered as kept is on the disk.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "desk/kept.h"
#include "record/entry_json.h"
#include "record/instant.h"
#include "server/input.h"
#include "server/live.h"
#include "server/people.h"

namespace flatwise::server {
namespace {

using wire::Json;

/// The head that the other end has seen, out of If-Match; a tag that is none of ours matches nothing.
std::optional<std::string> head_in(std::string_view if_match) {
  if (if_match.empty() || if_match == "*") return std::nullopt;
  if (if_match.size() < 2 || if_match.front() != '"' || if_match.back() != '"') return std::string{if_match};
  return std::string{if_match.substr(1, if_match.size() - 2)};
}

/// The fresh ones are those with the greatest numbers: they were put behind all that was there.
Json saved_json(const job::Appended& appended) {
  int last = 0;
  for (const job::EntryRow& row : appended.rows) last = std::max(last, row.number);
  Json saved = Json::array();
  for (const job::EntryRow& row : appended.rows)
    saved.push_back(
        {{"id", row.id}, {"number", row.number}, {"hash", row.hash}, {"fresh", row.number > last - appended.fresh}});
  return {{"saved", std::move(saved)}, {"head", appended.head}, {"sequence", appended.sequence}};
}

constexpr std::int64_t kDayMs = 24LL * 3600 * 1000;

/// A tablet that was out of reach brings its booking days late, not months: then its clock stands on a day of long ago.
constexpr std::int64_t kBookedLateMs = 31 * kDayMs;

/// What no clock in order can have said: a time still to come, one before the job was there, a booking of long ago. `booked`: none for a new job.
std::vector<Problem> wrong_clock(const std::vector<job::Entry>& entries, std::optional<job::Instant> booked,
                                 job::Instant received) {
  std::vector<Problem> problems;
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const job::Instant at = entries[i].at;
    const std::string field = "entries[" + std::to_string(i) + "].at";
    if (at.ms > received.ms + kDayMs)
      problems.push_back(
          problem_of(Code{"http.clock_ahead"}, field, record::text_of(at), {{"now", record::text_of(received)}}));
    else if (!booked && at.ms < received.ms - kBookedLateMs)
      problems.push_back(
          problem_of(Code{"http.clock_long_ago"}, field, record::text_of(at), {{"now", record::text_of(received)}}));
    else if (booked && at.ms < booked->ms - kDayMs)
      problems.push_back(
          problem_of(Code{"http.clock_behind"}, field, record::text_of(at), {{"booked", record::text_of(*booked)}}));
    if (!booked) booked = at;
  }
  return problems;
}

}  // namespace

Reply get_entries(const Call& call) {
  const auto row = call.store.job(call.id());
  if (!row) return fault_reply(row.error(), "id");
  const auto rows = call.store.entries(call.id(), call.query.whole("after").value_or(0));
  if (!rows) return fault_reply(rows.error(), "id");
  const auto people = call.store.people();
  const auto names = people ? names_of(*people) : std::map<job::Id, std::string>{};
  Json list = Json::array();
  for (const job::EntryRow& r : *rows) {
    const auto entry = record::from_row(r);
    if (!entry) return fault_reply({job::StoreFault::Kind::damaged, "entry " + r.id + " cannot be read"}, "id");
    Json one = record::entry_json(*entry);
    if (const auto by = names.find(entry->by); by != names.end()) one["by_name"] = by->second;
    list.push_back(std::move(one));
  }
  return tagged(json_reply(Json{{"entries", std::move(list)}}), '"' + row->head + '"', {});
}

Reply post_entries(const Call& call) {
  auto entries = record::read_entries(call.request.body, call.id());
  if (!entries) return unreadable(std::move(entries.error()), call.voice);
  const job::Instant received = call.shared.now();
  const auto row = call.store.job(call.id());
  if (!row && row.error().kind != job::StoreFault::Kind::missing) return fault_reply(row.error(), "id");
  if (auto wrong = wrong_clock(*entries, row ? std::optional{row->booked} : std::nullopt, received); !wrong.empty())
    return problem_reply(422, std::move(wrong), call.voice);
  for (job::Entry& entry : *entries) entry.received = received;
  const auto taken =
      call.shared.opened.take(call.store, call.id(), *std::move(entries), head_in(call.request.if_match));
  if (!taken) return refusal_reply(taken.error(), "id", call.voice);
  if (taken->fresh > 0) call.shared.live.poke();
  Reply reply = json_reply(saved_json(*taken), 201);
  reply.headers = "ETag: \"" + taken->head + "\"\r\n";
  return reply;
}

}  // namespace flatwise::server
