// contract_machines.cc: machines, their hours and bearings' lives; shafts and their versions.
#include <array>

#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

void machines_are_not_overwritten(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  HOLDS(store->put_machine({id(29), "", "Bare", "", false}));
  const auto there = store->machine(id(kMachine));
  NEEDS(there);
  const auto before = store->last_change();
  HOLDS(store->put_machine(*there));
  job::Machine other = *there;
  other.name = "Renamed";
  HOLDS(refused(store->put_machine(other), Kind::exists));
  other = *there;
  other.customer.clear();
  HOLDS(refused(store->put_machine(other), Kind::exists));
  other = *there;
  other.invented = !other.invented;
  HOLDS(refused(store->put_machine(other), Kind::exists));
  HOLDS(agree(before, store->last_change()));
  const auto all = store->machines();
  NEEDS(all && all->size() == 2);
  HOLDS(all->at(0).id == id(29) && all->at(0).customer.empty() && all->at(0).shaft.empty());
  HOLDS(all->at(1).name == there->name && all->at(1).customer == id(kCustomer) && all->at(1).shaft == id(kShaft));
}

void machine_points_at_what_is_there(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  HOLDS(refused(store->machine(id(99)), Kind::missing));
  HOLDS(refused(store->put_machine({id(31), id(99), "No such customer", "", false}), Kind::missing));
  HOLDS(refused(store->put_machine({id(31), "", "No such shaft", id(99), false}), Kind::missing));
  HOLDS(refused(store->machine(id(31)), Kind::missing));
}

void hours_are_a_log(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  const job::HourReading late{id(51), id(kMachine), {2026, 11, 2}, 1862.5, "clock changed"};
  const job::HourReading early{id(52), id(kMachine), {2025, 9, 30}, 1400, ""};
  HOLDS(store->put_hours(late));
  HOLDS(store->put_hours(early));
  HOLDS(store->put_hours(late));
  job::HourReading other = late;
  other.hours = 1;
  HOLDS(refused(store->put_hours(other), Kind::exists));
  other = early;
  other.id = id(53);
  other.machine = id(99);
  HOLDS(refused(store->put_hours(other), Kind::missing));
  const auto all = store->hours(id(kMachine));
  NEEDS(all && all->size() == 2);
  HOLDS(all->at(0).id == id(52) && all->at(0).day == (Day{2025, 9, 30}) && all->at(0).hours == 1400);
  HOLDS(all->at(1).id == id(51) && all->at(1).hours == 1862.5 && all->at(1).note == "clock changed");
  HOLDS(all->at(1).machine == id(kMachine));
}

