// contract_shop.cc: calibrations of gauges, and the parts on the shelf with their moves.
#include <algorithm>
#include <array>

#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

using job::Calibration;
using job::MoveReason;

Calibration noted(int n, std::optional<Day> day, Day until, double expanded = 0.01, const std::string& gauge = "B1") {
  return {id(n), gauge, day, until, expanded, "The laboratory", "No. " + std::to_string(n), "", id(11), {n}};
}

void gauges_are_added_once(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  HOLDS((*made)->add_gauge(gauge("new"), {}));
  HOLDS(refused((*made)->add_gauge(gauge("new"), {}), Kind::exists));
  Gauge other = gauge("B1");
  other.calibrated_until = {2001, 1, 1};
  HOLDS(refused((*made)->add_gauge(other, noted(41, {}, {2001, 1, 1})), Kind::exists));
  HOLDS((*made)->calibrations() && (*made)->calibrations()->empty());
  const auto now = (*made)->workshop();
  NEEDS(now && now->gauges.size() == 3);
  HOLDS(same(now->gauges[0], full_workshop().gauges[0]));
  HOLDS(same(now->gauges[2], gauge("new")));
}

void calibrations_overwrite_nothing(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  const Gauge before = full_workshop().gauges[0];
  HOLDS((*made)->put_calibration(noted(41, Day{2027, 2, 20}, {2028, 2, 20}, 0.03)));
  HOLDS((*made)->put_calibration(noted(42, Day{2028, 2, 20}, {2029, 2, 20}, 0.04)));
  const auto now = (*made)->workshop();
  NEEDS(now && now->gauges.size() == 2 && now->gauges[0].certificates.size() == 3);
  const Gauge& gauge = now->gauges[0];
  HOLDS(gauge.calibrated_until == Day({2029, 2, 20}) && gauge.calibration_expanded_si == 0.04);
  HOLDS(!gauge.certificates[0].from && gauge.certificates[0].until == before.calibrated_until);
  HOLDS(gauge.certificates[0].expanded_si == before.calibration_expanded_si);
  HOLDS(gauge.certificates[1].from == Day({2027, 2, 20}) && gauge.certificates[1].until == Day({2028, 2, 20}));
  HOLDS(now->gauges[1].certificates.empty());
  HOLDS((*made)->put_workshop(*now));  // What was noted stands beside it.
  const auto again = (*made)->workshop();
  HOLDS(again && again->gauges[0].certificates.size() == 3 && same(again->gauges[0], gauge));
  const auto all = (*made)->calibrations();
  NEEDS(all && all->size() == 2);
  HOLDS(all->at(0).id == id(41) && all->at(0).who == "The laboratory" && all->at(0).certificate == "No. 41");
  HOLDS(all->at(0).by == id(11) && all->at(0).at == job::Instant{41} && all->at(1).id == id(42));
}

void calibrations_are_corrected_by_the_next(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  HOLDS((*made)->put_calibration(noted(41, Day{2027, 2, 20}, {2082, 2, 20})));
  Calibration right = noted(42, Day{2027, 2, 20}, {2028, 2, 20});
  right.corrects = id(41);
  HOLDS((*made)->put_calibration(right));
  right.id = id(43);
  right.corrects = id(99);
  HOLDS(refused((*made)->put_calibration(right), Kind::missing));
  const auto now = (*made)->workshop();
  NEEDS(now && now->gauges[0].certificates.size() == 2);
  HOLDS(now->gauges[0].calibrated_until == Day({2028, 2, 20}));
  HOLDS((*made)->calibrations() && (*made)->calibrations()->size() == 2);
}

void calibrations_sent_twice_stand_once(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  Calibration c = noted(41, {}, {2028, 2, 20});
  HOLDS((*made)->put_calibration(c));
  HOLDS((*made)->put_calibration(c));
  c.until = {2029, 2, 20};
  HOLDS(refused((*made)->put_calibration(c), Kind::exists));
  HOLDS(refused((*made)->put_calibration(noted(44, {}, {2028, 1, 1}, 1, "nobody's")), Kind::missing));
  HOLDS((*made)->calibrations() && (*made)->calibrations()->size() == 1);
}

void a_gauge_comes_in_with_its_certificate(Place& place, Report& report) {
  auto made = place.make(id(1), {});
  NEEDS(made);
  HOLDS((*made)->add_gauge(gauge("new"), noted(41, Day{2026, 3, 1}, {2027, 3, 1}, 0.02, "new")));
  const auto now = (*made)->workshop();
  NEEDS(now && now->gauges.size() == 1 && now->gauges[0].certificates.size() == 1);
  HOLDS(now->gauges[0].certificates[0].from == Day({2026, 3, 1}));
}

