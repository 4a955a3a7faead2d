#include "store/sqlite/connection.h"

#include <sqlite3.h>

namespace flatwise::store_sqlite {

void refuse(StoreFault::Kind kind, std::string detail) { throw Refused{{kind, std::move(detail)}}; }

namespace {
StoreFault::Kind kind_of_constraint(int extended) {
  switch (extended) {
    case SQLITE_CONSTRAINT_UNIQUE:
    case SQLITE_CONSTRAINT_PRIMARYKEY:
    case SQLITE_CONSTRAINT_ROWID:
      return StoreFault::Kind::exists;
    case SQLITE_CONSTRAINT_FOREIGNKEY:
      return StoreFault::Kind::missing;
    default:
      return StoreFault::Kind::failed;
  }
}

StoreFault::Kind kind_of_code(int extended) {
  switch (extended & 0xff) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return StoreFault::Kind::busy;
    case SQLITE_FULL:
      return StoreFault::Kind::full;
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      return StoreFault::Kind::damaged;
    case SQLITE_CONSTRAINT:
      return kind_of_constraint(extended);
    default:
      return StoreFault::Kind::failed;
  }
}

/// Length of the UTF-8 character at `at` (RFC 3629: no overlong forms, no surrogates, nothing over U+10FFFF); 0 if there is none.
std::size_t utf8_length(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U; };
  const auto follows = [&](std::size_t i) { return (byte(i) & 0xC0U) == 0x80U; };
  const unsigned first = byte(0), second = byte(1);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return follows(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const unsigned least = first == 0xE0 ? 0xA0 : 0x80, most = first == 0xED ? 0x9F : 0xBF;
    return second >= least && second <= most && follows(2) ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const unsigned least = first == 0xF0 ? 0x90 : 0x80, most = first == 0xF4 ? 0x8F : 0xBF;
    return second >= least && second <= most && follows(2) && follows(3) ? 4 : 0;
  }
  return 0;
}
}  // namespace

StoreFault fault_of(const SQLite::Exception& error) {
  const int code = error.getExtendedErrorCode() > 0 ? error.getExtendedErrorCode() : error.getErrorCode();
  return {kind_of_code(code), std::string{error.what()} + " (" + std::to_string(code) + ")"};
}

void must_be_text(const std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t length = text[at] == '\0' ? 0 : utf8_length(text, at);
    if (length == 0) refuse(StoreFault::Kind::failed, "text with a NUL, or not in UTF-8");
    at += length;
  }
}

bool Query::next() {
  if (!started_) {
    started_ = true;
    if (const int code = watch_ ? watch_->statement(statement_->getQuery()) : 0; code != 0)
      throw SQLite::Exception{"made to fail", code};
  }
  return statement_->executeStep();
}

Connection::Connection(const std::string& file, int flags, const Options& options)
    : database_{file, flags, options.wait_ms, options.vfs}, watch_{options.watch}, hold_{options.hold_reads} {}

Connection::~Connection() { let_go(); }

SQLite::Statement& Connection::kept(const char* sql) {
  auto& statement = kept_[sql];
  if (!statement) statement = std::make_unique<SQLite::Statement>(database_, sql);
  return *statement;
}

void Connection::once(const char* sql) {
  if (const int code = watch_ ? watch_->statement(sql) : 0; code != 0) throw SQLite::Exception{"made to fail", code};
  database_.exec(sql);
}

std::int64_t Connection::number_once(const char* sql) {
  SQLite::Statement statement{database_, sql};
  Query query{statement, watch_};
  return query.next() ? query.whole(0) : 0;
}

void Connection::roll_back() noexcept {
  held_ = false;
  // Not a kept statement and not watched: it must work when nothing else does. Where SQLite has rolled back by itself there
  // is nothing left to do.
  if (sqlite3_get_autocommit(handle()) == 0) sqlite3_exec(handle(), "rollback", nullptr, nullptr, nullptr);
}

void Connection::let_go() noexcept {
  if (held_) roll_back();
}

bool Connection::read_wal_header(WalHeader& to) {
  if (!wal_index_) {
    sqlite3_file* file = nullptr;
    if (sqlite3_file_control(handle(), "main", SQLITE_FCNTL_FILE_POINTER, static_cast<void*>(&file)) != SQLITE_OK)
      return false;
    constexpr int kRegion = 32768;  // Of the wal-index, by its format.
    volatile void* region = nullptr;
    if (!file || !file->pMethods || file->pMethods->iVersion < 2 ||
        file->pMethods->xShmMap(file, 0, kRegion, 0, &region) != SQLITE_OK || !region)
      return false;
    wal_index_ = static_cast<const volatile std::uint32_t*>(region);
  }
  // Word by word, each read at once: another connection may be writing it. Nothing read here is used but to compare, so no
  // order between the words is asked for.
  for (std::size_t i = 0; i < to.size(); ++i) to[i] = __atomic_load_n(wal_index_ + i, __ATOMIC_ACQUIRE);
  return true;
}

void Connection::renew() {
  if (!hold_) return;
  // SQLite's own check (a read transaction begun and ended for each read) takes locks from the system; comparing the header
  // does not. A header read while it is being written differs from the one kept, and the snapshot is renewed for nothing.
  WalHeader now{};
  const bool known = read_wal_header(now);
  if (held_ && known && now == seen_) return;
  let_go();
  run("begin");
  held_ = true;
  seen_ = known ? now : WalHeader{};
}

}  // namespace flatwise::store_sqlite
