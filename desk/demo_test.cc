// The demo's store: what the first ./run shows.
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>

#include "definition/read.h"
#include "desk/desk_samples.h"
#include "record/chain.h"

namespace flatwise::desk {
namespace {

class Demo : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = std::make_unique<store_sqlite::TestFolder>();
    store_ = *store_sqlite::make_store(folder_->path(), demo_workshop_id(), {});
    const auto done = fill_demo(*store_, demo_built_in());
    filled_ = done ? "" : told(done.error());
  }
  static void TearDownTestSuite() {
    store_.reset();
    folder_.reset();
  }
  void SetUp() override { ASSERT_EQ(filled_, ""); }
  static job::JobRow row(const std::string& number) { return store_->job_by_number(number).value(); }

  static inline std::unique_ptr<store_sqlite::TestFolder> folder_;
  static inline std::unique_ptr<job::Store> store_;
  static inline std::string filled_;
};

TEST_F(Demo, TheProgramBringsItsFilesAsTheyStand) {
  const DemoTexts texts = demo_built_in();
  ASSERT_EQ(texts.size(), demo_files().size());
  for (const std::string_view name : demo_files()) {
    std::ifstream in{std::string{FLATWISE_SOURCE_DIR "/demo/"} + std::string{name}, std::ios::binary};
    const std::string there{std::istreambuf_iterator<char>{in}, {}};
    EXPECT_EQ(texts.at(std::string{name}), there) << name;
    EXPECT_FALSE(there.empty()) << name;
  }
}

TEST_F(Demo, ShopPeopleCustomersMachines) {
  const Workshop shop = store_->workshop().value();
  EXPECT_EQ(shop.name, "Tarn Hollow Growers");
  EXPECT_TRUE(shop.invented);
  EXPECT_EQ(store_->people()->size(), 4U);
  EXPECT_EQ(store_->customers()->size(), 2U);
  const auto machines = store_->machines().value();
  ASSERT_EQ(machines.size(), 4U);
  for (const job::Machine& m : machines) {
    EXPECT_TRUE(m.invented);
    EXPECT_GT(store_->hours(m.id)->size(), 5U) << m.name;
    EXPECT_GT(store_->lives(m.id)->size(), 3U) << m.name;
  }
  EXPECT_EQ(store_->shafts()->size(), 4U);
}

// The list of gauges said "not noted" of every one of them.
TEST_F(Demo, EveryGaugeSaysWhenItWasCalibrated) {
  const Workshop shop = store_->workshop().value();
  ASSERT_EQ(shop.gauges.size(), 10U);
  for (const Gauge& gauge : shop.gauges) {
    ASSERT_FALSE(gauge.certificates.empty()) << gauge.id;
    const Certificate& last = gauge.certificates.back();
    ASSERT_TRUE(last.from) << gauge.id;
    EXPECT_LT(*last.from, (Day{2026, 2, 2})) << gauge.id;  // Before the first job that stands open.
    EXPECT_EQ(last.until, gauge.calibrated_until);
    EXPECT_EQ(last.expanded_si, gauge.certificates.front().expanded_si);
  }
}

TEST_F(Demo, ThreeWintersAreReleased) {
  int released = 0;
  const auto machines = store_->machines().value();
  for (const job::Machine& m : machines) {
    const auto jobs = store_->jobs_of(m.id, 50, std::nullopt).value();
    for (const job::JobRow& j : jobs) released += j.released ? 1 : 0;
  }
  EXPECT_EQ(released, 10);
  const auto opened = open_job(*store_, row("21").id);
  ASSERT_TRUE(opened) << told(opened.error());
  EXPECT_TRUE(opened->job->state.released->forced);
  EXPECT_EQ(opened->standing.waiting, job::Waiting::released);
}

TEST_F(Demo, EachOpenJobWaitsForSomethingElse) {
  EXPECT_EQ(row("31").waiting, "stopped");
  EXPECT_EQ(row("32").waiting, "customer");
  EXPECT_EQ(row("33").waiting, "parts");
  EXPECT_EQ(row("34").waiting, "bench");
  EXPECT_EQ(row("34").present, job::Stage::booking_in);
  EXPECT_EQ(store_->open_jobs()->size(), 4U);
}

// The mistakes that wait in job 31 are those of its readings file. The test run is still to come.
TEST_F(Demo, Job31SaysWhatItsReadingsFileSays) {
  const auto opened = open_job(*store_, row("31").id);
  ASSERT_TRUE(opened) << told(opened.error());
  const job::OpenJob& job = *opened->job;
  const DemoTexts texts = demo_built_in();
  const Bench bench =
      definition::read_bench(texts.at("job-31.toml"), "job-31.toml", job.shaft, job.workshop, job::question_ids())
          .value();
  const auto file = job::judge_through({job.shaft, job.workshop, bench}, job::Stage::release);
  const auto codes = [](const job::JobReport& report) {
    std::vector<std::string> out;
    for (const job::StageReport& stage : report.stages)
      for (const Finding& f : stage.findings)
        if (stage.stage > job::Stage::finding && stage.stage < job::Stage::test_run && f.severity != Severity::note)
          out.push_back(std::string{f.code.id()} + " " + std::to_string(f.where.number));
    return out;
  };
  EXPECT_EQ(codes(job.report), codes(file));
  EXPECT_GE(codes(file).size(), 6U);
  EXPECT_EQ(job.state.bench.date, (Day{2026, 2, 3}));
  for (const auto& [question, answers] : job.state.live) EXPECT_TRUE(answers.agreed) << question;
}

TEST_F(Demo, StockIsWhatTheJobsLeft) {
  const auto stock = store_->workshop()->stock;
  const auto of = [&](std::string_view part) { return *std::ranges::find(stock, part, &StockItem::part_number); };
  EXPECT_EQ(of("TH-SET-5").on_shelf, 3 + 4 - 4);  // Four came in, four are on job 31's trays.
  EXPECT_EQ(of("TH-SET-5").on_order, 4 - 4);
  EXPECT_EQ(of("TH-SEAL-100").on_shelf, 18 - 8);
  EXPECT_EQ(of("TH-RING-100").on_shelf, 6);  // The old rings were sound and went back.
  EXPECT_EQ(of("TH-RING-100").on_order, 6);  // For job 33.
}

TEST_F(Demo, ChainsHold) {
  for (const char* number : {"21", "30", "31", "32", "33", "34"})
    EXPECT_FALSE(record::verify_chain(store_->entries(row(number).id, 0).value())) << number;
}

TEST_F(Demo, MadeTwiceItIsTheSame) {
  const store_sqlite::TestFolder other;
  const auto twin = *store_sqlite::make_store(other.path(), demo_workshop_id(), {});
  ASSERT_TRUE(fill_demo(*twin, demo_built_in()));
  for (const char* number : {"21", "31", "33"}) EXPECT_EQ(twin->job_by_number(number)->head, row(number).head);
}

TEST_F(Demo, AStoreThatIsNotEmptyIsRefused) {
  const auto again = fill_demo(*store_, demo_built_in());
  ASSERT_FALSE(again);
  ASSERT_TRUE(again.error().fault);
}

TEST(DemoTexts, OneMissingIsNamed) {
  const store_sqlite::TestFolder folder;
  const auto store = *store_sqlite::make_store(folder.path(), demo_workshop_id(), {});
  DemoTexts texts = demo_built_in();
  texts.erase("five.toml");
  const auto done = fill_demo(*store, texts);
  ASSERT_FALSE(done);
  EXPECT_EQ(told(done.error()), "record.demo_text_missing five.toml <>; ");
}

}  // namespace
}  // namespace flatwise::desk
