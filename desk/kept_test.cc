// Jobs kept and carried on must be what opening them anew gives, whoever writes beside.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <string>
#include <thread>
#include <vector>

#include "desk/desk_samples.h"
#include "desk/kept.h"
#include "job/bench_entries.h"
#include "record/uuid.h"
#include "wire/json.h"

namespace flatwise::desk {
namespace {

using job::EntryBody;
using job::Id;

/// Counts how often entries were read.
class Reads : public store_sqlite::Watch {
 public:
  int statement(std::string_view sql) override {
    if (sql.find("from entries where workshop = ? and job = ?") != std::string_view::npos) ++entries;
    return 0;
  }
  int entries = 0;
};

class KeptJobs : public testing::Test {
 protected:
  void SetUp() override {
    auto made = store_sqlite::make_store(folder_.path(), demo_workshop_id(), {});
    ASSERT_TRUE(made);
    const auto filled = fill_demo(**made, demo_built_in());
    ASSERT_TRUE(filled) << told(filled.error());
    store_ = open_store(&reads_);
    const auto people = store_->people().value();
    for (const job::Person& p : people) people_[p.name] = p.id;
  }
  std::unique_ptr<job::Store> open_store(store_sqlite::Watch* watch = nullptr) {
    store_sqlite::Options options;
    options.watch = watch;
    return *store_sqlite::open_store(folder_.path(), options);
  }
  Id job(const char* number) { return store_->job_by_number(number)->id; }
  /// Bodies as somebody would send them who has seen all.
  std::vector<job::Entry> entries(const Id& job, std::vector<EntryBody> bodies, const char* by = "Lead") {
    return job::as_entries(open_job(*store_, job)->job->entries, std::move(bodies),
                           {job, people_[by], "test", {1'770'200'000'000}},
                           [this](job::Instant) { return record::uuid7({1'770'200'000'000 + ++count_}, {}); });
  }
  std::string take(const Id& to, std::vector<EntryBody> bodies, const char* by = "Lead") {
    const auto done = kept_.take(*store_, to, entries(to, std::move(bodies), by));
    return done ? "" : told(done.error());
  }
  /// All that follows from a job, as text.
  static std::string all_of(const Opened& o) {
    std::string text = wire::to_json(o.job->report, {}).dump() + o.row.waiting + o.row.head + o.row.number;
    for (const job::Entry& e : o.job->entries) text += std::to_string(e.number) + e.before + e.hash;
    for (const auto& [question, answers] : o.job->state.live) text += question + (answers.agreed ? "+" : "-");
    for (const StockItem& s : o.job->workshop.stock)
      text += s.part_number + std::to_string(s.on_shelf) + "/" + std::to_string(s.on_order);
    for (const job::Block& b : o.standing.blocks) text += std::string{b.what.code.id()} + ";";
    for (const Gauge& g : o.job->workshop.gauges) text += g.id + g.accepted_overdue_by.value_or("");
    return text + std::string{o.standing.next.does.code.id()};
  }
  void expect_as_anew(const Id& id) {
    const auto kept = kept_.get(*store_, id);
    const auto anew = open_job(*store_, id);
    ASSERT_TRUE(kept && anew);
    EXPECT_EQ(all_of(**kept), all_of(*anew));
    EXPECT_EQ(store_->job(id)->waiting, anew->row.waiting);
    EXPECT_EQ(store_->job(id)->present, anew->row.present);
  }

