// What comes next and what blocks it, along a whole job and where it goes wrong. Invented sample shaft (core/shaft/shaft_samples.h).
#include "job/next.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "job/job_samples.h"
#include "job/release.h"
#include "job/steps.h"

namespace flatwise::job {
namespace {

Standing now(const SampleRecord& record) { return standing(*record.open()); }
StageProgress progress(const Standing& s, Stage stage) { return s.stages.at(static_cast<std::size_t>(stage)); }
bool blocked_by(const Standing& s, Code code) {
  return std::ranges::any_of(s.blocks, [&](const Block& b) { return b.what.code == code; });
}
std::string codes(const Standing& s) {
  std::string all;
  for (const Block& b : s.blocks) all += std::string{b.what.code.id()} + " ";
  return all;
}

TEST(Next, SafetyComesBeforeAnythingElse) {
  SampleRecord record;
  record.book_in();
  const Standing s = now(record);
  EXPECT_EQ(s.present, Stage::booking_in);
  EXPECT_EQ(s.next.does.code, Code{"job.do_before_going_on"});
  ASSERT_TRUE(s.next.because);
  EXPECT_EQ(s.next.because->code, Code{"job.first_touch_waits"});
  EXPECT_EQ(progress(s, Stage::plan), StageProgress::to_come);
  EXPECT_EQ(s.waiting, Waiting::bench);
}

TEST(Next, ANoToASafetyQuestionStopsTheJobAndComesFirst) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  EXPECT_NE(now(record).waiting, Waiting::stopped);
  const auto job = record.open();
  const Id yes = job->state.answers(question_of(Answered{"tines_clear", 0, Reply::yes}))->first().id;
  record.write(Answered{"tines_clear", 0, Reply::no}, "bench", {yes});
  const Standing s = now(record);
  EXPECT_EQ(s.waiting, Waiting::stopped);
  EXPECT_EQ(s.blocks.front().what.code, Code{"job.answered_no"});
  EXPECT_EQ(s.next.stage, Stage::booking_in);
}

TEST(Next, PlayNotReadIsAskedForButBlocksNothing) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.read_play(1);
  const Standing s = now(record);
  EXPECT_EQ(s.present, Stage::booking_in);
  EXPECT_EQ(s.next.does.code, Code{"job.read_play"});
  EXPECT_EQ(s.next.where, at_rotor(2));
  EXPECT_EQ(s.next.because->code, Code{"job.plan_waits_for_play"});
  EXPECT_EQ(std::get<std::vector<std::int64_t>>(s.next.because->args.front().value), (std::vector<std::int64_t>{2, 3}));
  EXPECT_EQ(progress(s, Stage::plan), StageProgress::open) << "the mechanic may go on";
  record.write(WayChosen{{1}, "disturbed"}, "lead");
  EXPECT_EQ(now(record).present, Stage::plan) << "decided without: it is not asked for any more";
}

TEST(Next, TheCustomerIsWaitedForOnceAWayIsChosen) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  for (int r = 1; r <= 3; ++r) record.read_play(r);
  Standing s = now(record);
  EXPECT_EQ(s.next.does.code, Code{"job.choose_way"});
  EXPECT_EQ(s.waiting, Waiting::bench);
  record.write(WayChosen{{1}, "disturbed"}, "lead");
  s = now(record);
  EXPECT_EQ(s.next.does.code, Code{"job.ask_customer"});
  EXPECT_EQ(s.waiting, Waiting::customer);
  EXPECT_EQ(progress(s, Stage::teardown), StageProgress::to_come);
  record.write(CustomerSaid{Reply::yes, {}, {}, {}}, "lead");
  s = now(record);
  EXPECT_EQ(s.next.stage, Stage::teardown);
  EXPECT_EQ(s.waiting, Waiting::bench);
  EXPECT_EQ(progress(s, Stage::plan), StageProgress::passed);
}

TEST(Next, AYesIsAYesToTheWayThatWasOnTheTable) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  const Id way = record.write(WayChosen{{1}, "failed_only"}, "lead");
  record.write(CustomerSaid{Reply::yes, {}, {}, {}}, "lead");
  record.write(WayChosen{{1, 2}, "disturbed"}, "lead", {way});
  const Standing s = now(record);
  EXPECT_EQ(s.waiting, Waiting::customer);
  EXPECT_TRUE(blocked_by(s, Code{"job.customer_not_asked"}));
}

