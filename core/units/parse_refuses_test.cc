// parse_refuses_test.cc: what parse_quantity() refuses, and what it says with it.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "core/units/parse.h"
#include "core/units/typed.h"

namespace flatwise {
namespace {

Problem refused(std::string_view text, Kind kind) {
  const auto entered = parse_quantity(text, kind, "bore");
  if (entered) {
    ADD_FAILURE() << "'" << text << "' was read as " << entered->value.si;
    return {Code{"quantity.missing"}, {}, {}, {}, {}};
  }
  return entered.error();
}
std::string code(std::string_view text, Kind kind = Kind::length) { return std::string{refused(text, kind).code.id()}; }

template <class T>
T arg(const Problem& p, std::string_view name) {
  const auto it = std::ranges::find(p.args, name, &Arg::name);
  EXPECT_TRUE(it != p.args.end()) << name;
  return it == p.args.end() ? T{} : std::get<T>(it->value);
}

TEST(ParseRefuses, NothingAndNoNumber) {
  for (const char* text : {"", "   ", "\xC2\xA0\t"}) EXPECT_EQ(code(text), "quantity.missing");
  for (const char* text : {"mm", "--1 mm", "+-1 mm", "- mm", "-", "e5 mm", ". mm", "/2 in", "abc", "EUR 5"})
    EXPECT_EQ(code(text), "quantity.no_number") << text;
  for (const char* text : {"nan", "NaN mm", "inf", "-inf mm", "Infinity"})
    EXPECT_EQ(code(text), "quantity.not_finite") << text;
}

TEST(ParseRefuses, NumbersThatCannotBeMeant) {
  EXPECT_EQ(code("1/0 in"), "quantity.zero_denominator");
  EXPECT_EQ(code("1 1/0 in"), "quantity.zero_denominator");
  EXPECT_EQ(code("1 3/2 in"), "quantity.improper_fraction");
  EXPECT_EQ(code("1 2/2 in"), "quantity.improper_fraction");
  for (const char* text : {"1e999 mm", "1e31 mm", "1e-99 mm", "1e20 m", "1e99999999999999999999 mm"})
    EXPECT_EQ(code(text), "quantity.out_of_range") << text;
  for (const char* text :
       {"1234567890123456 mm", "0.1234567890123456 mm", "1/1234567890123456 in", "1234567890123456/2 in"})
    EXPECT_EQ(code(text), "quantity.too_many_digits") << text;
  EXPECT_TRUE(parse_quantity("0.000000000000000000001 mm", Kind::length, "x"));  // One digit, and a great many noughts.
  EXPECT_EQ(code(std::string(300, '1') + " mm"), "quantity.too_long");
}

TEST(ParseRefuses, CommasAndSpacesWithAMend) {
  const Problem thousands = refused("1,500 mm", Kind::length);
  EXPECT_EQ(thousands.code.id(), "quantity.comma");
  EXPECT_EQ(arg<std::string>(thousands, "plain"), "1500 mm");
  EXPECT_EQ(arg<std::string>(thousands, "point"), "1.500 mm");
  EXPECT_EQ(arg<std::string>(refused("1,234.5 mm", Kind::length), "point"), "");
  EXPECT_EQ(arg<std::string>(refused("1.234,5 mm", Kind::length), "plain"), "1.2345 mm");
  EXPECT_EQ(code(",5 mm"), "quantity.comma");
  EXPECT_EQ(arg<std::string>(refused("1 500 mm", Kind::length), "plain"), "1500");
  EXPECT_EQ(code("1 500.5 mm"), "quantity.spaced_digits");
}

TEST(ParseRefuses, AUnitOfAnotherKindAndSaysWhichKind) {
  const Problem p = refused("5 N·m", Kind::length);
  EXPECT_EQ(p.code.id(), "quantity.other_kind");
  EXPECT_EQ(p.field, "bore");
  EXPECT_EQ(p.given, "5 N·m");
  EXPECT_EQ(arg<std::string>(p, "unit"), "N·m");
  EXPECT_EQ(arg<Word>(p, "found").id, "kind.torque");
  EXPECT_EQ(arg<Word>(p, "kind").id, "kind.length");
  EXPECT_EQ(arg<std::vector<std::string>>(p, "forms"), accepted_forms(Kind::length));
  EXPECT_EQ(arg<Word>(refused("5 ft·lb", Kind::energy), "found").id, "kind.torque");
  EXPECT_EQ(arg<Word>(refused("5 J", Kind::torque), "found").id, "kind.energy");
  EXPECT_EQ(arg<Word>(refused("200 lb", Kind::force), "found").id, "kind.mass");
  EXPECT_EQ(arg<Word>(refused("9 Hz", Kind::angular_speed), "found").id, "kind.frequency");
  EXPECT_EQ(arg<Word>(refused("18 EUR", Kind::length), "found").id, "kind.money");
  EXPECT_EQ(arg<Word>(refused("5 mm", Kind::ratio), "found").id, "kind.length");
  EXPECT_EQ(code("3 kg", Kind::count), "quantity.count_with_unit");
}

TEST(ParseRefuses, AnUnknownUnitAndNamesANearOne) {
  const auto near = [](std::string_view text, Kind kind) {
    const Problem p = refused(text, kind);
    EXPECT_EQ(p.code.id(), "quantity.unknown_unit") << text;
    return arg<std::string>(p, "near");
  };
  EXPECT_EQ(near("5 mpa", Kind::pressure), "MPa");  // A millipascal is a unit too: nothing is guessed.
  EXPECT_EQ(near("5 Mm", Kind::length), "mm");
  EXPECT_EQ(near("5 inhces", Kind::length), "in");
  EXPECT_EQ(near("5 nM", Kind::torque), "N·m");
  EXPECT_EQ(near("5 ft·bl", Kind::torque), "ft·lb");
  EXPECT_EQ(near("5 furlong", Kind::length), "");
  EXPECT_EQ(near("3 eur", Kind::money), "EUR");
  EXPECT_EQ(near("3 eur/h", Kind::money_rate), "EUR/h");
  EXPECT_EQ(near("5 €", Kind::money), "");
  for (const char* text : {"20 ton", "20 tons", "20 tonf"})
    EXPECT_EQ(code(text, Kind::force), "quantity.ambiguous_ton");
}

TEST(ParseRefuses, WhatIsLeftOver) {
  EXPECT_EQ(code("5"), "quantity.no_unit");
  EXPECT_EQ(code("5", Kind::money), "quantity.no_unit");
  for (const char* text :
       {"5 mm 3", "5² mm", "½5 in", "5·5 mm", "1-5 mm", "5 .mm", "5 -mm", "1.5 1/2 in", "1.5.2 mm", "5 ^"})
    EXPECT_EQ(code(text), "quantity.unreadable") << text;
  for (const char* text : {"5 mm²", "5 mm/s"}) EXPECT_EQ(code(text), "quantity.other_kind") << text;
  for (const char* text : {"5 mm, A", "5 mm x", "5 (mm)"}) EXPECT_EQ(code(text), "quantity.unknown_unit") << text;
}

TEST(ParseRefuses, CompoundsThatDoNotGoTogether) {
  for (const char* text :
       {"5 ft 12 in", "5 ft 13 in", "5.5 ft 1 in", "1/2 ft 1 in", "5 in 1 ft", "5 ft 30 mm", "5 m 20 cm", "1' 500 mm"})
    EXPECT_EQ(code(text), "quantity.compound") << text;
  EXPECT_EQ(code("2° 60′", Kind::angle), "quantity.compound");
  EXPECT_EQ(code("2° 3′ 4″ 5″", Kind::angle), "quantity.unreadable");
}

TEST(ParseRefuses, CountsThatAreNotWholeAndColderThanCold) {
  for (const char* text : {"3.5", "3.0", "1/2", "1e3"})
    EXPECT_EQ(code(text, Kind::count), "quantity.not_whole") << text;
  EXPECT_EQ(code("-273.16 °C", Kind::temperature), "quantity.below_absolute_zero");
  EXPECT_EQ(code("-1 K", Kind::temperature), "quantity.below_absolute_zero");
  EXPECT_TRUE(parse_quantity("-1 K", Kind::temperature_rise, "x"));
}

TEST(ParseRefuses, BytesThatAreNoText) {
  for (const char* text : {"\xFF mm", "5 \xC0\xAF", "5 m\xE2\x82", "5 \xED\xA0\x80", "5 \xF4\x90\x80\x80", "5\x01",
                           "5\nmm", "5 \xC2\x85mm", "5 mm\x7F"}) {
    const Problem p = refused(text, Kind::length);
    EXPECT_EQ(p.code.id(), "quantity.not_text") << text;
    EXPECT_TRUE(fold_typed(p.given)) << "what is shown must be text";
  }
}

// Anything typed gives a finite value of the kind wanted, or a Problem with all its arguments; never a crash.
TEST(ParseRefuses, OrReadsWhateverIsTyped) {
  const auto piece = rc::gen::element<std::string>("1", "0", "9", ".", ",", "/", "-", "−", "+", "e", " ", "½", "mm",
                                                   "in", "'", "\"", "°", "F", "N", "·", "m", "²", "µ", "EUR", "/h", "%",
                                                   "ft", "\xC2", "(", ")", "^", "1/2", "min");
  EXPECT_TRUE(rc::check([&] {
    std::string text;
    for (const std::string& p : *rc::gen::container<std::vector<std::string>>(piece)) text += p;
    const auto kind = static_cast<Kind>(*rc::gen::inRange(0, kKindCount));
    const auto entered = parse_quantity(text, kind, "field");
    if (entered) {
      RC_ASSERT(std::isfinite(entered->value.si));
      RC_ASSERT(entered->value.kind == kind);
      RC_ASSERT(entered->nm.has_value() == (kind == Kind::length));
    } else {
      RC_ASSERT(entered.error().code.id().starts_with("quantity."));
      RC_ASSERT(entered.error().args.size() >= 2U);
    }
  }));
}

}  // namespace
}  // namespace flatwise
