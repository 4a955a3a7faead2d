// A readings file that says from which end the shaft was opened, what else came off, and spacers that were counted.
#include <gtest/gtest.h>

#include "definition/test_files.h"
#include "job/bench_entries.h"

namespace flatwise::definition {
namespace {

Results<Bench> read_with(const std::string& head, const std::string& tables = {}) {
  std::string text = good_file("readings.toml");
  text.insert(text.find("new_set = "), head + "\n");
  return read_bench(text + "\n" + tables, "readings.toml", good_shaft(), good_workshop());
}

std::string label(int station) { return good_shaft().stations()[static_cast<std::size_t>(station)].label; }

TEST(OpeningFile, SaysFromWhichEndAndWhatElseCameOff) {
  const auto bench =
      read_with("opened_from = \"both\"\nrotors_from_a = 4\nparts_off = [\"S2\", \"S3\"]\nparts_still_off = [\"S3\"]");
  ASSERT_TRUE(bench.has_value()) << told(bench.error());
  ASSERT_TRUE(bench->opened.has_value());
  EXPECT_EQ(bench->opened->from, teardown::OpenedFrom::both);
  EXPECT_EQ(bench->opened->rotors_from_a, 4);
  EXPECT_GT(bench->opened->place.line, 0);
  ASSERT_EQ(bench->parts_off.size(), 2U);
  EXPECT_EQ(label(bench->parts_off[0] - 1), "S2");
  ASSERT_EQ(bench->parts_still_off.size(), 1U);
  EXPECT_EQ(label(bench->parts_still_off[0] - 1), "S3");
  EXPECT_FALSE(read_with("")->opened.has_value()) << "nobody said";
}

TEST(OpeningFile, SpacersAreCountedAtTheirPlaces) {
  const auto bench = read_with("",
                               "[[spacer]]\nplace = \"S2\"\nfound = \"teardown\"\ncount = 2\n"
                               "[[spacer]]\nplace = \"S2\"\nfound = \"assembly\"\ncount = 1\nlabel = \"S3\"\n");
  ASSERT_TRUE(bench.has_value()) << told(bench.error());
  ASSERT_EQ(bench->spacers_seen.size(), 2U);
  EXPECT_EQ(label(bench->spacers_seen[0].station), "S2");
  EXPECT_EQ(bench->spacers_seen[0].count.value, 2);
  EXPECT_EQ(bench->spacers_seen[1].phase, Phase::assembly);
  EXPECT_EQ(bench->spacers_seen[1].label, "S3");
  const auto twice = read_with("",
                               "[[spacer]]\nplace = \"S2\"\nfound = \"teardown\"\ncount = 2\n"
                               "[[spacer]]\nplace = \"S2\"\nfound = \"teardown\"\ncount = 1\n");
  ASSERT_FALSE(twice.has_value());
  EXPECT_EQ(twice.error().front().code.id(), "definition.spacer_twice");
}

// Taken into a record, the file says there what it says here.
TEST(OpeningFile, GoesIntoTheRecordAsItIs) {
  const Shaft shaft = good_shaft();
  const auto bench = read_with("opened_from = \"B\"\nparts_off = [\"S2\"]",
                               "[[spacer]]\nplace = \"S2\"\nfound = \"teardown\"\ncount = 0\n");
  ASSERT_TRUE(bench.has_value()) << told(bench.error());
  int opened = 0, taken = 0, counted = 0;
  for (const job::EntryBody& body : job::entries_of(shaft, *bench)) {
    if (const auto* said = std::get_if<job::OpenedBy>(&body)) opened += said->from == teardown::OpenedFrom::b ? 1 : 0;
    if (const auto* off = std::get_if<job::TakenOff>(&body)) taken += label(off->station - 1) == "S2" ? 1 : 0;
    if (const auto* found = std::get_if<job::SpacersFound>(&body)) counted += found->count == 0 ? 1 : 0;
  }
  EXPECT_EQ(opened, 1);
  EXPECT_EQ(taken, 1);
  EXPECT_EQ(counted, 1);
}

}  // namespace
}  // namespace flatwise::definition