TEST(Next, AnOpenShaftHasPassedThePlanButTheReleaseWaitsForTheYes) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.take_off();
  const Standing s = now(record);
  EXPECT_EQ(progress(s, Stage::plan), StageProgress::passed);
  EXPECT_EQ(s.present, Stage::teardown);
  const auto it =
      std::ranges::find_if(s.blocks, [](const Block& b) { return b.what.code == Code{"job.way_not_chosen"}; });
  ASSERT_NE(it, s.blocks.end());
  EXPECT_EQ(it->stage, Stage::release);
  EXPECT_EQ(it->lifted_by, Role::lead);
}

TEST(Next, TwoAnswersThatDifferAreABlockUntilSomebodyDecides) {
  SampleRecord record;
  record.do_all();
  const Id one = record.write(MarkSeen{1, Half::b, 2}, "other");
  Standing s = now(record);
  const auto it = std::ranges::find_if(s.blocks, [](const Block& b) { return b.what.code == Code{"job.two_answers"}; });
  ASSERT_NE(it, s.blocks.end());
  EXPECT_EQ(it->where, at_rotor(1));
  EXPECT_EQ(it->stage, Stage::timing);
  EXPECT_EQ(it->severity, Severity::cannot_tell);
  EXPECT_EQ(s.waiting, Waiting::cannot_tell);
  const auto job = record.open();
  std::vector<Id> both;
  for (const Entry* e : job->state.answers(question_of(MarkSeen{1, Half::b, 4}))->entries) both.push_back(e->id);
  ASSERT_EQ(both.size(), 2U);
  EXPECT_EQ(both.back(), one);
  record.write(MarkSeen{1, Half::b, 4}, "lead", both);
  EXPECT_FALSE(blocked_by(now(record), Code{"job.two_answers"}));
}

TEST(Next, TwoAnswersToAQuestionAreNotAlsoSaidToBeMissing) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.write(Answered{"tines_clear", 0, Reply::no}, "other");
  const Standing s = now(record);
  EXPECT_TRUE(blocked_by(s, Code{"job.two_answers"}));
  for (const Block& b : s.blocks) EXPECT_FALSE(b.stage == Stage::booking_in && b.what.code == Code{"job.unanswered"});
  EXPECT_EQ(progress(s, Stage::plan), StageProgress::to_come) << "nothing is touched while two differ about safety";
}

TEST(Next, AWrongMarkStopsTheJobAndIsTheNextStep) {
  SampleRecord record;
  record.do_all();
  const auto job = record.open();
  const Id right = job->state.answers(question_of(MarkSeen{1, Half::b, 4}))->first().id;
  record.write(MarkSeen{1, Half::b, 5}, "bench", {right});
  const Standing s = now(record);
  EXPECT_EQ(s.waiting, Waiting::stopped);
  EXPECT_EQ(s.present, Stage::timing);
  EXPECT_EQ(s.next.does.code, Code{"timing.turn_half"});
  EXPECT_EQ(s.next.where, at_rotor(1));
  ASSERT_TRUE(s.next.because);
  EXPECT_EQ(s.next.because->code, Code{"job.stage_waits"});
}

TEST(Next, WhatIsKnownToBeOutStandsInTheWayOfTorqueAndRun) {
  SampleRecord record;
  record.do_all();
  EXPECT_TRUE(in_the_way(standing(*record.open()), Stage::torque).empty());
  EXPECT_TRUE(in_the_way(standing(*record.open()), Stage::test_run).empty());
  const Id right = record.open()->state.answers(question_of(MarkSeen{1, Half::b, 4}))->first().id;
  record.write(MarkSeen{1, Half::b, 5}, "bench", {right});
  const auto job = record.open();
  const Standing now = standing(*job);
  for (const Stage stage : {Stage::torque, Stage::test_run}) {
    const auto held = in_the_way(now, stage);
    ASSERT_FALSE(held.empty());
    EXPECT_EQ(held.front()->severity, Severity::out);
    EXPECT_EQ(held.front()->stage, Stage::timing);
  }
  EXPECT_TRUE(in_the_way(now, Stage::timing).empty()) << "what the stage itself found is its own matter";
}

