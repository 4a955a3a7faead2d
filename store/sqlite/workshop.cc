// workshop.cc: the workshop with its presses; people and customers. Gauges: gauges.cc; stock: stock.cc.
#include <algorithm>
#include <array>

#include "job/person_name.h"
#include "store/sqlite/names.h"
#include "store/sqlite/store.h"
#include "store/sqlite/text.h"

namespace flatwise::store_sqlite {

using job::Customer;
using job::Id;
using job::Person;
using job::Role;
using enum StoreFault::Kind;

namespace {
constexpr std::array<std::string_view, 3> kRoles{"bench", "lead", "owner"};

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
    w.gauges = read_gauges();
    Query presses =
        db_.query("select interference, joint_diameter, width, force from presses where workshop = ? order by position",
                  workshop_);
    while (presses.next())
      w.presses.push_back({Length::from_si(presses.real(0)), Length::from_si(presses.real(1)),
                           Length::from_si(presses.real(2)), Force::from_si(presses.real(3))});
    Query stock = db_.query(
        "select part_number, name, on_shelf, on_order, least from stock_items where workshop = ? order by position, "
        "part_number",
        workshop_);
    while (stock.next())
      w.stock.push_back({stock.text(0), stock.text(1), stock.number(2), stock.number(3), stock.number(4)});
    return w;
  });
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

namespace {

std::vector<Person> all_people(Connection& db, std::int64_t workshop) {
  std::vector<Person> all;
  Query row = db.query("select id, name, role, active from people where workshop = ? order by id", workshop);
  while (row.next())
    all.push_back({row.text(0), row.text(1), static_cast<Role>(place_in(kRoles, row.text(2))), row.yes(3)});
  return all;
}

bool same(const Person& a, const Person& b) { return a.name == b.name && a.role == b.role && a.active == b.active; }

/// Somebody at work here has that name, however it is written.
bool somebody_is_called(const std::string& name, const std::vector<Person>& all) {
  const std::string folded = job::folded_name(name);
  return std::ranges::any_of(
      all, [&](const Person& other) { return other.active && job::folded_name(other.name) == folded; });
}

}  // namespace

Stored<std::vector<Person>> SqliteStore::people() {
  return db_.reading([this] { return all_people(db_, workshop_); });
}

Stored<void> SqliteStore::put_person(const Person& p) {
  return db_.writing([&] {
    const std::vector<Person> all = all_people(db_, workshop_);
    if (const auto there = std::ranges::find(all, p.id, &Person::id); there != all.end()) {
      if (!same(*there, p)) refuse(exists, "another person has the id " + p.id);
      return;
    }
    if (p.active && somebody_is_called(p.name, all)) refuse(exists, "that name is taken");
    db_.run("insert into people values (?, ?, ?, ?, ?)", workshop_, p.id, p.name,
            kRoles.at(static_cast<std::size_t>(p.role)), p.active);
    note_change("person", p.id);
  });
}

Stored<void> SqliteStore::set_at_work(const Id& person, bool at_work) {
  return db_.writing([&] {
    const std::vector<Person> all = all_people(db_, workshop_);
    const auto it = std::ranges::find(all, person, &Person::id);
    if (it == all.end()) refuse(missing, "person " + person);
    if (it->active == at_work) return;
    if (at_work && somebody_is_called(it->name, all)) refuse(exists, "that name is taken");
    db_.run("update people set active = ? where workshop = ? and id = ?", at_work, workshop_, person);
    note_change("person", person);
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
    {
      Query there = db_.query("select name, reach from customers where workshop = ? and id = ?", workshop_, c.id);
      if (there.next()) {
        if (there.text(0) != c.name || there.text(1) != c.reach) refuse(exists, "another customer has the id " + c.id);
        return;
      }
    }
    db_.run("insert into customers values (?, ?, ?, ?)", workshop_, c.id, c.name, c.reach);
    note_change("customer", c.id);
  });
}

}  // namespace flatwise::store_sqlite
