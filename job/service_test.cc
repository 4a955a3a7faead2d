// When a shaft is due again. Invented sample shaft (core/shaft/shaft_samples.h).
#include "job/service.h"

#include <gtest/gtest.h>

#include "core/shaft/shaft_samples.h"

namespace flatwise::job {
namespace {

constexpr double kHour = 3600;

Shaft shaft_with(const Service& service) {
  ShaftSpec spec = sample_shaft();
  spec.service = service;
  return Shaft::make(std::move(spec)).value();
}
Bench read_at(double hours) {
  Bench bench;
  const AnyQuantity meter{hours * kHour, Kind::time};
  bench.hour_meter = Told<Entered>{{meter, {}, "2430 h"}, "2430 h", {"entry 1", 0, 0, {}}};
  return bench;
}
std::vector<Shown> shown_of_run(const Shaft& shaft, const Bench& bench) {
  std::vector<Shown> out = judge({shaft, {}, bench}, Stage::test_run).workings;
  std::erase_if(out, [](const Shown& s) { return s.working->figure != "next-due"; });
  return out;
}

// Source: by hand, 2430 h + 400 h.
// Tolerance: rounding of one sum.
TEST(NextDue, IsTheMeterAtTheJobAndTheInterval) {
  const Shaft shaft = shaft_with({.every = 400.0 * minutes(60), .seasons = 1});
  const auto due = next_due(shaft, read_at(2430));
  ASSERT_TRUE(due && due->due);
  EXPECT_DOUBLE_EQ(due->due_at()->si(), 2830 * kHour);
  EXPECT_DOUBLE_EQ(due->meter->si(), 2430 * kHour);
  EXPECT_EQ(due->by.seasons, 1);
  // Where each input came from stands with it.
  EXPECT_EQ(due->due->input("meter")->typed, "2430 h");
  EXPECT_EQ(due->due->input("meter")->origin.where, "entry 1");
  EXPECT_EQ(due->due->input("every")->origin.kind, shaft.origin("service.every").kind);
}

TEST(NextDue, WhatIsNotKnownIsNotGuessed) {
  const Shaft every = shaft_with({.every = 400.0 * minutes(60)});
  ASSERT_TRUE(next_due(every, Bench{}));
  EXPECT_EQ(next_due(every, Bench{})->due, nullptr);  // Nobody read the meter.
  EXPECT_FALSE(next_due(every, Bench{})->due_at());
  const Shaft seasons = shaft_with({.seasons = 1});
  ASSERT_TRUE(next_due(seasons, read_at(2430)));
  EXPECT_EQ(next_due(seasons, read_at(2430))->due, nullptr);  // No interval.
  EXPECT_FALSE(next_due(shaft_with({}), read_at(2430)));
}

TEST(NextDue, StandsInTheReportWhereItIsKnownAndJudgesNothing) {
  const Shaft every = shaft_with({.every = 400.0 * minutes(60)});
  const std::vector<Shown> shown = shown_of_run(every, read_at(2430));
  ASSERT_EQ(shown.size(), 1U);
  EXPECT_FALSE(shown.front().counts());
  EXPECT_TRUE(shown_of_run(every, Bench{}).empty());
}

}  // namespace
}  // namespace flatwise::job
