#include "core/fasteners/thread.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/fasteners/strength.h"
#include "tests/support/test_table.h"

namespace flatwise::fasteners {
namespace {

double area_of(const char* text) { return stress_area(read_thread(text, "thread").value()).si() * 1e6; }

// Source: ISO 898-1 tables 4 and 6, ASME B1.1 tables: tests/data/fasteners_areas.csv.
// Tolerance: column 'tolerance' of the file: the last printed digit.
TEST(StressArea, MeetsThePrintedTables) {
  const auto rows = test_table("fasteners_areas.csv");
  ASSERT_EQ(rows.size(), 21U);
  for (const auto& row : rows) {
    const auto thread = read_thread(row.at("thread"), "thread");
    ASSERT_TRUE(thread) << row.at("thread");
    const double unit = row.at("unit") == "mm2" ? 1e-6 : 0.0254 * 0.0254;
    EXPECT_NEAR(stress_area(*thread).si() / unit, number(row, "area"), number(row, "tolerance")) << row.at("thread");
  }
}

// Source: ISO 898-1 clause 9: As = pi/4 ((d2 + d3)/2)^2 = pi/4 (d - 0.9382 P)^2, M30: 0.7854 (30 - 0.9382 * 3.5)^2.
// Tolerance: 5e-5 relative, four digits in the standard's constant.
TEST(StressArea, MeetsTheShortFormula) {
  EXPECT_NEAR(area_of("M30"), 0.785398 * std::pow(30 - 0.9382 * 3.5, 2), 560.59 * 5e-5);
}

// A root circle in place of the mean circle must fall outside the printed tolerance: the table bites.
// Source: ISO 724 minor diameter d1 = d - 1.082532 P.
// Tolerance: none, the two must differ by more than the table's own.
TEST(StressArea, AWrongCircleWouldBeSeen) {
  for (const auto& row : test_table("fasteners_areas.csv")) {
    const auto thread = read_thread(row.at("thread"), "thread").value();
    const double unit = row.at("unit") == "mm2" ? 1e-3 : 0.0254;
    const double wrong = std::numbers::pi / 4 * std::pow((thread.major.si() - 1.082532 * thread.pitch.si()) / unit, 2);
    EXPECT_GT(std::abs(wrong - number(row, "area")), number(row, "tolerance")) << row.at("thread");
  }
}

TEST(ReadThread, ReadsTheFormsOfTheTrade) {
  for (const auto* text :
       {"1 1/2-6 UNC", "1-1/2-6 UNC", "1.5-6", "1.500-6 unc", " 1 1/2 - 6 UNC-2A ", "1 1/2-6 UNC-2A LH", "3/2-6"}) {
    const auto thread = read_thread(text, "thread");
    ASSERT_TRUE(thread) << text;
    EXPECT_EQ(thread->major, inches(1.5)) << text;
    EXPECT_EQ(thread->threads_per_inch, 6) << text;
    EXPECT_EQ(thread->system, ThreadSystem::inch) << text;
    EXPECT_EQ(thread->left_hand, std::string_view{text}.ends_with("LH")) << text;
  }
  for (const auto* text : {"M36x3", "m36X3", "M36 x 3", "M36×3", "M36x3.0-6g", "M36x3-5g6g", "M36x3-LH"}) {
    const auto thread = read_thread(text, "thread");
    ASSERT_TRUE(thread) << text;
    EXPECT_EQ(thread->major, millimetres(36)) << text;
    EXPECT_EQ(thread->pitch, millimetres(3)) << text;
  }
  EXPECT_EQ(read_thread("M30", "thread")->pitch, millimetres(3.5));
  EXPECT_EQ(read_thread("2-4.5 UNC", "thread")->threads_per_inch, 4.5);
}

TEST(ReadThread, RefusesAndNamesTheField) {
  const std::pair<const char*, Code> cases[] = {
      {"", Code{"fasteners.thread_unreadable"}},       {"big", Code{"fasteners.thread_unreadable"}},
      {"M36x", Code{"fasteners.thread_unreadable"}},   {"M36x3 and more", Code{"fasteners.thread_unreadable"}},
      {"1/0-6", Code{"fasteners.thread_unreadable"}},  {"1 3/2-6", Code{"fasteners.thread_unreadable"}},
      {"1-0", Code{"fasteners.thread_unreadable"}},    {"1 1/2", Code{"fasteners.thread_without_pitch"}},
      {"M37", Code{"fasteners.thread_without_pitch"}}, {"1 1/2-8 UNC", Code{"fasteners.thread_series"}},
      {"1-14 UNF", Code{"fasteners.thread_series"}},   {"7-4 UN", Code{"fasteners.thread_size"}},
      {"M2x0.4", Code{"fasteners.thread_size"}},       {"1/4-4", Code{"fasteners.thread_pitch"}},
      {"M36x0", Code{"fasteners.thread_pitch"}},       {"M36x\xc3", Code{"fasteners.thread_unreadable"}},
  };
  for (const auto& [text, code] : cases) {
    const auto thread = read_thread(text, "nut[2].thread");
    ASSERT_FALSE(thread) << text;
    EXPECT_EQ(thread.error().code.id(), code.id()) << text;
    EXPECT_EQ(thread.error().field, "nut[2].thread");
  }
  EXPECT_FALSE(read_thread(std::string(100000, '1'), "thread"));
}

// Source: SAE J429 table 1, ISO 898-1 table 3: tests/data/fasteners_strengths.csv.
// Tolerance: 1e-12 relative, whole numbers times one unit.
TEST(Strength, MeetsTheStandardsTables) {
  const auto rows = test_table("fasteners_strengths.csv");
  ASSERT_EQ(rows.size(), 17U);
  for (const auto& row : rows) {
    const auto strength = strength_of(row.at("class"), read_thread(row.at("thread"), "thread").value(), "class");
    ASSERT_TRUE(strength) << row.at("class") << ' ' << row.at("thread");
    const double unit = row.at("unit") == "MPa" ? 1e6 : 6.894757293168361e6;
    EXPECT_NEAR(strength->proof.si() / unit, number(row, "proof"), 1e-9) << row.at("class") << ' ' << row.at("thread");
    EXPECT_NEAR(strength->yield.si() / unit, number(row, "yield"), 1e-9) << row.at("class") << ' ' << row.at("thread");
    EXPECT_NEAR(strength->tensile.si() / unit, number(row, "tensile"), 1e-9)
        << row.at("class") << ' ' << row.at("thread");
  }
}

// Source: scope of ISO 898-1 (to M39) and SAE J429 (to 1 1/2 in).
TEST(Strength, RefusesBeyondTheStandardsScope) {
  const auto at = [](const char* c, const char* t) {
    return strength_of(c, read_thread(t, "thread").value(), "class");
  };
  EXPECT_EQ(at("8.8", "M42").error().code.id(), "fasteners.class_size");
  EXPECT_EQ(at("10.9", "M48x3").error().code.id(), "fasteners.class_size");
  EXPECT_EQ(at("grade 8", "1 3/4-5 UNC").error().code.id(), "fasteners.class_size");
  EXPECT_EQ(at("grade 8", "M30").error().code.id(), "fasteners.class_other_thread");
  EXPECT_EQ(at("8.8", "1-8 UNC").error().code.id(), "fasteners.class_other_thread");
  EXPECT_EQ(at("grade 9", "1-8 UNC").error().code.id(), "fasteners.class_unknown");
  EXPECT_EQ(at("", "1-8 UNC").error().field, "class");
  EXPECT_TRUE(at("SAE J429 Grade 5", "1-8 UNC"));
  EXPECT_TRUE(at("Property class 12.9", "M30"));
}

}  // namespace
}  // namespace flatwise::fasteners
