// store_test.cc: what is particular to the store in a folder: which files it takes for its own, versions, triggers, programs
// side by side, the held snapshot.
#include <SQLiteCpp/SQLiteCpp.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "store/contract_rows.h"
#include "store/sqlite/schema.h"
#include "store/sqlite/test_place.h"

namespace flatwise::store_sqlite {
namespace {

using store_contract::append_of;
using store_contract::id;
using store_contract::note;
using Kind = StoreFault::Kind;

std::string bytes_of(const std::filesystem::path& file) {
  std::ostringstream all;
  all << std::ifstream{file, std::ios::binary}.rdbuf();
  return all.str();
}
std::vector<std::string> files_in(const std::filesystem::path& folder) {
  std::vector<std::string> names;
  for (const auto& file : std::filesystem::recursive_directory_iterator{folder}) names.push_back(file.path().string());
  std::ranges::sort(names);
  return names;
}

class InFolder : public testing::Test {
 protected:
  std::filesystem::path db() const { return database_file(place_.folder()); }
  void sql(const std::string& text) { SQLite::Database{db().string(), SQLite::OPEN_READWRITE, 5000}.exec(text); }
  Kind refusal(Mode mode = Mode::existing) {
    const auto opened = open_store(place_.folder(), {.mode = mode});
    EXPECT_FALSE(opened) << "opened";
    return opened ? Kind::exists : opened.error().kind;
  }
  /// Refused as `kind` in every mode, and neither changed nor given company.
  void refused_untouched(Kind kind) {
    const std::string before = bytes_of(db());
    const auto files = files_in(place_.folder());
    for (const Mode mode : {Mode::existing, Mode::read_only, Mode::make}) EXPECT_EQ(refusal(mode), kind);
    EXPECT_TRUE(bytes_of(db()) == before) << "the file was changed";
    EXPECT_EQ(files_in(place_.folder()), files);
  }
  FolderPlace place_;
};

TEST_F(InFolder, newer_store_is_refused_untouched) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  sql("pragma user_version = " + std::to_string(newest_version() + 1));
  refused_untouched(Kind::newer);
}

TEST_F(InFolder, newer_store_is_refused_though_only_its_log_says_so) {
  auto store = store_contract::with_a_job(place_);
  SQLite::Database other{db().string(), SQLite::OPEN_READWRITE, 5000};
  other.exec("pragma wal_checkpoint(truncate)");
  other.exec("pragma user_version = " + std::to_string(newest_version() + 1));
  const std::string before = bytes_of(db());
  EXPECT_EQ(refusal(), Kind::newer);
  EXPECT_TRUE(bytes_of(db()) == before);
}

TEST_F(InFolder, what_is_no_store_is_refused_untouched) {
  SQLite::Database{db().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}.exec(
      "create table letters (a text); insert into letters values ('of somebody else')");
  refused_untouched(Kind::damaged);
  std::ofstream{db()} << "not a database at all, but long enough to hold a header of one hundred bytes, "
                         "which it would have to begin with the right words to be.";
  refused_untouched(Kind::damaged);
  std::ofstream{db()} << "short";
  refused_untouched(Kind::damaged);
}

TEST_F(InFolder, store_that_is_cut_short_is_refused_untouched) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  std::filesystem::resize_file(db(), std::filesystem::file_size(db()) - 5000);
  refused_untouched(Kind::damaged);
}

TEST_F(InFolder, overwritten_pages_are_told_as_damaged) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  std::fstream file{db(), std::ios::in | std::ios::out | std::ios::binary};
  file.seekp(4096);
  file << std::string(std::filesystem::file_size(db()) - 4096, '\x5a');
  file.close();
  const auto opened = open_store(place_.folder());
  const auto asked = opened ? (*opened)->entries(id(1), 0) : tl::unexpected{opened.error()};
  ASSERT_FALSE(asked);
  EXPECT_EQ(asked.error().kind, Kind::damaged) << asked.error().detail;
}

