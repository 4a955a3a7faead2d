#include "record/canonical.h"

#include <gtest/gtest.h>

#include <bit>
#include <nlohmann/json.hpp>

namespace flatwise::record {
namespace {

// Source: RFC 8785, section 3.2.2 and 3.2.3 (the example object and its canonical form).
TEST(Canonical, TheExampleOfTheRfc) {
  const auto json = wire::Json::parse(R"({
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  })");
  EXPECT_EQ(canonical(json), R"({"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],)"
                             R"("string":"€$\u000f\nA'B\"\\\\\"/"})");
}

// Source: RFC 8785, section 3.2.3: keys sorted by UTF-16 code units, not by code points.
TEST(Canonical, KeysInTheOrderOfTheirUtf16Units) {
  const auto json = wire::Json::parse(
      R"({"\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
          "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"})");
  std::string values;
  const std::string text = canonical(json);
  for (const char* value : {"Carriage Return", "One", "Control", "Latin Small", "Euro", "Emoji", "Hebrew"}) {
    const std::size_t at = text.find(value);
    ASSERT_NE(at, std::string::npos) << value;
    EXPECT_GE(at, values.size());
    values = text.substr(0, at);
  }
}

// Source: RFC 8785, Appendix B (number serialization samples, IEEE 754 bits to text).
TEST(Canonical, NumbersOfTheRfc) {
  const std::pair<std::uint64_t, const char*> samples[] = {{0x0000000000000000, "0"},
                                                           {0x8000000000000000, "0"},
                                                           {0x0000000000000001, "5e-324"},
                                                           {0x8000000000000001, "-5e-324"},
                                                           {0x7fefffffffffffff, "1.7976931348623157e+308"},
                                                           {0xffefffffffffffff, "-1.7976931348623157e+308"},
                                                           {0x4340000000000000, "9007199254740992"},
                                                           {0xc340000000000000, "-9007199254740992"},
                                                           {0x4430000000000000, "295147905179352830000"},
                                                           {0x44b52d02c7e14af5, "9.999999999999997e+22"},
                                                           {0x44b52d02c7e14af6, "1e+23"},
                                                           {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
                                                           {0x444b1ae4d6e2ef4e, "999999999999999700000"},
                                                           {0x444b1ae4d6e2ef4f, "999999999999999900000"},
                                                           {0x444b1ae4d6e2ef50, "1e+21"},
                                                           {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
                                                           {0x3eb0c6f7a0b5ed8d, "0.000001"},
                                                           {0x41b3de4355555553, "333333333.3333332"},
                                                           {0x41b3de4355555554, "333333333.33333325"},
                                                           {0x41b3de4355555555, "333333333.3333333"},
                                                           {0x41b3de4355555556, "333333333.3333334"},
                                                           {0x41b3de4355555557, "333333333.33333343"},
                                                           {0xbecbf647612f3696, "-0.0000033333333333333333"},
                                                           {0x43143ff3c1cb0959, "1424953923781206.2"}};
  for (const auto& [bits, text] : samples) EXPECT_EQ(canonical_number(std::bit_cast<double>(bits)), text);
}

TEST(Canonical, NumbersThatItCannotHoldAreBugs) {
  EXPECT_THROW((void)canonical(wire::Json(std::uint64_t{1} << 60U)), std::logic_error);
  EXPECT_THROW((void)canonical_number(std::numeric_limits<double>::infinity()), std::logic_error);
}

}  // namespace
}  // namespace flatwise::record
