// contract_jobs.cc: reading jobs and entries; the rows that lists show.
#include <array>

#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

job::Append booked(int job, std::int64_t at) {
  job::Append append = append_of({note(1000 + job, "in", job)}, job);
  append.projection = job_row(job, at);
  return append;
}

std::vector<job::Id> ids_of(const job::Stored<std::vector<job::JobRow>>& rows) {
  std::vector<job::Id> ids;
  if (rows)
    for (const auto& row : *rows) ids.push_back(row.id);
  return ids;
}

void job_row_is_kept_whole(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  job::Append append = append_of({note(101, "one")});
  append.projection.number = "31 / a";
  append.projection.present = job::Stage::test_run;
  append.projection.waiting = "customer";
  append.projection.due = Day{2026, 12, 24};
  append.projection.changed = {77};
  append.projection.released = true;
  const auto done = store->append(append);
  NEEDS(done);
  job::JobRow expected = append.projection;
  expected.entries = 1;
  expected.head = done->head;
  const auto by_id = store->job(id(1));
  HOLDS(by_id && same(*by_id, expected));
  const auto by_number = store->job_by_number("31 / a");
  HOLDS(by_number && same(*by_number, expected));
  HOLDS(refused(store->job(id(2)), Kind::missing));
  HOLDS(refused(store->job_by_number("31"), Kind::missing));
}

void projection_is_replaced_but_for_entries_and_head(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto before = store->job(id(1));
  NEEDS(before);
  job::JobRow row = *before;
  row.number = "other";
  row.machine = "";
  row.present = job::Stage::kit;
  row.waiting = "parts";
  row.due = Day{2027, 1, 2};
  row.booked = {5};
  row.changed = {6};
  row.released = true;
  job::JobRow lying = row;
  lying.entries = 77;
  lying.head = "not the head";
  HOLDS(store->put_projection(lying));
  auto now = store->job(id(1));
  HOLDS(now && same(*now, row));
  row.due = std::nullopt;
  row.waiting = "bench";
  HOLDS(store->put_projection(row));
  now = store->job(id(1));
  HOLDS(now && same(*now, row));
  HOLDS(store->job_by_number("other") && refused(store->job_by_number("1"), Kind::missing));
  HOLDS(refused(store->put_projection(job_row(2)), Kind::missing));
}

void job_numbers_are_taken_once(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  job::Append second = booked(2, 50);
  second.projection.number = "1";
  HOLDS(refused(store->append(second), Kind::exists));
  HOLDS(refused(store->job(id(2)), Kind::missing));
  HOLDS(store->entry(id(1002)) && !*store->entry(id(1002)));
  HOLDS(store->append(booked(2, 50)));
  job::JobRow taken = job_row(2, 50);
  taken.number = "1";
  HOLDS(refused(store->put_projection(taken), Kind::exists));
  const auto kept = store->job(id(2));
  HOLDS(kept && kept->number == "2");
}

void open_jobs_are_those_not_released(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  HOLDS(store->open_jobs() && store->open_jobs()->empty());
  HOLDS(store->append(booked(1, 300)) && store->append(booked(2, 100)) && store->append(booked(3, 200)));
  HOLDS((ids_of(store->open_jobs()) == std::vector{id(2), id(3), id(1)}));
  job::JobRow row = job_row(3, 200);
  row.released = true;
  HOLDS(store->put_projection(row));
  HOLDS((ids_of(store->open_jobs()) == std::vector{id(2), id(1)}));
  row.released = false;
  HOLDS(store->put_projection(row));
  HOLDS((ids_of(store->open_jobs()) == std::vector{id(2), id(3), id(1)}));
}

