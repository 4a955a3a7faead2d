// How long saving one entry takes against a bare SQLite commit on the same disk, both with synchronous=FULL in WAL: run in turn, one
// of each, so that a busy disk falls on both.
//
//   build/release/bench/bench_record_save FOLDER [HOW MANY]
//
// FOLDER is that of a store that bench_record_fill made; the bare database stands beside it and is taken away again.
//
// Links: store_sqlite record
#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include "bench/measure.h"
#include "job/store.h"
#include "record/entry_json.h"
#include "record/uuid.h"
#include "store/sqlite/open.h"

namespace flatwise::bench {
namespace {

namespace fs = std::filesystem;

/// One table, one row of the size of an entry, one commit: the least that keeping something can cost with this database.
class Bare {
 public:
  explicit Bare(const fs::path& file)
      : db_{file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}, put_{db_, prepared(db_)} {}
  void save(const job::EntryRow& row) {
    db_.exec("begin immediate");
    put_.bind(1, ++number_);
    put_.bind(2, row.id + row.by + row.job + row.body + row.hash);
    put_.exec();
    put_.reset();
    db_.exec("commit");
  }

 private:
  static const char* prepared(SQLite::Database& db) {
    db.exec("pragma journal_mode = wal");
    db.exec("pragma synchronous = full");
    db.exec("create table kept (number integer primary key, row text not null)");
    return "insert into kept values (?, ?)";
  }
  SQLite::Database db_;
  SQLite::Statement put_;
  int number_ = 0;
};

struct Asked {
  job::Id job, entry;
};
std::vector<Asked> asked(const fs::path& folder) {
  std::vector<Asked> all;
  std::ifstream in{folder / "jobs.txt"};
  for (Asked one; in >> one.job >> one.entry;) all.push_back(one);
  if (all.empty()) stop("no jobs.txt in " + folder.string());
  return all;
}

std::int64_t now_ms() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::system_clock::now().time_since_epoch())
      .count();
}

job::Append note(job::Store& store, const Asked& at, const std::string& by, std::mt19937_64& bits) {
  std::array<std::uint8_t, 10> random{};
  for (auto& b : random) b = static_cast<std::uint8_t>(bits());
  job::Entry entry;
  entry.id = record::uuid7({now_ms()}, random);
  entry.job = at.job;
  entry.by = by;
  entry.on = "tablet 1";
  entry.at = {now_ms()};
  entry.follows = at.entry;
  entry.body = job::NoteWritten{job::at_rotor(4), job::Stage::booking_in, "Oil between rotors 3 and 4"};
  job::Append append;
  append.job = at.job;
  append.rows.push_back(record::to_row(entry));
  append.projection = got(store.job(at.job), "a job");
  return append;
}

double took_ms(const std::function<void()>& work) {
  const auto from = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count();
}

void show(const char* name, const std::vector<double>& ms) {
  std::printf("%-42s %10.3f %10.3f %10.3f %6zu\n", name, median(ms), quantile(ms, 0.99), std::ranges::min(ms),
              ms.size());
}

/// So that no page of the store waits for a disk that has not read it lately: the bare database is small and never does.
void read_once(const fs::path& file) {
  std::ifstream in{file, std::ios::binary};
  std::vector<char> block(1U << 20U);
  while (in.read(block.data(), static_cast<std::streamsize>(block.size()))) {}
}

int run(const fs::path& folder, int count) {
  const fs::path beside = folder / "bare.db";
  for (const char* end : {"", "-wal", "-shm"}) fs::remove(beside.string() + end);
  const auto jobs = asked(folder);
  std::string by;
  std::ifstream{folder / "author.txt"} >> by;
  read_once(store_sqlite::database_file(folder));
  const auto store = got(store_sqlite::open_store(folder), "the store");
  std::mt19937_64 bits{std::random_device{}()};
  std::vector<double> own, bare;
  {
    Bare peer{beside};
    for (int i = -5; i < count; ++i) {  // The first few are not counted: files grow, statements are made.
      const job::Append append = note(*store, jobs[bits() % jobs.size()], by, bits);
      const double a = took_ms([&] { got(store->append(append), "an entry"); });
      const double b = took_ms([&] { peer.save(append.rows.front()); });
      if (i < 0) continue;
      own.push_back(a);
      bare.push_back(b);
    }
  }
  for (const char* end : {"", "-wal", "-shm"}) fs::remove(beside.string() + end);
  std::printf("%-42s %10s %10s %10s %6s\n", "", "median ms", "p99 ms", "least ms", "runs");
  show("an entry saved in the store", own);
  show("peer: one row, one commit", bare);
  const double ratio = median(own) / median(bare);
  std::printf("    takes %.2f times as long as the bare commit (target 1.3): %s\n", ratio,
              ratio <= 1.3 ? "met" : "MISSED");
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main(int argc, char** argv) {
  if (argc < 2) flatwise::bench::stop("bench_record_save FOLDER [HOW MANY]");
  return flatwise::bench::run(argv[1], argc > 2 ? std::atoi(argv[2]) : 1000);
}
