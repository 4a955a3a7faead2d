// What may be noted of an hour meter, and which reading counts; clocks that are wrong; names that are one. Invented ids, days and
// names.
#include "job/hours.h"

#include <gtest/gtest.h>

#include "job/job_samples.h"
#include "job/person_name.h"

namespace flatwise::job {
namespace {

constexpr Day kToday{2026, 11, 27};
using Codes = std::vector<std::string>;

HourReading read(Id id, Day day, double hours, Id corrects = {}, std::int64_t at = 0) {
  HourReading r;
  r.id = std::move(id), r.machine = "m", r.day = day, r.hours = hours, r.corrects = std::move(corrects), r.at = {at};
  return r;
}
Codes codes(const HourReading& fresh, const std::vector<HourReading>& noted, bool sure = false) {
  Codes out;
  for (const Problem& p : problems_of(fresh, noted, {kToday, sure}))
    out.push_back(p.field + " " + std::string{p.code.id()});
  return out;
}

TEST(Hours, NoDayIsStillToCome) {
  EXPECT_EQ(codes(read("a", kToday, 5), {}), Codes{});
  EXPECT_EQ(codes(read("a", {2026, 11, 28}, 5), {}), Codes{"day shop.hours_to_come"});
  EXPECT_EQ(codes(read("a", {2199, 1, 1}, 5), {}, true), Codes{"day shop.hours_to_come"});
}

TEST(Hours, AMeterCountsUpAndNoFasterThanTheClock) {
  const std::vector<HourReading> noted{read("a", {2026, 11, 20}, 2400), read("b", {2026, 11, 25}, 2450)};
  EXPECT_EQ(codes(read("c", kToday, 2450), noted), Codes{});
  EXPECT_EQ(codes(read("c", kToday, 2449), noted), Codes{"hours shop.hours_fell"});
  // From the morning of the 25th to the evening of the 27th there are 72 hours.
  EXPECT_EQ(codes(read("c", kToday, 2522), noted), Codes{});
  EXPECT_EQ(codes(read("c", kToday, 2522.5), noted), Codes{"hours shop.hours_jumped"});
  EXPECT_EQ(codes(read("c", kToday, 999'999), noted), Codes{"hours shop.hours_jumped"});
  EXPECT_EQ(codes(read("c", {2026, 11, 22}, 2460), noted), Codes{"hours shop.hours_above"});
  EXPECT_EQ(codes(read("c", {2026, 1, 1}, 3), noted), Codes{}) << "nothing before it, and time enough after it";
  EXPECT_EQ(codes(read("c", {2026, 11, 19}, 3), noted), Codes{"hours shop.hours_below"});
  EXPECT_EQ(codes(read("c", kToday, 3), noted, true), Codes{}) << "another meter was fitted";
  EXPECT_EQ(codes(read("b", {2026, 11, 25}, 2450), noted), Codes{}) << "sent once more";
}

TEST(Hours, WhatIsCorrectedCountsNoMore) {
  std::vector<HourReading> noted{read("a", {2026, 11, 20}, 2400), read("wrong", {2026, 11, 26}, 99'999)};
  EXPECT_EQ(codes(read("c", kToday, 2440), noted), Codes{"hours shop.hours_fell"});
  EXPECT_EQ(codes(read("c", {2026, 11, 26}, 2430, "wrong"), noted), Codes{});
  EXPECT_EQ(codes(read("c", {2026, 11, 26}, 2300, "wrong"), noted), Codes{"hours shop.hours_fell"});
  noted.push_back(read("right", {2026, 11, 26}, 2430, "wrong"));
  EXPECT_EQ(codes(read("c", kToday, 2440), noted), Codes{});
  EXPECT_EQ(codes(read("right", {2026, 11, 26}, 2430, "wrong"), noted), Codes{}) << "sent once more";
  EXPECT_EQ(codes(read("c", kToday, 2440, "wrong"), noted), Codes{"corrects shop.hours_corrected"});
  EXPECT_EQ(codes(read("c", kToday, 2440, "nothing"), noted), Codes{"corrects shop.no_such_hours"});
  EXPECT_EQ(last_hours(noted)->id, "right");
  EXPECT_TRUE(is_corrected(noted[1], noted));
  EXPECT_EQ(standing_hours(noted).size(), 2U);
}

// 2026-11-27: where a day had two readings the screen of a job took the first and the page of the machine the last.
TEST(Hours, TheLastOfADayIsTheOneNotedLast) {
  const std::vector<HourReading> noted{read("z", kToday, 2401, {}, 10), read("a", kToday, 2405, {}, 20),
                                       read("b", {2026, 11, 26}, 2400, {}, 30)};
  EXPECT_EQ(last_hours(noted)->hours, 2405);
  EXPECT_FALSE(last_hours({}));
}

// 2026-11-27: entries stamped 2020 by a tablet made a gauge pass that had run out in between.
TEST(Clock, AGaugeIsJudgedByTheLaterOfWhatTheTabletSaidAndWhenItCameIn) {
  SampleRecord record;
  record.book_in();
  record.write(BoreRead{1, 'A', 1, 4, {any(millimetres(99.97)), {}, "99.97 mm"}, "G1"});
  auto job = record.open();
  const auto dated = [&](Instant at, Instant received) {
    for (Entry& entry : job->entries) entry.at = at, entry.received = received;
    return fold(job->shaft, job->workshop, job->entries).bench.date;
  };
  constexpr Instant kThen{1'577'836'800'000}, kNow{1'795'737'600'000};  // 1 January 2020; 27 November 2026
  EXPECT_EQ(dated(kThen, kNow), (Day{2026, 11, 27}));
  EXPECT_EQ(dated(kNow, kThen), (Day{2026, 11, 27}));
  EXPECT_EQ(dated(kThen, {}), (Day{2020, 1, 1})) << "where nobody knows when it came in, the tablet is believed";
  Entry entry = job->entries.front();
  EXPECT_TRUE(clock_was_off(entry) == false && latest(entry).ms == kThen.ms);
  entry.received = {entry.at.ms + kClockOffMs};
  EXPECT_FALSE(clock_was_off(entry)) << "a week out of reach";
  entry.received.ms += 1;
  EXPECT_TRUE(clock_was_off(entry));
}

TEST(PersonName, IsOneHoweverItIsWritten) {
  EXPECT_EQ(folded_name("  Bench  "), folded_name("bENCH"));
  EXPECT_EQ(folded_name("Two\t Words"), "two words");
  EXPECT_EQ(folded_name("Two\u00A0Words"), "two words");
  EXPECT_EQ(folded_name("ÉLOÏSE ŽÁK ŸŁ"), folded_name("éloïse žák ÿł"));
  EXPECT_EQ(folded_name("ΛΩ ЖЁ"), folded_name("λω жё"));
  EXPECT_NE(folded_name("Ă"), folded_name("A"));
  EXPECT_NE(folded_name("×"), folded_name("÷"));
  EXPECT_EQ(folded_name(" \t\u00A0"), "");
  EXPECT_EQ(folded_name("\xFF\xC3"), "\xFF\xC3") << "no UTF-8";
  EXPECT_EQ(folded_name("日本"), "日本");
}

}  // namespace
}  // namespace flatwise::job
