// bad_files_test.cc: every mistake of bad_files.h gives its one problem: code, field, line, column.
#include "definition/bad_files.h"

#include <gtest/gtest.h>

#include <span>

#include "definition/test_files.h"

namespace flatwise::definition {
namespace {

// Found by hand; columns count characters, so that 'é' is one.
Place place_of_mark(std::string& text) {
  const std::size_t at = text.find(kMark);
  if (at == std::string::npos) return {};
  text.erase(at, kMark.size());
  Place place{{}, 1, 1, {}};
  for (std::size_t i = 0; i < at; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (text[i] == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((byte & 0xC0u) != 0x80u) {
      ++place.column;
    }
  }
  return place;
}

template <class Read>
void expect_each(const std::string& good, std::span<const Bad> all, Read read) {
  for (const Bad& bad : all) {
    SCOPED_TRACE(std::string{bad.from} + "  ->  " + std::string{bad.to});
    std::string text = broken(good, bad);
    const Place wanted = place_of_mark(text);
    const std::vector<Problem> problems = read(text);
    EXPECT_EQ(problems.size(), 1U) << told(problems);
    if (problems.size() != 1) continue;
    const Problem& p = problems.front();
    EXPECT_EQ(p.code.id(), bad.code);
    EXPECT_EQ(p.field, bad.field);
    EXPECT_TRUE(p.place.has_value());
    if (!p.place) continue;
    EXPECT_EQ(p.place->line, wanted.line);
    EXPECT_EQ(p.place->column, wanted.column);
    EXPECT_EQ(p.place->file, "file.toml");
    EXPECT_TRUE(wanted.line == 0 || !p.place->quoted.empty());
  }
}

template <class T>
std::vector<Problem> problems_of(const Results<T>& read) {
  return read ? std::vector<Problem>{} : read.error();
}
std::vector<Problem> of_shaft(const std::string& text) { return problems_of(read_shaft(text, "file.toml")); }
std::vector<Problem> of_workshop(const std::string& text) { return problems_of(read_workshop(text, "file.toml")); }
std::vector<Problem> of_readings(const std::string& text) {
  static const Shaft shaft = good_shaft();
  static const Workshop workshop = good_workshop();
  static constexpr std::string_view kQuestions[] = {"guards_on", "spacers_labelled", "bearing_greased", "captive_in",
                                                    "nut_rechecked"};
  return problems_of(read_bench(text, "file.toml", shaft, workshop, kQuestions));
}

TEST(BadFiles, EveryShaftMistakeIsNamedWithItsPlace) { expect_each(good_file("nine.toml"), kBadShafts, of_shaft); }
TEST(BadFiles, EveryWorkshopMistakeIsNamedWithItsPlace) {
  expect_each(good_file("workshop.toml"), kBadWorkshops, of_workshop);
}
TEST(BadFiles, EveryReadingsMistakeIsNamedWithItsPlace) {
  expect_each(good_file("readings.toml"), kBadReadings, of_readings);
}

}  // namespace
}  // namespace flatwise::definition
