// What was signed, agreed to or looked at by somebody who had not seen all of the record: tablets that slept. All found on 2026-11-27.
#include "job/seen.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "job/job_samples.h"
#include "job/next.h"
#include "job/release.h"

namespace flatwise::job {
namespace {

Standing now(const SampleRecord& record) { return standing(*record.open()); }
bool blocked_by(const Standing& s, Code code) {
  return std::ranges::any_of(s.blocks, [&](const Block& b) { return b.what.code == code; });
}

/// The last entry of a job that lacks the signatures only.
Id all_but_signed(SampleRecord& record) {
  record.do_all();
  return record.open()->entries.back().id;
}

EntryBody bore(double mm) { return BoreRead{1, 'A', 1, 4, {any(millimetres(mm)), {}, "x"}, "G1"}; }

TEST(Signatures, OfWhoHadNotSeenAChangeAreVoidAtOnceAndSayWhy) {
  SampleRecord record;
  const Id seen = all_but_signed(record);
  const Id changed = record.write(bore(100.005), "apprentice", record.live(bore(100)));
  record.write_late(seen, Signed{Role::bench});
  auto job = record.open();
  const Signature late = signatures(job->state)[0];
  EXPECT_EQ(late.entry, nullptr);
  ASSERT_NE(late.void_by, nullptr);
  EXPECT_EQ(late.void_by->id, changed);
  EXPECT_TRUE(late.unseen);
  EXPECT_TRUE(blocked_by(standing(*job), Code{"job.signature_unseen"}));
  record.write(Signed{Role::bench});  // Having seen it.
  job = record.open();
  EXPECT_NE(signatures(job->state)[0].entry, nullptr);
}

TEST(Signatures, StandBesideNotesUnseenAndBesideWhatTheSignerWroteThere) {
  SampleRecord record;
  const Id seen = all_but_signed(record);
  record.write(NoteWritten{{}, Stage::release, "wiped down"}, "apprentice");
  record.write_late(seen, bore(100.004), "bench", record.live(bore(100)));  // Waited on the tablet with the signature.
  record.write_late(seen, Signed{Role::bench});
  EXPECT_NE(signatures(record.open()->state)[0].entry, nullptr);
}

TEST(Signatures, DoNotCoverWhatTheSignerWroteOnAnotherDevice) {
  SampleRecord record;
  const Id seen = all_but_signed(record);
  record.on("telephone");
  record.write(bore(100.004), "bench", record.live(bore(100)));
  record.on("tablet");
  record.write_late(seen, Signed{Role::bench});
  EXPECT_EQ(signatures(record.open()->state)[0].entry, nullptr);
}

TEST(Signatures, AGoodOneStaysWhereALateOneComesBehindIt) {
  SampleRecord record;
  const Id seen = all_but_signed(record);
  record.write(bore(100.004), "apprentice", record.live(bore(100)));
  const Id good = record.write(Signed{Role::bench});
  record.write_late(seen, Signed{Role::bench}, "lead");
  const auto job = record.open();
  ASSERT_NE(signatures(job->state)[0].entry, nullptr);
  EXPECT_EQ(signatures(job->state)[0].entry->id, good);
}

std::vector<int> looks_wanted(const SampleRecord& record) {
  std::vector<int> rotors;
  for (const SecondLookWanted& wanted : second_looks_wanted(record.open()->state)) rotors.push_back(wanted.rotor);
  return rotors;
}

TEST(SecondLook, CountsOnlyForMarksThatWereSeen) {
  SampleRecord record;
  const Id seen = all_but_signed(record);
  const MarkSeen three{1, Half::b, 3};
  const Id moved = record.write(three, "bench", record.live(three));
  record.write_late(seen, SecondLook{1, Reply::yes}, "lead");
  EXPECT_EQ(looks_wanted(record), std::vector<int>{1});
  const auto job = record.open();
  const auto wanted = second_looks_wanted(job->state);
  ASSERT_NE(wanted.front().missed, nullptr);
  EXPECT_EQ(wanted.front().missed->id, moved);
  record.write(SecondLook{1, Reply::yes}, "lead");
  EXPECT_TRUE(looks_wanted(record).empty());
}

TEST(SecondLook, ThatComesLateAndFindsThemWrongCounts) {
  SampleRecord record;
  const Id seen = all_but_signed(record);
  const MarkSeen three{1, Half::b, 3};
  record.write(three, "bench", record.live(three));
  record.write_late(seen, SecondLook{1, Reply::no}, "lead");
  EXPECT_TRUE(blocked_by(now(record), Code{"job.second_look_wrong"}));
}

TEST(Customer, AYesIsToTheWayThatWasSeen) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  const Id old = record.write(WayChosen{{1}, "disturbed"}, "bench");
  record.write(WayChosen{{1}, "all"}, "bench", {old});
  const Id late = record.write_late(old, CustomerSaid{Reply::yes, "x", "y", {}}, "lead");
  EXPECT_FALSE(customer_agreed(record.open()->state));
  EXPECT_TRUE(blocked_by(now(record), Code{"job.customer_not_asked"}));
  record.write(CustomerSaid{Reply::yes, "x", "y", {}}, "lead", {late});
  EXPECT_TRUE(customer_agreed(record.open()->state));
}

TEST(Customer, AYesWrittenWithTheWayOnOneTabletHolds) {
  SampleRecord record;
  record.book_in();
  const Id seen = record.write(NoteWritten{{}, Stage::plan, "x"}, "bench");
  record.write_late(seen, WayChosen{{1}, "all"}, "lead");
  record.write_late(seen, CustomerSaid{Reply::yes, "x", "y", {}}, "lead");
  EXPECT_TRUE(customer_agreed(record.open()->state));
}

TEST(Customer, NobodyHasAgreedWhileItIsDisputedWhatIsOpened) {
  SampleRecord record;
  record.book_in();
  record.agree();
  EXPECT_TRUE(customer_agreed(record.open()->state));
  record.write(WayChosen{{1, 2}, "all"}, "bench");  // Beside the other, not instead of it.
  EXPECT_FALSE(customer_agreed(record.open()->state));
}

}  // namespace
}  // namespace flatwise::job
