#include "core/fits/heating.h"

#include <gtest/gtest.h>
#include <cmath>

namespace flatwise::fits {
namespace {

Heating hub_of_cast_iron() {
  return {.diameter = millimetres(120),
          .interference = micrometres(45),
          .clearance = micrometres(30),
          .heated_expansion = 10.5e-6,
          .cooled_expansion = 11.5e-6,
          .room = celsius(20),
          .greatest = celsius(110)};
}

// Source: linear expansion by hand, docs/worked/W5-heating.md: 0.075/(120 * 10.5e-6) = 59.5238 K; ring: 0.050/(50 *
// 11.5e-6) = 86.9565 K, 106.9565 C from 20 C.
// Tolerance: 1e-6 relative, as published.
TEST(Heating, OfAHubAndOfARing) {
  const auto hub = heating(hub_of_cast_iron()).value();
  EXPECT_NEAR(hub.rise.kelvins(), 59.5238, 6e-5);
  EXPECT_NEAR(hub.temperature.celsius(), 79.5238, 6e-5);
  EXPECT_FALSE(hub.too_hot);
  EXPECT_EQ(hub.other_temperature, celsius(20));
  auto ring = hub_of_cast_iron();
  ring.diameter = millimetres(50);
  ring.interference = micrometres(30);
  ring.clearance = micrometres(20);
  ring.heated_expansion = 11.5e-6;
  EXPECT_NEAR(heating(ring)->rise.kelvins(), 86.9565, 9e-5);
  EXPECT_NEAR(heating(ring)->temperature.celsius(), 106.9565, 9e-5);
  EXPECT_FALSE(heating(ring)->too_hot);
}

// Source: by hand in docs/worked/W5-heating.md: 120 um on 120 mm need 95.2381 K, 115.24 C. At the limit of 110 C the hub
// gives 90 * 10.5e-6 = 945e-6; the ring must give 1000e-6 - 945e-6 = 55e-6, 4.78261 K: 15.2174 C.
// Tolerance: 1e-5 K.
TEST(Heating, OverTheLimitCoolsTheOtherPartInstead) {
  auto input = hub_of_cast_iron();
  input.interference = micrometres(90);
  const auto found = heating(input).value();
  EXPECT_TRUE(found.too_hot);
  EXPECT_NEAR(found.temperature.celsius(), 20 + 95.238095, 1e-5);
  EXPECT_NEAR(found.other_temperature.celsius(), 15.217391, 1e-5);
}

TEST(Heating, OfALooseFitIsNone) {
  auto input = hub_of_cast_iron();
  input.interference = micrometres(-40);
  EXPECT_EQ(heating(input)->rise.kelvins(), 0.0);
  EXPECT_EQ(heating(input)->temperature, celsius(20));
}

TEST(Heating, RefusesAndNamesTheField) {
  const auto refused = [](auto change) {
    auto input = hub_of_cast_iron();
    change(input);
    const auto found = heating(input);
    return found ? std::string{"accepted"} : found.error().field;
  };
  EXPECT_EQ(refused([](auto& h) { h.diameter = Length{}; }), "diameter");
  EXPECT_EQ(refused([](auto& h) { h.interference = metres(std::nan("")); }), "interference");
  EXPECT_EQ(refused([](auto& h) { h.clearance = micrometres(-1); }), "clearance");
  EXPECT_EQ(refused([](auto& h) { h.heated_expansion = 0; }), "heated_expansion");
  EXPECT_EQ(refused([](auto& h) { h.cooled_expansion = std::nan(""); }), "cooled_expansion");
  EXPECT_EQ(refused([](auto& h) { h.greatest = celsius(20); }), "greatest");
  EXPECT_EQ(refused([](auto& h) { h.interference = millimetres(1); }), "interference");
}

}  // namespace
}  // namespace flatwise::fits
