// kept.h: jobs as they were opened last, so that one that nothing touched is neither read nor folded nor judged again, and one that an
// entry is taken into is carried on from there. For programs that answer many questions; shared by all their threads.
#pragma once

#include <array>
#include <list>
#include <memory>
#include <mutex>

#include "desk/definitions.h"
#include "desk/desk.h"

namespace flatwise::desk {

struct Whole;

class Kept {
 public:
  /// How many jobs and how many definitions are kept; the ones used longest ago go first.
  Kept(std::size_t jobs, std::size_t definitions) : most_{jobs}, definitions_{definitions} {}
  /// The job as it is now in the store: kept from before when neither its entries nor the workshop changed since, else opened.
  [[nodiscard]] Done<std::shared_ptr<const Opened>> get(job::Store& store, const job::Id& id);
  /// As desk::take(). The job as it is then is kept, unless somebody else wrote meanwhile.
  [[nodiscard]] Done<job::Appended> take(job::Store& store, const job::Id& id, std::vector<job::Entry> entries,
                                         const std::optional<std::string>& only_if_head = std::nullopt);

  [[nodiscard]] Definitions& definitions() { return definitions_; }

 private:
  struct One {
    job::Id id;
    std::shared_ptr<const Whole> whole;
    std::int64_t sequence = 0;  ///< Last change of the store that it holds for.
  };
  /// What is kept of the job, if it still holds at that change of the store.
  [[nodiscard]] std::shared_ptr<const Whole> good(job::Store& store, const job::Id& id, std::int64_t sequence);
  [[nodiscard]] std::optional<One> find(const job::Id& id);
  void keep(One one);
  /// Who holds it writes into the job: threads of this program take turns, so that none is overtaken again and again.
  [[nodiscard]] std::mutex& turn(const job::Id& id) { return turns_[std::hash<job::Id>{}(id) % turns_.size()]; }

  std::size_t most_;
  Definitions definitions_;
  std::array<std::mutex, 16> turns_;
  std::mutex mutex_;
  std::list<One> kept_;  ///< The one used last stands first.
};

}  // namespace flatwise::desk
