// append.cc: entries into a job, all or none, each with its number and its link of the chain.
#include <algorithm>

#include "record/chain.h"
#include "store/sqlite/store.h"
#include "store/sqlite/text.h"

namespace flatwise::store_sqlite {

using job::Append;
using job::Appended;
using job::EntryRow;
using job::HourReading;
using job::Id;
using job::JobRow;
using job::stage_name;
using job::StockMove;
using enum StoreFault::Kind;

namespace {
/// What its author wrote; not what the store gave it.
bool same_content(const EntryRow& a, const EntryRow& b) {
  return a.id == b.id && a.job == b.job && a.by == b.by && a.on == b.on && a.at == b.at && a.follows == b.follows &&
         a.corrects == b.corrects && a.kind == b.kind && a.body == b.body;
}

/// Columns that stand in an index are the same: the shorter statement will do, and no index page is written.
bool same_place(const JobRow& a, const JobRow& b) {
  return a.number == b.number && a.machine == b.machine && a.shaft_version == b.shaft_version && a.booked == b.booked &&
         a.released == b.released;
}

std::optional<std::string> due_of(const JobRow& row) {
  return row.due ? std::optional{text_of(*row.due)} : std::nullopt;
}
}  // namespace

std::int64_t SqliteStore::note_change(std::string_view what, const Id& id, const Id& entry) {
  const std::int64_t sequence = last_sequence() + 1;
  db_.run("insert into changes values (?, ?, ?, ?, ?)", workshop_, sequence, what, id, entry);
  return sequence;
}

void SqliteStore::write_job(const JobRow& row, const std::optional<JobRow>& old) {
  if (!old)
    db_.run("insert into jobs values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", workshop_, row.id, row.number,
            or_none(row.machine), or_none(row.shaft_version), stage_name(row.present), row.waiting, due_of(row),
            row.booked.ms, row.changed.ms, row.released, row.entries, row.head);
  else if (same_place(row, *old))
    db_.run(
        "update jobs set present = ?3, waiting = ?4, due = ?5, changed = ?6, entries = ?7, head = ?8 "
        "where workshop = ?1 and id = ?2",
        workshop_, row.id, stage_name(row.present), row.waiting, due_of(row), row.changed.ms, row.entries, row.head);
  else
    db_.run(
        "update jobs set number = ?3, machine = ?4, shaft_version = ?5, present = ?6, waiting = ?7, due = ?8, booked = "
        "?9, "
        "changed = ?10, released = ?11, entries = ?12, head = ?13 where workshop = ?1 and id = ?2",
        workshop_, row.id, row.number, or_none(row.machine), or_none(row.shaft_version), stage_name(row.present),
        row.waiting, due_of(row), row.booked.ms, row.changed.ms, row.released, row.entries, row.head);
}

void SqliteStore::write_entry(const EntryRow& row) {
  for (const Id& id : row.corrects) must_be_text(id);
  db_.run("insert into entries values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", workshop_, row.job, row.number,
          row.id, row.by, row.on, row.at.ms, row.follows, text_of(row.corrects), row.kind, row.body, row.before,
          row.hash, row.received.ms);
}

/// Which rows are there already, and the links of those that are not. Writes nothing.
SqliteStore::Chained SqliteStore::chained(const Append& append, int entries, std::string head) {
  Chained to;
  for (const EntryRow& given : append.rows) {
    if (given.job != append.job) refuse(failed, "an entry of another job: " + given.id);
    const auto twin = std::ranges::find(to.done.rows, given.id, &EntryRow::id);  // Twice in one append: sent twice.
    auto known = twin != to.done.rows.end() ? std::optional{*twin} : find_entry(given.id);
    if (known) {
      if (!same_content(*known, given)) refuse(exists, "another entry has the id " + given.id);
      if (twin == to.done.rows.end()) to.known.insert(given.id);
      to.done.rows.push_back(std::move(*known));
      continue;
    }
    EntryRow fresh = given;
    fresh.number = ++entries;
    fresh.before = head;
    fresh.hash = head = record::chain_hash(fresh);
    to.fresh.push_back(to.done.rows.size());
    to.done.rows.push_back(std::move(fresh));
  }
  to.done.fresh = static_cast<int>(to.fresh.size());
  to.done.head = std::move(head);
  return to;
}

Appended SqliteStore::append_all(const Append& append) {
  const std::optional<JobRow> old = find_job(append.job);
  const std::string head = old ? old->head : std::string{};
  auto [done, fresh, known] = chained(append, old ? old->entries : 0, head);
  if (done.fresh == 0) {
    // All of it was sent before: whatever else came with it was stored then, and the head may have moved since.
    if (!old) refuse(missing, "job " + append.job);
    done.sequence = last_sequence();
    return done;
  }
  if (append.only_if_head && *append.only_if_head != head) refuse(changed, "the head is another one");
  JobRow row = append.projection;
  row.id = append.job;
  row.entries = (old ? old->entries : 0) + done.fresh;
  row.head = done.head;
  write_job(row, old);
  for (const std::size_t i : fresh) {
    write_entry(done.rows[i]);
    done.sequence = note_change("job", append.job, done.rows[i].id);
  }
  for (const StockMove& move : append.moves)
    if (!known.contains(move.why)) write_move(move);
  for (const HourReading& reading : append.hours) write_hours(reading);
  if (!append.moves.empty() || !append.hours.empty()) done.sequence = last_sequence();
  return done;
}

Stored<Appended> SqliteStore::append(const Append& append) {
  return db_.writing([&] { return append_all(append); });
}

Stored<void> SqliteStore::put_projection(const JobRow& row) {
  return db_.writing([&] {
    const std::optional<JobRow> old = find_job(row.id);
    if (!old) refuse(missing, "job " + row.id);
    JobRow kept = row;
    kept.entries = old->entries;
    kept.head = old->head;
    write_job(kept, old);
    note_change("job", row.id);
  });
}

}  // namespace flatwise::store_sqlite
