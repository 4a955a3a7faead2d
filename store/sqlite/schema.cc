#include "store/sqlite/schema.h"

#include <string>

namespace flatwise::store_sqlite {

namespace {
// Days are text (ISO 8601), instants whole milliseconds since 1970 UTC, quantities SI, yes and no 1 and 0, lists JSON.
// `workshop` is the short number of the workshop in this store and the first column of every key.
constexpr const char* kVersion1 = R"sql(
create table workshops (
  workshop integer primary key,
  id text not null unique,
  name text not null,
  invented integer not null,
  currency text not null,
  rate_per_hour real,
  room real not null,
  room_half_width real not null,
  origins text not null
) strict;

create table people (
  workshop integer not null references workshops,
  id text not null,
  name text not null,
  role text not null,
  active integer not null,
  primary key (workshop, id)
) strict, without rowid;

create table customers (
  workshop integer not null references workshops,
  id text not null,
  name text not null,
  reach text not null,
  primary key (workshop, id)
) strict, without rowid;

create table gauges (
  workshop integer not null references workshops,
  id text not null,
  position integer not null,
  used_as text not null,
  kind text not null,
  calibration_expanded real not null,
  relative integer not null,
  resolution real not null,
  repeatability real,
  repeatability_readings integer not null,
  expansion_per_kelvin real not null,
  setting_ring real,
  setting_ring_expanded real not null,
  least_readable real,
  greatest_readable real,
  calibrated_until text not null,
  accepted_overdue_by text,
  place text not null,
  primary key (workshop, id)
) strict, without rowid;

create table presses (
  workshop integer not null references workshops,
  position integer not null,
  interference real not null,
  joint_diameter real not null,
  width real not null,
  force real not null,
  primary key (workshop, position)
) strict, without rowid;

-- on_shelf and on_order are the sums of the moves, kept up in the transaction that stores a move.
create table stock_items (
  workshop integer not null references workshops,
  part_number text not null,
  position integer not null,
  name text not null,
  on_shelf integer not null,
  on_order integer not null,
  primary key (workshop, part_number)
) strict, without rowid;

create table stock_moves (
  workshop integer not null references workshops,
  id text not null,
  part_number text not null,
  shelf integer not null,
  ordered integer not null,
  why text not null,
  at integer not null,
  primary key (workshop, id)
) strict, without rowid;

create table shafts (
  workshop integer not null references workshops,
  id text not null,
  newest integer not null,
  primary key (workshop, id)
) strict, without rowid;

create table shaft_versions (
  workshop integer not null references workshops,
  id text not null,
  shaft text not null,
  version integer not null,
  name text not null,
  toml text not null,
  author text,
  at integer not null,
  primary key (workshop, id),
  unique (workshop, shaft, version),
  foreign key (workshop, shaft) references shafts,
  foreign key (workshop, author) references people
) strict, without rowid;

create table machines (
  workshop integer not null references workshops,
  id text not null,
  customer text,
  name text not null,
  shaft text,
  invented integer not null,
  primary key (workshop, id),
  foreign key (workshop, customer) references customers,
  foreign key (workshop, shaft) references shafts
) strict, without rowid;

create table hours (
  workshop integer not null references workshops,
  machine text not null,
  day text not null,
  id text not null,
  hours real not null,
  note text not null,
  primary key (workshop, machine, day, id),
  unique (workshop, id),
  foreign key (workshop, machine) references machines
) strict, without rowid;

create table lives (
  workshop integer not null references workshops,
  machine text not null,
  position integer not null,
  rotor integer not null,
  from_hours real not null,
  to_hours real,
  failed integer not null,
  last_sound_hours real,
  primary key (workshop, machine, position),
  foreign key (workshop, machine) references machines
) strict, without rowid;

-- What lists and the board show; the fold over the entries can make all of it again but for entries and head.
create table jobs (
  workshop integer not null references workshops,
  id text not null,
  number text not null,
  machine text,
  shaft_version text,
  present text not null,
  waiting text not null,
  due text,
  booked integer not null,
  changed integer not null,
  released integer not null,
  entries integer not null,
  head text not null,
  primary key (workshop, id),
  unique (workshop, number),
  foreign key (workshop, machine) references machines,
  foreign key (workshop, shaft_version) references shaft_versions
) strict, without rowid;
create index jobs_of_machine on jobs (workshop, machine, booked desc, id desc);
create index jobs_open on jobs (workshop, booked, id) where released = 0;

create table entries (
  workshop integer not null references workshops,
  job text not null,
  number integer not null,
  id text not null,
  author text not null,
  device text not null,
  at integer not null,
  follows text not null,
  corrects text not null,
  kind text not null,
  body text not null,
  previous text not null,
  hash text not null,
  primary key (workshop, job, number),
  unique (workshop, id),
  foreign key (workshop, job) references jobs,
  foreign key (workshop, author) references people
) strict, without rowid;

create table changes (
  workshop integer not null references workshops,
  sequence integer not null,
  what text not null,
  id text not null,
  entry text not null,
  primary key (workshop, sequence)
) strict, without rowid;

create trigger entries_are_not_changed before update on entries
begin select raise(abort, 'an entry is never changed'); end;
create trigger entries_are_not_deleted before delete on entries
begin select raise(abort, 'an entry is never deleted'); end;
create trigger shaft_versions_are_not_changed before update on shaft_versions
begin select raise(abort, 'a version of a shaft is never changed'); end;
create trigger shaft_versions_are_not_deleted before delete on shaft_versions
begin select raise(abort, 'a version of a shaft is never deleted'); end;
create trigger stock_moves_are_not_changed before update on stock_moves
begin select raise(abort, 'a stock move is never changed'); end;
create trigger stock_moves_are_not_deleted before delete on stock_moves
begin select raise(abort, 'a stock move is never deleted'); end;
create trigger changes_are_not_changed before update on changes
begin select raise(abort, 'the list of changes is never changed'); end;
create trigger changes_are_not_deleted before delete on changes
begin select raise(abort, 'the list of changes is never deleted'); end;
)sql";

// Calibrations of gauges as a log; who moved stock and why; how many of a part should always lie there. `gauges` keeps the
// certificate that a gauge came with: what is noted later stands beside it and overwrites nothing.
constexpr const char* kVersion2 = R"sql(
create table calibrations (
  workshop integer not null references workshops,
  gauge text not null,
  number integer not null,
  id text not null,
  day text,
  until text not null,
  expanded real not null,
  who text not null,
  certificate text not null,
  corrects text not null,
  author text not null,
  at integer not null,
  primary key (workshop, gauge, number),
  unique (workshop, id)
) strict, without rowid;

alter table stock_moves add column author text not null default '';
alter table stock_moves add column reason text not null default 'counted';
alter table stock_moves add column counted integer;
alter table stock_items add column least integer not null default 0;

drop trigger stock_moves_are_not_changed;
update stock_moves set reason = 'job', author = coalesce((
  select author from entries where entries.workshop = stock_moves.workshop and entries.id = stock_moves.why), '')
  where exists (select 1 from entries where entries.workshop = stock_moves.workshop and entries.id = stock_moves.why);
create trigger stock_moves_are_not_changed before update on stock_moves
begin select raise(abort, 'a stock move is never changed'); end;

create index stock_moves_by_time on stock_moves (workshop, at desc, id desc);

create trigger calibrations_are_not_changed before update on calibrations
begin select raise(abort, 'a calibration is never changed'); end;
create trigger calibrations_are_not_deleted before delete on calibrations
begin select raise(abort, 'a calibration is never deleted'); end;
)sql";

