// fault_test.cc: every statement of SQL and every call on a file fails once in turn, in every writing call of the store and in
// opening and closing it. After each: nothing half-saved, the store opens, and the same call then does what it should.
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <sstream>
#include <utility>

#include "store/contract_rows.h"
#include "store/sqlite/test_place.h"
#include "tests/fault/faulty_files.h"

namespace flatwise::fault {
namespace {

using store_contract::append_of;
using store_contract::id;
using store_contract::note;

template <class Row>
std::vector<Row> got(job::Stored<std::vector<Row>> rows) {
  EXPECT_TRUE(rows);
  return rows ? std::move(*rows) : std::vector<Row>{};
}

/// All that a store answers, as text: two pictures are the same where nothing differs.
std::string picture(job::Store& store) {
  std::ostringstream out;
  const auto w = store.workshop();
  const auto jobs = store.open_jobs();
  const auto changes = store.changes(0, 100'000);
  if (!w || !jobs || !changes) return "cannot be read";
  out << w->name << w->gauges.size() << ' ' << w->presses.size();
  for (const auto& item : w->stock) out << item.part_number << item.on_shelf << ',' << item.on_order << ';';
  for (const auto& person : got(store.people())) out << person.id << person.name << person.active;
  for (const auto& customer : got(store.customers())) out << customer.id << customer.name;
  for (const auto& machine : got(store.machines())) {
    out << machine.id << machine.name << got(store.lives(machine.id)).size();
    for (const auto& reading : got(store.hours(machine.id))) out << reading.id << reading.hours;
  }
  for (const auto& shaft : got(store.shafts())) out << shaft.id << shaft.version << shaft.toml;
  for (const auto& job : *jobs) {
    out << job.id << job.waiting << job.entries << job.head << store_contract::is_whole(store, job.id);
    for (const auto& entry : got(store.entries(job.id, 0))) out << entry.id << entry.hash;
  }
  for (const auto& change : *changes) out << change.sequence << change.what << change.id << change.entry << '\n';
  return out.str();
}

struct Action {
  const char* name;
  bool (*run)(job::Store& store, int n);  ///< `n`: another one every time it has succeeded.
};

template <class T>
bool done(const job::Stored<T>& answer) {
  return answer.has_value();
}

constexpr Action kActions[] = {
    {"append",
     [](job::Store& s, int n) {
       job::Append a = append_of({note(1000 + 2 * n, "a"), note(1001 + 2 * n, "b")});
       a.moves = {{id(500 + n), "P-20", -1, 1, id(1000 + 2 * n), {1}}};
       return done(s.append(a));
     }},
    {"append a long one, to a new job",
     [](job::Store& s, int n) {
       return done(s.append(append_of({note(2000 + n, std::string(20'000, 'x'), 10 + n)}, 10 + n)));
     }},
    {"put_projection",
     [](job::Store& s, int n) {
       job::JobRow row = store_contract::job_row(1, 77 + n);
       row.waiting = std::to_string(n);
       return done(s.put_projection(row));
     }},
    {"put_workshop",
     [](job::Store& s, int n) {
       Workshop w = store_contract::full_workshop();
       w.name = std::to_string(n);
       w.stock[0].on_shelf = 100 + n;
       return done(s.put_workshop(w));
     }},
    {"put_gauge", [](job::Store& s, int n) { return done(s.put_gauge(store_contract::gauge(std::to_string(n)))); }},
    {"add_gauge",
     [](job::Store& s, int n) {
       const std::string name = "added " + std::to_string(n);
       return done(s.add_gauge(store_contract::gauge(name),
                               job::Calibration{id(n + 5000), name, {}, {2027, 1, 1}, 0.1, "who", "c", "", "", {1}}));
     }},
    {"put_calibration",
     [](job::Store& s, int n) {
       return done(s.put_calibration({id(n + 6000), "B1", {}, {2027, 1, 1}, 0.1, "who", "c", "", "", {1}}));
     }},
    {"put_part", [](job::Store& s, int n) { return done(s.put_part({std::to_string(n), "p", 0, 0, n}, {})); }},
    {"put_person",
     [](job::Store& s, int n) {
       return done(s.put_person({id(n + 3000), "p" + std::to_string(n), job::Role::lead, true}));
     }},
    {"set_at_work",
     [](job::Store& s, int) {  // There and back again: each time it changes something.
       const auto all = s.people();
       if (!all) return false;
       const auto it = std::ranges::find(*all, id(store_contract::kPerson), &job::Person::id);
       return it != all->end() && done(s.set_at_work(it->id, !it->active));
     }},
    {"put_customer", [](job::Store& s, int n) { return done(s.put_customer({id(n + 3000), "c", ""})); }},
    {"move_stock", [](job::Store& s, int n) { return done(s.move_stock({id(n + 3000), "P-20", 1, 0, "w", {1}})); }},
    {"put_machine", [](job::Store& s, int n) { return done(s.put_machine({id(n + 3000), "", "m", "", false})); }},
    {"put_hours",
     [](job::Store& s, int n) {
       return done(s.put_hours({id(n + 3000), id(store_contract::kMachine), {2026, 1, 1}, 1.0, ""}));
     }},
    {"put_lives",
     [](job::Store& s, int n) {
       const auto m = id(store_contract::kMachine);
       return done(
           s.put_lives(m, std::vector<job::BearingLife>(static_cast<std::size_t>(n % 7), {m, 1, 0, {}, false, {}})));
     }},
    {"put_shaft",
     [](job::Store& s, int n) { return done(s.put_shaft({id(n + 3000), id(n + 4000), 0, "s", "t", "", {1}}, 0)); }},
};

struct Counts {
  int points = 0, refused = 0, stored_anyway = 0;
};

class Failing : public store_sqlite::Watch {
 public:
  int statement(std::string_view /*sql*/) override { return counted(statements ? code : 0); }
  int file(std::string_view /*call*/) override { return counted(statements ? 0 : code); }
  int fail_at = 0, seen = 0, code = 0;
  bool statements = true, failed = false;

 private:
  int counted(int with) {
    if (with == 0 || ++seen != fail_at) return 0;
    failed = true;
    return with;
  }
};

/// One action with the n-th call failing, for n = 1, 2, ... until none fails any more.
template <class Arm, class Disarm>
Counts fail_each(const Action& action, const store_sqlite::Options& options, int* n, const Arm& arm,
                 const Disarm& disarm) {
  store_sqlite::FolderPlace place{options};
  Counts counts;
  if (!store_contract::with_a_job(place)) ADD_FAILURE() << "no store to begin with";
  for (int at = 1; at < 500; ++at) {
    auto store = place.open(id(1));  // Fresh: statements are prepared and the log is opened within the call as well.
    EXPECT_TRUE(store) << action.name << ": does not open";
    if (!store) return counts;
    const std::string before = picture(**store);
    arm(at);
    const bool stored = action.run(**store, ++*n);
    const bool failed = disarm();
    const std::string after = picture(**store);
    EXPECT_NE(after, "cannot be read") << action.name << " at " << at;
    if (!failed) return counts;  // It has not come to it: every call of the action had its turn.
    ++counts.points;
    ++(stored ? counts.stored_anyway : counts.refused);
    EXPECT_EQ(after == before, !stored) << action.name << ": half-saved, or lost, at call " << at;
    EXPECT_TRUE(stored || action.run(**store, *n)) << action.name << ": not the second time, at call " << at;
    const std::string now = picture(**store);
    EXPECT_NE(now, before) << action.name << " at " << at;
    store->reset();
    auto again = place.open(id(1));
    EXPECT_TRUE(again && picture(**again) == now) << action.name << ": not the same when opened again, at call " << at;
  }
  ADD_FAILURE() << action.name << " does not come to an end";
  return counts;
}

TEST(Fault, each_statement_fails_once) {
  Failing watch;
  Counts all;
  int n = 0;
  for (const int code : {SQLITE_IOERR, SQLITE_FULL, SQLITE_BUSY, SQLITE_INTERRUPT})
    for (const Action& action : kActions) {
      const Counts counts = fail_each(
          action, {.watch = &watch}, &n,
          [&](int at) { watch.fail_at = at, watch.seen = 0, watch.code = code, watch.failed = false; },
          [&] { return watch.code = 0, watch.failed; });
      EXPECT_GE(counts.points, 4) << action.name;  // begin, look, write, commit.
      EXPECT_EQ(counts.stored_anyway, 0) << action.name;
      all.points += counts.points;
      all.refused += counts.refused;
    }
  std::printf("statements failed in turn: %d, refused whole: %d\n", all.points, all.refused);
}

TEST(Fault, each_call_on_the_database_file_fails_once) {
  Counts all;
  int n = 0;
  for (const int code : {SQLITE_IOERR_WRITE, SQLITE_FULL})
    for (const Action& action : kActions) {
      const Counts counts = fail_each(
          action, {.vfs = faulty_files()}, &n, [&](int at) { faults() = {at, code, 0, false}; },
          [] { return std::exchange(faults(), {}).failed; });
      EXPECT_GE(counts.points, 3) << action.name;  // Header of the log, a page, the disk.
      all.points += counts.points;
      all.refused += counts.refused;
      all.stored_anyway += counts.stored_anyway;
    }
  std::printf("calls on the database's files failed in turn: %d, refused whole: %d, stored all the same: %d\n",
              all.points, all.refused, all.stored_anyway);
}

TEST(Fault, each_call_fails_once_in_making_opening_and_closing) {
  int points = 0;
  for (const int code : {SQLITE_IOERR_WRITE, SQLITE_FULL}) {
    for (int at = 1; at < 1000; ++at) {
      store_sqlite::FolderPlace place{{.vfs = faulty_files()}};
      faults() = {at, code, 0, false};
      auto store = store_contract::with_a_job(place);
      bool failed = faults().failed;
      const std::string before = store ? picture(*store) : std::string{};
      store.reset();  // Closing brings the log into the database: what fails there may lose nothing.
      failed = faults().failed;
      faults() = {};
      if (!failed) break;
      ++points;
      auto again = place.open(id(1));
      EXPECT_TRUE(before.empty() || (again && picture(**again) == before)) << "lost by closing, at call " << at;
      if (again) continue;
      EXPECT_EQ(again.error().kind, job::StoreFault::Kind::missing) << "half-made at call " << at;
      EXPECT_TRUE(store_contract::with_a_job(place)) << "cannot be made after a failure at call " << at;
    }
  }
  EXPECT_GT(points, 30);
  std::printf("calls failed in turn in making, opening and closing: %d\n", points);
}

TEST(Fault, each_call_on_a_photo_fails_once) {
  int points = 0;
  for (const int code : {EIO, ENOSPC}) {
    Failing watch;
    watch.statements = false;
    store_sqlite::FolderPlace place{{.watch = &watch}};
    auto store = store_contract::furnished(place);
    ASSERT_TRUE(store);
    for (int at = 1;; ++at) {
      const std::string bytes(3'000'000, static_cast<char>('a' + at % 20));
      const std::string photo = bytes + std::to_string(at);
      watch.fail_at = at, watch.seen = 0, watch.code = code, watch.failed = false;
      const auto kept = store->put_blob(photo);
      watch.code = 0;
      if (!watch.failed) break;
      ++points;
      ASSERT_FALSE(kept) << at;
      EXPECT_EQ(kept.error().kind, code == ENOSPC ? job::StoreFault::Kind::full : job::StoreFault::Kind::failed);
      const auto again = store->put_blob(photo);
      ASSERT_TRUE(again) << at;
      EXPECT_EQ(store->blob(*again).value_or(""), photo);
      for (const auto& file : std::filesystem::directory_iterator{place.folder() / "blobs"})
        EXPECT_TRUE(file.is_directory()) << "left behind: " << file.path();
    }
  }
  EXPECT_GT(points, 20);
  std::printf("calls on a photo's file failed in turn: %d\n", points);
}

}  // namespace
}  // namespace flatwise::fault
