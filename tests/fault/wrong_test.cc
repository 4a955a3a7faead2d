// wrong_test.cc: adapters that are wrong on purpose, each in one thing. The contract must find every one of them out; a
// right adapter passed through the same wrapper must not be found out.
#include <gtest/gtest.h>

#include <algorithm>
#include <string_view>

#include "tests/fault/passing_store.h"

namespace flatwise::fault {
namespace {

/// What a check finds in an adapter.
template <class Wrong>
std::vector<std::string> found(const store_contract::Check& check) {
  WrongPlace<Wrong> place;
  store_contract::Report report;
  check.run(place, report);
  return report.broken();
}

/// Answers 'stored' at once and stores at the next call: what a write that is not waited for does.
class AnswersBeforeCommit : public PassingStore {
 public:
  using PassingStore::PassingStore;
  ~AnswersBeforeCommit() override { flush(); }
  Stored<job::Appended> append(const job::Append& a) override {
    flush();
    waiting_ = a;
    job::Appended done;
    done.rows = a.rows;
    done.fresh = static_cast<int>(a.rows.size());
    return done;
  }
  Stored<job::JobRow> job(const job::Id& id) override {
    flush();
    return PassingStore::job(id);
  }

 private:
  void flush() {
    if (waiting_) (void)real().append(*waiting_);
    waiting_.reset();
  }
  std::optional<job::Append> waiting_;
};
struct OneByOne : PassingStore {  // Not all or none.
  using PassingStore::PassingStore;
  Stored<job::Appended> append(const job::Append& a) override {
    job::Appended all;
    for (const auto& row : a.rows) {
      job::Append one = a;
      one.rows = {row};
      auto done = real().append(one);
      if (!done) return done;
      all.rows.push_back(done->rows[0]);
      all.fresh += done->fresh;
      all.head = done->head;
      all.sequence = done->sequence;
    }
    return all;
  }
};
struct OverlooksTheHead : PassingStore {
  using PassingStore::PassingStore;
  Stored<job::Appended> append(const job::Append& a) override {
    job::Append blind = a;
    blind.only_if_head.reset();
    return real().append(blind);
  }
};
struct TakesOtherContent : PassingStore {  // Answers an id that is there as stored, whatever came with it.
  using PassingStore::PassingStore;
  Stored<job::Appended> append(const job::Append& a) override {
    auto done = real().append(a);
    if (done || done.error().kind != job::StoreFault::Kind::exists) return done;
    return job::Appended{};
  }
};
struct OldestFirst : PassingStore {
  using PassingStore::PassingStore;
  Stored<std::vector<job::JobRow>> jobs_of(const job::Id& m, int limit, std::optional<job::Instant> before) override {
    auto rows = real().jobs_of(m, limit, before);
    if (rows) std::ranges::reverse(*rows);
    return rows;
  }
};
struct OverlooksTheLimit : PassingStore {
  using PassingStore::PassingStore;
  Stored<std::vector<job::Change>> changes(std::int64_t after, int /*limit*/) override {
    return real().changes(after, 1000);
  }
};
struct BelievesTheRow : PassingStore {  // Lets a projection set the head.
  using PassingStore::PassingStore;
  Stored<job::JobRow> job(const job::Id& id) override {
    auto row = real().job(id);
    if (row && lie_) row->head = lie_->head;
    return row;
  }
  Stored<void> put_projection(const job::JobRow& row) override {
    lie_ = row;
    return real().put_projection(row);
  }
  std::optional<job::JobRow> lie_;
};
struct CutsAtNul : PassingStore {
  using PassingStore::PassingStore;
  Stored<void> put_customer(const job::Customer& c) override {
    return real().put_customer({c.id.c_str(), c.name.c_str(), c.reach.c_str()});
  }
};
struct GivesAnyBytes : PassingStore {  // Does not look whether a photo is still its bytes.
  using PassingStore::PassingStore;
  Stored<std::string> blob(const std::string& hash) override {
    auto bytes = real().blob(hash);
    if (!bytes && bytes.error().kind == job::StoreFault::Kind::damaged) return std::string{"spoilt"};
    return bytes;
  }
};
struct MovesTwice : PassingStore {
  using PassingStore::PassingStore;
  Stored<void> move_stock(const job::StockMove& m) override {
    job::StockMove fresh = m;
    fresh.id += std::to_string(++count_);
    return real().move_stock(fresh);
  }
  int count_ = 0;
};
struct KeepsOldSnapshot : PassingStore {  // Reads from what it has seen once.
  using PassingStore::PassingStore;
  Stored<std::int64_t> last_change() override {
    if (!seen_) seen_ = real().last_change();
    return *seen_;
  }
  std::optional<Stored<std::int64_t>> seen_;
};
struct LosesAChange : PassingStore {
  using PassingStore::PassingStore;
  Stored<std::vector<job::Change>> changes(std::int64_t after, int limit) override {
    auto all = real().changes(after, limit);
    if (all) std::erase_if(*all, [](const job::Change& c) { return c.what == "machine"; });
    return all;
  }
};

template <class Wrong>
void expect_found(std::string_view by) {
  const auto all = store_contract::checks();
  const auto check = std::ranges::find(all, by, &store_contract::Check::name);
  ASSERT_NE(check, all.end());
  EXPECT_FALSE(found<Wrong>(*check).empty());
  EXPECT_TRUE(found<PassingStore>(*check).empty()) << "a right one too";
}

TEST(WrongAdapter, answers_before_commit) { expect_found<AnswersBeforeCommit>("what_is_stored_is_seen_at_once"); }
TEST(WrongAdapter, stores_one_by_one) { expect_found<OneByOne>("append_is_all_or_none"); }
TEST(WrongAdapter, overlooks_the_head) { expect_found<OverlooksTheHead>("head_that_moved_is_refused"); }
TEST(WrongAdapter, takes_other_content) { expect_found<TakesOtherContent>("id_with_other_content_is_refused"); }
TEST(WrongAdapter, oldest_first) { expect_found<OldestFirst>("jobs_of_a_machine_come_newest_first"); }
TEST(WrongAdapter, overlooks_the_limit) { expect_found<OverlooksTheLimit>("every_write_is_in_the_list_of_changes"); }
TEST(WrongAdapter, believes_the_row) {
  expect_found<BelievesTheRow>("projection_is_replaced_but_for_entries_and_head");
}
TEST(WrongAdapter, cuts_at_nul) { expect_found<CutsAtNul>("text_that_is_none_is_refused"); }
TEST(WrongAdapter, gives_any_bytes) {
  expect_found<GivesAnyBytes>("blob_that_is_not_there_or_not_its_bytes_is_refused");
}
TEST(WrongAdapter, moves_twice) { expect_found<MovesTwice>("stock_moves_twice_count_once"); }
TEST(WrongAdapter, keeps_an_old_snapshot) { expect_found<KeepsOldSnapshot>("what_is_stored_is_seen_at_once"); }
TEST(WrongAdapter, loses_a_change) { expect_found<LosesAChange>("every_write_is_in_the_list_of_changes"); }

}  // namespace
}  // namespace flatwise::fault
