// A readings file and the entries that say the same give the same report: on the demo's job, half done and done, and on simulated
// rebuilds with their mistakes. The entries go through their JSON on the way, as they would through the API.
#include <gtest/gtest.h>

#include <chrono>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>

#include "definition/read.h"
#include "job/bench_entries.h"
#include "job/job_state.h"
#include "record/entry_json.h"
#include "record/uuid.h"
#include "tests/rebuilds/simulate.h"

namespace flatwise {
namespace {

std::string file(const std::string& path) {
  std::ifstream in{std::string{FLATWISE_SOURCE_DIR "/"} + path, std::ios::binary};
  return {std::istreambuf_iterator<char>{in}, {}};
}

/// Everything a person is told, as lines.
std::vector<std::string> lines_of(const job::JobReport& report) {
  std::vector<std::string> lines;
  for (const job::StageReport& stage : report.stages) {
    const std::string at = std::string{job::stage_name(stage.stage)} + ": ";
    for (const Finding& f : stage.findings) lines.push_back(at + wire::to_json(f, {}).dump());
    for (const job::Shown& s : stage.workings) {
      std::string line = at + s.working->figure + " " + std::to_string(s.where.number) + s.about;
      for (const Output& o : s.working->outputs) line += " " + wire::to_json(o.value, {}).dump();
      lines.push_back(line);
    }
    for (const Problem& p : stage.problems) lines.push_back(at + std::string{p.code.id()} + " " + p.field);
  }
  return lines;
}

/// The bodies as a client would send them and the record would keep them.
std::vector<job::EntryBody> through_json(const std::vector<job::EntryBody>& bodies) {
  std::vector<job::EntryBody> out;
  for (const job::EntryBody& body : bodies) {
    auto read = record::read_body(record::body_json(body), "body");
    EXPECT_TRUE(read) << record::body_json(body) << read.error().front().code.id() << read.error().front().field;
    if (read) out.push_back(*std::move(read));
  }
  return out;
}

job::Id next_id(job::Instant at) {
  static std::uint32_t count = 0;
  ++count;
  return record::uuid7(
      at, {0, 0, 0, 0, 0, 0, static_cast<std::uint8_t>(count >> 24), static_cast<std::uint8_t>(count >> 16),
           static_cast<std::uint8_t>(count >> 8), static_cast<std::uint8_t>(count)});
}

job::Instant noon_of(Day day) {
  const std::chrono::year_month_day date{std::chrono::year{day.year},
                                         std::chrono::month(static_cast<unsigned>(day.month)),
                                         std::chrono::day(static_cast<unsigned>(day.day))};
  return {std::chrono::sys_days{date}.time_since_epoch().count() * 86'400'000LL + 43'200'000};
}

std::vector<job::Entry> record_of(const Shaft& shaft, const Bench& bench) {
  std::vector<job::EntryBody> bodies{job::BookedIn{bench.job, next_id({}), next_id({}), {}, {}, {}}};
  for (job::EntryBody& body : through_json(job::entries_of(shaft, bench))) bodies.push_back(std::move(body));
  return job::as_entries({}, std::move(bodies), {next_id({}), next_id({}), "bench", noon_of(bench.date)}, next_id);
}

void expect_same(const Shaft& shaft, const Workshop& workshop, const Bench& bench) {
  const std::vector<job::Entry> entries = record_of(shaft, bench);
  const job::JobState state = job::fold(shaft, workshop, entries);
  EXPECT_EQ(state.bench.date, bench.date);
  EXPECT_EQ(state.bench.job, bench.job);
  const auto from_file = job::judge_through({shaft, workshop, bench}, job::Stage::release);
  const auto from_record = job::judge_through({shaft, workshop, state.bench}, job::Stage::release);
  EXPECT_EQ(lines_of(from_record), lines_of(from_file));
}

class DemoJob : public testing::TestWithParam<const char*> {};

TEST_P(DemoJob, SaysTheSameFromTheRecord) {
  const Shaft shaft = definition::read_shaft(file("demo/long-nine.toml"), "long-nine.toml").value();
  const Workshop workshop = definition::read_workshop(file("demo/workshop.toml"), "workshop.toml").value();
  const auto ids = job::question_ids();
  const Bench bench = definition::read_bench(file(GetParam()), "job.toml", shaft, workshop, ids).value();
  expect_same(shaft, workshop, bench);
}

// Every entry may also be taken one after the other by what check_entry demands.
TEST_P(DemoJob, MayBeTaken) {
  const Shaft shaft = definition::read_shaft(file("demo/long-nine.toml"), "long-nine.toml").value();
  const Workshop workshop = definition::read_workshop(file("demo/workshop.toml"), "workshop.toml").value();
  const Bench bench =
      definition::read_bench(file(GetParam()), "job.toml", shaft, workshop, job::question_ids()).value();
  const std::vector<job::Entry> entries = record_of(shaft, bench);
  for (std::size_t i = 0; i < entries.size(); ++i) {
    const job::JobState state = job::fold(shaft, workshop, std::span{entries}.first(i));
    for (const Problem& p : job::check_entry(shaft, workshop, state, entries[i]))
      ADD_FAILURE() << job::kind_of(entries[i].body) << ": " << p.code.id() << " " << p.field << " " << p.given;
  }
}

INSTANTIATE_TEST_SUITE_P(Files, DemoJob, testing::Values("demo/job-31.toml", "demo/job-31-done.toml"));

TEST(Rebuilds, SayTheSameFromTheRecord) {
  int compared = 0;
  for (unsigned long long seed = 1; seed <= 200; ++seed) {
    const rebuilds::Texts texts = rebuilds::texts_of(rebuilds::make_rebuild(seed));
    const auto shaft = definition::read_shaft(texts.shaft, "shaft.toml");
    const auto workshop = definition::read_workshop(texts.workshop, "workshop.toml");
    if (!shaft || !workshop) continue;
    const auto bench = definition::read_bench(texts.readings, "readings.toml", *shaft, *workshop, job::question_ids());
    if (!bench) continue;  // A value that the reader refuses by name: no entry could hold it either.
    ++compared;
    expect_same(*shaft, *workshop, *bench);
    if (testing::Test::HasFailure()) FAIL() << "rebuild " << seed;
  }
  EXPECT_GT(compared, 150);
}

}  // namespace
}  // namespace flatwise
