// What files say of the test run and of the service: limits in the shaft file, readings in the readings file.
#include <gtest/gtest.h>

#include "definition/test_files.h"

namespace flatwise::definition {
namespace {

std::string without(std::string text, std::string_view from) {
  text.erase(text.find(from));
  return text;
}

// Source: tests/data/definition/nine.toml, read by eye.
// Tolerance: exact to the last bit of a double.
TEST(RunFile, TheShaftFileGivesLimitsWithTheirLines) {
  const Shaft shaft = good_shaft();
  const TestRun& run = shaft.spec().test_run;
  EXPECT_DOUBLE_EQ(run.shortest->si(), 1200);
  EXPECT_DOUBLE_EQ(run.greatest_rise->kelvins(), 40);
  EXPECT_DOUBLE_EQ(run.greatest_vibration->si(), 4.5e-3);
  const Service& service = shaft.spec().service;
  EXPECT_DOUBLE_EQ(service.every->si(), 400 * 3600.0);
  EXPECT_EQ(service.seasons, 1);
  EXPECT_DOUBLE_EQ(service.nuts_again->si(), 36'000);
  for (const char* field : {"test_run.greatest_rise", "service.every"}) {
    EXPECT_EQ(shaft.origin(field).kind, OriginKind::given) << field;
    EXPECT_TRUE(shaft.origin(field).where.starts_with("nine.toml:")) << field;
  }
}

TEST(RunFile, WhatAShaftFileLeavesOutIsNotAssumed) {
  const Shaft shaft = read_shaft(without(good_file("nine.toml"), "[test_run]"), "nine.toml").value();
  EXPECT_FALSE(shaft.spec().test_run.shortest || shaft.spec().test_run.greatest_rise ||
               shaft.spec().test_run.greatest_vibration);
  EXPECT_FALSE(shaft.spec().service.every || shaft.spec().service.seasons || shaft.spec().service.nuts_again);
  for (const auto& [field, origin] : shaft.spec().origins)
    EXPECT_FALSE(field.starts_with("test_run") || field.starts_with("service")) << field;
}

TEST(RunFile, EachLimitStandsAlone) {
  const std::string bare = without(good_file("nine.toml"), "[test_run]");
  const Shaft shaft = read_shaft(bare + "[test_run]\ngreatest_vibration = \"0.15 in/s\"\n", "nine.toml").value();
  EXPECT_FALSE(shaft.spec().test_run.shortest);
  EXPECT_FALSE(shaft.spec().test_run.greatest_rise);
  EXPECT_DOUBLE_EQ(shaft.spec().test_run.greatest_vibration->si(), 0.15 * 0.0254);
}

// Source: tests/data/definition/readings.toml, read by eye; 57 °F is (57 + 459.67) 5/9 K.
// Tolerance: exact to the last digits of a double.
TEST(RunFile, TheReadingsFileGivesTheRun) {
  const Shaft shaft = good_shaft();
  const Workshop workshop = good_workshop();
  const auto bench = read_bench(good_file("readings.toml"), "readings.toml", shaft, workshop, {});
  ASSERT_TRUE(bench) << told(bench.error());
  ASSERT_EQ(bench->runs.size(), 5U);
  EXPECT_EQ(bench->runs[0].what, RunQuantity::minutes);
  EXPECT_DOUBLE_EQ(bench->runs[0].value.value.value.si, 2400);
  EXPECT_EQ(bench->runs[1].what, RunQuantity::room);
  EXPECT_NEAR(bench->runs[1].value.value.value.si, (57 + 459.67) * 5 / 9, 1e-9);
  EXPECT_EQ(bench->runs[1].gauge, "TH-1");
  EXPECT_EQ(bench->runs[2].what, RunQuantity::hanger);
  EXPECT_EQ(shaft.stations()[static_cast<std::size_t>(bench->runs[2].station) - 1].label, "hanger A");
  EXPECT_EQ(bench->runs[2].value.typed, "104 °F");
  EXPECT_EQ(bench->runs[3].what, RunQuantity::vibration);
  EXPECT_EQ(bench->runs[3].gauge, "VM-1");
  EXPECT_EQ(shaft.stations()[static_cast<std::size_t>(bench->runs[4].station) - 1].label, "hanger B");
}

TEST(RunFile, AVibrationMeterShowsASpeed) {
  const Workshop workshop = good_workshop();
  const Gauge& meter = workshop.gauges.back();
  EXPECT_EQ(meter.use, Gauge::Use::vibration_meter);
  EXPECT_EQ(meter.kind, Kind::speed);
  EXPECT_TRUE(meter.relative);
}

}  // namespace
}  // namespace flatwise::definition
