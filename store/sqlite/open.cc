#include "store/sqlite/open.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

#include "store/sqlite/schema.h"
#include "store/sqlite/store.h"

namespace flatwise::store_sqlite {

namespace {
namespace fs = std::filesystem;
using enum StoreFault::Kind;

/// What the first bytes of the file say (sqlite.org/fileformat.html, 1.3).
struct Header {
  std::int64_t size = 0;
  bool sqlite = false;
  std::uint32_t pages = 0, page_size = 0, version = 0, application = 0;
  [[nodiscard]] bool is_short() const { return size < std::int64_t{pages} * page_size; }
  [[nodiscard]] bool empty() const { return size == 0 || (sqlite && pages <= 1 && version == 0 && application == 0); }
};

std::uint32_t big_endian(const std::array<unsigned char, 100>& bytes, std::size_t at) {
  return (std::uint32_t{bytes[at]} << 24U) | (std::uint32_t{bytes[at + 1]} << 16U) |
         (std::uint32_t{bytes[at + 2]} << 8U) | bytes[at + 3];
}

Header header_of(const std::array<unsigned char, 100>& bytes, std::int64_t size) {
  Header h;
  h.size = size;
  h.sqlite = size >= 100 && std::memcmp(bytes.data(), "SQLite format 3", 16) == 0;
  if (!h.sqlite) return h;
  h.page_size = big_endian(bytes, 16) >> 16U;
  if (h.page_size == 1) h.page_size = 65536;
  h.pages = big_endian(bytes, 28);
  h.version = big_endian(bytes, 60);
  h.application = big_endian(bytes, 68);
  return h;
}

/// Reads it through SQLite's own file layer: opening and closing the file beside it would drop the locks that other
/// connections of this program hold (sqlite.org/howtocorrupt.html, 2.2). Takes no lock and writes nothing.
Header read_header(const fs::path& file, const Options& options) {
  sqlite3_initialize();
  sqlite3_vfs* vfs = sqlite3_vfs_find(options.vfs.empty() ? nullptr : options.vfs.c_str());
  if (!vfs) refuse(failed, "no such file layer");
  const auto name = std::unique_ptr<const char, void (*)(const char*)>{
      sqlite3_create_filename(file.c_str(), "", "", 0, nullptr), [](const char* n) { sqlite3_free_filename(n); }};
  std::string memory(static_cast<std::size_t>(vfs->szOsFile), '\0');
  auto* open = reinterpret_cast<sqlite3_file*>(memory.data());
  int flags = SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB;
  if (vfs->xOpen(vfs, name.get(), open, flags, &flags) != SQLITE_OK) {
    if (open->pMethods) open->pMethods->xClose(open);
    refuse(failed, file.string() + " cannot be opened");
  }
  std::array<unsigned char, 100> bytes{};
  sqlite3_int64 size = 0;
  int code = open->pMethods->xFileSize(open, &size);
  if (code == SQLITE_OK && size > 0)
    code = open->pMethods->xRead(open, bytes.data(), static_cast<int>(bytes.size()), 0);
  open->pMethods->xClose(open);
  if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ) refuse(failed, file.string() + " cannot be read");
  return header_of(bytes, size);
}

/// A log that is not yet all in the database: the first page may already name a size that the file does not have, because
/// another program is at it or was killed at it. SQLite sorts that out. Asked between two looks at the header: who was at it
/// may have finished and taken the log away.
bool has_log(const fs::path& file) {
  std::error_code error;
  const auto size = fs::file_size(file.string() + "-wal", error);
  return !error && size > 0;
}

/// Looks at a file that is there before SQLite may touch it. True where it is a store; false where there is nothing in it yet.
bool is_store(const fs::path& file, const Options& options) {
  const Header header = read_header(file, options);
  if (header.empty()) return false;
  if (!header.sqlite || header.application != static_cast<std::uint32_t>(kApplicationId))
    refuse(damaged, file.string() + " is not a store");
  if (header.version > static_cast<std::uint32_t>(newest_version()))
    refuse(newer, file.string() + " has version " + std::to_string(header.version));
  if (header.is_short() && !has_log(file) && read_header(file, options).is_short())
    refuse(damaged, file.string() + " is cut short");
  return true;
}

void make_folder(const fs::path& folder) {
  if (fs::is_directory(folder)) return;
  const fs::path parent = fs::absolute(folder).lexically_normal().parent_path();
  fs::create_directories(folder);
  fs::permissions(folder, fs::perms::owner_all);
  const int fd = ::open(parent.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (fd < 0) return;  // It is made; only its name may not be on the disk yet, and SQLite does not ask for more either.
  ::fsync(fd);
  ::close(fd);
}

void set_up(Connection& db, const Options& options) {
  db.once("pragma foreign_keys = on");
  db.once(
      "pragma recursive_triggers = on");  // So that no 'insert or replace' gets past the triggers that refuse deletes.
  db.once("pragma trusted_schema = off");
  db.once("pragma temp_store = memory");
  // KiB, and no more than the record is large. Who keeps a snapshot answers from it, and a page that is read again costs more
  // than all the rest of the answer.
  db.once(options.hold_reads ? "pragma cache_size = -128000" : "pragma cache_size = -32000");
  if (options.mode == Mode::read_only) return;
  db.once("pragma synchronous = full");
  db.once("pragma journal_size_limit = 67108864");
}

/// The newest version of the tables, or a refusal. The log of changes beside the file may hold a newer version than its
/// header: it is asked again, and nothing is written back while it may be newer.
void bring_up(Connection& db, Mode mode) {
  sqlite3_db_config(db.handle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
  const auto version = db.number_once("pragma user_version");
  if (version > newest_version()) refuse(newer, "version " + std::to_string(version));
  if (mode == Mode::read_only && version < newest_version()) refuse(failed, "an older store, opened for reading only");
  sqlite3_db_config(db.handle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 0, nullptr);
  if (mode == Mode::read_only) return;
  if (db.number_once("select 'wal' <> (select journal_mode from pragma_journal_mode)") != 0)
    db.once("pragma journal_mode = wal");
  if (version == newest_version()) return;
  migrate(db, migrations());
  // So that the header says it too, for a program that is older than this one.
  db.once("pragma wal_checkpoint(truncate)");
}

std::unique_ptr<SqliteStore> opened(const fs::path& folder, const Options& options) {
  const fs::path file = database_file(folder);
  if (options.mode == Mode::make) make_folder(folder);
  const bool there = fs::exists(file) && is_store(file, options);
  if (!there && options.mode != Mode::make) refuse(missing, "no store in " + folder.string());
  const int flags = options.mode == Mode::read_only ? SQLITE_OPEN_READONLY
                    : options.mode == Mode::make    ? SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE
                                                    : SQLITE_OPEN_READWRITE;
  auto store = std::make_unique<SqliteStore>(file.string(), flags | SQLITE_OPEN_NOMUTEX, folder / "blobs", options);
  // The files beside it get what the database has.
  if (!there) fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
  set_up(store->connection(), options);
  bring_up(store->connection(), options.mode);
  return store;
}

template <class Work>
auto answered(const Work& work) -> Stored<std::invoke_result_t<const Work&>> {
  try {
    return work();
  } catch (const Refused& refused) {
    return tl::unexpected{refused.fault};
  } catch (const SQLite::Exception& error) {
    return tl::unexpected{fault_of(error)};
  } catch (const std::exception& error) {
    return tl::unexpected{StoreFault{failed, error.what()}};
  }
}
}  // namespace

void SqliteStore::speak_for(const job::Id& id) {
  const auto found = db_.reading([&] {
    Query row = id.empty() ? db_.query("select workshop from workshops limit 2")
                           : db_.query("select workshop from workshops where id = ?", id);
    if (!row.next()) refuse(missing, "workshop " + id);
    const std::int64_t first = row.whole(0);
    if (row.next()) refuse(failed, "several workshops, and none named");
    return first;
  });
  if (!found) throw Refused{found.error()};
  workshop_ = *found;
}

void SqliteStore::add_workshop(const job::Id& id) {
  const flatwise::Workshop none;
  db_.run(
      "insert into workshops (id, name, invented, currency, room, room_half_width, origins) "
      "values (?, '', 0, '', ?, ?, '{}') on conflict do nothing",
      id, none.room.kelvin(), none.room_half_width.kelvins());
}

Stored<void> SqliteStore::make_workshop(const job::Id& id, const flatwise::Workshop& content) {
  return db_.writing([&] {
    {
      Query there = db_.query("select 1 from workshops where id = ?", id);
      if (there.next()) refuse(exists, "workshop " + id);
    }
    add_workshop(id);
    workshop_ = static_cast<std::int64_t>(sqlite3_last_insert_rowid(db_.handle()));
    write_workshop(content);
    note_change("workshop", {});
  });
}

Stored<std::unique_ptr<job::Store>> open_store(const fs::path& folder, const Options& options) {
  return answered([&]() -> std::unique_ptr<job::Store> {
    auto store = opened(folder, options);
    if (options.mode == Mode::make) {
      const auto made = store->connection().writing([&] {
        Query any = store->connection().query("select 1 from workshops");
        if (!options.workshop.empty() || !any.next())
          store->add_workshop(options.workshop.empty() ? random_id() : options.workshop);
      });
      if (!made) throw Refused{made.error()};
    }
    store->speak_for(options.workshop);
    if (options.mode != Mode::read_only) store->blobs().sweep();
    return store;
  });
}

Stored<std::unique_ptr<job::Store>> make_store(const fs::path& folder, const job::Id& workshop,
                                               const flatwise::Workshop& content, Options options) {
  return answered([&]() -> std::unique_ptr<job::Store> {
    if (workshop.empty()) refuse(failed, "a workshop needs an id");
    options.mode = Mode::make;
    auto store = opened(folder, options);
    const auto made = store->make_workshop(workshop, content);
    if (!made) throw Refused{made.error()};
    return store;
  });
}

void let_go(job::Store& store) {
  if (auto* own = dynamic_cast<SqliteStore*>(&store)) own->connection().let_go();
}

fs::path database_file(const fs::path& folder) { return folder / "record.db"; }

}  // namespace flatwise::store_sqlite
