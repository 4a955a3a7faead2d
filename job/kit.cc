#include "job/kit.h"

#include <algorithm>

namespace flatwise::job {
namespace {

int ring_count(SnapRings rings) { return rings == SnapRings::none ? 0 : rings == SnapRings::one ? 1 : 2; }

/// Old rings that go back on: said sound, never more than the rotor has.
int rings_reused(int rotor, int rings, const std::vector<ReusedRing>& reused) {
  const auto sound = std::ranges::count_if(
      reused, [&](const ReusedRing& r) { return r.rotor == rotor && r.sound.value == Reply::yes; });
  return std::min(rings, static_cast<int>(sound));
}

Tray tray_of(const Shaft& shaft, int number, const std::vector<ReusedRing>& reused) {
  const Rotor& rotor = shaft.rotor(number);
  Tray tray{number, {}};
  if (shaft.spec().policies.renew_disturbed) tray.items.push_back({"set", 1, 1, false, rotor.adapter_set});
  if (rotor.seals > 0) tray.items.push_back({"seal", rotor.seals, rotor.seals, false, rotor.seal});
  const int rings = ring_count(rotor.snap_rings);
  if (rings > 0)
    tray.items.push_back({"snap_ring", rings, rings - rings_reused(number, rings, reused), true, rotor.snap_ring});
  return tray;
}

int taken_of(int rotor, const KitItem& item, const std::vector<Counted>& counted) {
  const Counted* found = find_counted(counted, rotor, item.item);
  return found == nullptr ? 0 : std::min(item.fresh, new_among(item, found->laid.value));
}

void add_wanted(std::vector<PartWanted>& rows, const KitItem& item, int taken) {
  const auto same = [&](const PartWanted& row) {
    return row.item == item.item && row.part.part_number == item.part.part_number;
  };
  auto it = std::ranges::find_if(rows, same);
  if (it == rows.end()) it = rows.insert(rows.end(), PartWanted{item.part, item.item, 0, 0, {}, {}, {}});
  it->wanted += item.fresh;
  it->taken += taken;
}

}  // namespace

const StockItem* find_stock(const Workshop& workshop, std::string_view part_number) {
  const auto it = std::ranges::find(workshop.stock, part_number, &StockItem::part_number);
  return it == workshop.stock.end() ? nullptr : &*it;
}

const Counted* find_counted(const std::vector<Counted>& counted, int rotor, std::string_view item) {
  const auto it = std::ranges::find_if(counted, [&](const Counted& c) { return c.rotor == rotor && c.item == item; });
  return it == counted.end() ? nullptr : &*it;
}

int new_among(const KitItem& item, int laid) { return std::max(0, laid - (item.count - item.fresh)); }

std::vector<Tray> kit(const Shaft& shaft, const std::vector<int>& rotors, const std::vector<ReusedRing>& reused) {
  std::vector<Tray> trays;
  for (const int number : rotors) trays.push_back(tray_of(shaft, number, reused));
  return trays;
}

std::vector<PartWanted> parts_wanted(const std::vector<Tray>& trays, const Workshop& workshop,
                                     const std::vector<Counted>& counted) {
  std::vector<PartWanted> rows;
  for (const std::string_view item : {"set", "seal", "snap_ring"})
    for (const Tray& tray : trays)
      for (const KitItem& line : tray.items)
        if (line.item == item && line.fresh > 0) add_wanted(rows, line, taken_of(tray.rotor, line, counted));
  for (PartWanted& row : rows) {
    if (const StockItem* item = find_stock(workshop, row.part.part_number))
      row.on_shelf = item->on_shelf, row.on_order = item->on_order;
    if (row.part.price) row.price = *row.part.price * row.wanted;
  }
  return rows;
}

}  // namespace flatwise::job
