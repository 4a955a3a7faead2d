// stock.cc: what lies on the shelf: moves that are only added, and the level they come to.
#include <algorithm>
#include <chrono>

#include "job/entry_fields.h"
#include "store/sqlite/names.h"
#include "store/sqlite/store.h"

namespace flatwise::store_sqlite {

using job::MoveReason;
using job::StockMove;
using enum StoreFault::Kind;

namespace {
std::string_view name_of(MoveReason reason) { return job::fields::kMoveReasons.at(static_cast<std::size_t>(reason)); }

job::Instant now() {
  using namespace std::chrono;
  return {duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count()};
}

StockMove move_of(const Query& row) {
  StockMove m{row.text(0), row.text(1), row.number(2), row.number(3), row.text(4), {row.whole(5)}, row.text(6)};
  m.reason = static_cast<MoveReason>(place_in(job::fields::kMoveReasons, row.text(7)));
  if (!row.none(8)) m.counted = row.number(8);
  return m;
}

/// What its author sent; how far a count changed the level is the store's.
bool same(const StockMove& a, const StockMove& b) {
  return a.part_number == b.part_number && (a.counted || a.shelf == b.shelf) && a.order == b.order && a.why == b.why &&
         a.by == b.by && a.reason == b.reason && a.counted == b.counted;
}
}  // namespace

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
    db_.run(
        "insert into stock_items values (?1, ?2, ?3, ?4, 0, 0, ?5) on conflict do update set position = ?3, name = ?4, "
        "least = ?5",
        workshop_, item.part_number, ++position, item.name, item.least);
  }
}

/// What was sent twice moves once. True where it was there already.
bool SqliteStore::moved_already(const StockMove& m) {
  Query there = db_.query(
      "select id, part_number, shelf, ordered, why, at, author, reason, counted from stock_moves where workshop = ? "
      "and "
      "id = ?",
      workshop_, m.id);
  if (!there.next()) return false;
  if (!same(move_of(there), m)) refuse(exists, "another stock move has the id " + m.id);
  return true;
}

void SqliteStore::write_move(const StockMove& m) {
  if (moved_already(m)) return;
  int shelf = m.shelf;
  if (m.counted) {
    Query level =
        db_.query("select on_shelf from stock_items where workshop = ? and part_number = ?", workshop_, m.part_number);
    shelf = *m.counted - (level.next() ? level.number(0) : 0);
  }
  db_.run("insert into stock_moves values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", workshop_, m.id, m.part_number, shelf,
          m.order, m.why, m.at.ms, m.by, name_of(m.reason), m.counted);
  db_.run(
      "insert into stock_items select ?1, ?2, coalesce(max(position), 0) + 1, '', ?3, ?4, 0 from stock_items where "
      "workshop = ?1 "
      "on conflict do update set on_shelf = on_shelf + ?3, on_order = on_order + ?4",
      workshop_, m.part_number, shelf, m.order);
  note_change("stock", m.part_number);
}

Stored<void> SqliteStore::move_stock(const StockMove& move) {
  return db_.writing([&] { write_move(move); });
}

Stored<std::vector<StockMove>> SqliteStore::moves(int limit) {
  return db_.reading([&] {
    std::vector<StockMove> all;
    Query row = db_.query(
        "select id, part_number, shelf, ordered, why, at, author, reason, counted from stock_moves where workshop = ? "
        "order by at desc, id desc limit ?",
        workshop_, limit);
    while (row.next()) all.push_back(move_of(row));
    return all;
  });
}

Stored<void> SqliteStore::put_part(const StockItem& part, const std::optional<StockItem>& seen) {
  return db_.writing([&] {
    StockItem there;
    {
      Query row = db_.query("select name, least from stock_items where workshop = ? and part_number = ?", workshop_,
                            part.part_number);
      if (row.next()) there.name = row.text(0), there.least = row.number(1);
    }
    const auto says = [&](const StockItem& other) { return there.name == other.name && there.least == other.least; };
    if (!there.name.empty() && says(part)) return;  // Sent once more.
    if (!says(seen.value_or(StockItem{})))
      refuse(seen ? changed : exists, "part " + part.part_number + " is another one now");
    db_.run(
        "insert into stock_items select ?1, ?2, coalesce(max(position), 0) + 1, ?3, 0, 0, ?4 from stock_items where "
        "workshop = ?1 on conflict do update set name = ?3, least = ?4",
        workshop_, part.part_number, part.name, part.least);
    note_change("stock", part.part_number);
  });
}

}  // namespace flatwise::store_sqlite
