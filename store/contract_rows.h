// contract_rows.h: rows that the checks of the contract put into a store, and when two are the same. All of it is invented.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "job/store.h"
#include "store/contract.h"

namespace flatwise::store_contract {

// HOLDS notes a condition that is false and goes on; NEEDS leaves the check, as what comes after makes no sense.
#define HOLDS(condition) report.expect(static_cast<bool>(condition), #condition, __FILE__, __LINE__)
#define NEEDS(condition)                                            \
  do {                                                              \
    const bool condition_holds = static_cast<bool>(condition);      \
    report.expect(condition_holds, #condition, __FILE__, __LINE__); \
    if (!condition_holds) return;                                   \
  } while (false)

using Kind = job::StoreFault::Kind;
template <class T>
[[nodiscard]] bool refused(const job::Stored<T>& answer, Kind kind) {
  return !answer && answer.error().kind == kind;
}

/// Both answered, and with the same.
template <class T>
[[nodiscard]] bool agree(const job::Stored<T>& a, const job::Stored<T>& b) {
  return a && b && *a == *b;
}

/// A UUID in which `n` is easy to find; later ones sort after earlier ones.
[[nodiscard]] job::Id id(int n);
/// A workshop that uses every field.
[[nodiscard]] Workshop full_workshop();
[[nodiscard]] Gauge gauge(const std::string& id);
[[nodiscard]] job::EntryRow note(int n, const std::string& says, int job = 1);
[[nodiscard]] job::JobRow job_row(int job, std::int64_t booked_ms = 1'000);
[[nodiscard]] job::Append append_of(std::vector<job::EntryRow> rows, int job = 1);

[[nodiscard]] bool same(const Gauge& a, const Gauge& b);
[[nodiscard]] bool same(const Workshop& a, const Workshop& b);
[[nodiscard]] bool same(const job::JobRow& a, const job::JobRow& b);
[[nodiscard]] bool same(const job::EntryRow& a, const job::EntryRow& b);
[[nodiscard]] bool same(const job::ShaftVersion& a, const job::ShaftVersion& b);

inline constexpr int kPerson = 900, kCustomer = 910, kShaft = 920, kVersion = 921, kMachine = 930;
/// A store with a person, a customer, a shaft and a machine. None where any of it was refused.
[[nodiscard]] std::unique_ptr<job::Store> furnished(Place& place, const job::Id& workshop = id(1));
/// furnished, and job 1 with three notes (entries 101, 102, 103).
[[nodiscard]] std::unique_ptr<job::Store> with_a_job(Place& place);
/// The entries of a job are whole: numbered, chained, and as many and ended as its row says.
[[nodiscard]] bool is_whole(job::Store& store, const job::Id& job);

}  // namespace flatwise::store_contract
