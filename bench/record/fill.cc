// Makes a store with a million jobs, all invented, for bench/record/run.py: each booked in by its one entry, with its link of the
// chain; every twenty-fifth stays open, the others are released. Five machines have ten thousand jobs each, the rest is spread.
//
//   build/release/bench/bench_record_fill FOLDER [HOW MANY [PROJECT FOLDER]]
//
// The workshop and its lists go through the store's port; the rows of jobs go in by SQL in bulk, since a commit for each would take
// an hour. Beside the database it leaves jobs.txt (each with its entry), machines.txt and author.txt: ids to ask for, and by whom to write.
//
// Links: store_sqlite record definition
#include <SQLiteCpp/SQLiteCpp.h>
#include <SQLiteCpp/VariadicBind.h>

#include <array>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "bench/measure.h"
#include "definition/read.h"
#include "job/store.h"
#include "record/chain.h"
#include "record/entry_json.h"
#include "record/uuid.h"
#include "store/sqlite/open.h"

namespace flatwise::bench {
namespace {

namespace fs = std::filesystem;

constexpr std::int64_t kFirst = 1'262'304'000'000;  // 2010-01-01
constexpr int kBusyMachines = 5, kJobsOfBusy = 10'000, kMachines = 1000, kAskedFor = 20'000;

std::mt19937_64 random_bits{20'100'101};  // One seed: the same store every time.

job::Id id_at(std::int64_t ms) {
  std::array<std::uint8_t, 10> bytes{};
  for (auto& b : bytes) b = static_cast<std::uint8_t>(random_bits());
  return record::uuid7({ms}, bytes);
}

/// What a job points at.
struct Lists {
  job::Id person, shaft_version;
  std::vector<job::Id> machines;
};

Lists fill_lists(job::Store& store, const fs::path& demo) {
  Lists lists{id_at(kFirst), id_at(kFirst), {}};
  const job::Id shaft = id_at(kFirst), customer = id_at(kFirst);
  got(store.put_person({lists.person, "Bench", job::Role::bench, true}), "a person");
  got(store.put_customer({customer, "Lower fields", "invented"}), "a customer");
  job::ShaftVersion version;
  version.id = lists.shaft_version;
  version.shaft = shaft;
  version.name = "long nine";
  version.toml = text_of(demo / "long-nine.toml");
  version.by = lists.person;
  version.at = {kFirst};
  lists.shaft_version = got(store.put_shaft(version, 0), "a shaft").id;
  return lists;
}

/// Straight into the database, after the port has made it; statements that a bulk needs, nothing else.
class Bulk {
 public:
  explicit Bulk(const fs::path& folder)
      : db_{store_sqlite::database_file(folder).string(), SQLite::OPEN_READWRITE},
        workshop_{db_.execAndGet("select workshop from workshops").getInt()},
        sequence_{db_.execAndGet("select coalesce(max(sequence), 0) from changes").getInt64()} {
    db_.exec("pragma synchronous = off; pragma cache_size = -400000; pragma foreign_keys = off; begin");
  }

  void machines(Lists& lists) {
    const std::string customer = db_.execAndGet("select id from customers").getString();
    const std::string shaft = db_.execAndGet("select id from shafts").getString();
    SQLite::Statement put{db_, "insert into machines values (?, ?, ?, ?, ?, 1)"};
    for (int i = 0; i < kMachines; ++i) {
      lists.machines.push_back(id_at(kFirst + i));
      SQLite::bind(put, workshop_, lists.machines.back(), customer, "Loosener " + std::to_string(i + 1), shaft);
      put.exec();
      put.reset();
    }
  }

  void job(const job::JobRow& row, const job::EntryRow& entry) {
    SQLite::bind(job_, workshop_, row.id, row.number, row.machine, row.shaft_version,
                 std::string{job::stage_name(row.present)}, row.waiting, row.booked.ms, row.changed.ms,
                 row.released ? 1 : 0, row.entries, row.head);
    job_.exec();
    job_.reset();
    SQLite::bind(entry_, workshop_, entry.job, entry.number, entry.id, entry.by, entry.on, entry.at.ms, entry.follows,
                 entry.kind, entry.body, entry.before, entry.hash);
    entry_.exec();
    entry_.reset();
    SQLite::bind(change_, workshop_, ++sequence_, row.id, entry.id);
    change_.exec();
    change_.reset();
  }

