// format_test.cc: how quantities are shown, and that what is shown reads back.
#include "core/units/format.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>
#include <cstring>
#include <limits>

#include "core/units/parse.h"
#include "core/units/unit_table.h"

namespace flatwise {
namespace {

std::string metric(AnyQuantity q) { return format_quantity(q); }
std::string inch(AnyQuantity q) {
  return format_quantity(q, {.system = UnitSystem::inch, .decimals = {}, .unit = {}, .currency = {}});
}

TEST(FormatQuantity, LengthsBySize) {
  EXPECT_EQ(metric(any(millimetres(38.1))), "38.1\u00A0mm");
  EXPECT_EQ(inch(any(millimetres(38.1))), "1.5\u00A0in");
  EXPECT_EQ(metric(any(millimetres(99.98449))), "99.984\u00A0mm");
  EXPECT_EQ(inch(any(inches(1.49964))), "1.4996\u00A0in");
  EXPECT_EQ(metric(any(micrometres(-12.34))), "−12.3\u00A0µm");
  EXPECT_EQ(inch(any(thou(0.5))), "0.5\u00A0thou");
  EXPECT_EQ(metric(any(Length{})), "0\u00A0mm");
  EXPECT_EQ(metric(any(micrometres(-0.01))), "0\u00A0µm");  // No minus before nought.
}

TEST(FormatQuantity, TheOtherKinds) {
  EXPECT_EQ(metric(any(foot_pounds(350))), "474.5\u00A0N·m");
  EXPECT_EQ(inch(any(foot_pounds(350))), "350\u00A0ft·lb");
  EXPECT_EQ(inch(any(newton_metres(10))), "88.51\u00A0in·lb");
  EXPECT_EQ(metric(any(kilonewtons(25.123456))), "25.12\u00A0kN");
  EXPECT_EQ(metric(any(degrees(5))), "5°");
  EXPECT_EQ(metric(any(degrees(1))), "1°");
  EXPECT_EQ(metric(any(arc_minutes(10))), "10′");
  EXPECT_EQ(metric(any(minutes(11))), "11\u00A0min");
  EXPECT_EQ(metric(any(minutes(599))), "599\u00A0min");
  EXPECT_EQ(metric(any(minutes(630))), "10.5\u00A0h");
  EXPECT_EQ(metric(any(celsius(20))), "20\u00A0°C");
  EXPECT_EQ(inch(any(celsius(-40))), "−40\u00A0°F");
  EXPECT_EQ(inch(any(kelvins(20))), "36\u00A0°F");
  EXPECT_EQ(metric(any(turns_per_minute(480))), "480\u00A0r/min");
  EXPECT_EQ(metric(any(gigapascals(206))), "206\u00A0GPa");
  EXPECT_EQ(metric(any(Speed::from_si(2.34e-3))), "2.34\u00A0mm/s");  // A vibration; the way over the ground is m/s.
  EXPECT_EQ(inch(any(Speed::from_si(0.09 * 0.0254))), "0.09\u00A0in/s");
  EXPECT_EQ(metric(any(Speed::from_si(1.667))), "1.667\u00A0m/s");
  EXPECT_EQ(metric(any(Speed{})), "0\u00A0m/s");
  EXPECT_EQ(metric(any_expansion(11.5e-6)), "11.5\u00A0µm/(m·K)");
  EXPECT_EQ(metric(any_ratio(0.123456)), "0.1235");
  EXPECT_EQ(metric(any_count(-7)), "−7");
  EXPECT_EQ(metric(any_count(1'234'567)), "1234567");
  EXPECT_EQ(format_quantity(any_money(18.4), {.system = {}, .decimals = {}, .unit = {}, .currency = "EUR"}),
            "18.40\u00A0EUR");
  EXPECT_EQ(
      format_quantity({60.0 / 3600, Kind::money_rate}, {.system = {}, .decimals = {}, .unit = {}, .currency = "EUR"}),
      "60.00\u00A0EUR/h");
}

TEST(FormatQuantity, WithADecimalsOrUnitOfChoice) {
  EXPECT_EQ(format_quantity(any(millimetres(38.1)), {.system = {}, .decimals = 3, .unit = {}, .currency = {}}),
            "38.100\u00A0mm");
  EXPECT_EQ(format_quantity(any(millimetres(38.1)), {.system = {}, .decimals = {}, .unit = "in", .currency = {}}),
            "1.5\u00A0in");
  EXPECT_EQ(format_quantity(any(newton_metres(1.5)), {.system = {}, .decimals = 1, .unit = "ft-lb", .currency = {}}),
            "1.1\u00A0ft·lb");
  EXPECT_EQ(format_quantity(any_ratio(0.125), {.system = {}, .decimals = {}, .unit = "%", .currency = {}}),
            "12.5\u00A0%");
  EXPECT_THROW((void)format_quantity(any_ratio(1), {.system = {}, .decimals = {}, .unit = "mm", .currency = {}}),
               std::logic_error);
}

// An hour meter of five digits and a tenth ends at 99999.9 h; what lies past it was worked out, and no life is known to an hour.
TEST(FormatQuantity, RoundsHoursThatNoMeterReads) {
  EXPECT_EQ(metric({99'999.9 * 3600, Kind::time}), "99999.9\u00A0h");
  EXPECT_EQ(metric({184'719.9 * 3600, Kind::time}), "184700\u00A0h");
  EXPECT_EQ(metric({57'425'667.5 * 3600, Kind::time}), "57430000\u00A0h");
  EXPECT_EQ(
      format_quantity({184'719.9 * 3600, Kind::time}, {.system = {}, .decimals = {}, .unit = "min", .currency = {}}),
      "11083194\u00A0min");
}

struct Digits {
  AnyQuantity value;
  const char *metric, *inch;
};

// Source: by hand from 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N (exact) and what follows from both.
// Tolerance: exact text.
TEST(FormatQuantity, NoMoreDigitsThanItsKindAndSizeAreWorth) {
  const Digits cases[] = {
      {any(gigapascals(207)), "207\u00A0GPa", "30020\u00A0ksi"},
      {any(gigapascals(206.84)), "206.8\u00A0GPa", "30000\u00A0ksi"},
      {any(megapascals(996.2)), "996.2\u00A0MPa", "144.5\u00A0ksi"},
      {any(megapascals(70)), "70\u00A0MPa", "10153\u00A0psi"},  // A pump's gauge; stresses stand above.
      {any(millimetres(1674.34006)), "1674.34\u00A0mm", "65.919\u00A0in"},
      {any(millimetres(50'000)), "50000\u00A0mm", "1968.504\u00A0in"},
      {any(millimetres(314.9967)), "314.997\u00A0mm", "12.4014\u00A0in"},  // A bore is decided upon in 0.0001 in.
      {any(newtons(161'413)), "161.4\u00A0kN", "36290\u00A0lbf"},
      {{130'113e3, Kind::stiffness}, "130100\u00A0N/mm", "743000\u00A0lbf/in"},
      {{4'903.9e3, Kind::stiffness}, "4904\u00A0N/mm", "28002\u00A0lbf/in"},
      {{257'123.4e-12, Kind::second_moment}, "257100\u00A0mm⁴", "0.6177\u00A0in⁴"},
      {{13'495.6e-9, Kind::section_modulus}, "13500\u00A0mm³", "0.8236\u00A0in³"}};
  for (const Digits& one : cases) {
    EXPECT_EQ(metric(one.value), one.metric);
    EXPECT_EQ(inch(one.value), one.inch);
  }
}

TEST(FormatQuantity, VeryGreatVerySmallAndWithoutEnd) {
  EXPECT_EQ(metric(any_ratio(1.234567e18)), "1.235e+18");
  EXPECT_EQ(metric(any_ratio(1.234567e-9)), "1.235e−09");
  EXPECT_EQ(metric({std::numeric_limits<double>::infinity(), Kind::time}), "∞\u00A0h");
  EXPECT_THROW((void)metric(any_ratio(std::nan(""))), std::logic_error);
}

// Source: JCGM 100:2008 (GUM), 7.2.4 (mass standard, 100.021 47 g with U = 0.79 mg) and H.1 (gauge block, 50.000 838 mm
// with U = 93 nm).
// Tolerance: the digits printed there.
TEST(FormatWithUncertainty, ShowsTheExamplesOfTheGuide) {
  EXPECT_EQ(format_with_uncertainty(any(kilograms(0.10002147)), 0.79e-6), "100.02147\u00A0±\u00A00.00079\u00A0g");
  EXPECT_EQ(format_with_uncertainty(any(millimetres(50.000838)), 93e-9), "50.000838\u00A0±\u00A00.000093\u00A0mm");
}

TEST(FormatWithUncertainty, RoundsUpToTwoFiguresWithTheSameDecimals) {
  EXPECT_EQ(format_with_uncertainty(any(millimetres(99.984)), 4e-6), "99.9840\u00A0±\u00A00.0040\u00A0mm");
  EXPECT_EQ(format_with_uncertainty(any(millimetres(99.984)), 4.01e-6), "99.9840\u00A0±\u00A00.0041\u00A0mm");
  EXPECT_EQ(format_with_uncertainty(any(millimetres(99.984)), 9.96e-6), "99.984\u00A0±\u00A00.010\u00A0mm");
  EXPECT_EQ(format_with_uncertainty(any(newtons(4321)), 1234), "4300\u00A0±\u00A01300\u00A0N");
  EXPECT_EQ(format_with_uncertainty(any(degrees(5)), degrees(0.1).radians()), "5.00°\u00A0±\u00A00.10°");
  EXPECT_EQ(format_with_uncertainty(any(celsius(68)), 1.0,
                                    {.system = UnitSystem::inch, .decimals = {}, .unit = {}, .currency = {}}),
            "154.4\u00A0±\u00A01.8\u00A0°F");
  EXPECT_EQ(format_with_uncertainty(any(millimetres(5)), 0.0), "5.000\u00A0±\u00A00.000\u00A0mm");
  EXPECT_THROW((void)format_with_uncertainty(any(millimetres(5)), -1.0), std::logic_error);
}

TEST(FormatExact, ReadsBackToTheSameBits) {
  EXPECT_EQ(format_exact(0.1), "0.1");
  EXPECT_EQ(format_exact(474.53628191599012), "474.5362819159901");
  EXPECT_TRUE(rc::check([](std::uint64_t bits) {
    double v = 0;
    std::memcpy(&v, &bits, sizeof v);
    RC_PRE(std::isfinite(v));
    RC_ASSERT(std::strtod(format_exact(v).c_str(), nullptr) == v);
  }));
  EXPECT_THROW((void)format_exact(std::nan("")), std::logic_error);
}

// Source: by hand from 1 in = 25 400 000 nm = 127 * 200 000 nm.
// Tolerance: exact text.
TEST(FormatExactLength, IsExactInBothSystemsWhereTheDecimalEnds) {
  EXPECT_EQ(format_exact_length(38'100'000, UnitSystem::metric), "38.1\u00A0mm");
  EXPECT_EQ(format_exact_length(38'100'000, UnitSystem::inch), "1.5\u00A0in");
  EXPECT_EQ(format_exact_length(38'089'840, UnitSystem::inch), "1.4996\u00A0in");
  EXPECT_EQ(format_exact_length(127, UnitSystem::inch), "0.000005\u00A0in");
  EXPECT_EQ(format_exact_length(-1, UnitSystem::metric), "−0.000001\u00A0mm");
  EXPECT_EQ(format_exact_length(1, UnitSystem::inch), "0.00000004\u00A0in");  // 1/25.4e6 does not end.
  EXPECT_EQ(format_exact_length(0, UnitSystem::inch), "0\u00A0in");
  EXPECT_EQ(format_exact_length(std::numeric_limits<std::int64_t>::min(), UnitSystem::metric),
            "−9223372036854.775808\u00A0mm");
}

TEST(FormatExactLength, ReadsBackToTheSameNanometre) {
  EXPECT_TRUE(rc::check([] {
    const std::int64_t nm = *rc::gen::inRange<std::int64_t>(-100'000'000'000, 100'000'000'000);
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::inch})
      RC_ASSERT(parse_quantity(format_exact_length(nm, system), Kind::length, "x")->nm == nm);
  }));
}

/// Half of the last digit of a shown number, in SI, and a hair for the arithmetic.
double half_of_last_digit(const std::string& text, AnyQuantity q) {
  double unit_si = q.kind == Kind::money_rate ? 1.0 / 3600 : 1.0;
  std::size_t longest = 0;
  for (const Unit& unit : all_units()) {
    if (unit.kind != q.kind || !text.ends_with(unit.shown) || unit.shown.size() < longest) continue;
    unit_si = unit.factor_as_double();
    longest = unit.shown.size();
  }
  const double hair = 1e-13 * std::fabs(q.si);
  if (text.find('e') != std::string::npos && q.kind != Kind::money) return 0.501e-3 * std::fabs(q.si) + hair;
  const std::size_t point = text.find('.');
  if (point == std::string::npos) {
    // Forces, stresses, stiffness and sections keep four figures before the point.
    const bool rounds = q.kind == Kind::force || q.kind == Kind::pressure || q.kind == Kind::stiffness ||
                        q.kind == Kind::section_modulus || q.kind == Kind::second_moment;
    const auto digits = static_cast<double>(
        std::min(text.find_first_not_of("0123456789", text.find_first_of("0123456789")), text.size()) -
        text.find_first_of("0123456789"));
    return 0.5 * (rounds ? std::pow(10.0, std::max(0.0, digits - 4)) : 1.0) * unit_si + hair;
  }
  const std::size_t end = std::min(text.size(), text.find_first_not_of("0123456789", point + 1));
  return 0.5 * std::pow(10.0, -static_cast<double>(end - point - 1)) * unit_si + hair;
}

AnyQuantity any_sized(Kind kind) {
  const double mantissa = *rc::gen::inRange(-1'000'000, 1'000'000) * 1e-6;
  double si = mantissa * std::pow(10.0, *rc::gen::inRange(-7, 8));
  if (kind == Kind::temperature) si = std::fabs(si) + 1.0;  // Nought kelvin would be shown a hair below nought.
  if (kind == Kind::count) si = std::round(si);
  return {si, kind};
}

/// A number that drops closing noughts may show fewer decimals than it was rounded to; the bound only grows by it.
void reads_back(AnyQuantity q, UnitSystem system) {
  const std::string shown = format_quantity(q, {.system = system, .decimals = {}, .unit = {}, .currency = "EUR"});
  const auto again = parse_quantity(shown, q.kind, "x");
  if (!again) RC_FAIL(shown + ": " + std::string{again.error().code.id()});
  RC_ASSERT(std::fabs(again->value.si - q.si) <= half_of_last_digit(shown, q));
}

// Source: the inverse of parse_quantity(), itself checked against an independent library (parse_test.cc).
// Tolerance: half of the last digit shown; both systems therefore agree within the sum of both halves.
TEST(FormatQuantity, ReadsBackInBothSystems) {
  EXPECT_TRUE(rc::check([] {
    const AnyQuantity q = any_sized(static_cast<Kind>(*rc::gen::inRange(0, kKindCount)));
    reads_back(q, UnitSystem::metric);
    reads_back(q, UnitSystem::inch);
  }));
}

// The property above must bite: a value one digit off must not pass for the one that was shown.
TEST(FormatQuantity, AWrongLastDigitIsSeen) {
  const AnyQuantity q = any(millimetres(99.9844));
  const std::string shown = format_quantity(q);
  const auto wrong = parse_quantity("99.985 mm", Kind::length, "x");
  EXPECT_GT(std::fabs(wrong->value.si - q.si), half_of_last_digit(shown, q));
}

}  // namespace
}  // namespace flatwise
