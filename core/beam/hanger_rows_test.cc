#include "core/beam/hanger_rows.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/beam/of_shaft.h"
#include "core/dynamics/pattern_list.h"
#include "core/shaft/shaft_samples.h"

namespace flatwise::beam {
namespace {

/// Unlike rotors, with an unbalance; a third hanger after rotor 3 where asked.
Shaft sample(bool third_hanger, double speed_per_minute = 480) {
  ShaftSpec spec = sample_shaft({.rotors = 5});
  spec.speed = turns_per_minute(speed_per_minute);
  spec.rotors[1].across = 1.1 * spec.rotors[1].across;
  spec.rotors[3].mass_offset = millimetres(2);
  spec.pattern.first_flat = 1;
  spec.unbalances = {{2, Unbalance::from_si(1e-3), 3}};
  if (third_hanger) {
    const auto after = std::ranges::find(spec.stations, std::string{"4"}, &Station::label);
    spec.stations.insert(after, sample_station(StationKind::hanger, "hanger M", 31, 110, 10, 12));
  }
  return Shaft::make(std::move(spec)).value();
}

std::vector<Angle> tilt_of(const dynamics::Places& places) { return dynamics::tilt_of(places, 6); }

// Source: superposition: the reaction of the whole shaft, worked out at once by bent_turning(), which calculix confirms.
// Tolerance: 1e-9 of the sum of sizes: rounding of a banded solution.
TEST(HangerRows, AddUpToTheReactionsOfAnyArrangement) {
  const Shaft shaft = sample(true);
  const auto rows = hanger_rows(shaft).value();
  ASSERT_EQ(rows.size(), 3U);
  EXPECT_EQ(rows[1].label, "hanger M");
  for (const dynamics::Places& places : {dynamics::Places{0, 3, 0, 3, 0}, {0, 2, 3, 4, 0}, {5, 1, 1, 4, 2}}) {
    const ShaftBending whole = bending_of(shaft, tilt_of(places)).value();
    for (std::size_t h = 0; h < rows.size(); ++h) {
      std::complex<double> sum = rows[h].fixed_n;
      double sizes = std::abs(rows[h].fixed_n);
      for (std::size_t i = 0; i < places.size(); ++i) {
        sum += rows[h].rotors_n[i] * std::polar(1.0, places[i] * std::numbers::pi / 3);
        sizes += std::abs(rows[h].rotors_n[i]);
      }
      EXPECT_NEAR(std::abs(sum), whole.turning.reactions[h].size.si(), 1e-9 * sizes) << h;
    }
  }
}

// Source: statics: two hangers that do not give hold a slow shaft as the two planes of resultants() do, without its bending.
// Tolerance: 1e-4 of the sum of sizes: at 20 /min the bent shaft's own pull is (20/first critical)² or less, some 1e-5.
TEST(HangerRows, OfTwoHangersOnASlowShaftAreThePlanes) {
  const Shaft shaft = sample(false, 20);
  const auto rows = hanger_rows(shaft).value();
  ASSERT_EQ(rows.size(), 2U);
  const dynamics::PatternTask task = dynamics::pattern_task(shaft).value();
  const dynamics::PatternSums sums{task};
  for (std::size_t plane = 0; plane < 2; ++plane) {
    double sizes = 0;
    for (int i = 0; i < 5; ++i) sizes += std::abs(sums.own(i)[plane]);
    for (int i = 0; i < 5; ++i)
      EXPECT_NEAR(rows[plane].rotors_n[static_cast<std::size_t>(i)], sums.own(i)[plane], 1e-4 * sizes);
  }
}

TEST(HangerRows, WantSomethingThatHoldsTheShaft) {
  ShaftSpec spec = sample_shaft({.rotors = 3});
  std::erase_if(spec.stations, [](const Station& s) { return s.kind == StationKind::hanger; });
  EXPECT_FALSE(hanger_rows(Shaft::make(spec).value()).has_value());
}

// Source: every arrangement looked at, each judged by the rows alone.
// Tolerance: none, an order.
TEST(HangerRows, PutTheArrangementThatPressesTheHangersLeastFirst) {
  ShaftSpec spec = sample(true).spec();
  spec.unbalances.clear();
  for (Rotor& rotor : spec.rotors) rotor = spec.rotors[0];
  const Shaft shaft = Shaft::make(std::move(spec)).value();
  dynamics::PatternWish wish{.hangers = hanger_rows(shaft).value()};
  const dynamics::PatternTask task = dynamics::pattern_task(shaft, wish).value();
  const dynamics::PatternSums sums{task};
  const double floor = dynamics::hangers_floor(task);
  double least = 1e300, most = 0;
  dynamics::Places places(5, 0);
  for (int code = 0; code < 6 * 6 * 6 * 6; ++code) {
    for (int i = 0, rest = code; i < 4; ++i, rest /= 6) places[static_cast<std::size_t>(i) + 1] = rest % 6;
    if (sums.of(places) > sums.floor_rms() || !task.allows(places)) continue;
    const double pressed = dynamics::hardest_pressed(task, places).force_n;
    least = std::min(least, dynamics::reaction_step(pressed, floor));
    most = std::max(most, dynamics::reaction_step(pressed, floor));
  }
  ASSERT_LT(least, most) << "the hangers have something to choose";
  const dynamics::PatternList list = dynamics::list_patterns(task).value();
  ASSERT_TRUE(list.errors_decide);
  EXPECT_EQ(dynamics::reaction_step(list.rows.front().pressed->force_n, floor), least);
  for (const dynamics::PatternRow& row : list.rows) EXPECT_LE(row.left_si, list.floor_rms);
}

}  // namespace
}  // namespace flatwise::beam
