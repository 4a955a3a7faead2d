#include "core/dynamics/resultants.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <random>

#include "core/shaft/shaft_samples.h"

namespace flatwise::dynamics {
namespace {

Shaft shaft_of(int rotors, int flats = 6) {
  SampleShaft sample;
  sample.rotors = rotors;
  sample.flats = flats;
  return Shaft::make(sample_shaft(sample)).value();
}
std::vector<Angle> tilt_by(int rotors, int flats, int step) {
  std::vector<Angle> tilt;
  for (int i = 0; i < rotors; ++i) tilt.push_back(azimuth_of_flat(1 + (i * step) % flats, flats));
  return tilt;
}
std::vector<Angle> tilt_of(const std::vector<int>& flats) {
  std::vector<Angle> tilt;
  for (const int f : flats) tilt.push_back(azimuth_of_flat(f, 6));
  return tilt;
}
double one_couple(const Shaft& shaft) {
  const Rotor& r = shaft.rotor(1);
  return rotating_couple({shaft.spec().speed, r.lean, r.across, r.along, spin_of(shaft, 1)})->si();
}

// Source: statics, worked two-plane example (W28): planes at 0 and 0.6 m, unbalances 40 at 30° (z 0.1), 18 at 150° (0.3), 28 at 270°
// (0.5) kg mm: corrections 26.764404 at 218.0603° and 15.631165 at 82.5723°.
// Tolerance: 1e-6 of the sizes, 1e-4 degree.
TEST(Resultants, MeetTheWorkedTwoPlaneExample) {
  std::vector<RotatingSet> sets;
  for (const auto& [amount, angle, z] : {std::tuple{40.0, 30.0, 0.1}, {18.0, 150.0, 0.3}, {28.0, 270.0, 0.5}})
    sets.push_back({metres(z), degrees(angle), Force::from_si(amount), {}});
  const auto r = resultants(sets, {metres(0), metres(0.6)});
  const auto opposite = [](Angle a) { return std::fmod(a.degrees() + 180 + 360, 360.0); };
  EXPECT_NEAR(r.at_a.size.si(), 26.764404, 1e-6);
  EXPECT_NEAR(r.at_b.size.si(), 15.631165, 1e-6);
  EXPECT_NEAR(opposite(r.at_a.azimuth), 218.0603, 1e-4);
  EXPECT_NEAR(opposite(r.at_b.azimuth), 82.5723, 1e-4);
}

// Source: sums of roots of unity: facing leaves nothing on an even number of rotors and one couple on an odd one; a third of
// a turn leaves nothing on multiples of three; flats 1, 3, 4, 5, 1 of five rotors leave nothing.
// Tolerance: 1e-12 of one couple.
TEST(Resultants, OfTheTradesPatterns) {
  for (int rotors = 2; rotors <= 14; ++rotors) {
    const Shaft shaft = shaft_of(rotors);
    const double one = one_couple(shaft);
    const double facing = resultants(shaft, tilt_by(rotors, 6, 3)).couple.size.si() / one;
    EXPECT_NEAR(facing, rotors % 2, 1e-12) << rotors;
    const double thirds = resultants(shaft, tilt_by(rotors, 6, 2)).couple.size.si() / one;
    EXPECT_NEAR(thirds, rotors % 3 == 0 ? 0 : 1, 1e-12) << rotors;
  }
  const Shaft five = shaft_of(5);
  EXPECT_EQ(resultants(five, tilt_of({1, 3, 4, 5, 1})).couple.size, Torque{});
  EXPECT_EQ(resultants(five, tilt_of({1, 3, 4, 5, 1})).larger, Force{});
  EXPECT_NEAR(resultants(five, tilt_of({1, 3, 4, 5, 2})).couple.size.si() / one_couple(five), 1, 1e-12);
}

// Source: statics: one couple C in a plane through the axis presses each of two planes with C / apart, in opposite senses (W27:
// 839 mm apart and 13.57 N m: 16.2 N, 3.6 lbf).
// Tolerance: 1e-12 relative; half of the last digit for W27.
TEST(Resultants, OneCoupleAtTwoHangers) {
  const Shaft shaft = shaft_of(5);
  const auto r = resultants(shaft, tilt_by(5, 6, 3));
  const Planes planes = planes_of(shaft);
  EXPECT_TRUE(planes.hangers);
  EXPECT_NEAR(r.at_a.size.si(), r.couple.size.si() / (planes.b - planes.a).si(), 1e-12 * r.at_a.size.si());
  EXPECT_NEAR(r.at_a.size.si(), r.at_b.size.si(), 1e-12 * r.at_a.size.si());
  EXPECT_NEAR(std::abs(r.at_a.azimuth.degrees() - r.at_b.azimuth.degrees()), 180, 1e-9);
  const RotatingSet one[] = {{metres(0.4), Angle{}, {}, newton_metres(13.57)}};
  EXPECT_NEAR(resultants(one, {metres(0), metres(0.839)}).larger / pounds_force(1), 3.6, 0.05);
}

// Source: simulation, 200,000 draws of rectangular errors, fixed seed.
// Tolerance: 1 % of the root mean square; the worst case is never passed.
TEST(Resultants, FloorIsWhatStatedErrorsLeave) {
  const StatedErrors errors{0.02, degrees(0.5)};
  std::vector<RotatingSet> sets;
  for (int i = 0; i < 6; ++i)
    sets.push_back({metres(0.1 + 0.16 * i), degrees(180.0 * i), newtons(i), newton_metres(13 + i)});
  const Planes planes{metres(0), metres(1.2)};
  const auto said = resultants(sets, planes, errors);
  std::mt19937 random(3);
  std::uniform_real_distribution<double> even(-1, 1);
  const auto residual = [](const RotatingForce& now, const RotatingForce& before) {
    return std::hypot(
        now.size.si() * std::cos(now.azimuth.radians()) - before.size.si() * std::cos(before.azimuth.radians()),
        now.size.si() * std::sin(now.azimuth.radians()) - before.size.si() * std::sin(before.azimuth.radians()));
  };
  double squares_a = 0, squares_b = 0, worst = 0;
  constexpr int kDraws = 200'000;
  for (int draw = 0; draw < kDraws; ++draw) {
    auto off = sets;
    for (RotatingSet& s : off) {
      const double share = 1 + errors.share * even(random);
      s = {s.position, s.azimuth + even(random) * errors.azimuth, share * s.force, share * s.couple};
    }
    const auto now = resultants(off, planes);
    const double a = residual(now.at_a, said.at_a), b = residual(now.at_b, said.at_b);
    squares_a += a * a;
    squares_b += b * b;
    worst = std::max({worst, a, b});
  }
  EXPECT_NEAR(std::sqrt(std::max(squares_a, squares_b) / kDraws), said.floor_rms.si(), 0.01 * said.floor_rms.si());
  EXPECT_LE(worst, said.floor_worst.si() * (1 + 1e-4));
}

// Source: F = U W² at its flat's azimuth: a pulley's 0.01 kg m at 480 /min is 25.27 N.
// Tolerance: 1e-12 relative.
TEST(Resultants, CarryAFixedUnbalance) {
  SampleShaft sample;
  sample.rotors = 4;
  ShaftSpec spec = sample_shaft(sample);
  spec.pattern.first_flat = 1;
  int pulley = 0;
  for (std::size_t i = 0; i < spec.stations.size(); ++i)
    if (spec.stations[i].kind == StationKind::pulley) pulley = static_cast<int>(i);
  spec.unbalances.push_back({pulley, Unbalance::from_si(0.01), 3});
  const Shaft shaft = Shaft::make(spec).value();
  const auto r = resultants(shaft, tilt_by(4, 6, 3));
  const double w = turns_per_minute(480).radians_per_second();
  EXPECT_NEAR(r.force.size.si(), 0.01 * w * w, 1e-12 * 25);
  EXPECT_NEAR(r.force.azimuth.degrees(), 120, 1e-9);
}

TEST(Resultants, TakeTheEndsWhereHangersAreMissing) {
  SampleShaft sample;
  sample.rotors = 2;
  ShaftSpec spec = sample_shaft(sample);
  for (Station& s : spec.stations)
    if (s.kind == StationKind::hanger) s.kind = StationKind::washer;
  const Shaft shaft = Shaft::make(spec).value();
  EXPECT_FALSE(planes_of(shaft).hangers);
  EXPECT_EQ(planes_of(shaft).b, shaft.total_length());
}

// Properties: turning every azimuth turns the resultants and leaves their sizes; inches and pounds agree with metres; the sum of
// the planes is the force; the order of rotors on equal places does not matter.
// Tolerance: 1e-9 relative of the sum of sizes.
TEST(Resultants, PropertiesHold) {
  EXPECT_TRUE(rc::check("resultants", [] {
    std::vector<RotatingSet> sets;
    const int count = *rc::gen::inRange(1, 24);
    double sizes = 0;
    for (int i = 0; i < count; ++i) {
      sets.push_back({millimetres(*rc::gen::inRange(0, 4000)), degrees(*rc::gen::inRange(0, 360)),
                      newtons(*rc::gen::inRange(-50, 50)), newton_metres(*rc::gen::inRange(-50, 50))});
      sizes += std::abs(sets.back().force.si()) * 5 + std::abs(sets.back().couple.si()) * 2 + 1;
    }
    const Planes planes{metres(0.2), metres(3.1)};
    const auto before = resultants(sets, planes);
    auto turned = sets;
    for (RotatingSet& s : turned) s.azimuth = s.azimuth + degrees(77);
    const auto after = resultants(turned, planes);
    RC_ASSERT(std::abs((after.couple.size - before.couple.size).si()) <= 1e-9 * sizes);
    RC_ASSERT(std::abs((after.larger - before.larger).si()) <= 1e-9 * sizes);
    if (before.couple.size.si() > 1e-3)
      RC_ASSERT(std::abs(std::remainder(after.couple.azimuth.degrees() - before.couple.azimuth.degrees() - 77, 360)) <
                1e-6);
    auto pounds = sets;
    for (RotatingSet& s : pounds)
      s = {inches(s.position.si() / 0.0254), s.azimuth, pounds_force(s.force / pounds_force(1)),
           foot_pounds(s.couple / foot_pounds(1))};
    RC_ASSERT(std::abs((resultants(pounds, planes).larger - before.larger).si()) <= 1e-9 * sizes);
    const double fx = before.at_a.size.si() * std::cos(before.at_a.azimuth.radians()) +
                      before.at_b.size.si() * std::cos(before.at_b.azimuth.radians());
    RC_ASSERT(std::abs(fx - before.force.size.si() * std::cos(before.force.azimuth.radians())) <= 1e-9 * sizes);
  }));
}

}  // namespace
}  // namespace flatwise::dynamics
