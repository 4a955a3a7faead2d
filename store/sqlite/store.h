// store.h: job::Store on SQLite. One file a group of calls: workshop.cc, machines.cc, shafts.cc, jobs.cc, append.cc.
#pragma once

#include <cstdint>
#include <set>
#include <string>
#include <vector>

#include "job/store.h"
#include "store/sqlite/blobs.h"
#include "store/sqlite/connection.h"

namespace flatwise::store_sqlite {

template <class T>
using Stored = job::Stored<T>;

class SqliteStore final : public job::Store {
 public:
  SqliteStore(const std::string& file, int flags, const std::filesystem::path& blobs, const Options& options)
      : db_{file, flags, options}, blobs_{blobs, options.watch}, read_only_{options.mode == Mode::read_only} {}

  Stored<flatwise::Workshop> workshop() override;
  Stored<void> put_workshop(const flatwise::Workshop& workshop) override;
  Stored<void> put_gauge(const Gauge& gauge) override;
  Stored<void> add_gauge(const Gauge& gauge, const std::optional<job::Calibration>& first) override;
  Stored<void> put_calibration(const job::Calibration& calibration) override;
  Stored<std::vector<job::Calibration>> calibrations() override;
  Stored<std::vector<job::Person>> people() override;
  Stored<void> put_person(const job::Person& person) override;
  Stored<void> set_at_work(const job::Id& person, bool at_work) override;
  Stored<std::vector<job::Customer>> customers() override;
  Stored<void> put_customer(const job::Customer& customer) override;
  Stored<void> move_stock(const job::StockMove& move) override;
  Stored<std::vector<job::StockMove>> moves(int limit) override;
  Stored<void> put_part(const StockItem& part, const std::optional<StockItem>& seen) override;

  Stored<std::vector<job::Machine>> machines() override;
  Stored<job::Machine> machine(const job::Id& id) override;
  Stored<void> put_machine(const job::Machine& machine) override;
  Stored<std::vector<job::HourReading>> hours(const job::Id& machine) override;
  Stored<void> put_hours(const job::HourReading& reading) override;
  Stored<std::vector<job::BearingLife>> lives(const job::Id& machine) override;
  Stored<void> put_lives(const job::Id& machine, const std::vector<job::BearingLife>& lives) override;
  Stored<std::vector<job::ShaftVersion>> shafts() override;
  Stored<job::ShaftVersion> shaft_version(const job::Id& version) override;
  Stored<job::ShaftVersion> put_shaft(job::ShaftVersion version, int seen) override;

  Stored<job::JobRow> job(const job::Id& id) override;
  Stored<job::JobRow> job_by_number(const std::string& number) override;
  Stored<std::vector<job::JobRow>> open_jobs() override;
  Stored<std::vector<job::JobRow>> jobs_of(const job::Id& machine, int limit,
                                           std::optional<job::Instant> before) override;
  Stored<std::vector<job::EntryRow>> entries(const job::Id& job, int after_number) override;
  Stored<std::optional<job::EntryRow>> entry(const job::Id& id) override;
  Stored<job::Appended> append(const job::Append& append) override;
  Stored<void> put_projection(const job::JobRow& row) override;

  Stored<std::string> put_blob(std::string_view bytes) override;
  Stored<std::string> blob(const std::string& hash) override;

  Stored<std::vector<job::Change>> changes(std::int64_t after, int limit) override;
  Stored<std::int64_t> last_change() override;

  Connection& connection() { return db_; }
  Blobs& blobs() { return blobs_; }
  /// The workshop it speaks for: refuses `missing` where it is not there, `failed` where none is named and there are several.
  void speak_for(const job::Id& id);
  /// Makes a workshop without content; one that is there stays. Inside a transaction.
  void add_workshop(const job::Id& id);
  /// The same with its content; refuses `exists`.
  Stored<void> make_workshop(const job::Id& id, const flatwise::Workshop& content);

 private:
  // All inside a transaction of the caller.
  std::int64_t note_change(std::string_view what, const job::Id& id, const job::Id& entry = {});
  std::int64_t last_sequence();
  void write_workshop(const flatwise::Workshop& workshop);
  void write_gauge(const Gauge& gauge, std::int64_t position);
  std::vector<Gauge> read_gauges();
  void write_calibration(const job::Calibration& calibration, std::int64_t number);  ///< 0: it came in with it.
  std::vector<job::Calibration> read_calibrations();
  void count_stock(const std::vector<StockItem>& stock);
  bool moved_already(const job::StockMove& move);
  void write_move(const job::StockMove& move);
  void write_hours(const job::HourReading& reading);
  std::optional<job::JobRow> find_job(const job::Id& id);
  void write_job(const job::JobRow& row, const std::optional<job::JobRow>& old);
  std::optional<job::EntryRow> find_entry(const job::Id& id);
  void write_entry(const job::EntryRow& row);
  struct Chained {
    job::Appended done;
    std::vector<std::size_t> fresh;  ///< Places in done.rows of what was not there.
    std::set<job::Id> known;         ///< What was there before this append.
  };
  Chained chained(const job::Append& append, int entries, std::string head);
  job::Appended append_all(const job::Append& append);

  Connection db_;
  Blobs blobs_;
  bool read_only_;
  std::int64_t workshop_ = 0;
};

}  // namespace flatwise::store_sqlite
