// machines.cc: machines with their hour meters and their bearings' lives; shafts with their versions.
#include "store/sqlite/store.h"
#include "store/sqlite/text.h"

namespace flatwise::store_sqlite {

using job::BearingLife;
using job::HourReading;
using job::Id;
using job::Machine;
using job::ShaftVersion;
using enum StoreFault::Kind;

namespace {
Machine machine_of(const Query& row) {
  return {row.text(0), row.text(1), row.text(2), row.text(3), row.yes(4)};  // A null reads as empty text.
}
ShaftVersion version_of(const Query& row) {
  return {row.text(0), row.text(1), row.number(2), row.text(3), row.text(4), row.text(5), {row.whole(6)}};
}
HourReading hours_of(const Query& row) {
  return {row.text(0), row.text(1), day_of(row.text(2)), row.real(3),
          row.text(4), row.text(5), row.text(6),         {row.whole(7)}};
}
/// But for when it was noted: sent once more, it comes later.
bool same(const HourReading& a, const HourReading& b) {
  return a.machine == b.machine && a.day == b.day && a.hours == b.hours && a.note == b.note && a.by == b.by &&
         a.corrects == b.corrects;
}
}  // namespace

Stored<std::vector<Machine>> SqliteStore::machines() {
  return db_.reading([this] {
    std::vector<Machine> all;
    Query row =
        db_.query("select id, customer, name, shaft, invented from machines where workshop = ? order by id", workshop_);
    while (row.next()) all.push_back(machine_of(row));
    return all;
  });
}

Stored<Machine> SqliteStore::machine(const Id& id) {
  return db_.reading([&] {
    Query row = db_.query("select id, customer, name, shaft, invented from machines where workshop = ? and id = ?",
                          workshop_, id);
    if (!row.next()) refuse(missing, "machine " + id);
    return machine_of(row);
  });
}

Stored<void> SqliteStore::put_machine(const Machine& m) {
  return db_.writing([&] {
    {
      Query there = db_.query("select id, customer, name, shaft, invented from machines where workshop = ? and id = ?",
                              workshop_, m.id);
      if (there.next()) {
        const Machine old = machine_of(there);
        if (old.customer != m.customer || old.name != m.name || old.shaft != m.shaft || old.invented != m.invented)
          refuse(exists, "another machine has the id " + m.id);
        return;
      }
    }
    db_.run("insert into machines values (?, ?, ?, ?, ?, ?)", workshop_, m.id, or_none(m.customer), m.name,
            or_none(m.shaft), m.invented);
    note_change("machine", m.id);
  });
}

Stored<std::vector<HourReading>> SqliteStore::hours(const Id& machine) {
  return db_.reading([&] {
    std::vector<HourReading> all;
    Query row = db_.query(
        "select id, machine, day, hours, note, author, corrects, at from hours where workshop = ? and machine = ? "
        "order by day, at, id",
        workshop_, machine);
    while (row.next()) all.push_back(hours_of(row));
    return all;
  });
}

void SqliteStore::write_hours(const HourReading& h) {
  {
    Query there =
        db_.query("select id, machine, day, hours, note, author, corrects, at from hours where workshop = ? and id = ?",
                  workshop_, h.id);
    if (there.next()) {
      if (!same(hours_of(there), h)) refuse(exists, "another reading of hours has the id " + h.id);
      return;
    }
  }
  if (!h.corrects.empty() &&
      !db_.query("select 1 from hours where workshop = ? and machine = ? and id = ?", workshop_, h.machine, h.corrects)
           .next())
    refuse(missing, "reading of hours " + h.corrects);
  if (!h.by.empty() && !db_.query("select 1 from people where workshop = ? and id = ?", workshop_, h.by).next())
    refuse(missing, "person " + h.by);
  db_.run("insert into hours values (?, ?, ?, ?, ?, ?, ?, ?, ?)", workshop_, h.machine, text_of(h.day), h.id, h.hours,
          h.note, h.by, h.corrects, h.at.ms);
  note_change("machine", h.machine);
}

Stored<void> SqliteStore::put_hours(const HourReading& h) {
  return db_.writing([&] { write_hours(h); });
}

Stored<std::vector<BearingLife>> SqliteStore::lives(const Id& machine) {
  return db_.reading([&] {
    std::vector<BearingLife> all;
    Query row = db_.query(
        "select machine, rotor, from_hours, to_hours, failed, last_sound_hours from lives "
        "where workshop = ? and machine = ? order by position",
        workshop_, machine);
    while (row.next())
      all.push_back({row.text(0), row.number(1), row.real(2), row.maybe_real(3), row.yes(4), row.maybe_real(5)});
    return all;
  });
}

Stored<void> SqliteStore::put_lives(const Id& machine, const std::vector<BearingLife>& lives) {
  return db_.writing([&] {
    if (!db_.query("select 1 from machines where workshop = ? and id = ?", workshop_, machine).next())
      refuse(missing, "machine " + machine);
    db_.run("delete from lives where workshop = ? and machine = ?", workshop_, machine);
    std::int64_t position = 0;
    for (const BearingLife& life : lives) {
      if (life.machine != machine) refuse(failed, "a bearing's life of another machine");
      db_.run("insert into lives values (?, ?, ?, ?, ?, ?, ?, ?)", workshop_, machine, ++position, life.rotor,
              life.from_hours, life.to_hours, life.failed, life.last_sound_hours);
    }
    note_change("machine", machine);
  });
}

Stored<std::vector<ShaftVersion>> SqliteStore::shafts() {
  return db_.reading([this] {
    std::vector<ShaftVersion> all;
    Query row = db_.query(
        "select v.id, v.shaft, v.version, v.name, v.toml, v.author, v.at from shafts s join shaft_versions v "
        "on v.workshop = s.workshop and v.shaft = s.id and v.version = s.newest where s.workshop = ? order by s.id",
        workshop_);
    while (row.next()) all.push_back(version_of(row));
    return all;
  });
}

Stored<ShaftVersion> SqliteStore::shaft_version(const Id& version) {
  return db_.reading([&] {
    Query row =
        db_.query("select id, shaft, version, name, toml, author, at from shaft_versions where workshop = ? and id = ?",
                  workshop_, version);
    if (!row.next()) refuse(missing, "shaft version " + version);
    return version_of(row);
  });
}

Stored<ShaftVersion> SqliteStore::put_shaft(ShaftVersion v, int seen) {
  return db_.writing([&] {
    {
      Query there = db_.query(
          "select id, shaft, version, name, toml, author, at from shaft_versions where workshop = ? and id = ?",
          workshop_, v.id);
      if (there.next()) {
        const ShaftVersion old = version_of(there);
        if (old.shaft != v.shaft || old.name != v.name || old.toml != v.toml || old.by != v.by)
          refuse(exists, "another version of a shaft has the id " + v.id);
        return old;
      }
    }
    int newest = 0;
    {
      Query row = db_.query("select newest from shafts where workshop = ? and id = ?", workshop_, v.shaft);
      if (row.next()) newest = row.number(0);
    }
    if (newest != seen) refuse(changed, "the newest version is " + std::to_string(newest));
    ShaftVersion kept = v;
    kept.version = newest + 1;
    db_.run("insert into shafts values (?1, ?2, ?3) on conflict do update set newest = ?3", workshop_, v.shaft,
            kept.version);
    db_.run("insert into shaft_versions values (?, ?, ?, ?, ?, ?, ?, ?)", workshop_, v.id, v.shaft, kept.version,
            v.name, v.toml, or_none(v.by), v.at.ms);
    note_change("shaft", v.shaft);
    return kept;
  });
}

}  // namespace flatwise::store_sqlite
