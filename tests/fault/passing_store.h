// passing_store.h: a store that passes every call on, to be made wrong in one thing; and a place that gives out such stores.
#pragma once

#include <functional>
#include <memory>
#include <utility>

#include "store/contract.h"
#include "store/sqlite/test_place.h"

namespace flatwise::fault {

template <class T>
using Stored = job::Stored<T>;

class PassingStore : public job::Store {
 public:
  explicit PassingStore(std::unique_ptr<job::Store> real) : real_{std::move(real)} {}

  Stored<Workshop> workshop() override { return real_->workshop(); }
  Stored<void> put_workshop(const Workshop& w) override { return real_->put_workshop(w); }
  Stored<void> put_gauge(const Gauge& g) override { return real_->put_gauge(g); }
  Stored<void> add_gauge(const Gauge& g, const std::optional<job::Calibration>& first) override {
    return real_->add_gauge(g, first);
  }
  Stored<void> put_calibration(const job::Calibration& c) override { return real_->put_calibration(c); }
  Stored<std::vector<job::Calibration>> calibrations() override { return real_->calibrations(); }
  Stored<std::vector<job::Person>> people() override { return real_->people(); }
  Stored<void> put_person(const job::Person& p) override { return real_->put_person(p); }
  Stored<void> set_at_work(const job::Id& p, bool at_work) override { return real_->set_at_work(p, at_work); }
  Stored<std::vector<job::Customer>> customers() override { return real_->customers(); }
  Stored<void> put_customer(const job::Customer& c) override { return real_->put_customer(c); }
  Stored<void> move_stock(const job::StockMove& m) override { return real_->move_stock(m); }
  Stored<std::vector<job::StockMove>> moves(int limit) override { return real_->moves(limit); }
  Stored<void> put_part(const StockItem& p, const std::optional<StockItem>& seen) override {
    return real_->put_part(p, seen);
  }
  Stored<std::vector<job::Machine>> machines() override { return real_->machines(); }
  Stored<job::Machine> machine(const job::Id& id) override { return real_->machine(id); }
  Stored<void> put_machine(const job::Machine& m) override { return real_->put_machine(m); }
  Stored<std::vector<job::HourReading>> hours(const job::Id& m) override { return real_->hours(m); }
  Stored<void> put_hours(const job::HourReading& h) override { return real_->put_hours(h); }
  Stored<std::vector<job::BearingLife>> lives(const job::Id& m) override { return real_->lives(m); }
  Stored<void> put_lives(const job::Id& m, const std::vector<job::BearingLife>& l) override {
    return real_->put_lives(m, l);
  }
  Stored<std::vector<job::ShaftVersion>> shafts() override { return real_->shafts(); }
  Stored<job::ShaftVersion> shaft_version(const job::Id& v) override { return real_->shaft_version(v); }
  Stored<job::ShaftVersion> put_shaft(job::ShaftVersion v, int seen) override {
    return real_->put_shaft(std::move(v), seen);
  }
  Stored<job::JobRow> job(const job::Id& id) override { return real_->job(id); }
  Stored<job::JobRow> job_by_number(const std::string& n) override { return real_->job_by_number(n); }
  Stored<std::vector<job::JobRow>> open_jobs() override { return real_->open_jobs(); }
  Stored<std::vector<job::JobRow>> jobs_of(const job::Id& m, int limit, std::optional<job::Instant> before) override {
    return real_->jobs_of(m, limit, before);
  }
  Stored<std::vector<job::EntryRow>> entries(const job::Id& j, int after) override { return real_->entries(j, after); }
  Stored<std::optional<job::EntryRow>> entry(const job::Id& id) override { return real_->entry(id); }
  Stored<job::Appended> append(const job::Append& a) override { return real_->append(a); }
  Stored<void> put_projection(const job::JobRow& r) override { return real_->put_projection(r); }
  Stored<std::string> put_blob(std::string_view b) override { return real_->put_blob(b); }
  Stored<std::string> blob(const std::string& h) override { return real_->blob(h); }
  Stored<std::vector<job::Change>> changes(std::int64_t after, int limit) override {
    return real_->changes(after, limit);
  }
  Stored<std::int64_t> last_change() override { return real_->last_change(); }

 protected:
  [[nodiscard]] job::Store& real() { return *real_; }

 private:
  std::unique_ptr<job::Store> real_;
};

/// Gives out stores of `Wrong`, which is built around a real one.
template <class Wrong>
class WrongPlace final : public store_contract::Place {
 public:
  Stored<std::unique_ptr<job::Store>> make(const job::Id& workshop, const Workshop& content) override {
    return wrapped(place_.make(workshop, content));
  }
  Stored<std::unique_ptr<job::Store>> open(const job::Id& workshop) override { return wrapped(place_.open(workshop)); }
  void spoil_blob(const std::string& hash) override { place_.spoil_blob(hash); }

 private:
  static Stored<std::unique_ptr<job::Store>> wrapped(Stored<std::unique_ptr<job::Store>> real) {
    if (!real) return real;
    return std::make_unique<Wrong>(std::move(*real));
  }
  store_sqlite::FolderPlace place_;
};

}  // namespace flatwise::fault
