// The desk on a real store: jobs opened, entries taken, stock moved, rows made again.
#include <gtest/gtest.h>

#include <algorithm>

#include "desk/desk_samples.h"
#include "job/bench_entries.h"
#include "record/chain.h"
#include "record/uuid.h"

namespace flatwise::desk {
namespace {

using job::EntryBody;
using job::Id;

class Desk : public testing::Test {
 protected:
  void SetUp() override {
    store_ = *store_sqlite::make_store(folder_.path(), demo_workshop_id(), {});
    const auto filled = fill_demo(*store_, demo_built_in());
    ASSERT_TRUE(filled) << told(filled.error());
    const auto people = store_->people().value();
    for (const job::Person& p : people) people_[p.name] = p.id;
  }

  Id id() { return record::uuid7({1'770'200'000'000 + ++count_}, {}); }
  std::unique_ptr<const job::OpenJob> open(const Id& job) { return std::move(open_job(*store_, job)->job); }
  Id job(const char* number) { return store_->job_by_number(number)->id; }
  /// Bodies as somebody would send them who has seen all.
  std::vector<job::Entry> entries(const Id& job, std::vector<EntryBody> bodies, const char* by = "Lead") {
    const auto opened = open_job(*store_, job);
    const std::vector<job::Entry> before = opened ? opened->job->entries : std::vector<job::Entry>{};
    return job::as_entries(before, std::move(bodies), {job, people_[by], "test", {1'770'200'000'000}},
                           [this](job::Instant) { return id(); });
  }
  std::string take_all(const Id& job, const std::vector<job::Entry>& all,
                       const std::optional<std::string>& head = std::nullopt) {
    const auto done = take(*store_, job, all, head);
    return done ? "" : told(done.error());
  }
  std::string take_all(const Id& job, std::vector<EntryBody> bodies, const char* by = "Lead") {
    return take_all(job, entries(job, std::move(bodies), by));
  }
  StockItem stock(std::string_view part) {
    const auto all = store_->workshop()->stock;
    return *std::ranges::find(all, part, &StockItem::part_number);
  }
  /// Five on job 32: the customer says yes.
  void agree_32() { ASSERT_EQ(take_all(job("32"), {job::CustomerSaid{Reply::yes, "x", "y", {}}}), ""); }

