#include "store/contract.h"

#include "record/canonical.h"
#include "record/chain.h"
#include "store/contract_rows.h"

namespace flatwise::store_contract {

void Report::expect(bool holds, std::string_view what, std::string_view file, int line) {
  if (holds) return;
  broken_.push_back(std::string{file.substr(file.rfind('/') + 1)} + ":" + std::to_string(line) + ": " +
                    std::string{what});
}

std::vector<Check> checks() {
  std::vector<Check> all;
  for (const auto part : {workshop_checks(), shop_checks(), machine_checks(), job_checks(), append_checks(),
                          text_checks(), several_checks()})
    all.insert(all.end(), part.begin(), part.end());
  return all;
}

job::Id id(int n) {
  std::string digits = std::to_string(n);
  digits.insert(0, 12 - digits.size(), '0');
  return "01900000-0000-7000-8000-" + digits;
}

Gauge gauge(const std::string& name) {
  Gauge g;
  g.id = name;
  g.use = Gauge::Use::wrench;
  g.kind = flatwise::Kind::torque;
  g.calibration_expanded_si = 0.02;
  g.relative = true;
  g.resolution_si = 0.5;
  g.calibrated_until = {2027, 3, 1};
  return g;
}

Workshop full_workshop() {
  Workshop w;
  w.name = "Bench of checks, Ångström & 工";
  w.invented = true;
  w.currency = "GBP";
  w.rate_per_hour = 48.25;
  w.room = celsius(18.5);
  w.room_half_width = kelvins(3);
  Gauge all = gauge("B1");
  all.use = Gauge::Use::bore_gauge;
  all.kind = flatwise::Kind::length;
  all.relative = false;
  all.repeatability_si = 0.7e-6;
  all.repeatability_readings = 11;
  all.expansion_per_kelvin = 10.8e-6;
  all.setting_ring = millimetres(38.1);
  all.setting_ring_expanded = micrometres(1);
  all.least_readable = millimetres(35);
  all.greatest_readable = millimetres(60.1);
  all.accepted_overdue_by = "Lead";
  all.place = {"workshop.toml", 12, 3, "id = \"B1\""};
  w.gauges = {all, gauge("A9")};
  w.presses = {{micrometres(31), millimetres(72), millimetres(17), kilonewtons(19.3)},
               {micrometres(0.1), millimetres(1.0 / 3.0), millimetres(17), newtons(1e-300)}};
  w.stock = {{"P-20", "Snap ring", 7, 2}, {"P-03", "", 0, 0}};
  w.origins = {{"workshop.room", {OriginKind::assumed, "workshop.room"}}, {"gauge.B1", {OriginKind::measured, ""}}};
  return w;
}

job::EntryRow note(int n, const std::string& says, int job) {
  job::EntryRow row;
  row.id = id(n);
  row.job = id(job);
  row.by = id(kPerson);
  row.on = "tablet at bay 2";
  row.at = {1'700'000'000'000 + n};
  row.kind = "note_written";
  row.body = R"({"text":)" + record::canonical_string(says) + "}";
  return row;
}

job::JobRow job_row(int job, std::int64_t booked_ms) {
  job::JobRow row;
  row.id = id(job);
  row.number = std::to_string(job);
  row.machine = id(kMachine);
  row.shaft_version = id(kVersion);
  row.present = job::Stage::booking_in;
  row.waiting = "bench";
  row.booked = {booked_ms};
  row.changed = {booked_ms};
  return row;
}

job::Append append_of(std::vector<job::EntryRow> rows, int job) {
  job::Append append;
  append.job = id(job);
  append.rows = std::move(rows);
  append.projection = job_row(job);
  return append;
}

std::unique_ptr<job::Store> furnished(Place& place, const job::Id& workshop) {
  auto made = place.make(workshop, full_workshop());
  if (!made) return nullptr;
  job::Store& store = **made;
  const bool all = store.put_person({id(kPerson), "Bench hand", job::Role::bench, true}) &&
                   store.put_customer({id(kCustomer), "Growers", "at the gate"}) &&
                   store.put_shaft({id(kVersion), id(kShaft), 0, "Top shaft", "rotors = 8\n", id(kPerson), {5}}, 0) &&
                   store.put_machine({id(kMachine), id(kCustomer), "Number two", id(kShaft), true});
  return all ? std::move(*made) : nullptr;
}

std::unique_ptr<job::Store> with_a_job(Place& place) {
  auto store = furnished(place);
  if (!store || !store->append(append_of({note(101, "one"), note(102, "two"), note(103, "three")}))) return nullptr;
  return store;
}

bool is_whole(job::Store& store, const job::Id& job) {
  const auto row = store.job(job);
  const auto rows = store.entries(job, 0);
  return row && rows && !rows->empty() && !record::verify_chain(*rows) &&
         row->entries == static_cast<int>(rows->size()) && row->head == rows->back().hash;
}

}  // namespace flatwise::store_contract
