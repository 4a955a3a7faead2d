// jobs.cc: reading jobs, entries and changes.
#include <algorithm>
#include <limits>

#include "store/sqlite/store.h"
#include "store/sqlite/text.h"

namespace flatwise::store_sqlite {

using job::Change;
using job::EntryRow;
using job::Id;
using job::Instant;
using job::JobRow;
using job::kStageCount;
using job::Stage;
using job::stage_name;
using enum StoreFault::Kind;

namespace {
#define JOB_COLUMNS \
  "id, number, machine, shaft_version, present, waiting, due, booked, changed, released, entries, head from jobs "
#define ENTRY_COLUMNS \
  "id, job, author, device, at, follows, corrects, kind, body, number, previous, hash, received from entries "

Stage stage_named(const std::string& name) {
  for (int i = 0; i < kStageCount; ++i)
    if (stage_name(static_cast<Stage>(i)) == name) return static_cast<Stage>(i);
  refuse(damaged, "no such stage: " + name);
}

JobRow job_of(const Query& row) {
  JobRow job;
  job.id = row.text(0);
  job.number = row.text(1);
  job.machine = row.text(2);
  job.shaft_version = row.text(3);
  job.present = stage_named(row.text(4));
  job.waiting = row.text(5);
  if (!row.none(6)) job.due = day_of(row.text(6));
  job.booked = {row.whole(7)};
  job.changed = {row.whole(8)};
  job.released = row.yes(9);
  job.entries = row.number(10);
  job.head = row.text(11);
  return job;
}

EntryRow entry_of(const Query& row) {
  EntryRow entry;
  entry.id = row.text(0);
  entry.job = row.text(1);
  entry.by = row.text(2);
  entry.on = row.text(3);
  entry.at = {row.whole(4)};
  entry.follows = row.text(5);
  entry.corrects = ids_of(row.text(6));
  entry.kind = row.text(7);
  entry.body = row.text(8);
  entry.number = row.number(9);
  entry.before = row.text(10);
  entry.hash = row.text(11);
  entry.received = {row.whole(12)};
  return entry;
}

template <class Row, class Make>
std::vector<Row> all_of(Query&& rows, const Make& make) {
  std::vector<Row> all;
  while (rows.next()) all.push_back(make(rows));
  return all;
}
}  // namespace

std::optional<JobRow> SqliteStore::find_job(const Id& id) {
  Query row = db_.query("select " JOB_COLUMNS "where workshop = ? and id = ?", workshop_, id);
  return row.next() ? std::optional{job_of(row)} : std::nullopt;
}

std::optional<EntryRow> SqliteStore::find_entry(const Id& id) {
  Query row = db_.query("select " ENTRY_COLUMNS "where workshop = ? and id = ?", workshop_, id);
  return row.next() ? std::optional{entry_of(row)} : std::nullopt;
}

Stored<JobRow> SqliteStore::job(const Id& id) {
  return db_.reading([&] {
    auto found = find_job(id);
    if (!found) refuse(missing, "job " + id);
    return std::move(*found);
  });
}

Stored<JobRow> SqliteStore::job_by_number(const std::string& number) {
  return db_.reading([&] {
    Query row = db_.query("select " JOB_COLUMNS "where workshop = ? and number = ?", workshop_, number);
    if (!row.next()) refuse(missing, "job number " + number);
    return job_of(row);
  });
}

Stored<std::vector<JobRow>> SqliteStore::open_jobs() {
  return db_.reading([this] {
    return all_of<JobRow>(
        db_.query("select " JOB_COLUMNS "where workshop = ? and released = 0 order by booked, id", workshop_), job_of);
  });
}

Stored<std::vector<JobRow>> SqliteStore::jobs_of(const Id& machine, int limit, std::optional<Instant> before) {
  return db_.reading([&] {
    return all_of<JobRow>(
        db_.query("select " JOB_COLUMNS
                  "where workshop = ? and machine = ? and booked < ? order by booked desc, id desc limit ?",
                  workshop_, machine, before ? before->ms : std::numeric_limits<std::int64_t>::max(),
                  std::max(0, limit)),
        job_of);
  });
}

Stored<std::vector<EntryRow>> SqliteStore::entries(const Id& job, int after_number) {
  return db_.reading_several([&] {
    auto all = all_of<EntryRow>(
        db_.query("select " ENTRY_COLUMNS "where workshop = ? and job = ? and number > ? order by number", workshop_,
                  job, after_number),
        entry_of);
    if (all.empty() && !find_job(job)) refuse(missing, "job " + job);
    return all;
  });
}

Stored<std::optional<EntryRow>> SqliteStore::entry(const Id& id) {
  return db_.reading([&] { return find_entry(id); });
}

Stored<std::vector<Change>> SqliteStore::changes(std::int64_t after, int limit) {
  return db_.reading([&] {
    return all_of<Change>(db_.query("select sequence, what, id, entry from changes where workshop = ? and sequence > ? "
                                    "order by sequence limit ?",
                                    workshop_, after, std::max(0, limit)),
                          [](const Query& row) { return Change{row.whole(0), row.text(1), row.text(2), row.text(3)}; });
  });
}

std::int64_t SqliteStore::last_sequence() {
  Query row = db_.query("select max(sequence) from changes where workshop = ?", workshop_);
  return row.next() ? row.whole(0) : 0;
}

Stored<std::int64_t> SqliteStore::last_change() {
  return db_.reading([this] { return last_sequence(); });
}

}  // namespace flatwise::store_sqlite