TEST_F(InFolder, empty_folder_has_no_store_until_one_is_made) {
  EXPECT_EQ(refusal(), Kind::missing);
  EXPECT_EQ(refusal(Mode::read_only), Kind::missing);
  EXPECT_TRUE(files_in(place_.folder()).empty());
  std::ofstream{db()}.close();  // Left by one that was killed while making it.
  EXPECT_EQ(refusal(), Kind::missing);
  EXPECT_TRUE(open_store(place_.folder(), {.mode = Mode::make}));
  EXPECT_TRUE(open_store(place_.folder()));
}

TEST_F(InFolder, several_workshops_need_a_name) {
  ASSERT_TRUE(place_.make(id(1), {}));
  EXPECT_TRUE(open_store(place_.folder()));
  ASSERT_TRUE(place_.make(id(2), {}));
  EXPECT_EQ(refusal(), Kind::failed);
  EXPECT_TRUE(open_store(place_.folder(), {.workshop = id(2)}));
}

// The file is what version 1 made, and is never made anew.
TEST_F(InFolder, store_of_version_1_opens) {
  SQLite::Database{db().string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}.exec(
      bytes_of(std::filesystem::path{FLATWISE_SOURCE_DIR} / "tests/data/store-version-1.sql"));
  auto store = open_store(place_.folder());
  ASSERT_TRUE(store) << store.error().detail;
  EXPECT_TRUE(store_contract::is_whole(**store, id(1)));
  EXPECT_EQ((*store)->job_by_number("1")->entries, 3);
  EXPECT_EQ((*store)->machine(id(store_contract::kMachine))->name, "Number two");
  EXPECT_EQ((*store)->entries(id(1), 0)->front().received.ms, 0) << "what was not kept is not known";
  EXPECT_TRUE(store_contract::same(*(*store)->workshop(), store_contract::full_workshop()));
  EXPECT_TRUE((*store)->append(append_of({note(104, "later")})));
}

TEST_F(InFolder, migrations_run_once_each_in_order_and_whole) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  const std::vector<Migration> good{{""}, {""}, {""}, {"create table second (a)"}, {"insert into second values (3)"}};
  const std::vector<Migration> bad{{""}, {""}, {""},
                                   {""}, {""}, {"create table fourth (a); insert into nowhere values (1)"}};
  Connection connection{db().string(), SQLite::OPEN_READWRITE, {}};
  migrate(connection, good);
  migrate(connection, good);
  EXPECT_EQ(connection.number_once("pragma user_version"), 5);
  EXPECT_EQ(connection.number_once("select count(*) from second"), 1);
  EXPECT_THROW(migrate(connection, bad), SQLite::Exception);
  EXPECT_EQ(connection.number_once("pragma user_version"), 5);
  EXPECT_EQ(connection.number_once("select count(*) from sqlite_master where name = 'fourth'"), 0);
}

TEST_F(InFolder, what_is_recorded_is_neither_changed_nor_deleted) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  {
    auto store = place_.open(id(1));
    ASSERT_TRUE(store && (*store)->move_stock({id(21), "P-20", 1, 0, "w", {1}}));
    ASSERT_TRUE((*store)->add_gauge(store_contract::gauge("B9"),
                                    job::Calibration{id(22), "B9", {}, {2027, 1, 1}, 0.1, "", "", "", "", {1}}));
    ASSERT_TRUE((*store)->put_hours({id(23), id(store_contract::kMachine), {2026, 1, 1}, 5, ""}));
  }
  for (const char* text :
       {"update entries set body = '{}'", "delete from entries where number = 3", "update changes set what = 'x'",
        "delete from changes", "update shaft_versions set toml = ''", "delete from shaft_versions",
        "update stock_moves set shelf = 9", "delete from stock_moves", "update calibrations set who = 'x'",
        "delete from calibrations", "update hours set hours = 9", "delete from hours", "update people set name = 'x'",
        "delete from people", "pragma recursive_triggers = on; insert or replace into entries select * from entries"})
    EXPECT_THROW(sql(text), SQLite::Exception) << text;
  auto store = place_.open(id(1));
  ASSERT_TRUE(store);
  EXPECT_TRUE(store_contract::is_whole(**store, id(1)));
}

