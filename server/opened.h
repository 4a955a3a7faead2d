// opened.h: jobs as they were opened last, so that a screen of a job that nothing touched is not folded again.
#pragma once

#include <list>
#include <memory>
#include <mutex>

#include "desk/desk.h"

namespace flatwise::server {

class OpenedJobs {
 public:
  explicit OpenedJobs(std::size_t most) : most_{most} {}
  /// The job as it is now in the store: kept from before when neither its entries nor the workshop changed since, else opened.
  [[nodiscard]] desk::Done<std::shared_ptr<const desk::Opened>> get(job::Store& store, const job::Id& id);

 private:
  struct Kept {
    job::Id id;
    std::shared_ptr<const desk::Opened> opened;
    std::int64_t sequence = 0;  ///< Last change of the store that it holds for.
  };
  [[nodiscard]] std::optional<Kept> find(const job::Id& id);
  void keep(Kept kept);

  std::size_t most_;
  std::mutex mutex_;
  std::list<Kept> kept_;  ///< The one used last stands first.
};

}  // namespace flatwise::server
