// contract_workshop.cc: the workshop, its gauges, people, customers and stock.
#include <array>

#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

void workshop_is_kept_whole(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  const auto first = (*made)->workshop();
  HOLDS(first && same(*first, full_workshop()));
  auto again = place.open(id(1));
  NEEDS(again);
  const auto second = (*again)->workshop();
  HOLDS(second && same(*second, full_workshop()));
}

void workshop_is_replaced_whole(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  Workshop other = full_workshop();
  other.name = "";
  other.rate_per_hour = std::nullopt;
  other.gauges = {gauge("C1"), gauge("A9")};
  other.presses.clear();
  other.origins.clear();
  other.stock = {{"P-99", "Seal", 3, 0}, {"P-20", "Snap ring, new", 1, 5}};
  HOLDS((*made)->put_workshop(other));
  auto now = (*made)->workshop();
  HOLDS(now && same(*now, other));
  HOLDS((*made)->put_workshop({}));
  now = (*made)->workshop();
  HOLDS(now && same(*now, Workshop{}));
}

void workshop_with_twins_is_refused(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  Workshop twins = full_workshop();
  twins.name = "other";
  twins.gauges = {gauge("G"), gauge("G")};
  HOLDS(refused((*made)->put_workshop(twins), Kind::exists));
  twins.gauges.clear();
  twins.stock = {{"P", "", 1, 0}, {"P", "", 2, 0}};
  HOLDS(refused((*made)->put_workshop(twins), Kind::exists));
  const auto now = (*made)->workshop();
  HOLDS(now && same(*now, full_workshop()));
}

void workshop_that_is_there_is_not_made_again(Place& place, Report& report) {
  NEEDS(place.make(id(1), full_workshop()));
  Workshop other;
  other.name = "other";
  HOLDS(refused(place.make(id(1), other), Kind::exists));
  HOLDS(refused(place.open(id(2)), Kind::missing));
  auto again = place.open(id(1));
  NEEDS(again);
  const auto now = (*again)->workshop();
  HOLDS(now && same(*now, full_workshop()));
}

void gauges_keep_their_place(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  Gauge first = full_workshop().gauges[0];
  first.calibrated_until = {2030, 1, 31};
  first.accepted_overdue_by = std::nullopt;
  HOLDS((*made)->put_gauge(first));
  HOLDS((*made)->put_gauge(gauge("A1")));
  const auto now = (*made)->workshop();
  NEEDS(now && now->gauges.size() == 3);
  HOLDS(same(now->gauges[0], first));
  HOLDS(same(now->gauges[1], gauge("A9")));
  HOLDS(same(now->gauges[2], gauge("A1")));
}

// 2026-11-27: a person put again under one id with another name took over all that the first had signed.
void people_stay_who_they_were(Place& place, Report& report) {
  auto made = place.make(id(1), {});
  NEEDS(made);
  HOLDS((*made)->people() && (*made)->people()->empty());
  const job::Person lead{id(12), "Lead", job::Role::lead, true};
  HOLDS((*made)->put_person(lead));
  HOLDS((*made)->put_person({id(11), "Owner", job::Role::owner, true}));
  HOLDS((*made)->put_person({id(13), "Gone", job::Role::bench, false}));
  const auto before = (*made)->last_change();
  HOLDS((*made)->put_person(lead));
  for (const job::Person& other : std::vector<job::Person>{{id(12), "Somebody else", job::Role::lead, true},
                                                           {id(12), "LEAD", job::Role::lead, true},
                                                           {id(12), "Lead", job::Role::owner, true},
                                                           {id(12), "Lead", job::Role::lead, false},
                                                           {id(14), "Lead", job::Role::bench, true},
                                                           {id(14), "  oWNER ", job::Role::bench, true}})
    HOLDS(refused((*made)->put_person(other), Kind::exists));
  HOLDS(agree(before, (*made)->last_change()));
  HOLDS((*made)->put_person({id(14), "gone", job::Role::bench, true}));
  HOLDS((*made)->put_person({id(15), "Lead", job::Role::bench, false}));
  const auto all = (*made)->people();
  NEEDS(all && all->size() == 5);
  HOLDS(all->at(0).id == id(11) && all->at(0).role == job::Role::owner && all->at(0).active);
  HOLDS(all->at(1).id == id(12) && all->at(1).name == "Lead" && all->at(1).role == job::Role::lead);
  HOLDS(all->at(1).active && !all->at(2).active);
}

