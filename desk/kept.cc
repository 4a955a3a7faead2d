#include "desk/kept.h"

#include <algorithm>

#include "desk/taking.h"

namespace flatwise::desk {
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

std::optional<Kept::One> Kept::find(const job::Id& id) {
  const std::scoped_lock lock{mutex_};
  const auto it = std::ranges::find(kept_, id, &One::id);
  if (it == kept_.end()) return std::nullopt;
  kept_.splice(kept_.begin(), kept_, it);
  return *it;
}

void Kept::keep(One one) {
  const std::scoped_lock lock{mutex_};
  // Who was slower to put it together must not put back what was before.
  const auto it = std::ranges::find(kept_, one.id, &One::id);
  if (it != kept_.end() && it->sequence > one.sequence) return;
  if (it != kept_.end()) kept_.erase(it);
  kept_.push_front(std::move(one));
  if (kept_.size() > most_) kept_.pop_back();
}

std::shared_ptr<const Whole> Kept::good(job::Store& store, const job::Id& id, std::int64_t sequence) {
  auto one = find(id);
  if (!one || sequence < one->sequence || !untouched(store, id, one->sequence, sequence)) return nullptr;
  if (one->sequence != sequence) keep({id, one->whole, sequence});
  return one->whole;
}

Done<std::shared_ptr<const Opened>> Kept::get(job::Store& store, const job::Id& id) {
  // Before opening: what comes between makes it open once more, never stale.
  const auto sequence = store.last_change();
  if (!sequence) return fault(sequence.error());
  auto whole = good(store, id, *sequence);
  if (!whole) {
    auto opened = open_whole(store, id, definitions_);
    if (!opened) return tl::unexpected(std::move(opened.error()));
    whole = std::make_shared<const Whole>(*std::move(opened));
    keep({id, whole, *sequence});
  }
  return std::shared_ptr<const Opened>{whole, &whole->opened};
}

Done<job::Appended> Kept::take(job::Store& store, const job::Id& id, std::vector<job::Entry> entries,
                               const std::optional<std::string>& only_if_head) {
  constexpr int kAttempts = 8;  // Another program may write between reading and storing.
  const std::scoped_lock turn_taken{turn(id)};
  for (job::Entry& entry : entries) entry.job = id;
  for (int attempt = 1;; ++attempt) {
    const auto since = store.last_change();
    if (!since) return fault(since.error());
    const std::shared_ptr<const Whole> known = good(store, id, *since);
    Done<Taken> taken = take_once(store, id, entries, only_if_head, definitions_, known.get());
    if (taken) {
      // The changes are numbered in a row: when these are all that came, nobody else wrote since it was looked at.
      const std::int64_t ours = *since + static_cast<std::int64_t>(taken->changes);
      if (taken->now && taken->appended.sequence == ours)
        keep({id, std::make_shared<const Whole>(*std::move(taken->now)), ours});
      return std::move(taken->appended);
    }
    const bool overtaken = taken.error().fault && taken.error().fault->kind == job::StoreFault::Kind::changed;
    if (!overtaken || only_if_head || attempt == kAttempts) return tl::unexpected(std::move(taken.error()));
  }
}

}  // namespace flatwise::desk
