-- What version 1 of the store made: tables and one job with three notes, all of it invented. Never made anew.
pragma journal_mode = wal;
pragma foreign_keys = off;
BEGIN TRANSACTION;
CREATE TABLE changes (
  workshop integer not null references workshops,
  sequence integer not null,
  what text not null,
  id text not null,
  entry text not null,
  primary key (workshop, sequence)
) strict, without rowid;
INSERT INTO "changes" VALUES(1,1,'stock','P-20','');
INSERT INTO "changes" VALUES(1,2,'workshop','','');
INSERT INTO "changes" VALUES(1,3,'person','01900000-0000-7000-8000-000000000900','');
INSERT INTO "changes" VALUES(1,4,'customer','01900000-0000-7000-8000-000000000910','');
INSERT INTO "changes" VALUES(1,5,'shaft','01900000-0000-7000-8000-000000000920','');
INSERT INTO "changes" VALUES(1,6,'machine','01900000-0000-7000-8000-000000000930','');
INSERT INTO "changes" VALUES(1,7,'job','01900000-0000-7000-8000-000000000001','01900000-0000-7000-8000-000000000101');
INSERT INTO "changes" VALUES(1,8,'job','01900000-0000-7000-8000-000000000001','01900000-0000-7000-8000-000000000102');
INSERT INTO "changes" VALUES(1,9,'job','01900000-0000-7000-8000-000000000001','01900000-0000-7000-8000-000000000103');
CREATE TABLE customers (
  workshop integer not null references workshops,
  id text not null,
  name text not null,
  reach text not null,
  primary key (workshop, id)
) strict, without rowid;
INSERT INTO "customers" VALUES(1,'01900000-0000-7000-8000-000000000910','Growers','at the gate');
CREATE TABLE entries (
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
INSERT INTO "entries" VALUES(1,'01900000-0000-7000-8000-000000000001',1,'01900000-0000-7000-8000-000000000101','01900000-0000-7000-8000-000000000900','tablet at bay 2',1700000000101,'','','note_written','{"text":"one"}','','58d8d3273be4a825d9de2a6792568129ee25124346a829d83f4e21213d51e79b');
INSERT INTO "entries" VALUES(1,'01900000-0000-7000-8000-000000000001',2,'01900000-0000-7000-8000-000000000102','01900000-0000-7000-8000-000000000900','tablet at bay 2',1700000000102,'','','note_written','{"text":"two"}','58d8d3273be4a825d9de2a6792568129ee25124346a829d83f4e21213d51e79b','991c84ba96638a5a158281a96a6a0adef26780c05ff1a935a5766e5417190c8a');
INSERT INTO "entries" VALUES(1,'01900000-0000-7000-8000-000000000001',3,'01900000-0000-7000-8000-000000000103','01900000-0000-7000-8000-000000000900','tablet at bay 2',1700000000103,'','','note_written','{"text":"three"}','991c84ba96638a5a158281a96a6a0adef26780c05ff1a935a5766e5417190c8a','1d729704e0e63763f143d2cbede63ad3a5f9df655985d4ab3577b90f3b76795f');
CREATE TABLE gauges (
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
INSERT INTO "gauges" VALUES(1,'A9',2,'wrench','torque',0.02,1,0.5,NULL,0,1.15e-05,NULL,0.0,NULL,NULL,'2027-03-01',NULL,'["",0,0,""]');
INSERT INTO "gauges" VALUES(1,'B1',1,'bore_gauge','length',0.02,0,0.5,7.0e-07,11,1.08e-05,0.0381,1.0e-06,0.035,0.0601,'2027-03-01','Lead','["workshop.toml",12,3,"id = \"B1\""]');
CREATE TABLE hours (
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
CREATE TABLE jobs (
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
INSERT INTO "jobs" VALUES(1,'01900000-0000-7000-8000-000000000001','1','01900000-0000-7000-8000-000000000930','01900000-0000-7000-8000-000000000921','booking_in','bench',NULL,1000,1000,0,3,'1d729704e0e63763f143d2cbede63ad3a5f9df655985d4ab3577b90f3b76795f');
CREATE TABLE lives (
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
CREATE TABLE machines (
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
INSERT INTO "machines" VALUES(1,'01900000-0000-7000-8000-000000000930','01900000-0000-7000-8000-000000000910','Number two','01900000-0000-7000-8000-000000000920',1);
CREATE TABLE people (
  workshop integer not null references workshops,
  id text not null,
  name text not null,
  role text not null,
  active integer not null,
  primary key (workshop, id)
) strict, without rowid;
INSERT INTO "people" VALUES(1,'01900000-0000-7000-8000-000000000900','Bench hand','bench',1);
CREATE TABLE presses (
  workshop integer not null references workshops,
  position integer not null,
  interference real not null,
  joint_diameter real not null,
  width real not null,
  force real not null,
  primary key (workshop, position)
) strict, without rowid;
INSERT INTO "presses" VALUES(1,1,3.1e-05,7.20000000000000084376e-02,0.017,19300.0);
INSERT INTO "presses" VALUES(1,2,1.0e-07,3.33333333333333322202e-04,0.017,1.0e-300);
CREATE TABLE shaft_versions (
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
INSERT INTO "shaft_versions" VALUES(1,'01900000-0000-7000-8000-000000000921','01900000-0000-7000-8000-000000000920',1,'Top shaft','rotors = 8
','01900000-0000-7000-8000-000000000900',5);
CREATE TABLE shafts (
  workshop integer not null references workshops,
  id text not null,
  newest integer not null,
  primary key (workshop, id)
) strict, without rowid;
INSERT INTO "shafts" VALUES(1,'01900000-0000-7000-8000-000000000920',1);
CREATE TABLE stock_items (
  workshop integer not null references workshops,
  part_number text not null,
  position integer not null,
  name text not null,
  on_shelf integer not null,
  on_order integer not null,
  primary key (workshop, part_number)
) strict, without rowid;
INSERT INTO "stock_items" VALUES(1,'P-03',2,'',0,0);
INSERT INTO "stock_items" VALUES(1,'P-20',1,'Snap ring',7,2);
CREATE TABLE stock_moves (
  workshop integer not null references workshops,
  id text not null,
  part_number text not null,
  shelf integer not null,
  ordered integer not null,
  why text not null,
  at integer not null,
  primary key (workshop, id)
) strict, without rowid;
INSERT INTO "stock_moves" VALUES(1,'cd60ceac-a558-48e8-a7c1-a36515ad8b41','P-20',7,2,'counted',1795615935609);
CREATE TABLE workshops (
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
INSERT INTO "workshops" VALUES(1,'01900000-0000-7000-8000-000000000001','Bench of checks, Ångström & 工',1,'GBP',48.25,291.65,3.0,'{"gauge.B1":["measured",""],"workshop.room":["assumed","workshop.room"]}');
CREATE INDEX jobs_of_machine on jobs (workshop, machine, booked desc, id desc);
CREATE INDEX jobs_open on jobs (workshop, booked, id) where released = 0;
CREATE TRIGGER entries_are_not_changed before update on entries
begin select raise(abort, 'an entry is never changed'); end;
CREATE TRIGGER entries_are_not_deleted before delete on entries
begin select raise(abort, 'an entry is never deleted'); end;
CREATE TRIGGER shaft_versions_are_not_changed before update on shaft_versions
begin select raise(abort, 'a version of a shaft is never changed'); end;
CREATE TRIGGER shaft_versions_are_not_deleted before delete on shaft_versions
begin select raise(abort, 'a version of a shaft is never deleted'); end;
CREATE TRIGGER stock_moves_are_not_changed before update on stock_moves
begin select raise(abort, 'a stock move is never changed'); end;
CREATE TRIGGER stock_moves_are_not_deleted before delete on stock_moves
begin select raise(abort, 'a stock move is never deleted'); end;
CREATE TRIGGER changes_are_not_changed before update on changes
begin select raise(abort, 'the list of changes is never changed'); end;
CREATE TRIGGER changes_are_not_deleted before delete on changes
begin select raise(abort, 'the list of changes is never deleted'); end;
COMMIT;
pragma application_id = 1181507956;
pragma user_version = 1;