void jobs_of_a_machine_come_newest_first(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  HOLDS(store->put_machine({id(29), "", "Other", "", false}));
  for (const auto& [job, at] : {std::pair{1, 300}, {2, 100}, {3, 200}, {4, 300}}) HOLDS(store->append(booked(job, at)));
  job::Append other = booked(5, 400);
  other.projection.machine = id(29);
  HOLDS(store->append(other));
  const auto m = id(kMachine);
  HOLDS((ids_of(store->jobs_of(m, 50, {})) == std::vector{id(4), id(1), id(3), id(2)}));
  HOLDS((ids_of(store->jobs_of(m, 2, {})) == std::vector{id(4), id(1)}));
  HOLDS((ids_of(store->jobs_of(m, 50, job::Instant{300})) == std::vector{id(3), id(2)}));
  HOLDS((ids_of(store->jobs_of(m, 1, job::Instant{200})) == std::vector{id(2)}));
  HOLDS(store->jobs_of(m, 50, job::Instant{100}) && store->jobs_of(m, 50, job::Instant{100})->empty());
  HOLDS(store->jobs_of(m, 0, {}) && store->jobs_of(m, 0, {})->empty());
  HOLDS((ids_of(store->jobs_of(id(29), 50, {})) == std::vector{id(5)}));
  HOLDS(store->jobs_of(id(99), 50, {}) && store->jobs_of(id(99), 50, {})->empty());
}

void entries_come_in_order(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  const auto all = store->entries(id(1), 0);
  NEEDS(all && all->size() == 3);
  HOLDS(all->at(0).id == id(101) && all->at(1).id == id(102) && all->at(2).id == id(103));
  const auto later = store->entries(id(1), 2);
  HOLDS(later && later->size() == 1 && same(later->at(0), all->at(2)));
  HOLDS(store->entries(id(1), 3) && store->entries(id(1), 3)->empty());
  HOLDS(refused(store->entries(id(2), 0), Kind::missing));
  const auto one = store->entry(id(102));
  HOLDS(one && *one && same(**one, all->at(1)));
  HOLDS(store->entry(id(99)) && !*store->entry(id(99)));
}

void entry_is_kept_whole(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  job::EntryRow row = note(104, "four");
  row.follows = id(103);
  row.corrects = {id(102), id(101)};
  row.at = {1'763'978'400'123};
  row.on = "";
  const auto done = store->append(append_of({row}));
  NEEDS(done && done->rows.size() == 1);
  row.number = 4;
  row.before = store->entries(id(1), 2)->front().hash;
  row.hash = done->head;
  HOLDS(same(done->rows[0], row));
  const auto kept = store->entry(id(104));
  HOLDS(kept && *kept && same(**kept, row));
  HOLDS(is_whole(*store, id(1)));
}

void thousand_entries_stay_in_order(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  std::vector<job::EntryRow> rows;
  rows.reserve(1000);
  for (int i = 0; i < 1000; ++i) rows.push_back(note(5000 - i, std::to_string(i)));  // Not in the order of their ids.
  HOLDS(store->append(append_of(rows)));
  const auto all = store->entries(id(1), 0);
  NEEDS(all && all->size() == 1000);
  HOLDS(all->front().id == id(5000) && all->back().id == id(4001) && all->at(9).id == id(4991));
  HOLDS(is_whole(*store, id(1)));
}

constexpr std::array<Check, 8> kChecks{{
    {"job_row_is_kept_whole", job_row_is_kept_whole},
    {"projection_is_replaced_but_for_entries_and_head", projection_is_replaced_but_for_entries_and_head},
    {"job_numbers_are_taken_once", job_numbers_are_taken_once},
    {"open_jobs_are_those_not_released", open_jobs_are_those_not_released},
    {"jobs_of_a_machine_come_newest_first", jobs_of_a_machine_come_newest_first},
    {"entries_come_in_order", entries_come_in_order},
    {"entry_is_kept_whole", entry_is_kept_whole},
    {"thousand_entries_stay_in_order", thousand_entries_stay_in_order},
}};
}  // namespace

std::span<const Check> job_checks() { return kChecks; }

}  // namespace flatwise::store_contract
