// entry_says_test.cc: what an entry says in a log is words and parts, never a key.
#include "job/entry_says.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "job/job_samples.h"
#include "job/step_key.h"
#include "job/steps.h"

namespace flatwise::job {
namespace {

std::string text_of(const Message& message, std::string_view name) {
  const auto it = std::ranges::find(message.args, name, &Arg::name);
  const auto* text = it == message.args.end() ? nullptr : std::get_if<std::string>(&it->value);
  return text == nullptr ? "" : *text;
}

void expect_named(const SampleRecord& record) {
  const auto job = record.open();
  for (const Phase phase : {Phase::teardown, Phase::assembly})
    for (const JobStep& step : job_steps(job->shaft, job->workshop, job->state, phase)) {
      const auto key = read_step_key(step.key);
      ASSERT_TRUE(key.has_value()) << step.key;
      EXPECT_EQ(key->stations.size(), step.step.stations.size()) << step.key;
      EXPECT_EQ(text_of(entry_says(job->shaft, StepDone{phase, step.key, Reply::yes}), "step"), "")
          << step.key << " is shown as it is kept";
    }
}

TEST(EntrySays, NamesEveryStepOfAJobByAWord) {
  for (const bool all : {false, true}) {
    SampleRecord record;
    record.book_in();
    record.answer(Stage::booking_in);
    if (all)
      record.write(WayChosen{{1, 2, 3}, "all"}, "lead");
    else
      record.agree();
    expect_named(record);
    if (!all) record.take_off();
    expect_named(record);
  }
}

// 2026-11-27: the hand-over record printed "4 put back on." and "step teardown.put_rotor_on/11".
TEST(EntrySays, NamesARotorAsOne) {
  const SampleRecord record;
  const int station = record.shaft().station_of_rotor(2) + 1;
  const Args args = entry_says(record.shaft(), PutOn{station}).args;
  ASSERT_EQ(args.size(), 1U);
  EXPECT_EQ(args[0].name, "rotor");
  EXPECT_EQ(std::get<std::int64_t>(args[0].value), 2);
  EXPECT_EQ(entry_says(record.shaft(), TakenOff{1}).args[0].name, "part");
}

TEST(EntrySays, SaysHowTheRotorWasHeldWhereThatWasTold) {
  const SampleRecord record;
  PlayRead play{1, {any(millimetres(1)), {}, "1 mm"}, "L1", {}};
  const auto has_held = [&] {
    const Args args = entry_says(record.shaft(), play).args;
    return std::ranges::find(args, "held", &Arg::name) != args.end();
  };
  EXPECT_FALSE(has_held());
  EXPECT_EQ(answer_says(play).code, Code{"entry.answer.typed"});
  play.held = Held::hanging;
  play.push = Entered{any(newtons(30)), {}, "30 N"};
  EXPECT_TRUE(has_held());
  EXPECT_EQ(text_of(entry_says(record.shaft(), play), "push"), "30 N");
  EXPECT_EQ(text_of(answer_says(play), "push"), "30 N") << "two that differ in the push look alike";
}

TEST(EntrySays, SaysOfAPartThatIsBackOnThatItCameOffAndNotThatItWasWrong) {
  SampleRecord record;
  record.book_in();
  record.answer(Stage::booking_in);
  record.agree();
  const Id off = record.write(TakenOff{1}), on = record.write(PutOn{1}, "bench", {off});
  record.write(Withdrawn{"the wrong part"}, "bench", {on});
  const auto job = record.open();
  for (const Entry& entry : job->entries)
    EXPECT_EQ(job->state.replacing(entry).size(), entry.id == on ? 1U : 0U) << entry.number;
}

TEST(EntrySays, ShowsAStepThatNoPlanMakesAsItWasWritten) {
  for (const char* key : {"crack", "teardown.crack", "teardown.put_on/", "teardown.put_on/0", "teardown.put_on/2x",
                          "x.put_on/2", "teardown.put_on/99999999999"})
    EXPECT_FALSE(read_step_key(key).has_value()) << key;
  const auto key = read_step_key("teardown.draw_rotor/11-12#3");
  ASSERT_TRUE(key.has_value());
  EXPECT_EQ(key->stations, (std::vector<int>{11, 12}));
  EXPECT_EQ(key->times, 3);
}

}  // namespace
}  // namespace flatwise::job
