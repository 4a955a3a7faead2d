// api.h: everything behind the sockets: the guard, the routes, the page. One object a server; called from all lanes at once.
#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "desk/kept.h"
#include "job/store.h"
#include "server/guard.h"
#include "server/http.h"
#include "server/let_in.h"
#include "server/live.h"
#include "server/pages.h"

namespace flatwise::server {

class Api : public Service {
 public:
  struct Parts {
    std::vector<std::unique_ptr<job::Store>> stores;  ///< One a lane.
    Live& live;
    LetIn& let_in;
    const Guard& guard;
    const Pages& pages;
    std::function<job::Instant()> now;
  };
  /// Lanes below `holding` have stores that keep their snapshot.
  Api(Parts parts, std::size_t holding) : parts_{std::move(parts)}, holding_{holding} {}
  Plan plan(Request& head) override;
  Reply answer(const Request& request, std::size_t lane) override;
  Reply broken(Broken what) override;
  void idle(std::size_t lane) override;

 private:
  static constexpr std::size_t kJobsKept = 16, kShaftsKept = 64;
  [[nodiscard]] Reply call(const Request& request, job::Store& store);
  Parts parts_;
  std::size_t holding_;
  desk::Kept opened_{kJobsKept, kShaftsKept};
};

}  // namespace flatwise::server
