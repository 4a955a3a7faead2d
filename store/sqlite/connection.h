// connection.h: one SQLite connection with its kept statements, transactions and the mapping of its errors. Inside the
// adapter faults travel as the exception Refused; reading() and writing() turn them to answers, so none leaves it.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <cmath>
#include <concepts>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <unordered_map>
#include <utility>

#include "job/store.h"
#include "store/sqlite/open.h"

namespace flatwise::store_sqlite {

using job::StoreFault;

struct Refused {
  StoreFault fault;
};
[[noreturn]] void refuse(StoreFault::Kind kind, std::string detail);

[[nodiscard]] StoreFault fault_of(const SQLite::Exception& error);

/// Refuses (`failed`) text with a NUL or with bytes that are not UTF-8: other databases cannot hold it, and none should.
void must_be_text(const std::string& text);

/// One run of a kept statement; ready for the next run when it goes out of scope.
class Query {
 public:
  template <class... Args>
  Query(SQLite::Statement& statement, Watch* watch, const Args&... args) : statement_{&statement}, watch_{watch} {
    int place = 0;
    (bind_one(++place, args), ...);
  }
  Query(const Query&) = delete;
  Query& operator=(const Query&) = delete;
  ~Query() { statement_->tryReset(); }

  /// Steps to the next row.
  bool next();

  [[nodiscard]] std::string text(int column) const { return statement_->getColumn(column).getString(); }
  [[nodiscard]] std::int64_t whole(int column) const { return statement_->getColumn(column).getInt64(); }
  [[nodiscard]] int number(int column) const { return statement_->getColumn(column).getInt(); }
  [[nodiscard]] bool yes(int column) const { return number(column) != 0; }
  [[nodiscard]] double real(int column) const { return statement_->getColumn(column).getDouble(); }
  [[nodiscard]] bool none(int column) const { return statement_->isColumnNull(column); }
  [[nodiscard]] std::optional<double> maybe_real(int column) const {
    return none(column) ? std::nullopt : std::optional{real(column)};
  }
  [[nodiscard]] std::optional<std::string> maybe_text(int column) const {
    return none(column) ? std::nullopt : std::optional{text(column)};
  }

 private:
  void bind_one(int place, const std::string& text) {
    must_be_text(text);
    statement_->bind(place, text);
  }
  void bind_one(int place, const char* text) { statement_->bind(place, text); }
  void bind_one(int place, std::string_view text) { bind_one(place, std::string{text}); }
  void bind_one(int place, double value) {
    if (!std::isfinite(value)) refuse(StoreFault::Kind::failed, "a number that is not finite");
    statement_->bind(place, value);
  }
  void bind_one(int place, bool value) { statement_->bind(place, value ? 1 : 0); }
  template <std::integral T>
  void bind_one(int place, T value) {
    statement_->bind(place, static_cast<std::int64_t>(value));
  }
  template <class T>
  void bind_one(int place, const std::optional<T>& value) {
    if (value)
      bind_one(place, *value);
    else
      statement_->bind(place);
  }

  SQLite::Statement* statement_;
  Watch* watch_;
  bool started_ = false;
};

class Connection {
 public:
  /// Throws SQLite::Exception. `flags` as SQLite's.
  Connection(const std::string& file, int flags, const Options& options);
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;
  ~Connection();

  /// `sql`: text that lives as long as the program; its address is its key.
  template <class... Args>
  [[nodiscard]] Query query(const char* sql, const Args&... args) {
    return Query{kept(sql), watch_, args...};
  }
  [[nodiscard]] SQLite::Statement& kept(const char* sql);
  /// Runs a statement without rows.
  template <class... Args>
  void run(const char* sql, const Args&... args) {
    query(sql, args...).next();
  }
  /// Runs statements that are not kept (schema, pragmas).
  void once(const char* sql);
  /// Whole number that a pragma or a one-row query answers with.
  [[nodiscard]] std::int64_t number_once(const char* sql);

  /// Runs `work` in the held snapshot, where one is kept; one statement sees one state in any case.
  template <class Work>
  auto reading(const Work& work) -> job::Stored<std::invoke_result_t<const Work&>> {
    return guarded(work, [this] { renew(); }, [] {});
  }
  /// Runs `work` in a snapshot of its own: all its statements see one state.
  template <class Work>
  auto reading_several(const Work& work) -> job::Stored<std::invoke_result_t<const Work&>> {
    return guarded(
        work,
        [this] {
          renew();
          if (!held_) run("begin");
        },
        [this] {
          if (!held_) run("commit");
        });
  }
  /// Runs `work` as the only writer. All of it is on the disk when this answers, or none.
  template <class Work>
  auto writing(const Work& work) -> job::Stored<std::invoke_result_t<const Work&>> {
    return guarded(
        work,
        [this] {
          let_go();
          run("begin immediate");
        },
        [this] { run("commit"); });
  }
  void let_go() noexcept;
  /// Rolls back what is open; nothing where nothing is.
  void roll_back() noexcept;
  [[nodiscard]] sqlite3* handle() { return database_.getHandle(); }
  [[nodiscard]] Watch* watch() const { return watch_; }

 private:
  template <class Work, class Before, class After>
  auto guarded(const Work& work, const Before& before, const After& after)
      -> job::Stored<std::invoke_result_t<const Work&>> {
    StoreFault fault;
    try {
      before();
      if constexpr (std::is_void_v<std::invoke_result_t<const Work&>>) {
        work();
        after();
        return {};
      } else {
        auto result = work();
        after();
        return result;
      }
    } catch (const Refused& refused) {
      fault = refused.fault;
    } catch (const SQLite::Exception& error) {
      fault = fault_of(error);
    } catch (const std::exception& error) {
      fault = {StoreFault::Kind::failed, error.what()};
    }
    roll_back();
    return tl::unexpected{std::move(fault)};
  }
  /// Begins a snapshot, or a new one where something was committed since.
  void renew();

  /// First copy of the header of SQLite's wal-index (sqlite.org/walformat.html): another one after every commit.
  using WalHeader = std::array<std::uint32_t, 12>;
  [[nodiscard]] bool read_wal_header(WalHeader& to);

  SQLite::Database database_;
  std::unordered_map<const char*, std::unique_ptr<SQLite::Statement>> kept_;
  Watch* watch_;
  bool hold_ = false, held_ = false;
  WalHeader seen_{};
  const volatile std::uint32_t* wal_index_ = nullptr;
};

}  // namespace flatwise::store_sqlite