// Who read an hour meter, what a reading corrects, and that none is ever changed; who a person is; when an entry was taken in, by
// the clock of who took it in.
constexpr const char* kVersion3 = R"sql(
alter table hours add column author text not null default '';
alter table hours add column corrects text not null default '';
alter table hours add column at integer not null default 0;
create unique index hours_corrected_once on hours (workshop, corrects) where corrects <> '';

alter table entries add column received integer not null default 0;

create trigger hours_are_not_changed before update on hours
begin select raise(abort, 'a reading of hours is never changed'); end;
create trigger hours_are_not_deleted before delete on hours
begin select raise(abort, 'a reading of hours is never deleted'); end;
create trigger people_are_not_renamed before update of name on people
begin select raise(abort, 'who signed stays who he was'); end;
create trigger people_are_not_deleted before delete on people
begin select raise(abort, 'who signed stays in the record'); end;
)sql";

constexpr Migration kMigrations[] = {{kVersion1}, {kVersion2}, {kVersion3}};
}  // namespace

std::span<const Migration> migrations() { return kMigrations; }
int newest_version() { return static_cast<int>(migrations().size()); }

void migrate(Connection& connection, std::span<const Migration> list) {
  const auto newest = static_cast<std::int64_t>(list.size());
  while (connection.number_once("pragma user_version") < newest) {
    connection.once("begin immediate");
    try {
      // Read again: another program may have been quicker while this one waited for its turn.
      const auto version = connection.number_once("pragma user_version");
      if (version < newest) {
        connection.once(list[static_cast<std::size_t>(version)].sql);
        connection.once(("pragma application_id = " + std::to_string(kApplicationId)).c_str());
        connection.once(("pragma user_version = " + std::to_string(version + 1)).c_str());
      }
      connection.once("commit");
    } catch (...) {
      connection.roll_back();
      throw;
    }
  }
}

}  // namespace flatwise::store_sqlite
