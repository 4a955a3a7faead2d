// store.h: the port to where the record is kept. Rows are plain; bodies of entries are text (record/entry_json.h makes them).
// One adapter a database (store/sqlite); one contract suite runs on each (store/contract.h).
//
// A Store is one connection: it is used by one thread at a time. What append() and the other writing calls answer with
// 'stored' is on the disk.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "job/entry.h"

namespace flatwise::job {

/// Why the store could not do it. Nothing of the call was kept.
struct StoreFault {
  enum class Kind {
    missing,  ///< No such row in this workshop.
    exists,   ///< That id, or that number, is taken by something else.
    changed,  ///< It is not any more what the caller had seen (If-Match).
    busy,     ///< Somebody else writes; try again.
    full,     ///< No room on the disk.
    newer,    ///< Written by a newer program; left untouched.
    damaged,  ///< Not a store, or its content contradicts itself.
    failed,   ///< Anything else the system said.
  } kind = Kind::failed;
  std::string detail;  ///< For the log; never shown to a person as it is.
};
template <class T>
using Stored = tl::expected<T, StoreFault>;

struct Person {
  Id id;
  std::string name;
  Role role = Role::bench;
  bool active = true;
};
struct Customer {
  Id id;
  std::string name, reach;  ///< reach: telephone, address, in the shop's words.
};
struct Machine {
  Id id, customer;
  std::string name;
  Id shaft;  ///< Of the definition (not of a version).
  bool invented = false;
};
/// What an hour meter showed. Never changed: a wrong one is corrected by another (job/hours.h).
struct HourReading {
  Id id, machine;
  Day day;
  double hours = 0;
  std::string note;
  Id by{};        ///< Who read it; empty: nobody by name.
  Id corrects{};  ///< An earlier one of this machine that counts no more; empty: none.
  Instant at{};   ///< When it was noted; 0: not known.
};
/// One version of a shaft's definition, as typed.
struct ShaftVersion {
  Id id;     ///< Of this version.
  Id shaft;  ///< Of the shaft: the same for all versions.
  int version = 1;
  std::string name;
  std::string toml;
  Id by;
  Instant at;
};
/// A bearing's life in one rotor of one machine, as the workshop's log has it.
struct BearingLife {
  Id machine;
  int rotor = 0;
  double from_hours = 0;
  std::optional<double> to_hours;  ///< None: it runs.
  bool failed = false;             ///< How it ended; false: sound, or it runs.
  std::optional<double> last_sound_hours;
};
/// A certificate of a gauge as somebody noted it. Never changed: a wrong one is corrected by the next.
struct Calibration {
  Id id;
  std::string gauge;
  std::optional<Day> day;  ///< Of the calibration; none: not known.
  Day until;
  double expanded_si = 0;   ///< As Gauge::calibration_expanded_si.
  std::string who;          ///< Who calibrated it.
  std::string certificate;  ///< What its certificate says: number, place, remarks.
  Id corrects;              ///< An earlier one of this gauge that this one replaces; empty: none.
  Id by;                    ///< Who noted it; empty: nobody by name.
  Instant at;
};
/// Why pieces moved. `job`: an entry of a job did it.
enum class MoveReason { counted, job, ordered, received, scrapped };
struct StockMove {
  Id id;
  std::string part_number;
  int shelf = 0, order = 0;  ///< Change of what lies on the shelf and of what is on order.
  std::string why;           ///< Entry id, or a remark.
  Instant at;
  Id by{};  ///< Who; empty: nobody by name.
  MoveReason reason = MoveReason::counted;
  std::optional<int> counted{};  ///< So many lay there: `shelf` is worked out in the store, against what it had.
};

/// An entry as it is kept: who reads it into job::Entry is record/.
struct EntryRow {
  Id id, job, by;
  std::string on;
  Instant at;
  Id follows;
  std::vector<Id> corrects;
  std::string kind, body;  ///< Canonical JSON (record/chain.h).
  int number = 0;
  std::string before, hash;
  Instant received{};  ///< By the clock of who took it in; 0: not known.
};

/// What a list or the board shows of a job without folding it; made by the fold, may be dropped and made again.
struct JobRow {
  Id id, machine, shaft_version;
  std::string number;
  Stage present = Stage::booking_in;
  std::string waiting;  ///< job::Waiting by name.
  std::optional<Day> due;
  Instant booked, changed;
  bool released = false;
  int entries = 0;   ///< How many; the job's tag (ETag) with `head`.
  std::string head;  ///< Hash of the last.
};
/// What changed, in the order it was stored: for tablets that must catch up.
struct Change {
  std::int64_t sequence = 0;
  std::string what;  ///< "job", "machine", "shaft", "stock", "gauge", "person", "customer".
  Id id;             ///< Of the job, the machine, ...
  Id entry;          ///< For a job: the entry.
};

/// Entries to be stored together, or not at all.
struct Append {
  Id job;
  std::vector<EntryRow> rows;               ///< number, before and hash are filled in by the store.
  std::optional<std::string> only_if_head;  ///< Refused as `changed` when the head is another one.
  JobRow projection;                        ///< As it is after them; entries and head are filled in.
  std::vector<StockMove> moves;
  std::vector<HourReading>
      hours;  ///< What the entries bring into the logs of machines; their ids follow from the entries'.
};
struct Appended {
  std::vector<EntryRow> rows;  ///< As stored; those that were there already as they are.
  int fresh = 0;               ///< How many were not there before.
  std::string head;
  std::int64_t sequence = 0;  ///< Of the last change.
};

class Store {
 public:
  Store() = default;
  Store(const Store&) = delete;
  Store& operator=(const Store&) = delete;
  virtual ~Store() = default;

