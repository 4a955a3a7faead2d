// parse_test.cc: typed text to exact values: every unit against an independent library, every way of writing, all
// properties that hold for any number.
#include "core/units/parse.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <cstdlib>
#include <set>
#include <string>

#include "core/units/unit_table.h"
#include "tests/support/test_table.h"

namespace flatwise {
namespace {

Kind kind_of(std::string_view name) {
  for (int i = 0; i < kKindCount; ++i)
    if (kind_name(static_cast<Kind>(i)) == name) return static_cast<Kind>(i);
  ADD_FAILURE() << "no kind " << name;
  return Kind::count;
}

double si(std::string_view text, Kind kind) {
  const auto entered = parse_quantity(text, kind, "x");
  EXPECT_TRUE(entered) << text << ": " << (entered ? "" : entered.error().code.id());
  return entered ? entered->value.si : -1e99;
}
std::int64_t nm(std::string_view text) {
  const auto entered = parse_quantity(text, Kind::length, "x");
  EXPECT_TRUE(entered) << text << ": " << (entered ? "" : entered.error().code.id());
  return entered ? entered->nm.value() : -999'999'999;
}

// Source: tests/data/units_reference.csv: pint (version in its first line) in decimal arithmetic of 45 digits.
// Tolerance: the nearest double, exactly.
TEST(ParseQuantity, EveryUnitAgreesWithAnIndependentLibrary) {
  const auto rows = test_table("units_reference.csv");
  ASSERT_GT(rows.size(), 500U);
  std::set<std::pair<Kind, std::string>> seen;
  for (const TestRow& row : rows) {
    const Kind kind = kind_of(row.at("kind"));
    EXPECT_EQ(si(row.at("typed"), kind), std::strtod(row.at("si").c_str(), nullptr)) << row.at("typed");
    seen.emplace(kind, row.at("unit"));
  }
  for (const Unit& unit : all_units())
    EXPECT_TRUE(seen.contains({unit.kind, std::string{unit.shown}})) << unit.shown << " has no reference value";
}

// The rows above must bite: reading the number and then multiplying, as one would, rounds twice and must fail on some.
// Source: the same rows.
// Tolerance: exact, as above.
TEST(ParseQuantity, ReferenceRowsCatchAReaderThatRoundsTwice) {
  int wrong = 0;
  for (const TestRow& row : test_table("units_reference.csv"))
    for (const Unit& unit : all_units())
      if (kind_name(unit.kind) == row.at("kind") && unit.shown == row.at("unit") && unit.zero_cents == 0)
        wrong += std::strtod(row.at("typed").c_str(), nullptr) * unit.factor_as_double() !=
                         std::strtod(row.at("si").c_str(), nullptr)
                     ? 1
                     : 0;
  EXPECT_GT(wrong, 0);
}

// Source: exact definitions 0.3048 m, 0.45359237 kg, 9.80665 m/s2 (NIST SP 811, appendix B); its rounded values 4.448222,
// 1.355818, 6894.757 agree.
// Tolerance: 1e-15 relative as listed; the values are the nearest doubles.
TEST(ParseQuantity, ForceTorqueAndPressureFactorsAreExact) {
  EXPECT_DOUBLE_EQ(si("1 in·lb", Kind::torque), 0.1129848290276167);
  EXPECT_DOUBLE_EQ(si("1 lbf", Kind::force), 4.4482216152605);
  EXPECT_DOUBLE_EQ(si("1 psi", Kind::pressure), 6894.757293168361);
  EXPECT_DOUBLE_EQ(si("1 US tonf", Kind::force), 8896.443230521);
  EXPECT_DOUBLE_EQ(si("1 kgf·m", Kind::torque), 9.80665);
  EXPECT_DOUBLE_EQ(si("1 ft·lb", Kind::torque), 1.3558179483314004);
}

// Source: by hand from 1 in = 25 400 000 nm.
// Tolerance: exact nanometres.
TEST(ParseQuantity, ReadsLengthsToTheNanometre) {
  EXPECT_EQ(nm("38.1 mm"), 38'100'000);
  for (const char* text :
       {"1 1/2 in", "1-1/2 in", "1½ in", "1 ½\"", "1.5\"", "1.500 in", "1.5 in.", "1½″", "1.5inch", "1.5 IN"})
    EXPECT_EQ(nm(text), 38'100'000) << text;
  EXPECT_EQ(nm("5/64\""), 1'984'375);
  EXPECT_EQ(nm("⅝ in"), 15'875'000);
  EXPECT_EQ(nm("1⁄8 in"), 3'175'000);
  for (const char* text : {"12 µm", "12 μm", "12 um", "12µm", "0.012 mm", "12e-3 mm", "12E3 nm", "\t12 µm "})
    EXPECT_EQ(nm(text), 12'000) << text;
  for (const char* text : {"0.5 thou", ".5 thou", "0.5 mil", "½ thou"}) EXPECT_EQ(nm(text), 12'700) << text;
  for (const char* text : {"−0.02 mm", "-0.02 mm", "-20 µm"}) EXPECT_EQ(nm(text), -20'000) << text;
  EXPECT_EQ(nm("+0.02 mm"), 20'000);
  for (const char* text : {"5 ft 5 1/2 in", "5′ 5½″", "5'5 1/2\"", "5'-5 1/2\"", "65.5 in"})
    EXPECT_EQ(nm(text), 1'663'700'000) << text;
  EXPECT_EQ(nm("-5 ft 6 in"), -1'676'400'000);
  EXPECT_EQ(nm("1.4996 in"), 38'089'840);
}

// Source: IEEE 754-2019, 4.3.1, halves to even, on nanometres.
// Tolerance: exact nanometres.
TEST(ParseQuantity, FinerThanANanometreGoesToTheEvenOne) {
  EXPECT_EQ(nm("0.5 nm"), 0);
  EXPECT_EQ(nm("1.5 nm"), 2);
  EXPECT_EQ(nm("2.5 nm"), 2);
  EXPECT_EQ(nm("-2.50001 nm"), -3);
  EXPECT_EQ(nm("1/3 mm"), 333'333);
}

TEST(ParseQuantity, OneUnitHasManySpellings) {
  const auto all_equal = [](Kind kind, std::initializer_list<const char*> texts) {
    for (const char* text : texts) EXPECT_EQ(si(text, kind), si(*texts.begin(), kind)) << text;
  };
  all_equal(Kind::torque, {"350 ft·lb", "350 ft-lb", "350 lbf·ft", "350 lbf ft", "350 lb-ft", "350 ft.lb", "350 ftlb",
                           "350 ft lb", "350ft⋅lb", "350 ft.-lb.", "350 ft\xC2\xA0lb"});
  all_equal(Kind::torque, {"90 in·lb", "90 in-lb", "90 inlb", "90 lbf·in"});
  all_equal(Kind::torque, {"10 N·m", "10 N m", "10 Nm", "10 N-m", "10\xC2\xA0N·m", "10\xE2\x80\xAFN·m"});
  all_equal(Kind::temperature, {"72 °F", "72°F", "72 degF", "72 F", "72 ºF", "72 ° F", "72 deg F"});
  all_equal(Kind::angle, {"5°", "5 deg", "5 degrees", "5 °", "300′", "300'", "300 arcmin"});
  all_equal(Kind::angle, {"2° 30′", "2°30'", "2.5°"});
  all_equal(Kind::angular_speed,
            {"480 /min", "480 rpm", "480 r/min", "480 1/min", "480 min⁻¹", "480 min-1", "480/min", "8 r/s"});
  all_equal(Kind::inertia, {"0.35 kg·m²", "0.35 kg m2", "0.35 kg·m2", "0.35 kg m²", "0.35 kg·m^2"});
  all_equal(Kind::expansion, {"11.5 µm/m/K", "11.5 µm/(m·K)", "11.5e-6 /K", "11.5e-6 1/K", "11.5 µm/m·K"});
  all_equal(Kind::time, {"90 min", "1 h 30 min", "1h 30min", "1.5 h", "1 1/2 h"});
  all_equal(Kind::mass, {"5 lb 4 oz", "5.25 lb", "84 oz"});
  all_equal(Kind::area, {"2 in²", "2 in2", "2 sq in", "2 in^2"});
  all_equal(Kind::density, {"7850 kg/m³", "7850 kg/m3", "7.85 g/cm³"});
}

TEST(ParseQuantity, PlainNumbersAndMoney) {
  EXPECT_EQ(si("0.12", Kind::ratio), 0.12);
  EXPECT_EQ(si("12 %", Kind::ratio), 0.12);
  EXPECT_EQ(si("1/8", Kind::ratio), 0.125);
  EXPECT_EQ(si("7", Kind::count), 7.0);
  EXPECT_EQ(si("18.40 EUR", Kind::money), 18.40);
  EXPECT_EQ(si("60 EUR/h", Kind::money_rate), 60.0 / 3600.0);
  EXPECT_EQ(si("1 EUR/min", Kind::money_rate), si("60 EUR/h", Kind::money_rate));
}

// Source: BIPM SI brochure, 2.3.1; NIST SP 811, B.8: T/K = (t/°F + 459.67)/1.8, and a rise of 36 °F is one of 20 K.
// Tolerance: the nearest double.
TEST(ParseQuantity, TemperatureIsNoRise) {
  EXPECT_EQ(si("20 °C", Kind::temperature), 293.15);
  EXPECT_EQ(si("-40 °F", Kind::temperature), si("-40 °C", Kind::temperature));
  EXPECT_EQ(si("36 °F", Kind::temperature_rise), 20.0);
  EXPECT_EQ(si("-273.15 °C", Kind::temperature), 0.0);
  EXPECT_EQ(si("-459.67 °F", Kind::temperature), 0.0);
}

TEST(ParseQuantity, KeepsWhatWasTyped) {
  const auto entered = parse_quantity(" 1 1/2 in ", Kind::length, "bore");
  ASSERT_TRUE(entered);
  EXPECT_EQ(entered->typed, " 1 1/2 in ");
  EXPECT_EQ(entered->value.kind, Kind::length);
  EXPECT_EQ(parse_quantity("5 N", Kind::force, "f")->nm, std::nullopt);
}

TEST(ParseQuantity, EveryFormAndEverySpellingOfTheTableIsRead) {
  for (int i = 0; i < kKindCount; ++i) {
    const auto kind = static_cast<Kind>(i);
    EXPECT_FALSE(accepted_forms(kind).empty());
    for (const std::string& form : accepted_forms(kind)) EXPECT_TRUE(parse_quantity(form, kind, "x")) << form;
    for (const std::string_view unit : unit_spellings(kind))
      EXPECT_TRUE(parse_quantity("2 " + std::string{unit}, kind, "x")) << unit;
  }
}

TEST(ParseQuantity, NoSpellingOfAKindMeansTwoUnits) {
  std::set<std::pair<Kind, std::string>> seen;
  for (const Unit& unit : all_units()) {
    std::string_view rest = unit.spellings;
    while (!rest.empty()) {
      const std::string spelling{rest.substr(0, rest.find('|'))};
      EXPECT_TRUE(seen.emplace(unit.kind, spelling).second) << spelling;
      EXPECT_EQ(normal_unit(spelling), spelling) << "can never be found";
      rest.remove_prefix(std::min(rest.size(), spelling.size() + 1));
    }
  }
}

// Source: rational arithmetic of the compiler's 128-bit integers, a second way to the same nanometres.
// Tolerance: exact nanometres.
TEST(ParseQuantity, MixedFractionsOfAnInchAreExact) {
  EXPECT_TRUE(rc::check([] {
    const int whole = *rc::gen::inRange(1, 400), lower = *rc::gen::inRange(2, 129);
    const int upper = *rc::gen::inRange(1, lower);
    __extension__ using Wide = __int128;
    const Wide num = (static_cast<Wide>(whole) * lower + upper) * 25'400'000;
    Wide expected = num / lower;
    const Wide twice = num % lower * 2;
    if (twice > lower || (twice == lower && expected % 2 != 0)) ++expected;
    const std::string text = std::to_string(whole) + " " + std::to_string(upper) + "/" + std::to_string(lower) + " in";
    RC_ASSERT(parse_quantity(text, Kind::length, "x")->nm == static_cast<std::int64_t>(expected));
  }));
}

}  // namespace
}  // namespace flatwise
