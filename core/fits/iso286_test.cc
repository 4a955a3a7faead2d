#include "core/fits/iso286.h"

#include <gtest/gtest.h>
#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "core/fits/iso286_tables.h"
#include "tests/support/test_table.h"

namespace flatwise::fits {
namespace {

constexpr double kExactUm = 1e-6;  // A picometre: the numbers are whole or half micrometres.

Result<Deviations> deviations(double nominal_mm, const std::string& code) {
  const auto fit = parse_fit_class(code);
  if (!fit) return tl::unexpected(fit.error());
  return limit_deviations(millimetres(nominal_mm), *fit);
}
double um(Length v) { return v.si() * 1e6; }

// Source: ISO 286-1 Table 1, rows of tests/data/fits_it_grades.csv.
// Tolerance: exact as published; a picometre for the double.
TEST(StandardTolerance, IsThePublishedTable) {
  for (const auto& row : test_table("fits_it_grades.csv")) {
    const auto it = standard_tolerance(millimetres(number(row, "nominal_mm")), std::stoi(row.at("grade")));
    ASSERT_TRUE(it) << row.at("id");
    EXPECT_NEAR(um(*it), number(row, "tolerance_um"), kExactUm) << row.at("id");
  }
}

// Source: ISO 286-2 tables, its corrigendum of 2006, ISO 286-1 worked examples: tests/data/fits_iso286.csv, each row
// with its own source and whether it was read or remembered.
// Tolerance: exact as published; a picometre for the double.
TEST(LimitDeviations, AreThePublishedTables) {
  for (const auto& row : test_table("fits_iso286.csv")) {
    const auto found = deviations(number(row, "nominal_mm"), row.at("class"));
    ASSERT_TRUE(found) << row.at("id");
    EXPECT_NEAR(um(found->upper), number(row, "upper_um"), kExactUm) << row.at("id");
    EXPECT_NEAR(um(found->lower), number(row, "lower_um"), kExactUm) << row.at("id");
  }
}

// Source: ISO 286-1 tables of fundamental deviations, all letters and steps: tests/data/fits_fundamental.csv.
// Tolerance: exact as published.
TEST(FundamentalDeviations, AreThePublishedTable) {
  for (const auto& row : test_table("fits_fundamental.csv")) {
    const auto fit = parse_fit_class(row.at("letter") + "6").value();
    const auto found = limit_deviations(millimetres(number(row, "to_mm")), fit);
    ASSERT_EQ(found.has_value(), row.at("um") != "none") << row.at("letter") << row.at("to_mm");
    if (!found) continue;
    const bool away = number(row, "um") < 0;
    EXPECT_NEAR(um(away ? found->upper : found->lower), number(row, "um"), kExactUm)
        << row.at("letter") << row.at("to_mm");
  }
}

// The rule without its delta is a plausible mistake. It must disagree with many published rows, or the
// table test is blind.
TEST(LimitDeviations, TableTestSeesAMissingDelta) {
  int disagree = 0;
  for (const auto& row : test_table("fits_iso286.csv")) {
    const auto fit = parse_fit_class(row.at("class"));
    ASSERT_TRUE(fit);
    const auto& letter = kLetters[static_cast<std::size_t>(fit->letter)];
    if (!fit->hole || letter.side != Side::into) continue;
    const auto shaft = limit_deviations(millimetres(number(row, "nominal_mm")),
                                        {.nominal = {}, .hole = false, .letter = fit->letter, .grade = fit->grade});
    ASSERT_TRUE(shaft);
    if (std::abs(-um(shaft->lower) - number(row, "upper_um")) > 0.4) ++disagree;
  }
  EXPECT_GT(disagree, 50);
}

double between(double over, double to) { return std::sqrt(over * to); }

// Source: ISO 286-1 annex: i = 0.45 D^(1/3) + 0.001 D, D the geometric mean of the step; 7, 10, 16, 25, 40, 64, 100 i.
// Tolerance: 6 %, and 10 % up to 6 mm: the standard rounds by rules of its own (worst: 7.3 to 8, IT6 to 6 mm).
TEST(StandardTolerance, LiesNearTheFormulaOfTheStandard) {
  constexpr double kUnits[] = {7, 10, 16, 25, 40, 64, 100};
  for (std::size_t step = 1; step < kStandardStepEnds.size(); ++step) {
    const double d = between(kStandardStepEnds[step - 1], kStandardStepEnds[step]);
    const double i = 0.45 * std::cbrt(d) + 0.001 * d;
    for (int grade = 5; grade <= 11; ++grade) {
      const auto it = standard_tolerance(millimetres(kStandardStepEnds[step]), grade);
      ASSERT_TRUE(it);
      const double share = step == 1 ? 0.10 : 0.06;
      EXPECT_NEAR(um(*it), kUnits[grade - 5] * i, share * kUnits[grade - 5] * i)
          << grade << " " << kStandardStepEnds[step];
    }
  }
}

// Geometric mean of the whole standard step that a size lies in.
double standard_mean(int at_mm) {
  std::size_t step = 1;
  while (kStandardStepEnds[step] < at_mm) ++step;
  return between(kStandardStepEnds[step - 1], kStandardStepEnds[step]);
}

// The formulas of the standard's annex for a letter, D in mm, in um.
double formula(std::string_view letter, double d, double it7, double it8, double it9, double it10) {
  if (letter == "a") return d <= 120 ? 265 + 1.3 * d : 3.5 * d;
  if (letter == "b") return d <= 160 ? 140 + 0.85 * d : 1.8 * d;
  if (letter == "c" && d > 40) return 95 + 0.8 * d;
  if (letter == "d") return 16 * std::pow(d, 0.44);
  if (letter == "e") return 11 * std::pow(d, 0.41);
  if (letter == "f") return 5.5 * std::pow(d, 0.41);
  if (letter == "g") return 2.5 * std::pow(d, 0.34);
  if (letter == "k") return 0.6 * std::cbrt(d);
  if (letter == "n") return 5 * std::pow(d, 0.34);
  if (letter == "t") return it7 + 0.63 * d;
  if (letter == "u") return it7 + d;
  if (letter == "v") return it7 + 1.25 * d;
  if (letter == "x") return it7 + 1.6 * d;
  if (letter == "y") return it7 + 2 * d;
  if (letter == "z") return it7 + 2.5 * d;
  if (letter == "za") return it8 + 3.15 * d;
  if (letter == "zb") return it9 + 4 * d;
  if (letter == "zc") return it10 + 5 * d;
  return -1;  // c up to 40 mm, m, p, r, s: by other rules; h: nought.
}

constexpr std::size_t kOver18Mm = 5;  // Below, the standard takes values from experience.

// Source: ISO 286-1 annex, formulas of the fundamental deviations, from memory; a second way to every tabulated value.
// Tolerance: 1.5 um or 4 %, the coarsest rounding of the standard (to 50 um above 1000 um, to 5 and 10 below).
TEST(FundamentalDeviations, LieNearTheFormulasOfTheStandard) {
  int compared = 0;
  for (const auto& letter : kLetters) {
    for (std::size_t step = kOver18Mm; step < kDeviationStepEnds.size(); ++step) {
      const bool whole_step = std::string_view{"defgkn"}.find(letter.shaft) != std::string_view::npos;
      const double d = whole_step ? standard_mean(kDeviationStepEnds[step])
                                  : between(kDeviationStepEnds[step - 1], kDeviationStepEnds[step]);
      const auto it = [&](int grade) {
        return um(standard_tolerance(millimetres(kDeviationStepEnds[step]), grade).value());
      };
      const double expected = formula(letter.shaft, d, it(7), it(8), it(9), it(10));
      if (expected < 0 || letter.deviation[step] == kNoDeviation) continue;
      // Two published values are not what the formula gives (267 and 38); every copy read has them so.
      if ((letter.shaft == "b" && letter.deviation[step] == 280) ||
          (letter.shaft == "t" && letter.deviation[step] == 41))
        continue;
      EXPECT_NEAR(letter.deviation[step], expected, std::max(1.5, 0.04 * expected))
          << letter.shaft << " to " << kDeviationStepEnds[step];
      ++compared;
    }
  }
  EXPECT_GT(compared, 300);
}

// Source: ISO 286-1, delta columns of the table of holes K to ZC (grades 5 to 8), from memory.
// Tolerance: exact.
TEST(LimitDeviations, DeltaIsTheTabulatedDelta) {
  constexpr int kDelta[12][4] = {{1, 3, 4, 6},   {2, 3, 6, 7},   {3, 3, 7, 9},    {3, 4, 8, 12},
                                 {4, 5, 9, 14},  {5, 6, 11, 16}, {5, 7, 13, 19},  {6, 7, 15, 23},
                                 {6, 9, 17, 26}, {7, 9, 20, 29}, {7, 11, 21, 32}, {7, 13, 23, 34}};
  for (std::size_t step = 1; step < kStandardStepEnds.size(); ++step)
    for (int grade = 5; grade <= 8; ++grade) {
      const Length at = millimetres(kStandardStepEnds[step]);
      EXPECT_NEAR(um(*standard_tolerance(at, grade) - *standard_tolerance(at, grade - 1)), kDelta[step - 1][grade - 5],
                  kExactUm);
    }
}

// Source: ISO 286-2, hole N7 over 80 to 120 mm: -10/-45 um.
// Tolerance: none; limits are whole nanometres, equal to typed readings bit for bit.
TEST(LimitsOfFit, ReadsACodeWithItsSizeAndIsExactInNanometres) {
  const auto limits = limits_of_fit("90 N7");
  ASSERT_TRUE(limits);
  EXPECT_EQ(limits->least, nanometres(89'955'000));
  EXPECT_EQ(limits->greatest, nanometres(89'990'000));
  EXPECT_EQ(limits_of_fit(millimetres(90), "90 N7")->least, limits->least);
  EXPECT_EQ(limits_of_fit(millimetres(90), " N7 ")->least, limits->least);
  EXPECT_EQ(limits_of_fit("90N7")->least, limits->least);
  EXPECT_EQ(limits_of_fit(inches(3.5), "H7")->greatest, nanometres(88'935'000));
}

TEST(LimitsOfFit, StepsEndWithTheirUpperSize) {
  EXPECT_EQ(limits_of_fit("50 H7")->greatest, nanometres(50'025'000));
  EXPECT_EQ(limits_of_fit("50.001 H7")->greatest, nanometres(50'031'000));
  EXPECT_EQ(limits_of_fit("3 H7")->greatest, nanometres(3'010'000));
  EXPECT_EQ(limits_of_fit("500 zc11")->greatest, nanometres(503'000'000));
}

std::string problem_of(const Result<Limits>& result) { return result ? "" : std::string{result.error().code.id()}; }

TEST(LimitsOfFit, RefusesWhatTheStandardDoesNotHave) {
  for (const char* code :
       {"90 J5", "90 J9", "90 j8", "90 K9", "24 T7", "24 t6", "14 V7", "18 y6", "12 CD8", "12 ef7", "11 FG6"})
    EXPECT_EQ(problem_of(limits_of_fit(code)), "fits.class_not_at_size") << code;
  for (const char* code :
       {"24.001 T7", "14.5 V7", "18.5 y6", "10 CD8", "10 ef7", "3 K9", "3 j8", "90 J8", "90 j7", "90 N11"})
    EXPECT_TRUE(limits_of_fit(code)) << code;
}

TEST(LimitsOfFit, RefusesWhatItCannotReadAndSaysWhy) {
  for (const char* code : {"", "N", "7", "90", "Js7", "jS7", "N7x", "N-7", "90 N 7", "1.2.3 N7", "1000 N7", ". N7",
                           "5. N7", "N777", "n7 90", "90,5 N7",
                           "\xC3\x98"
                           "90 N7"})
    EXPECT_EQ(problem_of(limits_of_fit(code)), "fits.code_unread") << code;
  for (const char* code : {"90 I7", "90 L6", "90 w6", "90 ZD7", "90 AA7"})
    EXPECT_EQ(problem_of(limits_of_fit(code)), "fits.letter_unknown") << code;
  for (const char* code : {"90 N4", "90 H12", "90 H0"})
    EXPECT_EQ(problem_of(limits_of_fit(code)), "fits.grade_out_of_range");
  for (const char* code : {"2.999 H7", "500.001 H7", "0 H7"})
    EXPECT_EQ(problem_of(limits_of_fit(code)), "fits.size_out_of_range") << code;
  EXPECT_EQ(problem_of(limits_of_fit("N7")), "fits.nominal_missing");
  EXPECT_EQ(problem_of(limits_of_fit(millimetres(100), "90 N7")), "fits.two_nominals");
  for (double bad : {std::nan(""), -90.0, 0.0, 1e300, std::numeric_limits<double>::infinity()})
    EXPECT_EQ(problem_of(limits_of_fit(metres(bad), "N7")), "fits.size_out_of_range") << bad;
}

}  // namespace
}  // namespace flatwise::fits
