// workshop.cc: the workshop with gauges, presses and stock; people and customers.
#include <algorithm>
#include <array>
#include <chrono>

#include "store/sqlite/store.h"
#include "store/sqlite/text.h"

namespace flatwise::store_sqlite {

using job::Customer;
using job::Person;
using job::Role;
using job::StockMove;
using enum StoreFault::Kind;

namespace {
constexpr std::array<std::string_view, 7> kUses{"bore_gauge", "thermometer", "length",         "feeler",
                                                "wrench",     "press_gauge", "vibration_meter"};
constexpr std::array<std::string_view, 3> kRoles{"bench", "lead", "owner"};

template <class Names>
int place_in(const Names& names, const std::string& name) {
  const auto it = std::ranges::find(names, name);
  if (it == names.end()) refuse(damaged, "no such word: " + name);
  return static_cast<int>(it - names.begin());
}

Kind kind_named(const std::string& name) {
  for (int i = 0; i < kKindCount; ++i)
    if (kind_name(static_cast<Kind>(i)) == name) return static_cast<Kind>(i);
  refuse(damaged, "no such kind: " + name);
}

std::optional<double> si_of(const std::optional<Length>& length) {
  return length ? std::optional{length->si()} : std::nullopt;
}
std::optional<Length> length_of(const std::optional<double>& si) {
  return si ? std::optional{Length::from_si(*si)} : std::nullopt;
}

Gauge gauge_of(const Query& row) {
  Gauge g;
  g.id = row.text(0);
  g.use = static_cast<Gauge::Use>(place_in(kUses, row.text(1)));
  g.kind = kind_named(row.text(2));
  g.calibration_expanded_si = row.real(3);
  g.relative = row.yes(4);
  g.resolution_si = row.real(5);
  g.repeatability_si = row.maybe_real(6);
  g.repeatability_readings = row.number(7);
  g.expansion_per_kelvin = row.real(8);
  g.setting_ring = length_of(row.maybe_real(9));
  g.setting_ring_expanded = Length::from_si(row.real(10));
  g.least_readable = length_of(row.maybe_real(11));
  g.greatest_readable = length_of(row.maybe_real(12));
  g.calibrated_until = day_of(row.text(13));
  g.accepted_overdue_by = row.maybe_text(14);
  g.place = place_of(row.text(15));
  return g;
}

job::Instant now() {
  using namespace std::chrono;
  return {duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count()};
}
}  // namespace

Stored<flatwise::Workshop> SqliteStore::workshop() {
  return db_.reading_several([this] {
    flatwise::Workshop w;
    Query row = db_.query(
        "select name, invented, currency, rate_per_hour, room, room_half_width, origins from workshops where workshop "
        "= ?",
        workshop_);
    if (!row.next()) refuse(missing, "workshop");
    w.name = row.text(0);
    w.invented = row.yes(1);
    w.currency = row.text(2);
    w.rate_per_hour = row.maybe_real(3);
    w.room = kelvin(row.real(4));
    w.room_half_width = kelvins(row.real(5));
    w.origins = origins_of(row.text(6));
    Query gauges = db_.query(
        "select id, used_as, kind, calibration_expanded, relative, resolution, repeatability, repeatability_readings, "
        "expansion_per_kelvin, setting_ring, setting_ring_expanded, least_readable, greatest_readable, "
        "calibrated_until, "
        "accepted_overdue_by, place from gauges where workshop = ? order by position, id",
        workshop_);
    while (gauges.next()) w.gauges.push_back(gauge_of(gauges));
    Query presses =
        db_.query("select interference, joint_diameter, width, force from presses where workshop = ? order by position",
                  workshop_);
    while (presses.next())
      w.presses.push_back({Length::from_si(presses.real(0)), Length::from_si(presses.real(1)),
                           Length::from_si(presses.real(2)), Force::from_si(presses.real(3))});
    Query stock = db_.query(
        "select part_number, name, on_shelf, on_order from stock_items where workshop = ? order by position, "
        "part_number",
        workshop_);
    while (stock.next()) w.stock.push_back({stock.text(0), stock.text(1), stock.number(2), stock.number(3)});
    return w;
  });
}

void SqliteStore::write_gauge(const Gauge& g, std::int64_t position) {
  db_.run(
      "insert or replace into gauges values (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, "
      "?17, ?18)",
      workshop_, g.id, position, kUses.at(static_cast<std::size_t>(g.use)), kind_name(g.kind),
      g.calibration_expanded_si, g.relative, g.resolution_si, g.repeatability_si, g.repeatability_readings,
      g.expansion_per_kelvin, si_of(g.setting_ring), g.setting_ring_expanded.si(), si_of(g.least_readable),
      si_of(g.greatest_readable), text_of(g.calibrated_until), g.accepted_overdue_by, text_of(g.place));
}

void SqliteStore::count_stock(const std::vector<StockItem>& stock) {
  std::vector<StockItem> there;
  {
    Query row = db_.query("select part_number, on_shelf, on_order from stock_items where workshop = ?", workshop_);
    while (row.next()) there.push_back({row.text(0), {}, row.number(1), row.number(2)});
  }
  const auto level = [](const std::vector<StockItem>& in, const std::string& part) {
    const auto it = std::ranges::find(in, part, &StockItem::part_number);
    return it == in.end() ? StockItem{} : *it;
  };
  const auto count = [&](const std::string& part) {
    const StockItem from = level(there, part), to = level(stock, part);
    if (from.on_shelf != to.on_shelf || from.on_order != to.on_order)
      write_move({random_id(), part, to.on_shelf - from.on_shelf, to.on_order - from.on_order, "counted", now()});
  };
  for (const StockItem& item : there)
    if (std::ranges::find(stock, item.part_number, &StockItem::part_number) == stock.end()) {
      count(item.part_number);
      db_.run("delete from stock_items where workshop = ? and part_number = ?", workshop_, item.part_number);
    }
  std::int64_t position = 0;
  for (const StockItem& item : stock) {
    count(item.part_number);
    db_.run("insert into stock_items values (?1, ?2, ?3, ?4, 0, 0) on conflict do update set position = ?3, name = ?4",
            workshop_, item.part_number, ++position, item.name);
  }
}

void SqliteStore::write_workshop(const flatwise::Workshop& w) {
  db_.run(
      "update workshops set name = ?2, invented = ?3, currency = ?4, rate_per_hour = ?5, room = ?6, room_half_width = "
      "?7, "
      "origins = ?8 where workshop = ?1",
      workshop_, w.name, w.invented, w.currency, w.rate_per_hour, w.room.kelvin(), w.room_half_width.kelvins(),
      text_of(w.origins));
  db_.run("delete from gauges where workshop = ?", workshop_);
  std::int64_t position = 0;
  for (const Gauge& gauge : w.gauges) {
    if (std::ranges::count(w.gauges, gauge.id, &Gauge::id) > 1) refuse(exists, "gauge twice: " + gauge.id);
    write_gauge(gauge, ++position);
  }
  db_.run("delete from presses where workshop = ?", workshop_);
  position = 0;
  for (const ShopPress& p : w.presses)
    db_.run("insert into presses values (?, ?, ?, ?, ?, ?)", workshop_, ++position, p.interference.si(),
            p.joint_diameter.si(), p.width.si(), p.force.si());
  for (const StockItem& item : w.stock)
    if (std::ranges::count(w.stock, item.part_number, &StockItem::part_number) > 1)
      refuse(exists, "part twice: " + item.part_number);
  count_stock(w.stock);
}

Stored<void> SqliteStore::put_workshop(const flatwise::Workshop& workshop) {
  return db_.writing([&] {
    write_workshop(workshop);
    note_change("workshop", {});
  });
}

Stored<void> SqliteStore::put_gauge(const Gauge& gauge) {
  return db_.writing([&] {
    std::int64_t position = 0;
    {
      Query own = db_.query("select position from gauges where workshop = ? and id = ?", workshop_, gauge.id);
      Query last = db_.query("select coalesce(max(position), 0) + 1 from gauges where workshop = ?", workshop_);
      position = own.next() ? own.whole(0) : last.next() ? last.whole(0) : 1;
    }
    write_gauge(gauge, position);
    note_change("gauge", gauge.id);
  });
}

Stored<std::vector<Person>> SqliteStore::people() {
  return db_.reading([this] {
    std::vector<Person> all;
    Query row = db_.query("select id, name, role, active from people where workshop = ? order by id", workshop_);
    while (row.next())
      all.push_back({row.text(0), row.text(1), static_cast<Role>(place_in(kRoles, row.text(2))), row.yes(3)});
    return all;
  });
}

Stored<void> SqliteStore::put_person(const Person& p) {
  return db_.writing([&] {
    db_.run(
        "insert into people values (?1, ?2, ?3, ?4, ?5) on conflict do update set name = ?3, role = ?4, active = ?5",
        workshop_, p.id, p.name, kRoles.at(static_cast<std::size_t>(p.role)), p.active);
    note_change("person", p.id);
  });
}

Stored<std::vector<Customer>> SqliteStore::customers() {
  return db_.reading([this] {
    std::vector<Customer> all;
    Query row = db_.query("select id, name, reach from customers where workshop = ? order by id", workshop_);
    while (row.next()) all.push_back({row.text(0), row.text(1), row.text(2)});
    return all;
  });
}

Stored<void> SqliteStore::put_customer(const Customer& c) {
  return db_.writing([&] {
    db_.run("insert into customers values (?1, ?2, ?3, ?4) on conflict do update set name = ?3, reach = ?4", workshop_,
            c.id, c.name, c.reach);
    note_change("customer", c.id);
  });
}

void SqliteStore::write_move(const StockMove& m) {
  {
    Query there = db_.query("select part_number, shelf, ordered, why from stock_moves where workshop = ? and id = ?",
                            workshop_, m.id);
    if (there.next()) {
      if (there.text(0) != m.part_number || there.number(1) != m.shelf || there.number(2) != m.order ||
          there.text(3) != m.why)
        refuse(exists, "another stock move has the id " + m.id);
      return;
    }
  }
  db_.run("insert into stock_moves values (?, ?, ?, ?, ?, ?, ?)", workshop_, m.id, m.part_number, m.shelf, m.order,
          m.why, m.at.ms);
  db_.run(
      "insert into stock_items select ?1, ?2, coalesce(max(position), 0) + 1, '', ?3, ?4 from stock_items where "
      "workshop = ?1 "
      "on conflict do update set on_shelf = on_shelf + ?3, on_order = on_order + ?4",
      workshop_, m.part_number, m.shelf, m.order);
  note_change("stock", m.part_number);
}

Stored<void> SqliteStore::move_stock(const StockMove& move) {
  return db_.writing([&] { write_move(move); });
}

}  // namespace flatwise::store_sqlite