void hours_are_corrected_and_stay(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  const job::HourReading wrong{id(52), id(kMachine), {2026, 11, 2}, 99'999, "", id(kPerson), "", {20}};
  const job::HourReading right{id(51), id(kMachine), {2026, 11, 2}, 1862.5, "misread", id(kPerson), id(52), {30}};
  HOLDS(refused(store->put_hours(right), Kind::missing));
  HOLDS(store->put_hours(wrong));
  HOLDS(store->put_hours(right));
  job::HourReading again = right;
  again.at = {99};
  HOLDS(store->put_hours(again));
  again.by.clear();
  HOLDS(refused(store->put_hours(again), Kind::exists));
  again = right;
  again.corrects.clear();
  HOLDS(refused(store->put_hours(again), Kind::exists));
  again = right;
  again.id = id(53);
  HOLDS(refused(store->put_hours(again), Kind::exists));  // It is corrected already.
  again.corrects.clear();
  again.by = id(99);
  HOLDS(refused(store->put_hours(again), Kind::missing));
  const auto all = store->hours(id(kMachine));
  NEEDS(all && all->size() == 2);
  HOLDS(all->at(0).id == id(52) && all->at(0).at.ms == 20 && all->at(0).corrects.empty());
  HOLDS(all->at(1).id == id(51) && all->at(1).at.ms == 30 && all->at(1).corrects == id(52));
  HOLDS(all->at(0).by == id(kPerson) && all->at(1).by == id(kPerson) && all->at(1).hours == 1862.5);
}

void lives_are_replaced(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  const auto m = id(kMachine);
  HOLDS(store->put_lives(m, {{m, 3, 0, 812.5, true, 700.0}, {m, 3, 812.5, std::nullopt, false, std::nullopt}}));
  auto all = store->lives(m);
  NEEDS(all && all->size() == 2);
  HOLDS(all->at(0).rotor == 3 && all->at(0).to_hours == 812.5 && all->at(0).failed &&
        all->at(0).last_sound_hours == 700.0);
  HOLDS(all->at(1).from_hours == 812.5 && !all->at(1).to_hours && !all->at(1).failed && !all->at(1).last_sound_hours);
  HOLDS(store->put_lives(m, {{m, 1, 0, 5.0, false, std::nullopt}}));
  all = store->lives(m);
  HOLDS(all && all->size() == 1 && all->at(0).rotor == 1);
  HOLDS(refused(store->put_lives(id(99), {}), Kind::missing));
  HOLDS(refused(store->put_lives(m, {{m, 1, 0, 1.0, false, {}}, {id(99), 1, 0, 1.0, false, {}}}), Kind::failed));
  all = store->lives(m);
  HOLDS(all && all->size() == 1 && all->at(0).to_hours == 5.0);
}

void shafts_have_versions(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  const job::ShaftVersion second{id(61), id(kShaft), 99, "Top shaft, nine", "rotors = 9\n", id(kPerson), {6}};
  const auto kept = store->put_shaft(second, 1);
  NEEDS(kept);
  HOLDS(kept->version == 2);
  HOLDS(store->put_shaft({id(60), id(62), 0, "Other", "", "", {7}}, 0));
  const auto newest = store->shafts();
  NEEDS(newest && newest->size() == 2);
  HOLDS(newest->at(0).id == id(60) && newest->at(0).version == 1 && newest->at(0).by.empty());
  HOLDS(same(newest->at(1), *kept));
  const auto first = store->shaft_version(id(kVersion));
  HOLDS(first && first->version == 1 && first->toml == "rotors = 8\n" && first->at.ms == 5);
  HOLDS(refused(store->shaft_version(id(99)), Kind::missing));
}

void shaft_that_moved_on_is_refused(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  const job::ShaftVersion next{id(61), id(kShaft), 0, "Two", "two", id(kPerson), {6}};
  HOLDS(refused(store->put_shaft(next, 0), Kind::changed));
  HOLDS(refused(store->put_shaft(next, 2), Kind::changed));
  HOLDS(refused(store->put_shaft({id(63), id(64), 0, "New", "", "", {6}}, 1), Kind::changed));
  HOLDS(refused(store->shaft_version(id(61)), Kind::missing));
  HOLDS(store->put_shaft(next, 1));
  job::ShaftVersion late = next;
  late.id = id(65);
  HOLDS(refused(store->put_shaft(late, 1), Kind::changed));
  HOLDS(store->shafts() && store->shafts()->size() == 1);
}

void shaft_sent_twice_is_stored_once(Place& place, Report& report) {
  auto store = furnished(place);
  NEEDS(store);
  const job::ShaftVersion next{id(61), id(kShaft), 0, "Two", "two", id(kPerson), {6}};
  const auto once = store->put_shaft(next, 1);
  const auto twice = store->put_shaft(next, 1);
  HOLDS(once && twice && same(*once, *twice) && once->version == 2);
  job::ShaftVersion other = next;
  other.toml = "other";
  HOLDS(refused(store->put_shaft(other, 1), Kind::exists));
  HOLDS(refused(store->put_shaft(other, 2), Kind::exists));
  const auto kept = store->shaft_version(id(61));
  HOLDS(kept && kept->toml == "two");
}

constexpr std::array<Check, 8> kChecks{{
    {"machines_are_not_overwritten", machines_are_not_overwritten},
    {"machine_points_at_what_is_there", machine_points_at_what_is_there},
    {"hours_are_a_log", hours_are_a_log},
    {"hours_are_corrected_and_stay", hours_are_corrected_and_stay},
    {"lives_are_replaced", lives_are_replaced},
    {"shafts_have_versions", shafts_have_versions},
    {"shaft_that_moved_on_is_refused", shaft_that_moved_on_is_refused},
    {"shaft_sent_twice_is_stored_once", shaft_sent_twice_is_stored_once},
}};
}  // namespace

std::span<const Check> machine_checks() { return kChecks; }

}  // namespace flatwise::store_contract