void who_leaves_is_kept(Place& place, Report& report) {
  auto made = place.make(id(1), {});
  NEEDS(made);
  job::Store& store = **made;
  HOLDS(refused(store.set_at_work(id(99), false), Kind::missing));
  HOLDS(store.put_person({id(12), "Lead", job::Role::lead, true}));
  HOLDS(store.set_at_work(id(12), false));
  const auto last = store.last_change();
  HOLDS(store.set_at_work(id(12), false));  // Sent again.
  HOLDS(last && agree(store.last_change(), last));
  const auto all = store.people();
  NEEDS(all && all->size() == 1);
  HOLDS(!all->at(0).active && all->at(0).name == "Lead" && all->at(0).role == job::Role::lead);
  // The name is free, and then taken for who comes back.
  HOLDS(store.put_person({id(13), "lead", job::Role::bench, true}));
  HOLDS(refused(store.set_at_work(id(12), true), Kind::exists));
  HOLDS(store.set_at_work(id(13), false));
  HOLDS(store.set_at_work(id(12), true));
  HOLDS(store.people() && store.people()->at(0).active && !store.people()->at(1).active);
}

void customers_are_not_overwritten(Place& place, Report& report) {
  auto made = place.make(id(1), {});
  NEEDS(made);
  HOLDS((*made)->put_customer({id(12), "Second", "by letter"}));
  HOLDS((*made)->put_customer({id(11), "First", ""}));
  const auto before = (*made)->last_change();
  HOLDS((*made)->put_customer({id(11), "First", ""}));
  HOLDS(refused((*made)->put_customer({id(11), "First, renamed", ""}), Kind::exists));
  HOLDS(refused((*made)->put_customer({id(11), "First", "bell"}), Kind::exists));
  HOLDS(agree(before, (*made)->last_change()));
  const auto all = (*made)->customers();
  NEEDS(all && all->size() == 2);
  HOLDS(all->at(0).id == id(11) && all->at(0).name == "First" && all->at(0).reach.empty());
  HOLDS(all->at(1).id == id(12) && all->at(1).reach == "by letter");
}

void stock_is_the_sum_of_its_moves(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  HOLDS((*made)->move_stock({id(21), "P-20", -9, 4, "taken", {1}}));
  HOLDS((*made)->move_stock({id(22), "P-20", 4, -4, "came", {2}}));
  HOLDS((*made)->move_stock({id(23), "new part", 1, 0, "found", {3}}));
  const auto now = (*made)->workshop();
  NEEDS(now && now->stock.size() == 3);
  HOLDS(now->stock[0].part_number == "P-20" && now->stock[0].on_shelf == 2 && now->stock[0].on_order == 2);
  HOLDS(now->stock[0].name == "Snap ring");
  HOLDS(now->stock[1].part_number == "P-03" && now->stock[1].on_shelf == 0);
  HOLDS(now->stock[2].part_number == "new part" && now->stock[2].on_shelf == 1 && now->stock[2].name.empty());
}

void stock_moves_twice_count_once(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  const job::StockMove move{id(21), "P-20", 3, 0, "came", {1}};
  HOLDS((*made)->move_stock(move));
  HOLDS((*made)->move_stock(move));
  job::StockMove other = move;
  other.shelf = 4;
  HOLDS(refused((*made)->move_stock(other), Kind::exists));
  other = move;
  other.part_number = "P-03";
  HOLDS(refused((*made)->move_stock(other), Kind::exists));
  const auto now = (*made)->workshop();
  HOLDS(now && now->stock[0].on_shelf == 10 && now->stock[1].on_shelf == 0);
}

constexpr std::array<Check, 10> kChecks{{
    {"workshop_is_kept_whole", workshop_is_kept_whole},
    {"workshop_is_replaced_whole", workshop_is_replaced_whole},
    {"workshop_with_twins_is_refused", workshop_with_twins_is_refused},
    {"workshop_that_is_there_is_not_made_again", workshop_that_is_there_is_not_made_again},
    {"gauges_keep_their_place", gauges_keep_their_place},
    {"people_stay_who_they_were", people_stay_who_they_were},
    {"who_leaves_is_kept", who_leaves_is_kept},
    {"customers_are_not_overwritten", customers_are_not_overwritten},
    {"stock_is_the_sum_of_its_moves", stock_is_the_sum_of_its_moves},
    {"stock_moves_twice_count_once", stock_moves_twice_count_once},
}};
}  // namespace

std::span<const Check> workshop_checks() { return kChecks; }

}  // namespace flatwise::store_contract