TEST(Next, UnreadMarksAreToBeReadNotCannotTell) {
  SampleRecord record;
  record.do_all();
  const auto job = record.open();
  const Id mark = job->state.answers(question_of(MarkSeen{1, Half::b, 4}))->first().id;
  record.write(Withdrawn{"slip"}, "bench", {mark});
  const Standing s = now(record);
  EXPECT_EQ(s.present, Stage::timing);
  EXPECT_EQ(s.next.does.code, Code{"timing.look"});
  EXPECT_EQ(s.waiting, Waiting::bench);
}

TEST(Next, TheEarliestStageGoesFirstAndInItWhatIsOut) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.agree();
  record.take_off();
  record.answer(Stage::teardown);
  record.inspect();
  record.answer(Stage::inspection);
  record.write(FittedRead{1, "OTHER"});
  const Standing s = now(record);
  EXPECT_EQ(s.present, Stage::kit);
  EXPECT_EQ(s.next.stage, Stage::kit);
  const auto first = std::ranges::find_if(s.blocks, [](const Block& b) { return b.stage == Stage::kit; });
  EXPECT_EQ(first->severity, Severity::out);
  for (std::size_t i = 1; i < s.blocks.size(); ++i) EXPECT_LE(s.blocks[i - 1].stage, s.blocks[i].stage);
}

TEST(Next, WhatIsOffIsSaidUntilItIsBackOn) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.agree();
  EXPECT_TRUE(blocked_by(now(record), Code{"job.still_to_come_off"}));
  record.take_off();
  Standing s = now(record);
  EXPECT_FALSE(blocked_by(s, Code{"job.still_to_come_off"}));
  EXPECT_TRUE(blocked_by(s, Code{"job.not_back_on"}));
  record.put_back();
  EXPECT_FALSE(blocked_by(now(record), Code{"job.not_back_on"}));
}

TEST(Next, TheWayOffAndBackIsSaidStepByStep) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.agree();
  const auto steps = [&](Phase phase) {
    const auto job = record.open();
    std::vector<std::string> keys;
    for (const JobStep& s : job_steps(job->shaft, job->workshop, job->state, phase)) keys.push_back(s.key);
    return keys;
  };
  const std::vector<std::string> keys = steps(Phase::teardown);
  ASSERT_GT(keys.size(), 3U);
  const auto first = [&] {
    const auto job = record.open();
    return job_steps(job->shaft, job->workshop, job->state, Phase::teardown);
  };
  EXPECT_EQ(now(record).next.does, first()[0].step.what);
  record.write(StepDone{Phase::teardown, keys[0], Reply::yes});
  EXPECT_EQ(now(record).next.does, first()[1].step.what);
  EXPECT_TRUE(blocked_by(now(record), Code{"job.steps_left"}));
  const Id no = record.write(StepDone{Phase::teardown, keys[1], Reply::no});
  Standing s = now(record);
  EXPECT_EQ(s.waiting, Waiting::stopped);
  EXPECT_TRUE(blocked_by(s, Code{"job.step_answered_no"}));
  record.write(StepDone{Phase::teardown, keys[1], Reply::yes}, "bench", {no});
  record.take_off();
  s = now(record);
  EXPECT_TRUE(blocked_by(s, Code{"job.steps_left"})) << "taken off, but steps were left out on the way";
  const auto open = record.open();
  for (const JobStep& step : job_steps(open->shaft, open->workshop, open->state, Phase::teardown))
    if (!step.done()) record.write(StepDone{Phase::teardown, step.key, Reply::yes});
  EXPECT_FALSE(blocked_by(now(record), Code{"job.steps_left"}));
}

