// open.h: the record in a folder of the computer: a SQLite database (record.db) and, beside it, photos and recordings by the
// hash of their bytes (blobs/). Several programs may have one folder open at the same time.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

#include "job/store.h"

namespace flatwise::store_sqlite {

enum class Mode {
  make,       ///< Opens it; makes folder, database and workshop where they are not there yet.
  existing,   ///< Opens it; brings an older one up to this program's version.
  read_only,  ///< Every writing call is refused (`failed`). An older store is refused too: it cannot be brought up.
};

/// Stands between the adapter and the system: for tests that let one call fail. Each answers with 0 to go on; else with what
/// the call is to fail with, and the call is not made.
class Watch {
 public:
  virtual ~Watch() = default;
  /// Before a statement of SQL runs. An SQLite result code (SQLITE_IOERR, ...).
  virtual int statement(std::string_view /*sql*/) { return 0; }
  /// Before a call on a file beside the database: "open", "write", "fsync", "close", "rename", "mkdir". An errno.
  virtual int file(std::string_view /*call*/) { return 0; }
};

struct Options {
  job::Id workshop{};  ///< Empty: the only one there is.
  Mode mode = Mode::existing;
  int wait_ms = 5000;       ///< How long to wait for another writer before `busy`.
  bool hold_reads = false;  ///< Keeps one snapshot between reads while nothing changes: quicker. See let_go().
  std::string vfs{};        ///< SQLite's file layer by name; empty: the system's.
  Watch* watch = nullptr;   ///< Not owned; must outlive the store.
};

/// Opens the store in `folder`.
///
/// Refuses    missing: no store there, or not that workshop in it. newer: written by a newer program; the file stays as it is,
///            byte for byte. damaged: a file that is not a store of ours, or one that is cut short or overwritten; left as it
///            is. failed: several workshops and none named, or anything else the system said.
[[nodiscard]] job::Stored<std::unique_ptr<job::Store>> open_store(const std::filesystem::path& folder,
                                                                  const Options& options = {});

/// Makes folder and store where needed and this workshop in it.
///
/// Refuses    As open_store; exists: that workshop is there already (nothing changed).
[[nodiscard]] job::Stored<std::unique_ptr<job::Store>> make_store(const std::filesystem::path& folder,
                                                                  const job::Id& workshop,
                                                                  const flatwise::Workshop& content,
                                                                  Options options = {});

/// Ends the snapshot that a store opened with `hold_reads` keeps. To be called when it will not be asked for a while: a held
/// snapshot keeps the write-ahead log from being used again. Nothing happens to other stores.
void let_go(job::Store& store);

/// Where the database of a folder stands.
[[nodiscard]] std::filesystem::path database_file(const std::filesystem::path& folder);

}  // namespace flatwise::store_sqlite
