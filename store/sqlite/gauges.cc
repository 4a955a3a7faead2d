// gauges.cc: gauges, and their calibrations as a log beside them.
#include <algorithm>
#include <array>

#include "job/entry_fields.h"
#include "store/sqlite/names.h"
#include "store/sqlite/store.h"
#include "store/sqlite/text.h"

namespace flatwise::store_sqlite {

using job::Calibration;
using enum StoreFault::Kind;

namespace {
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
  g.use = static_cast<Gauge::Use>(place_in(job::fields::kUses, row.text(1)));
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

std::optional<std::string> text_of(const std::optional<Day>& day) {
  return day ? std::optional{store_sqlite::text_of(*day)} : std::nullopt;
}

bool same(const Calibration& a, const Calibration& b) {
  return a.gauge == b.gauge && a.day == b.day && a.until == b.until && a.expanded_si == b.expanded_si &&
         a.who == b.who && a.certificate == b.certificate && a.corrects == b.corrects && a.by == b.by;
}

/// The certificates of a gauge out of what was noted of it; what was corrected is left out, and the last one holds.
void certify(Gauge& gauge, const std::vector<Calibration>& noted) {
  for (const Calibration& c : noted) {
    if (c.gauge != gauge.id) continue;
    if (std::ranges::none_of(noted, [&](const Calibration& later) { return later.corrects == c.id; }))
      gauge.certificates.push_back({c.day, c.until, c.expanded_si});
  }
  if (gauge.certificates.empty()) return;
  gauge.calibrated_until = gauge.certificates.back().until;
  gauge.calibration_expanded_si = gauge.certificates.back().expanded_si;
}
}  // namespace

std::vector<Gauge> SqliteStore::read_gauges() {
  std::vector<Gauge> gauges;
  const std::vector<Calibration> noted = read_calibrations();
  Query row = db_.query(
      "select id, used_as, kind, calibration_expanded, relative, resolution, repeatability, repeatability_readings, "
      "expansion_per_kelvin, setting_ring, setting_ring_expanded, least_readable, greatest_readable, calibrated_until, "
      "accepted_overdue_by, place, exists (select 1 from calibrations c where c.workshop = gauges.workshop and c.gauge "
      "= gauges.id), exists (select 1 from calibrations c where c.workshop = gauges.workshop and c.gauge = gauges.id "
      "and "
      "c.number = 0) from gauges where workshop = ? order by position, id",
      workshop_);
  while (row.next()) {
    Gauge gauge = gauge_of(row);
    // One that came in with its first calibration noted has that one in the log; any other came with what stands in its row.
    if (row.yes(16) && !row.yes(17))
      gauge.certificates.push_back({std::nullopt, gauge.calibrated_until, gauge.calibration_expanded_si});
    certify(gauge, noted);
    gauges.push_back(std::move(gauge));
  }
  return gauges;
}

void SqliteStore::write_gauge(const Gauge& g, std::int64_t position) {
  // What was noted later stands in `calibrations`; here stays the certificate that the gauge came with.
  const Certificate own =
      g.certificates.empty() ? Certificate{{}, g.calibrated_until, g.calibration_expanded_si} : g.certificates.front();
  db_.run(
      "insert or replace into gauges values (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, "
      "?17, ?18)",
      workshop_, g.id, position, job::fields::kUses.at(static_cast<std::size_t>(g.use)), kind_name(g.kind),
      own.expanded_si, g.relative, g.resolution_si, g.repeatability_si, g.repeatability_readings,
      g.expansion_per_kelvin, si_of(g.setting_ring), g.setting_ring_expanded.si(), si_of(g.least_readable),
      si_of(g.greatest_readable), text_of(own.until), g.accepted_overdue_by, text_of(g.place));
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

Stored<void> SqliteStore::add_gauge(const Gauge& gauge, const std::optional<Calibration>& first) {
  return db_.writing([&] {
    std::int64_t position = 1;
    {
      Query own = db_.query("select 1 from gauges where workshop = ? and id = ?", workshop_, gauge.id);
      if (own.next()) refuse(exists, "gauge " + gauge.id);
      Query last = db_.query("select coalesce(max(position), 0) + 1 from gauges where workshop = ?", workshop_);
      if (last.next()) position = last.whole(0);
    }
    write_gauge(gauge, position);
    if (first) write_calibration(*first, 0);
    note_change("gauge", gauge.id);
  });
}

void SqliteStore::write_calibration(const Calibration& c, std::int64_t number) {
  db_.run("insert into calibrations values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", workshop_, c.gauge, number, c.id,
          text_of(c.day), store_sqlite::text_of(c.until), c.expanded_si, c.who, c.certificate, c.corrects, c.by,
          c.at.ms);
}

std::vector<Calibration> SqliteStore::read_calibrations() {
  std::vector<Calibration> all;
  Query row = db_.query(
      "select id, gauge, day, until, expanded, who, certificate, corrects, author, at from calibrations where workshop "
      "= ? order by gauge, number",
      workshop_);
  while (row.next())
    all.push_back({row.text(0),
                   row.text(1),
                   row.none(2) ? std::nullopt : std::optional{day_of(row.text(2))},
                   day_of(row.text(3)),
                   row.real(4),
                   row.text(5),
                   row.text(6),
                   row.text(7),
                   row.text(8),
                   {row.whole(9)}});
  return all;
}

Stored<std::vector<Calibration>> SqliteStore::calibrations() {
  return db_.reading([this] { return read_calibrations(); });
}

Stored<void> SqliteStore::put_calibration(const Calibration& c) {
  return db_.writing([&] {
    const std::vector<Calibration> all = read_calibrations();
    if (const auto it = std::ranges::find(all, c.id, &Calibration::id); it != all.end()) {
      if (!same(*it, c)) refuse(exists, "another calibration has the id " + c.id);
      return;
    }
    const auto of_it = [&](const Calibration& old) { return old.gauge == c.gauge && old.id == c.corrects; };
    if (!c.corrects.empty() && std::ranges::none_of(all, of_it)) refuse(missing, "calibration " + c.corrects);
    {
      Query gauge = db_.query("select 1 from gauges where workshop = ? and id = ?", workshop_, c.gauge);
      if (!gauge.next()) refuse(missing, "gauge " + c.gauge);
    }
    std::int64_t number = 1;
    {
      Query last = db_.query("select coalesce(max(number), 0) + 1 from calibrations where workshop = ? and gauge = ?",
                             workshop_, c.gauge);
      if (last.next()) number = last.whole(0);
    }
    write_calibration(c, number);
    note_change("gauge", c.gauge);
  });
}

}  // namespace flatwise::store_sqlite