TEST(Next, PartsThatAreNotHereAreWaitedFor) {
  SampleRecord record;
  record.workshop().stock[0].on_shelf = 0;
  record.book_in();
  record.answer(Stage::booking_in);
  record.agree();
  record.take_off();
  record.answer(Stage::teardown);
  record.inspect();
  record.answer(Stage::inspection);
  Standing s = now(record);
  // No new set: that is out by the rule of the shop, and stops the job whatever the shelf holds.
  record.write(SetRenewed{1, Reply::yes});
  s = now(record);
  EXPECT_EQ(s.waiting, Waiting::parts) << codes(s);
  EXPECT_EQ(s.present, Stage::kit);
  EXPECT_EQ(s.next.stage, Stage::timing) << "meanwhile the marks of the rotors that stayed on can be read";
  EXPECT_EQ(s.next.because->code, Code{"job.parts_awaited"});
  record.read_marks();
  EXPECT_EQ(now(record).next.does.code, Code{"job.get_parts"});
  record.write(Laid{1, "set", 1});
  EXPECT_NE(now(record).waiting, Waiting::parts) << "laid on the tray: it has left the shelf";
}

TEST(Next, WhatIsOnOrderIsWaitedForUntilItIsReceived) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.agree();
  record.write(Ordered{"TH-SET-5", 2, {}}, "lead");
  record.take_off();
  record.answer(Stage::teardown);
  record.inspect();
  record.answer(Stage::inspection);
  record.write(SetRenewed{1, Reply::yes});
  record.write(Received{"TH-SET-5", 1});
  EXPECT_EQ(now(record).waiting, Waiting::parts);
  record.write(Received{"TH-SET-5", 1});
  EXPECT_EQ(now(record).waiting, Waiting::bench);
}

TEST(Next, AWholeJobEndsWithTheSignaturesAndTheRelease) {
  SampleRecord record;
  record.do_all();
  Standing s = now(record);
  EXPECT_EQ(s.present, Stage::release) << codes(s);
  EXPECT_EQ(s.waiting, Waiting::release);
  ASSERT_EQ(s.blocks.size(), 3U) << codes(s);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(s.blocks[i].what.code, Code{"job.not_signed"});
    EXPECT_EQ(s.blocks[i].lifted_by, static_cast<Role>(i));
  }
  EXPECT_EQ(s.next.does.code, Code{"job.sign"});
  for (int stage = 0; stage < static_cast<int>(Stage::release); ++stage)
    EXPECT_EQ(progress(s, static_cast<Stage>(stage)), StageProgress::passed) << stage;
  record.sign_all();
  s = now(record);
  EXPECT_TRUE(s.blocks.empty()) << codes(s);
  EXPECT_EQ(s.next.does.code, Code{"job.release_it"});
  record.write(Released{false, {}}, "lead");
  s = now(record);
  EXPECT_EQ(s.waiting, Waiting::released);
  EXPECT_EQ(progress(s, Stage::release), StageProgress::passed);
}

TEST(Next, EveryEntryLeftOutOfAWholeJobIsMissed) {
  SampleRecord whole;
  whole.do_all();
  const auto all = whole.open();
  for (const Entry& left_out : all->entries) {
    // Side play and temperatures may be left out: the plan goes without, the doubt of the bore is wider.
    const std::string_view kind = kind_of(left_out.body);
    if (kind == "play_read" || kind == "temperature_read" || kind == "booked_in" || kind == "bore_read") continue;
    SampleRecord record;
    for (const Entry& e : all->entries)
      if (e.id != left_out.id) record.write(e.body, e.by);
    EXPECT_GT(now(record).blocks.size(), 3U) << kind << ' ' << left_out.number;
  }
}

TEST(Questions, SomeAreAskedOnlyWhereTheRecordLeadsTheJob) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.take_off();
  const auto asks = [&](std::string_view id) {
    const auto job = record.open();
    return std::ranges::any_of(asked(job->shaft, job->state.bench),
                               [&](const Asked& a) { return a.question->id == id; });
  };
  for (const std::string_view id : {"tools_counted", "nobody_near", "stop_tried", "hub_bore_sound", "hangers_sound"})
    EXPECT_FALSE(asks(id)) << id << ": a readings file has no such answers";
  record.agree();
  for (const std::string_view id : {"tools_counted", "nobody_near", "stop_tried", "hub_bore_sound", "hangers_sound"})
    EXPECT_TRUE(asks(id)) << id;
}