  void end() {
    db_.exec("commit");
    db_.exec("analyze; pragma wal_checkpoint(truncate)");
  }

 private:
  SQLite::Database db_;
  int workshop_;
  std::int64_t sequence_;
  // By their names: a column that comes later has its own default here.
  static constexpr const char* kEntry =
      "insert into entries (workshop, job, number, id, author, device, at, follows, corrects, kind, body, previous, "
      "hash) values (?, ?, ?, ?, ?, ?, ?, ?, '[]', ?, ?, ?, ?)";
  SQLite::Statement job_{db_, "insert into jobs values (?, ?, ?, ?, ?, ?, ?, null, ?, ?, ?, ?, ?)"};
  SQLite::Statement entry_{db_, kEntry};
  SQLite::Statement change_{db_, "insert into changes values (?, ?, 'job', ?, ?)"};
};

job::EntryRow booking(const Lists& lists, const job::JobRow& row) {
  job::Entry entry;
  entry.id = id_at(row.booked.ms);
  entry.job = row.id;
  entry.by = lists.person;
  entry.on = "tablet 1";
  entry.at = row.booked;
  entry.body = job::BookedIn{row.number, row.machine, row.shaft_version, "Rotor 4 hot and noisy", {}, {}};
  job::EntryRow made = record::to_row(entry);
  made.number = 1;
  made.hash = record::chain_hash(made);
  return made;
}

job::JobRow job_row(const Lists& lists, int i) {
  job::JobRow row;
  row.booked = row.changed = {kFirst + std::int64_t{i} * 500'000};  // One every eight minutes: near to sixteen years.
  row.id = id_at(row.booked.ms);
  row.number = std::to_string(i + 1);
  const int in_twenty =
      i % 20;  // The busy ones first: until each has its ten thousand every twentieth job is one of theirs.
  const bool busy = in_twenty == 0 && i / 20 < kBusyMachines * kJobsOfBusy;
  const int machine = busy ? (i / 20) % kBusyMachines : kBusyMachines + i % (kMachines - kBusyMachines);
  row.machine = lists.machines[static_cast<std::size_t>(machine)];
  row.shaft_version = lists.shaft_version;
  row.released = i % 25 != 0;
  row.present = row.released ? job::Stage::release : job::Stage::booking_in;
  row.waiting = row.released ? "released" : "bench";
  row.entries = 1;
  return row;
}

/// A job and its entry.
using Ids = std::pair<job::Id, job::Id>;

void leave_ids(const fs::path& folder, const Lists& lists, std::vector<Ids> jobs) {
  std::ranges::shuffle(jobs, random_bits);
  jobs.resize(std::min<std::size_t>(jobs.size(), kAskedFor));
  std::ofstream asked{folder / "jobs.txt"};
  for (const auto& [job, entry] : jobs) asked << job << ' ' << entry << '\n';
  std::ofstream machines{folder / "machines.txt"};
  for (int i = 0; i < kBusyMachines; ++i) machines << lists.machines[static_cast<std::size_t>(i)] << '\n';
  std::ofstream{folder / "author.txt"} << lists.person << '\n';
}

int fill(const fs::path& folder, int count, const fs::path& project) {
  if (fs::exists(folder) && !fs::is_empty(folder)) stop(folder.string() + " is not empty");
  Lists lists;
  {
    const auto workshop =
        got(definition::read_workshop(text_of(project / "demo/workshop.toml"), "workshop"), "workshop");
    const auto store = got(store_sqlite::make_store(folder, id_at(kFirst), workshop), "the store");
    lists = fill_lists(*store, project / "demo");
  }
  Bulk bulk{folder};
  bulk.machines(lists);
  std::vector<Ids> jobs;
  for (int i = 0; i < count; ++i) {
    job::JobRow row = job_row(lists, i);
    const job::EntryRow entry = booking(lists, row);
    row.head = entry.hash;
    bulk.job(row, entry);
    jobs.emplace_back(row.id, entry.id);
  }
  bulk.end();
  leave_ids(folder, lists, std::move(jobs));
  std::printf("%d jobs in %s\n", count, folder.c_str());
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main(int argc, char** argv) {
  if (argc < 2) flatwise::bench::stop("bench_record_fill FOLDER [HOW MANY [PROJECT FOLDER]]");
  return flatwise::bench::fill(argv[1], argc > 2 ? std::atoi(argv[2]) : 1'000'000, argc > 3 ? argv[3] : ".");
}