  store_sqlite::TestFolder folder_;
  std::unique_ptr<job::Store> store_;
  std::map<std::string, Id> people_;
  int count_ = 0;
};

TEST_F(Desk, TakenEntriesAreThereAndSentTwiceTheyAreOnce) {
  const Id to = job("34");
  const auto all = entries(to, {job::NoteWritten{{}, job::Stage::booking_in, "one"}});
  const auto first = take(*store_, to, all);
  ASSERT_TRUE(first) << told(first.error());
  EXPECT_EQ(first->fresh, 1);
  const auto again = take(*store_, to, all);
  ASSERT_TRUE(again) << told(again.error());
  EXPECT_EQ(again->fresh, 0);
  EXPECT_EQ(again->rows.front().hash, first->rows.front().hash);
  EXPECT_EQ(open(to)->entries.size(), 2U);
}

TEST_F(Desk, AllOrNoneAndEachProblemWithItsEntry) {
  const Id to = job("34");
  auto all = entries(to, {job::NoteWritten{{}, job::Stage::booking_in, "good"}, job::TakenOff{3}, job::TakenOff{900}});
  all[0].by = id();
  EXPECT_EQ(take_all(to, all), "record.no_such_person entries[0].by <" + all[0].by +
                                   ">; record.not_safe_yet entries[1].body <>; record.not_safe_yet entries[2].body <>; "
                                   "record.no_such_station entries[2].body.station <900>; ");
  EXPECT_EQ(open(to)->entries.size(), 1U);
}

TEST_F(Desk, OnlyWhoAnswersForItSignsReleasesAndAcceptsAGauge) {
  const Id to = job("34");
  const auto refused = [&](EntryBody body, const char* by) {
    return take_all(to, {std::move(body)}, by).find("record.wrong_role") != std::string::npos;
  };
  EXPECT_TRUE(refused(job::Signed{job::Role::lead}, "Bench"));
  EXPECT_TRUE(refused(job::Signed{job::Role::owner}, "Lead"));
  EXPECT_TRUE(refused(job::Signed{job::Role::bench}, "Owner"));
  EXPECT_FALSE(refused(job::Signed{job::Role::bench}, "Lead"));  // The lead may stand in at the bench.
  EXPECT_TRUE(refused(job::Released{true, "harvest"}, "Apprentice"));
  EXPECT_TRUE(refused(job::GaugeAccepted{"BG-1", "sent off on Monday"}, "Bench"));
}

TEST_F(Desk, AHeadThatMovedIsSaidAndAResendIsNot) {
  const Id to = job("34");
  const std::string head = open_job(*store_, to)->row.head;
  const auto mine = entries(to, {job::NoteWritten{{}, job::Stage::booking_in, "mine"}});
  ASSERT_EQ(take_all(to, {job::NoteWritten{{}, job::Stage::booking_in, "theirs"}}), "");
  const auto late = take(*store_, to, mine, head);
  ASSERT_FALSE(late);
  EXPECT_EQ(late.error().fault->kind, job::StoreFault::Kind::changed);
  EXPECT_EQ(take_all(to, mine), "");        // Without a condition it is taken behind what came between.
  EXPECT_EQ(take_all(to, mine, head), "");  // What is kept is answered as kept.
}

TEST_F(Desk, BookingInMakesAJobAndIsOfAMachineThatIsThere) {
  const auto old = open(job("34"));
  job::BookedIn booked = std::get<job::BookedIn>(old->entries.front().body);
  booked.number = "35";
  const Id fresh = id();
  EXPECT_EQ(take_all(fresh, {job::NoteWritten{{}, job::Stage::booking_in, "x"}}),
            "record.not_booked_in entries[0].body.kind <>; ");
  job::BookedIn wrong = booked;
  wrong.machine = wrong.shaft = id();
  EXPECT_EQ(take_all(fresh, {wrong}), "record.no_such_machine entries[0].body.machine <" + wrong.machine +
                                          ">; record.no_such_shaft entries[0].body.shaft <" + wrong.shaft + ">; ");
  job::BookedIn mixed = booked;
  mixed.shaft = std::get<job::BookedIn>(open(job("31"))->entries.front().body).shaft;
  EXPECT_EQ(take_all(fresh, {mixed}), "record.another_shaft entries[0].body.shaft <>; ");
  EXPECT_EQ(take_all(fresh, {booked}), "");
  EXPECT_EQ(open_job(*store_, fresh)->row.number, "35");
  EXPECT_NE(take_all(id(), {booked}), "");  // The number is taken.
}

TEST_F(Desk, ANewBookingOfAnotherMachineGoesByItsShaft) {
  const Id to = job("34");
  job::BookedIn other = std::get<job::BookedIn>(open(job("31"))->entries.front().body);
  other.number = "34";
  ASSERT_EQ(take_all(to, {other}), "");
  EXPECT_EQ(open(to)->shaft.rotor_count(), 9);
  EXPECT_EQ(store_->job(to)->machine, other.machine);
}

TEST_F(Desk, OrdersAndTraysMoveTheStockAndCorrectionsUndoThem) {
  const Id to = job("32");
  EXPECT_EQ(take_all(to, {job::Ordered{"TH-SET-5", 2, {}}}), "record.customer_first entries[0].body <>; ");
  agree_32();
  const StockItem before = stock("TH-SET-5");
  ASSERT_EQ(take_all(to, {job::Ordered{"TH-SET-5", 2, {}}}), "");
  EXPECT_EQ(stock("TH-SET-5").on_order, before.on_order + 2);
  ASSERT_EQ(take_all(to, {job::Received{"TH-SET-5", 2}}), "");
  EXPECT_EQ(stock("TH-SET-5").on_order, before.on_order);
  EXPECT_EQ(stock("TH-SET-5").on_shelf, before.on_shelf + 2);
  ASSERT_EQ(take_all(to, {job::Laid{5, "set", 2}}), "");
  EXPECT_EQ(stock("TH-SET-5").on_shelf, before.on_shelf);
  ASSERT_EQ(take_all(to, {job::Laid{5, "set", 1}}), "");  // Corrects the two.
  EXPECT_EQ(stock("TH-SET-5").on_shelf, before.on_shelf + 1);
  ASSERT_EQ(take_all(to, {job::LeftOver{5, "set", 1}}), "");
  EXPECT_EQ(stock("TH-SET-5").on_shelf, before.on_shelf + 2);
  auto back = entries(to, {job::Withdrawn{"never laid"}});
  const auto state = open(to);
  for (const char* question : {"laid/5/set", "left_over/5/set"})
    back.front().corrects.push_back(state->state.answers(question)->first().id);
  ASSERT_EQ(take_all(to, back), "");
  EXPECT_EQ(stock("TH-SET-5").on_shelf, before.on_shelf + 2);
  ASSERT_EQ(take_all(to, back), "");  // Sent twice, moved once.
  EXPECT_EQ(stock("TH-SET-5").on_shelf, before.on_shelf + 2);
}

// 2026-11-27: an entry spoke of a photo that was nowhere, and of another type than its bytes were.
TEST_F(Desk, APhotoIsThereBeforeItsEntryAndIsWhatItIsSaidToBe) {
  const Id to = job("34");
  const std::string png{"\x89PNG\r\n\x1A\n and more"};
  job::PhotoTaken photo{{}, job::Stage::booking_in, record::sha256(png), "image/png", "the hub"};
  EXPECT_EQ(take_all(to, {photo}), "record.no_such_photo entries[0].body.blob <" + photo.blob + ">; ");
  ASSERT_TRUE(store_->put_blob(png));
  photo.type = "image/jpeg";
  EXPECT_EQ(take_all(to, {photo}), "record.another_photo_type entries[0].body.type <image/jpeg>; ");
  photo.type = "image/png";
  EXPECT_EQ(take_all(to, {photo}), "");
}

TEST_F(Desk, OldRingsThatGoBackComeFromTheMachine) {
  const Id to = job("33");
  const int shelf = stock("TH-RING-100").on_shelf;
  ASSERT_EQ(take_all(to, {job::RingSound{1, 1, Reply::yes}, job::Laid{1, "snap_ring", 2}}, "Bench"), "");
  EXPECT_EQ(stock("TH-RING-100").on_shelf, shelf - 1);
}

TEST_F(Desk, DroppedRowsAreMadeAgainTheSame) {
  for (const char* number : {"21", "31", "32", "33", "34"}) {
    const job::JobRow good = store_->job_by_number(number).value();
    job::JobRow spoilt = good;
    spoilt.waiting = "nobody knows";
    spoilt.present = job::Stage::kit;
    spoilt.due.reset();
    spoilt.changed = {0};
    spoilt.released = !good.released;
    ASSERT_TRUE(store_->put_projection(spoilt));
    const auto made = project_again(*store_, good.id);
    ASSERT_TRUE(made) << told(made.error());
    const job::JobRow now = store_->job(good.id).value();
    EXPECT_EQ(now.waiting, good.waiting);
    EXPECT_EQ(now.present, good.present);
    EXPECT_EQ(now.due, good.due);
    EXPECT_EQ(now.booked, good.booked);
    EXPECT_EQ(now.changed, good.changed);
    EXPECT_EQ(now.released, good.released);
    EXPECT_EQ(now.entries, good.entries);
    EXPECT_EQ(now.head, good.head);
    EXPECT_EQ(now.machine, good.machine);
    EXPECT_EQ(now.shaft_version, good.shaft_version);
  }
}

TEST_F(Desk, TwoTabletsThatDifferBothStand) {
  const Id to = job("31");
  const auto a = entries(to, {job::MarkSeen{4, Half::b, 1}}, "Bench");
  const auto b = entries(to, {job::MarkSeen{4, Half::b, 3}}, "Apprentice");
  ASSERT_EQ(take_all(to, a), "");
  ASSERT_EQ(take_all(to, b), "");
  const auto opened = open(to);
  const job::LiveAnswers* marks = opened->state.answers("mark_seen/4/b");
  ASSERT_EQ(marks->entries.size(), 2U);
  EXPECT_FALSE(marks->agreed);
  ASSERT_EQ(take_all(to, {job::MarkSeen{4, Half::b, 1}}, "Lead"), "");  // Somebody decides.
  EXPECT_TRUE(open(to)->state.answers("mark_seen/4/b")->agreed);
}

TEST_F(Desk, AJobThatIsNotThereIsMissing) {
  const auto opened = open_job(*store_, id());
  ASSERT_FALSE(opened);
  EXPECT_EQ(opened.error().fault->kind, job::StoreFault::Kind::missing);
}

}  // namespace
}  // namespace flatwise::desk