TEST(Questions, SafetyOfTheRunComesBeforeWhatIsOutThere) {
  SampleRecord record;
  record.do_all();
  const auto withdraw = [&](const char* id) {
    record.write(Withdrawn{"slip"}, "bench", live_answers_to(record.open()->state, Answered{id, 0, Reply::yes}));
  };
  withdraw("nobody_near");
  const Answered no{"ran_cool_and_quiet", 0, Reply::no};
  record.write(no, "bench", live_answers_to(record.open()->state, no));
  const Standing s = now(record);
  const auto first = std::ranges::find_if(s.blocks, [](const Block& b) { return b.stage == Stage::test_run; });
  ASSERT_NE(first, s.blocks.end());
  EXPECT_EQ(first->what.code, Code{"job.unanswered"});
  EXPECT_TRUE(is_safety("nobody_near"));
  EXPECT_FALSE(is_safety("ran_cool_and_quiet"));
  EXPECT_EQ(s.waiting, Waiting::stopped);
}

// --- signatures ---

TEST(Signatures, AreVoidOnceTheRecordChangesButNotByANote) {
  SampleRecord record;
  record.do_all();
  record.write(Signed{Role::bench});
  record.write(NoteWritten{{}, Stage::release, "wiped down"});
  record.write(PhotoTaken{{}, Stage::release, "hash", "image/jpeg", {}});
  auto job = record.open();
  EXPECT_NE(signatures(job->state)[0].entry, nullptr);
  record.write(RunRead{RunQuantity::minutes, 0, {any(minutes(40)), {}, "40 min"}, {}});
  job = record.open();
  EXPECT_EQ(signatures(job->state)[0].entry, nullptr);
  ASSERT_NE(signatures(job->state)[0].void_by, nullptr);
  const Standing s = standing(*job);
  EXPECT_TRUE(blocked_by(s, Code{"job.signature_void"}));
}

TEST(Signatures, OneOutOfTurnDoesNotCount) {
  SampleRecord record;
  record.do_all();
  record.write(Signed{Role::owner}, "owner");
  record.write(Signed{Role::lead}, "lead");
  record.write(Signed{Role::bench}, "bench");
  const auto job = record.open();
  const auto signed_by = signatures(job->state);
  EXPECT_NE(signed_by[0].entry, nullptr);
  EXPECT_EQ(signed_by[1].entry, nullptr);
  EXPECT_EQ(signed_by[2].entry, nullptr);
}

TEST(SecondLook, IsWantedWhereAMarkWasEverReadDifferentlyAndNotFromWhoReadIt) {
  SampleRecord record;
  record.do_all();
  const auto looks_wanted = [](const SampleRecord& of) {
    std::vector<int> rotors;
    for (const SecondLookWanted& wanted : second_looks_wanted(of.open()->state)) rotors.push_back(wanted.rotor);
    return rotors;
  };
  EXPECT_TRUE(looks_wanted(record).empty());
  const Id right = record.open()->state.answers(question_of(MarkSeen{1, Half::b, 4}))->first().id;
  const Id wrong = record.write(MarkSeen{1, Half::b, 5}, "bench", {right});
  record.write(MarkSeen{1, Half::b, 4}, "bench", {wrong});
  EXPECT_EQ(looks_wanted(record), std::vector<int>{1});
  const Id own = record.write(SecondLook{1, Reply::yes}, "bench");
  EXPECT_EQ(looks_wanted(record), std::vector<int>{1}) << "who set it does not count";
  record.write(SecondLook{1, Reply::yes}, "lead", {own});
  EXPECT_TRUE(looks_wanted(record).empty());
}

TEST(SecondLook, ThatFindsTheMarksWrongStopsTheJob) {
  SampleRecord record;
  record.do_all();
  record.write(SecondLook{2, Reply::no}, "lead");
  const Standing s = now(record);
  EXPECT_TRUE(blocked_by(s, Code{"job.second_look_wrong"}));
  EXPECT_EQ(s.waiting, Waiting::stopped);
}

}  // namespace
}  // namespace flatwise::job