void stock_is_counted_against_what_it_was(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  const job::StockMove count{id(21), "P-20", 0, 0, "", {5}, id(11), MoveReason::counted, 4};
  HOLDS((*made)->move_stock(count));
  HOLDS((*made)->move_stock({id(22), "P-20", -1, 0, "bent", {6}, id(11), MoveReason::scrapped}));
  HOLDS((*made)->move_stock(count));  // Sent once more: it counts once.
  job::StockMove other = count;
  other.counted = 9;
  HOLDS(refused((*made)->move_stock(other), Kind::exists));
  const auto now = (*made)->workshop();
  HOLDS(now && now->stock[0].on_shelf == 3);
  const auto moves = (*made)->moves(10);
  NEEDS(moves && moves->size() == 3);  // With what the workshop began with: counted too.
  const auto by_id = [&](int n) { return std::ranges::find(*moves, id(n), &job::StockMove::id); };
  NEEDS(by_id(21) != moves->end() && by_id(22) != moves->end());
  HOLDS(by_id(21)->shelf == -3 && by_id(21)->counted == 4 && by_id(21)->by == id(11));
  HOLDS(by_id(22)->reason == MoveReason::scrapped && by_id(22)->why == "bent" && !by_id(22)->counted);
}

void moves_come_newest_first_and_no_more_than_asked(Place& place, Report& report) {
  auto made = place.make(id(1), {});
  NEEDS(made);
  for (int n = 0; n < 5; ++n) HOLDS((*made)->move_stock({id(20 + n), "P", 1, 0, "", {10 * ((n * 2) % 5)}}));
  const auto moves = (*made)->moves(3);
  NEEDS(moves && moves->size() == 3);
  HOLDS(moves->at(0).at > moves->at(1).at && moves->at(1).at > moves->at(2).at);
  HOLDS(moves->at(0).at == job::Instant{40});
}

void parts_are_named_without_moving_any(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  const auto before = (*made)->workshop();
  NEEDS(before);
  HOLDS((*made)->put_part({"P-20", "Ring", 99, 99, 3}, before->stock[0]));
  HOLDS((*made)->put_part({"P-77", "Shim", 99, 99, 0}, {}));
  const auto now = (*made)->workshop();
  NEEDS(now && now->stock.size() == 3);
  HOLDS(now->stock[0].name == "Ring" && now->stock[0].least == 3 && now->stock[0].on_shelf == 7);
  HOLDS(now->stock[2].part_number == "P-77" && now->stock[2].on_shelf == 0 && now->stock[2].on_order == 0);
}

// 2026-11-27: two who changed one part overwrote each other, and adding one that was there renamed it.
void a_part_that_was_changed_since_is_refused(Place& place, Report& report) {
  auto made = place.make(id(1), full_workshop());
  NEEDS(made);
  const auto seen = (*made)->workshop();
  NEEDS(seen);
  const StockItem ring{"P-20", "Ring", 0, 0, 3};
  HOLDS(refused((*made)->put_part(ring, {}), Kind::exists));
  HOLDS((*made)->put_part(ring, seen->stock[0]));
  HOLDS((*made)->put_part(ring, seen->stock[0]));  // Sent twice.
  HOLDS(refused((*made)->put_part({"P-20", "Snap", 0, 0, 5}, seen->stock[0]), Kind::changed));
  HOLDS(refused((*made)->put_part({"P-78", "Shim", 0, 0, 5}, ring), Kind::changed));
  HOLDS((*made)->move_stock({id(21), "P-79", 1, 0, "found", {1}}));
  HOLDS((*made)->put_part({"P-79", "Found", 0, 0, 1}, {}));
  const auto now = (*made)->workshop();
  NEEDS(now && now->stock.size() == 3);
  HOLDS(now->stock[0].name == "Ring" && now->stock[0].least == 3);
  HOLDS(now->stock[2].name == "Found" && now->stock[2].on_shelf == 1);
}

constexpr std::array<Check, 9> kChecks{{
    {"a_part_that_was_changed_since_is_refused", a_part_that_was_changed_since_is_refused},
    {"gauges_are_added_once", gauges_are_added_once},
    {"calibrations_overwrite_nothing", calibrations_overwrite_nothing},
    {"calibrations_are_corrected_by_the_next", calibrations_are_corrected_by_the_next},
    {"calibrations_sent_twice_stand_once", calibrations_sent_twice_stand_once},
    {"a_gauge_comes_in_with_its_certificate", a_gauge_comes_in_with_its_certificate},
    {"stock_is_counted_against_what_it_was", stock_is_counted_against_what_it_was},
    {"moves_come_newest_first_and_no_more_than_asked", moves_come_newest_first_and_no_more_than_asked},
    {"parts_are_named_without_moving_any", parts_are_named_without_moving_any},
}};
}  // namespace

std::span<const Check> shop_checks() { return kChecks; }

}  // namespace flatwise::store_contract