  // The workshop. One store may hold several; a Store speaks for the one it was opened for.
  [[nodiscard]] virtual Stored<Workshop> workshop() = 0;  ///< With gauges, presses and the stock as it is now.
  virtual Stored<void> put_workshop(
      const Workshop& workshop) = 0;  ///< All of it, gauges and presses too; stock as counted.
  virtual Stored<void> put_gauge(const Gauge& gauge) = 0;
  /// A gauge that is not there yet, with its first certificate where one is given. One of that name: `exists`.
  virtual Stored<void> add_gauge(const Gauge& gauge, const std::optional<Calibration>& first) = 0;
  virtual Stored<void> put_calibration(const Calibration& calibration) = 0;
  [[nodiscard]] virtual Stored<std::vector<Calibration>> calibrations() = 0;  ///< In the order noted, gauge by gauge.
  [[nodiscard]] virtual Stored<std::vector<Person>> people() = 0;
  /// People, customers and machines are added, never changed: who signed stays who he was. The same again is answered as stored,
  /// something else under that id is `exists`; so is a name that somebody at work here has, however it is written.
  virtual Stored<void> put_person(const Person& person) = 0;
  /// Somebody leaves, or is back: kept with all that he signed, and only offered while he is at work. Back under a name that somebody
  /// at work has by now: `exists`.
  virtual Stored<void> set_at_work(const Id& person, bool at_work) = 0;
  [[nodiscard]] virtual Stored<std::vector<Customer>> customers() = 0;
  virtual Stored<void> put_customer(const Customer& customer) = 0;
  virtual Stored<void> move_stock(const StockMove& move) = 0;
  [[nodiscard]] virtual Stored<std::vector<StockMove>> moves(int limit) = 0;  ///< Newest first.
  /// Name of a part and what should always lie there; what lies there stays as it is.
  /// `seen`: the part as the author had it before him; none: it is new to him. Where another name or least stands there now:
  /// `exists` without one, `changed` with one. A part that was only moved so far has neither, and is as good as new.
  virtual Stored<void> put_part(const StockItem& part, const std::optional<StockItem>& seen) = 0;

  // Machines and shafts.
  [[nodiscard]] virtual Stored<std::vector<Machine>> machines() = 0;
  [[nodiscard]] virtual Stored<Machine> machine(const Id& id) = 0;
  virtual Stored<void> put_machine(const Machine& machine) = 0;
  /// All of them, also those that were corrected; by day, and within it in the order noted.
  [[nodiscard]] virtual Stored<std::vector<HourReading>> hours(const Id& machine) = 0;
  virtual Stored<void> put_hours(const HourReading& reading) = 0;
  [[nodiscard]] virtual Stored<std::vector<BearingLife>> lives(const Id& machine) = 0;
  virtual Stored<void> put_lives(const Id& machine, const std::vector<BearingLife>& lives) = 0;
  [[nodiscard]] virtual Stored<std::vector<ShaftVersion>> shafts() = 0;  ///< The newest version of each.
  [[nodiscard]] virtual Stored<ShaftVersion> shaft_version(const Id& version) = 0;
  /// `seen`: the version the author had before him; 0 for a new shaft. Another newest version is `changed`.
  virtual Stored<ShaftVersion> put_shaft(ShaftVersion version, int seen) = 0;

  // Jobs and their entries.
  [[nodiscard]] virtual Stored<JobRow> job(const Id& id) = 0;
  [[nodiscard]] virtual Stored<JobRow> job_by_number(const std::string& number) = 0;
  [[nodiscard]] virtual Stored<std::vector<JobRow>> open_jobs() = 0;
  /// Newest first; `before`: only those booked before it.
  [[nodiscard]] virtual Stored<std::vector<JobRow>> jobs_of(const Id& machine, int limit,
                                                            std::optional<Instant> before) = 0;
  [[nodiscard]] virtual Stored<std::vector<EntryRow>> entries(const Id& job, int after_number) = 0;
  [[nodiscard]] virtual Stored<std::optional<EntryRow>> entry(const Id& id) = 0;
  /// Stores what is not there yet, chained and numbered in the order given; the first append makes the job.
  virtual Stored<Appended> append(const Append& append) = 0;
  virtual Stored<void> put_projection(const JobRow& row) = 0;  ///< entries and head are kept as they are.

  // Photos and recordings, by the SHA-256 of their bytes in hex.
  virtual Stored<std::string> put_blob(std::string_view bytes) = 0;
  [[nodiscard]] virtual Stored<std::string> blob(const std::string& hash) = 0;

  [[nodiscard]] virtual Stored<std::vector<Change>> changes(std::int64_t after, int limit) = 0;
  [[nodiscard]] virtual Stored<std::int64_t> last_change() = 0;
};

}  // namespace flatwise::job
