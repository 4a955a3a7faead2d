// live.h: what changes, as it happens. One thread looks at the store, so that what another program writes is seen too; our own
// writes wake it at once. Each listener has a bounded queue and is dropped when it does not keep up: it comes back with the
// number of the last change it saw and gets what it missed.
#pragma once

#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

#include "job/store.h"
#include "server/http.h"

namespace flatwise::server {

class Listener;

class Live {
 public:
  Live(std::unique_ptr<job::Store> store, Milliseconds every);
  Live(const Live&) = delete;
  Live& operator=(const Live&) = delete;
  ~Live();
  /// Something was written.
  void poke();
  /// A new listener, from the change after `after`, or from now.
  [[nodiscard]] std::shared_ptr<Feed> listen(std::optional<std::int64_t> after);
  /// Ends the feeds there are; who may comes back, with the number of the last change he saw.
  void drop_listeners();
  /// Ends all feeds; none begins any more.
  void end();

 private:
  void run();
  void look();
  void catch_up(Listener& listener);

  std::unique_ptr<job::Store> store_;
  Milliseconds every_;
  std::mutex mutex_;
  std::condition_variable wake_;
  bool poked_ = false, ending_ = false, dropping_ = false;
  std::vector<std::shared_ptr<Listener>> fresh_, listeners_;
  std::int64_t seen_ = -1;
  std::thread thread_;
};

}  // namespace flatwise::server
