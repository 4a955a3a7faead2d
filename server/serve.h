// serve.h: the whole server: store, live feed, guard, page and sockets put together.
//
//   auto server = Server::make({.data = folder});
//   (*server)->run(true);
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/units/problem.h"
#include "job/store.h"
#include "server/http.h"
#include "server/times.h"
#include "store/sqlite/open.h"

namespace flatwise::server {

struct Settings {
  std::filesystem::path data;                     ///< Folder of the store; it must be there.
  std::string listen = "127.0.0.1";               ///< Beyond loopback every device must be let in.
  unsigned short port = 0;                        ///< 0: any that is free.
  std::vector<std::string> names = {};            ///< More names that the server goes by.
  std::optional<std::filesystem::path> web_root;  ///< The page from there, not as compiled in.
  std::function<void(const std::string& code)> show_code = [](const std::string&) {};
  std::function<std::string()> reached_at = [] { return std::string{}; };  ///< The page's address for another device.
  Limits limits = {};
  std::size_t io_threads = 1;
  std::size_t pool_threads = 2;
  std::function<job::Instant()> now = server::now;  ///< When what is sent is received; another one for tests.
  Milliseconds look{100};                           ///< How often what other programs wrote is looked for.
  store_sqlite::Watch* watch = nullptr;             ///< On the stores that answer: for tests that let a call fail.
};

class Server {
 public:
  /// Opens the store and listens.
  ///
  /// Refuses    A store that is not there, damaged or written by a newer program; an address that cannot be bound.
  [[nodiscard]] static Result<std::unique_ptr<Server>> make(const Settings& settings);
  Server(const Server&) = delete;
  Server& operator=(const Server&) = delete;
  virtual ~Server() = default;
  [[nodiscard]] virtual unsigned short port() const = 0;
  [[nodiscard]] virtual std::string address() const = 0;  ///< "http://127.0.0.1:8080/"
  virtual void run(bool signals) = 0;
  virtual void stop() = 0;
  virtual void show_code() = 0;  ///< Again, through Settings::show_code.

 protected:
  Server() = default;
};

/// A fault of the store as a problem of its folder.
[[nodiscard]] Problem store_problem(const std::filesystem::path& folder, const job::StoreFault& fault);

}  // namespace flatwise::server