  store_sqlite::TestFolder folder_;
  Reads reads_;
  std::unique_ptr<job::Store> store_;
  std::map<std::string, Id> people_;
  Kept kept_{4, 4};
  int count_ = 0;
};

TEST_F(KeptJobs, CarriedOnIsWhatOpeningAnewGives) {
  const Id to = job("32");
  // Only a gauge past its date can be accepted: this certificate ran out four days before.
  ASSERT_TRUE(store_->put_calibration(
      {record::uuid7({1}, {}), "BG-1", {}, {2026, 1, 31}, 2e-6, "the shop", "", "", "", {1'770'000'000'000}}));
  const std::vector<std::vector<EntryBody>> steps{
      {job::CustomerSaid{Reply::yes, "x", "y", {}}},
      {job::Ordered{"TH-SET-5", 2, {}}, job::Received{"TH-SET-5", 2}},
      {job::Laid{5, "set", 2}},
      {job::Laid{5, "set", 1}},  // Corrects the two: one goes back to the shelf.
      {job::LeftOver{5, "set", 1}},
      {job::NoteWritten{{}, job::Stage::kit, "counted twice"}, job::GaugeAccepted{"BG-1", "sent off on Monday"}},
  };
  for (const auto& bodies : steps) {
    ASSERT_EQ(take(to, bodies), "");
    expect_as_anew(to);
  }
}

TEST_F(KeptJobs, ATakenEntryIsShownWithoutReadingTheJobAgain) {
  const Id to = job("34");
  ASSERT_TRUE(kept_.get(*store_, to));
  const auto note = entries(to, {job::NoteWritten{{}, job::Stage::booking_in, "one"}});
  reads_.entries = 0;
  ASSERT_TRUE(kept_.take(*store_, to, note));
  const auto shown = kept_.get(*store_, to);
  ASSERT_TRUE(shown);
  EXPECT_EQ((*shown)->job->entries.back().id, note.front().id);
  EXPECT_EQ(reads_.entries, 0);
  const auto again = kept_.take(*store_, to, note);  // Sent twice: stored once.
  ASSERT_TRUE(again);
  EXPECT_EQ(again->fresh, 0);
}

TEST_F(KeptJobs, WhatAnotherProgramWroteIsSeen) {
  const Id to = job("34"), beside = job("32");
  ASSERT_TRUE(kept_.get(*store_, to));
  const auto other = open_store();
  ASSERT_TRUE(desk::take(*other, to, entries(to, {job::NoteWritten{{}, job::Stage::booking_in, "theirs"}})));
  expect_as_anew(to);
  ASSERT_EQ(take(to, {job::NoteWritten{{}, job::Stage::booking_in, "ours, behind it"}}), "");
  expect_as_anew(to);
  // The shelf is everybody's: what another job takes from it is gone for this one.
  ASSERT_TRUE(desk::take(*other, beside, entries(beside, {job::CustomerSaid{Reply::yes, "x", "y", {}}})));
  ASSERT_TRUE(desk::take(*other, beside, entries(beside, {job::Ordered{"TH-SET-5", 3, {}}})));
  expect_as_anew(to);
}

TEST_F(KeptJobs, AnEntryThatIsRefusedLeavesWhatIsKept) {
  const Id to = job("34");
  const std::string before = all_of(**kept_.get(*store_, to));
  EXPECT_NE(take(to, {job::TakenOff{900}}), "");
  EXPECT_EQ(all_of(**kept_.get(*store_, to)), before);
}

TEST_F(KeptJobs, ThreadsThatWriteIntoOneJobLoseNothingAndShowNothingOld) {
  constexpr int kEach = 12;
  const Id to = job("34");
  const std::size_t there = open_job(*store_, to)->job->entries.size();
  std::vector<std::vector<job::Entry>> sent;
  for (int i = 0; i < 3 * kEach; ++i)
    sent.push_back(entries(to, {job::NoteWritten{{}, job::Stage::booking_in, std::to_string(i)}}));
  std::vector<std::thread> threads;
  std::array<int, 3> stale{};
  for (std::size_t t = 0; t < 3; ++t)
    threads.emplace_back([&, t] {
      const auto own = open_store();
      for (int i = 0; i < kEach; ++i) {
        const auto& mine = sent[t * kEach + static_cast<std::size_t>(i)];
        if (!kept_.take(*own, to, mine)) ++stale[t];
        const auto seen = kept_.get(*own, to);
        const auto& all = (*seen)->job->entries;
        if (std::ranges::find(all, mine.front().id, &job::Entry::id) == all.end()) ++stale[t];
      }
    });
  for (std::thread& t : threads) t.join();
  EXPECT_EQ(stale, (std::array<int, 3>{}));
  EXPECT_EQ(open_job(*store_, to)->job->entries.size(), there + 3 * kEach);
  expect_as_anew(to);
}

TEST(DefinitionsKept, OneThatWasReadIsGivenOutAgainAndTheOldestGoesFirst) {
  const DemoTexts texts = demo_built_in();
  Definitions two{2};
  const auto first = two.read(texts.at("five.toml"), "five");
  ASSERT_TRUE(first);
  EXPECT_EQ(*two.read(texts.at("five.toml"), "five"), *first);
  EXPECT_NE(*two.read(texts.at("five.toml"), "named otherwise"), *first);
  ASSERT_TRUE(two.read(texts.at("long-nine.toml"), "nine"));
  EXPECT_NE(*two.read(texts.at("five.toml"), "five"), *first);
  EXPECT_FALSE(two.read("no definition", "x"));
}

}  // namespace
}  // namespace flatwise::desk
