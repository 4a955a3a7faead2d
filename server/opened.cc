#include "server/opened.h"

#include <algorithm>

namespace flatwise::server {
namespace {

constexpr int kLooked = 200;  ///< Changes looked through before it is quicker to open anew.

/// Whether all that changed since is about other jobs: a job stands on its entries, its version of the shaft (which never
/// changes) and the workshop with its stock.
bool untouched(job::Store& store, const job::Id& id, std::int64_t since, std::int64_t until) {
  if (since == until) return true;
  const auto changes = store.changes(since, kLooked);
  return changes && changes->size() < kLooked &&
         std::ranges::all_of(
             *changes,
             [&](const job::Change& c) {
               return (c.what == "job" && c.id != id) || c.what == "machine" || c.what == "customer";
             });
}

}  // namespace

std::optional<OpenedJobs::Kept> OpenedJobs::find(const job::Id& id) {
  const std::scoped_lock lock{mutex_};
  const auto it = std::ranges::find(kept_, id, &Kept::id);
  if (it == kept_.end()) return std::nullopt;
  kept_.splice(kept_.begin(), kept_, it);
  return *it;
}

void OpenedJobs::keep(Kept kept) {
  const std::scoped_lock lock{mutex_};
  std::erase_if(kept_, [&](const Kept& k) { return k.id == kept.id; });
  kept_.push_front(std::move(kept));
  if (kept_.size() > most_) kept_.pop_back();
}

desk::Done<std::shared_ptr<const desk::Opened>> OpenedJobs::get(job::Store& store, const job::Id& id) {
  const auto sequence =
      store.last_change();  // Before opening: what comes between makes it open once more, never stale.
  if (!sequence) return tl::unexpected(desk::Refusal{{}, sequence.error()});
  if (auto kept = find(id); kept && untouched(store, id, kept->sequence, *sequence)) {
    if (kept->sequence != *sequence) keep({id, kept->opened, *sequence});
    return kept->opened;
  }
  auto opened = desk::open_job(store, id);
  if (!opened) return tl::unexpected(std::move(opened.error()));
  auto shared = std::make_shared<const desk::Opened>(*std::move(opened));
  keep({id, shared, *sequence});
  return shared;
}

}  // namespace flatwise::server
