// contract_several.cc: several connections and several workshops at once.
#include <array>
#include <atomic>
#include <thread>

#include "store/contract_rows.h"

namespace flatwise::store_contract {
namespace {

void workshops_do_not_see_each_other(Place& place, Report& report) {
  auto one = furnished(place, id(1)), two = furnished(place, id(2));
  NEEDS(one && two);
  HOLDS(one->append(append_of({note(101, "of the first")})));
  HOLDS(refused(two->job(id(1)), Kind::missing));
  HOLDS(refused(two->job_by_number("1"), Kind::missing));
  HOLDS(two->entry(id(101)) && !*two->entry(id(101)));
  HOLDS(two->open_jobs() && two->open_jobs()->empty());
  HOLDS(two->append(append_of({note(101, "of the second")})));  // The same ids and the same number.
  HOLDS(two->put_person({id(11), "Somebody else", job::Role::owner, false}));
  HOLDS(two->move_stock({id(21), "P-20", 5, 0, "came", {1}}));
  const auto mine = one->entry(id(101));
  HOLDS(mine && *mine && (*mine)->body == note(101, "of the first").body);
  HOLDS(one->people() && one->people()->size() == 1 && one->people()->front().name == "Bench hand");
  HOLDS(one->workshop() && one->workshop()->stock[0].on_shelf == 7);
  HOLDS(is_whole(*one, id(1)) && is_whole(*two, id(1)));
  const auto changes = one->changes(0, 1000);
  NEEDS(changes);
  for (const auto& change : *changes) HOLDS(change.what != "stock" || change.sequence < 5);
}

void what_is_stored_is_seen_at_once(Place& place, Report& report) {
  auto writer = with_a_job(place);
  auto reader = place.open(id(1));
  NEEDS(writer && reader);
  for (int n = 200; n < 220; ++n) {
    HOLDS((*reader)->entries(id(1), 0) && (*reader)->entries(id(1), 0)->size() == static_cast<std::size_t>(n - 197));
    const auto done = writer->append(append_of({note(n, "next")}));
    NEEDS(done);
    const auto row = (*reader)->job(id(1));
    HOLDS(row && row->head == done->head && row->entries == n - 196);
    HOLDS((*reader)->last_change() == done->sequence);
    HOLDS((*reader)->entry(id(n)) && *(*reader)->entry(id(n)));
  }
  HOLDS((*reader)->append(append_of({note(300, "by the other")})));
  HOLDS(writer->entry(id(300)) && *writer->entry(id(300)));
}

void what_is_stored_outlives_the_connection(Place& place, Report& report) {
  auto first = with_a_job(place);
  NEEDS(first);
  const auto head = first->job(id(1));
  first.reset();
  auto again = place.open(id(1));
  NEEDS(again);
  const auto now = (*again)->job(id(1));
  HOLDS(head && now && same(*head, *now));
  HOLDS(is_whole(**again, id(1)));
}

/// Runs `work(store, i)` in `threads` threads, each with a connection of its own. False where one could not be opened.
template <class Work>
bool at_once(Place& place, int threads, const Work& work) {
  std::vector<std::unique_ptr<job::Store>> stores;
  for (int i = 0; i < threads; ++i) {
    auto opened = place.open(id(1));
    if (!opened) return false;
    stores.push_back(std::move(*opened));
  }
  std::vector<std::thread> running;
  for (int i = 0; i < threads; ++i) running.emplace_back([&, i] { work(*stores[static_cast<std::size_t>(i)], i); });
  for (std::thread& thread : running) thread.join();
  return true;
}

void two_write_to_one_job_and_the_chain_stays_whole(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  constexpr int kEach = 60;
  std::atomic<int> stored{0}, heads_right{0};
  const bool ran = at_once(place, 2, [&](job::Store& own, int i) {
    for (int k = 0; k < kEach; ++k) {
      const auto done = own.append(append_of({note(1000 * (i + 1) + k, "a"), note(1000 * (i + 1) + 500 + k, "b")}));
      if (!done) continue;
      stored += done->fresh;
      heads_right += done->rows.size() == 2 && done->rows[1].before == done->rows[0].hash ? 1 : 0;
    }
  });
  NEEDS(ran);
  HOLDS(stored == 4 * kEach && heads_right == 2 * kEach);
  const auto all = store->entries(id(1), 0);
  HOLDS(all && all->size() == 3 + 4 * kEach);
  HOLDS(is_whole(*store, id(1)));
}

void one_of_two_that_saw_the_same_head_is_refused(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  for (int round = 0; round < 20; ++round) {
    const auto head = store->job(id(1));
    NEEDS(head);
    std::atomic<int> stored{0}, moved{0};
    const bool ran = at_once(place, 2, [&](job::Store& own, int i) {
      job::Append append = append_of({note(2000 + 10 * round + i, "mine")});
      append.only_if_head = head->head;
      const auto done = own.append(append);
      (done ? stored : moved) += done || done.error().kind == Kind::changed ? 1 : 0;
    });
    NEEDS(ran);
    HOLDS(stored == 1 && moved == 1);
  }
  HOLDS(is_whole(*store, id(1)));
}

void the_same_entry_from_two_at_once_is_stored_once(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  for (int round = 0; round < 20; ++round) {
    std::atomic<int> fresh{0}, answered{0};
    const bool ran = at_once(place, 2, [&](job::Store& own, int /*i*/) {
      const auto done = own.append(append_of({note(3000 + round, "the same")}));
      if (!done) return;
      ++answered;
      fresh += done->fresh;
    });
    NEEDS(ran);
    HOLDS(answered == 2 && fresh == 1);
  }
  HOLDS(store->job(id(1)) && store->job(id(1))->entries == 23);
}

void readers_see_whole_appends_only(Place& place, Report& report) {
  auto store = with_a_job(place);
  NEEDS(store);
  std::atomic<bool> over{false};
  std::atomic<int> torn{0}, looked{0};
  const bool ran = at_once(place, 2, [&](job::Store& own, int i) {
    if (i == 0) {
      for (int k = 0; k < 100; ++k)
        (void)own.append(append_of({note(4000 + 3 * k, "a"), note(4001 + 3 * k, "b"), note(4002 + 3 * k, "c")}));
      over = true;
    } else {
      do {
        const auto all = own.entries(id(1), 0);
        torn += all && all->size() % 3 == 0 ? 0 : 1;
        ++looked;
      } while (!over);
    }
  });
  NEEDS(ran);
  HOLDS(torn == 0 && looked > 0);
  HOLDS(store->job(id(1)) && store->job(id(1))->entries == 303);
}

constexpr std::array<Check, 7> kChecks{{
    {"workshops_do_not_see_each_other", workshops_do_not_see_each_other},
    {"what_is_stored_is_seen_at_once", what_is_stored_is_seen_at_once},
    {"what_is_stored_outlives_the_connection", what_is_stored_outlives_the_connection},
    {"two_write_to_one_job_and_the_chain_stays_whole", two_write_to_one_job_and_the_chain_stays_whole},
    {"one_of_two_that_saw_the_same_head_is_refused", one_of_two_that_saw_the_same_head_is_refused},
    {"the_same_entry_from_two_at_once_is_stored_once", the_same_entry_from_two_at_once_is_stored_once},
    {"readers_see_whole_appends_only", readers_see_whole_appends_only},
}};
}  // namespace

std::span<const Check> several_checks() { return kChecks; }

}  // namespace flatwise::store_contract
