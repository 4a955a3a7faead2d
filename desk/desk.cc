#include "desk/desk.h"

#include "desk/kept.h"
#include "desk/opening.h"

namespace flatwise::desk {

Done<Opened> open_job(job::Store& store, const job::Id& id) {
  Definitions none{0};
  auto whole = open_whole(store, id, none);
  if (!whole) return tl::unexpected(std::move(whole.error()));
  return std::move(whole->opened);
}

Done<job::Appended> take(job::Store& store, const job::Id& id, std::vector<job::Entry> entries,
                         const std::optional<std::string>& only_if_head) {
  return Kept{0, 1}.take(store, id, std::move(entries), only_if_head);
}

Done<job::JobRow> project_again(job::Store& store, const job::Id& id) {
  auto job = open_job(store, id);
  if (!job) return tl::unexpected(std::move(job.error()));
  if (auto put = store.put_projection(job->row); !put) return fault(std::move(put.error()));
  return std::move(job->row);
}

}  // namespace flatwise::desk
