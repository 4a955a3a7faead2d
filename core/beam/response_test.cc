#include "core/beam/response.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/beam/beam_samples.h"
#include "core/beam/effects.h"
#include "tests/support/test_table.h"

namespace flatwise::beam {
namespace {

std::vector<Turning> facing(const Beam& b) {
  std::vector<Turning> turning;
  for (std::size_t i = 0; i < b.bodies.size(); ++i)
    turning.push_back(turning_of(b.bodies[i], degrees(5), degrees(i % 2 == 0 ? 0 : 180)));
  return turning;
}
std::vector<AngularSpeed> speeds_to(double rad_s, int count) {
  std::vector<AngularSpeed> all;
  for (int i = 1; i <= count; ++i) all.push_back(radians_per_second(rad_s * i / count));
  return all;
}

// Source: bent_turning() at each speed alone: another way to the same reactions, by the balance of whole nodes.
// Tolerance: 1e-9 of the value; the same elimination, another sum for the reactions.
TEST(Response, IsThatOfEachSpeedAlone) {
  Beam b = long_twenty_four();
  b.hangers[1].stiffness.reset();
  b.places = {metres(1.3)};
  const Mesh mesh = Mesh::make(b).value();
  const auto turning = facing(b);
  const auto speeds = speeds_to(120, 19);  // Not a multiple of eight.
  const Length watched[] = {metres(1.3), metres(4.8)};
  const auto all = response(mesh, turning, {speeds, watched}).value();
  ASSERT_EQ(all.size(), 19U);
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Bent alone = bent_turning(mesh, turning, speeds[i]).value();
    for (std::size_t h = 0; h < 3; ++h)
      EXPECT_NEAR(all[i].hangers[h].si() / alone.reactions[h].size.si(), 1, 1e-9) << i << " " << h;
    EXPECT_EQ(all[i].out[0], alone.line[static_cast<std::size_t>(*mesh.node_at(watched[0]))].out);
    EXPECT_EQ(all[i].out[1], alone.line.back().out);
  }
}

TEST(Response, IsTheSameBitsInEveryBuild) {
  const Mesh mesh = Mesh::make(long_twenty_four()).value();
  const auto turning = facing(mesh.beam());
  const auto speeds = speeds_to(1500 * 0.3, 500);
  const auto base = response(mesh, turning, {speeds}, lanes::Width::baseline).value();
  for (const lanes::Width width : lanes::kEveryWidth) {
    if (!lanes::runs_here(width)) continue;
    const auto other = response(mesh, turning, {speeds}, width).value();
    for (std::size_t i = 0; i < base.size(); ++i) EXPECT_EQ(base[i].hangers, other[i].hangers);
  }
}

// Source: at a critical speed of forward whirl an undamped response has no bound: its greatest over a fine range stands there.
// Tolerance: the step of the range.
TEST(Response, PeaksAtTheForwardCriticalSpeeds) {
  const Mesh mesh = Mesh::make(long_twenty_four()).value();
  Turning one{metres(0.55), Angle{}, Unbalance::from_si(1e-4)};
  const double critical = critical_speeds(mesh, Whirl::forward, 1)->speeds[0].radians_per_second();
  const auto speeds = speeds_to(1.3 * critical, 1300);
  const auto all = response(mesh, std::span{&one, 1}, {speeds}).value();
  const auto top = std::ranges::max_element(all, {}, [](const ResponsePoint& p) { return p.hangers[0]; });
  EXPECT_NEAR(top->speed.radians_per_second() / critical, 1, 1.1e-3);
}

TEST(Response, RefusesSpeedsAndPlacesItHasNoAnswerFor) {
  const Mesh mesh = Mesh::make(long_twenty_four()).value();
  const auto turning = facing(mesh.beam());
  const AngularSpeed bad[] = {radians_per_second(10), AngularSpeed{}};
  EXPECT_EQ(response(mesh, turning, {bad}).error().field, "speed");
  EXPECT_EQ(response(mesh, turning, {}).error().field, "speeds");
  const AngularSpeed over[] = {radians_per_second(1e7)};
  EXPECT_EQ(response(mesh, turning, {over}).error().code.id(), "beam.too_coarse");
  const AngularSpeed good[] = {radians_per_second(10)};
  const Length nowhere[] = {metres(0.7777)};
  EXPECT_EQ(response(mesh, turning, {good, nowhere}).error().code.id(), "beam.no_place");
}

// Source: tests/data/beam_scipy.py: elements integrated from shape functions, numpy's dense solution at rest, scipy's banded
// solver turning, its dense eigenvalues of the pencil of second degree (forward its positive roots, backward its negative).
// Tolerance: 1e-7 of the value; the table is good to 1e-8 or so (its own note), ours too.
TEST(LongTwentyFour, IsThatOfScipy) {
  const Mesh mesh = Mesh::make(long_twenty_four()).value();
  ASSERT_EQ(mesh.nodes(), 97);
  const Bent rest = bent_at_rest(mesh, {}).value();
  const auto forward = rad_s(critical_speeds(mesh, Whirl::forward, 6).value()),
             backward = rad_s(critical_speeds(mesh, Whirl::backward, 6).value());
  const auto speeds = speeds_to(450, 500);
  const auto turning = response(mesh, facing(mesh.beam()), {speeds}).value();
  int compared = 0;
  for (const TestRow& row : test_table("beam_scipy.csv")) {
    const std::string& what = row.at("what");
    const auto at = static_cast<std::size_t>(std::stoi(row.at("at")) - 1);
    const double ours = what == "rest"      ? rest.reactions[at].size.si()
                        : what == "forward" ? forward[at]
                        : what == "backward"
                            ? backward[at]
                            : turning[static_cast<std::size_t>(std::stoi(what.substr(8)) - 1)].hangers[at].si();
    EXPECT_NEAR(ours / std::stod(row.at("value")), 1, 1e-7) << what << " " << at + 1;
    ++compared;
  }
  EXPECT_EQ(compared, 27);
}

// Source: linearity: the shares of all rotors add up to the whole; a rotor turned by k flats is computed anew.
// Tolerance: 1e-9 of the largest.
TEST(Effects, SharesAddUpAndMistakesAreTheRealThing) {
  const Mesh mesh = Mesh::make(long_twenty_four()).value();
  auto turning = facing(mesh.beam());
  const AngularSpeed speed = turns_per_minute(480);
  const Effects effects = effects_of(mesh, turning, speed, {24, 6}).value();
  for (std::size_t h = 0; h < 3; ++h) {
    Phasor sum;
    for (const auto& shares : effects.shares) sum += std::polar(shares[h].size.si(), shares[h].direction.radians());
    EXPECT_NEAR(std::abs(sum), effects.as_built[h].si(), 1e-9 * effects.shares[0][0].size.si());
  }
  EXPECT_EQ(effects.mistakes.size(), 24U * 2 * 5);
  EXPECT_GE(effects.mistakes[0].rise, effects.mistakes[1].rise);
  for (const TimingEffect& m : effects.mistakes) {
    if (m.mistake != Mistake::rotor_out || m.flats_out != 2 || m.rotor != 7) continue;
    turning[6].azimuth = turning[6].azimuth + degrees(120);
    const Bent real = bent_turning(mesh, turning, speed).value();
    EXPECT_NEAR(real.reactions[static_cast<std::size_t>(m.hanger)].size.si(), m.greatest.si(), 1e-9 * m.greatest.si());
  }
}

}  // namespace
}  // namespace flatwise::beam
