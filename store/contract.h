// contract.h: what every adapter of job::Store must do, as checks that run on any of them. An adapter's test names a Place and
// expects that no check finds anything; tests/fault runs the same checks on adapters that are wrong on purpose and expects
// that they are found out.
#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "job/store.h"

namespace flatwise::store_contract {

/// An empty place for stores: a folder, a database. Each check gets one of its own.
class Place {
 public:
  Place() = default;
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;
  virtual ~Place() = default;
  /// Makes a workshop in this place; the first call makes the store.
  virtual job::Stored<std::unique_ptr<job::Store>> make(const job::Id& workshop, const Workshop& content) = 0;
  /// One more connection.
  virtual job::Stored<std::unique_ptr<job::Store>> open(const job::Id& workshop) = 0;
  /// Overwrites the kept bytes of a blob behind the store's back.
  virtual void spoil_blob(const std::string& hash) = 0;
};

/// What did not hold, with the place in the checks.
class Report {
 public:
  void expect(bool holds, std::string_view what, std::string_view file, int line);
  [[nodiscard]] const std::vector<std::string>& broken() const { return broken_; }

 private:
  std::vector<std::string> broken_;
};

struct Check {
  std::string_view name;
  void (*run)(Place& place, Report& report);
};

/// All of them: of the workshop, of its gauges and parts, of machines and shafts, of jobs and entries, of text and blobs, of several at once.
[[nodiscard]] std::vector<Check> checks();

// By subject, one file each: contract_workshop.cc, ...
[[nodiscard]] std::span<const Check> workshop_checks();
[[nodiscard]] std::span<const Check> shop_checks();
[[nodiscard]] std::span<const Check> machine_checks();
[[nodiscard]] std::span<const Check> job_checks();
[[nodiscard]] std::span<const Check> append_checks();
[[nodiscard]] std::span<const Check> text_checks();
[[nodiscard]] std::span<const Check> several_checks();

}  // namespace flatwise::store_contract
