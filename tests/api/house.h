// house.h: a server in this process on a record of its own: the demo's, in a folder that goes away with the test.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <thread>

#include "server/serve.h"
#include "store/sqlite/test_place.h"
#include "tests/api/http_client.h"

namespace flatwise::api_test {

/// What the clock of a server under test says, in milliseconds: 2026-02-04T12:00Z, the day after the demo's last. It stands still.
inline constexpr std::int64_t kHouseNow = 1'770'206'400'000;

/// A folder with the record of the demo in it. Made once a program, then copied.
void copy_demo_record(const std::filesystem::path& folder);

/// What a test names of the demo's record.
struct Known {
  std::string bench, lead, customer, machine, shaft, version, toml;  ///< Machine and shaft of job 31.
  std::string job_31, job_34;
  std::string last_31;  ///< Last entry of job 31.
};

class House {
 public:
  /// `change`: settings other than those of a server for this machine only.
  explicit House(const std::function<void(server::Settings&)>& change = {});
  ~House();
  House(const House&) = delete;
  House& operator=(const House&) = delete;

  [[nodiscard]] unsigned short port() const { return server_->port(); }
  [[nodiscard]] Answer ask(const Ask& ask) const { return api_test::ask(port(), ask); }
  [[nodiscard]] const std::filesystem::path& folder() const { return folder_.path(); }
  /// A connection of another program to the same record.
  [[nodiscard]] job::Store& other() { return *other_; }
  [[nodiscard]] const Known& known() const { return known_; }
  server::Server& server() { return *server_; }
  /// Number of the last change in the record.
  [[nodiscard]] std::int64_t last_change() { return other_->last_change().value(); }

 private:
  store_sqlite::TestFolder folder_;
  std::unique_ptr<job::Store> other_;
  Known known_;
  std::unique_ptr<server::Server> server_;
  std::thread thread_;
};

/// A new id each time: a UUID of version 7.
[[nodiscard]] std::string fresh_id();
/// What stands round a body as a page sends it.
struct Author {
  std::string by, follows;
  std::vector<std::string> corrects = {};
};
/// {"entries": [...]} with one body each.
[[nodiscard]] std::string entries_text(const Author& author, const std::vector<std::string>& bodies,
                                       const std::vector<std::string>& ids = {});
/// A note, the plainest entry there is.
[[nodiscard]] std::string note(const std::string& text);

}  // namespace flatwise::api_test
