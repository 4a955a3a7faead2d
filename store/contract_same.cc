#include <algorithm>
#include <tuple>

#include "store/contract_rows.h"

namespace flatwise::store_contract {

namespace {
template <class T, class Same>
bool all_same(const std::vector<T>& a, const std::vector<T>& b, const Same& same_one) {
  return std::ranges::equal(a, b, same_one);
}
}  // namespace

bool same(const Gauge& a, const Gauge& b) {
  const auto parts = [](const Gauge& g) {
    return std::tuple{g.id,
                      g.use,
                      g.kind,
                      g.calibration_expanded_si,
                      g.relative,
                      g.resolution_si,
                      g.repeatability_si,
                      g.repeatability_readings,
                      g.expansion_per_kelvin,
                      g.setting_ring,
                      g.setting_ring_expanded,
                      g.least_readable,
                      g.greatest_readable,
                      g.calibrated_until,
                      g.accepted_overdue_by,
                      g.certificates.size(),
                      std::tuple{g.place.file, g.place.line, g.place.column, g.place.quoted}};
  };
  return parts(a) == parts(b);
}

bool same(const Workshop& a, const Workshop& b) {
  const auto parts = [](const Workshop& w) {
    return std::tuple{w.name, w.invented, w.currency, w.rate_per_hour, w.room.kelvin(), w.room_half_width.kelvins()};
  };
  const auto press = [](const ShopPress& p, const ShopPress& q) {
    return std::tie(p.interference, p.joint_diameter, p.width, p.force) ==
           std::tie(q.interference, q.joint_diameter, q.width, q.force);
  };
  const auto item = [](const StockItem& p, const StockItem& q) {
    return std::tie(p.part_number, p.name, p.on_shelf, p.on_order, p.least) ==
           std::tie(q.part_number, q.name, q.on_shelf, q.on_order, q.least);
  };
  const auto origin = [](const auto& p, const auto& q) {
    return p.first == q.first && p.second.kind == q.second.kind && p.second.where == q.second.where;
  };
  return parts(a) == parts(b) &&
         all_same(a.gauges, b.gauges, [](const Gauge& p, const Gauge& q) { return same(p, q); }) &&
         all_same(a.presses, b.presses, press) && all_same(a.stock, b.stock, item) &&
         std::ranges::equal(a.origins, b.origins, origin);
}

bool same(const job::JobRow& a, const job::JobRow& b) {
  const auto parts = [](const job::JobRow& r) {
    return std::tuple{r.id,  r.number, r.machine, r.shaft_version, r.present, r.waiting,
                      r.due, r.booked, r.changed, r.released,      r.entries, r.head};
  };
  return parts(a) == parts(b);
}

bool same(const job::EntryRow& a, const job::EntryRow& b) {
  const auto parts = [](const job::EntryRow& r) {
    return std::tuple{r.id,   r.job,  r.by,     r.on,     r.at,   r.follows, r.corrects,
                      r.kind, r.body, r.number, r.before, r.hash, r.received};
  };
  return parts(a) == parts(b);
}

bool same(const job::ShaftVersion& a, const job::ShaftVersion& b) {
  const auto parts = [](const job::ShaftVersion& v) {
    return std::tuple{v.id, v.shaft, v.version, v.name, v.toml, v.by, v.at};
  };
  return parts(a) == parts(b);
}

}  // namespace flatwise::store_contract