TEST_F(InFolder, read_only_reads_and_writes_nothing) {
  auto writer = store_contract::with_a_job(place_);
  auto reader = open_store(place_.folder(), {.mode = Mode::read_only});
  ASSERT_TRUE(reader) << reader.error().detail;
  EXPECT_TRUE(store_contract::is_whole(**reader, id(1)));
  EXPECT_TRUE(store_contract::refused((*reader)->append(append_of({note(104, "no")})), Kind::failed));
  EXPECT_TRUE(store_contract::refused((*reader)->put_blob("no"), Kind::failed));
  EXPECT_TRUE(writer->append(append_of({note(105, "yes")})));
  EXPECT_EQ((*reader)->job(id(1))->entries, 4);
}

TEST_F(InFolder, another_that_writes_for_long_is_told_as_busy) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  auto store = open_store(place_.folder(), {.wait_ms = 30});
  ASSERT_TRUE(store);
  SQLite::Database other{db().string(), SQLite::OPEN_READWRITE};
  other.exec("begin immediate");
  EXPECT_TRUE(store_contract::refused((*store)->append(append_of({note(104, "x")})), Kind::busy));
  EXPECT_EQ((*store)->job(id(1))->entries, 3);  // Reading goes on.
  other.exec("rollback");
  EXPECT_TRUE((*store)->append(append_of({note(104, "x")})));
}

TEST_F(InFolder, two_programs_write_one_job) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  constexpr int kEach = 40;
  const auto write = [&](int first) {
    auto store = place_.open(id(1));
    for (int i = 0; i < kEach; ++i)
      if (!store || !(*store)->append(append_of({note(first + i, "x")}))) return false;
    return true;
  };
  const pid_t child = ::fork();
  if (child == 0) ::_exit(write(2000) ? 0 : 1);
  EXPECT_TRUE(write(1000));
  int status = -1;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  EXPECT_EQ(status, 0);
  auto store = place_.open(id(1));
  ASSERT_TRUE(store);
  EXPECT_EQ((*store)->job(id(1))->entries, 3 + 2 * kEach);
  EXPECT_TRUE(store_contract::is_whole(**store, id(1)));
}

TEST_F(InFolder, held_snapshot_is_renewed_by_the_writes_of_another_program) {
  ASSERT_TRUE(store_contract::with_a_job(place_));
  int ready[2], go[2];
  ASSERT_EQ(::pipe(ready), 0);
  ASSERT_EQ(::pipe(go), 0);
  const pid_t child = ::fork();
  if (child == 0) {
    auto store = place_.open(id(1));
    char c = 0;
    for (int i = 0; i < 20; ++i) {
      if (::read(go[0], &c, 1) != 1 || !store || !(*store)->append(append_of({note(1000 + i, "x")}))) ::_exit(1);
      if (::write(ready[1], &c, 1) != 1) ::_exit(2);
    }
    ::_exit(0);
  }
  auto reader = open_store(place_.folder(), {.hold_reads = true});
  ASSERT_TRUE(reader);
  for (int i = 0; i < 20; ++i) {
    EXPECT_EQ((*reader)->job(id(1))->entries, 3 + i);
    char c = 0;
    ASSERT_EQ(::write(go[1], &c, 1), 1);
    ASSERT_EQ(::read(ready[0], &c, 1), 1);
    EXPECT_EQ((*reader)->job(id(1))->entries, 4 + i);
  }
  int status = -1;
  ::waitpid(child, &status, 0);
  EXPECT_EQ(status, 0);
}

TEST_F(InFolder, held_snapshot_is_let_go) {
  auto writer = store_contract::with_a_job(place_);
  auto reader = open_store(place_.folder(), {.hold_reads = true});
  ASSERT_TRUE(reader && (*reader)->job(id(1)));
  ASSERT_TRUE(writer->append(append_of({note(104, "x")})));
  SQLite::Database other{db().string(), SQLite::OPEN_READWRITE};
  const auto cannot_be_emptied = [&] { return other.execAndGet("pragma wal_checkpoint(truncate)").getInt(); };
  EXPECT_EQ(cannot_be_emptied(), 1);
  let_go(**reader);
  EXPECT_EQ(cannot_be_emptied(), 0);
  EXPECT_EQ((*reader)->job(id(1))->entries, 4);
}

}  // namespace
}  // namespace flatwise::store_sqlite
