// kit.h: what each rotor tray must hold, from the decisions, and what it costs.
//
// Common practice: every rotor that left the shaft gets a new adapter-and-bearing set; seals are always new; snap rings are
// reused only if sound.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/shaft/shaft.h"
#include "job/bench.h"

namespace flatwise::job {

struct KitItem {
  std::string_view item;        ///< "set", "seal", "snap_ring"; word "item.<item>".
  int count = 0;                ///< On the tray in all.
  int fresh = 0;                ///< Of these, new.
  bool reuse_if_sound = false;  ///< The rest may be the old ones if somebody says they are sound.
  Priced part;
};
struct Tray {
  int rotor = 0;
  std::vector<KitItem> items;
};
/// One tray for each rotor in `rotors`, in order. `rings_sound[rotor]` decides whether its rings are reused; nobody asked
/// yet: new rings are counted, and may be put back on the shelf.
[[nodiscard]] std::vector<Tray> kit(const Shaft& shaft, const std::vector<int>& rotors,
                                    const std::vector<ReusedRing>& reused);

struct PartWanted {
  Priced part;
  std::string_view item;
  int wanted = 0;
  int taken = 0;                          ///< Of these, new ones that lie on a tray: they have left the shelf.
  std::optional<int> on_shelf, on_order;  ///< None: the part is not in the stock list.
  std::optional<double> price;            ///< For all wanted; none where a price is missing.

  [[nodiscard]] int to_take() const { return wanted - taken; }
  /// The shelf has fewer than are still to be taken.
  [[nodiscard]] bool short_of() const { return on_shelf && *on_shelf < to_take(); }
};
/// Parts over all trays against the stock and what was counted out of it, in the order set, seal, snap ring, by part number.
[[nodiscard]] std::vector<PartWanted> parts_wanted(const std::vector<Tray>& trays, const Workshop& workshop,
                                                   const std::vector<Counted>& counted);
/// A part of the stock list by its number; nullptr where it is not in it.
[[nodiscard]] const StockItem* find_stock(const Workshop& workshop, std::string_view part_number);
/// What was counted of an item on a rotor's tray; nullptr: not counted.
[[nodiscard]] const Counted* find_counted(const std::vector<Counted>& counted, int rotor, std::string_view item);
/// How many of the pieces laid on a tray are new; old ones are laid first.
[[nodiscard]] int new_among(const KitItem& item, int laid);

}  // namespace flatwise::job
