#include "core/beam/critical.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/beam/beam_samples.h"

namespace flatwise::beam {
namespace {

double wave_speed(const Section& s) {  // sqrt(E I/m)
  return std::sqrt(kSteel.youngs_modulus.si() * s.second_moment.si() / (kSteel.density.si() * s.area.si()));
}

struct Ends {
  std::vector<Hanger> hangers;
  std::vector<double> beta_l_squared;
};

// Source: Thomson, Theory of Vibration, appendix D: (beta L)² of clamped-clamped 22.3733, 61.6728, 120.9034, cantilever 3.5160,
// 22.0345, 61.6972; simply supported (k pi)²; clamped-pinned 15.418206 (tan x = tanh x). More digits by closed form.
// Tolerance: 2e-4 relative: shear and rotary inertia of this slender bar (L/b = 400) take 1.4e-4 off the third mode.
TEST(CriticalSpeeds, AreThoseOfTheClosedForms) {
  const Length l = metres(20);
  const double pi = std::numbers::pi;
  const Ends all[] = {
      {{{Length{}}, {l}}, {pi * pi, 4 * pi * pi, 9 * pi * pi}},
      {{{Length{}, {}, true}, {l, {}, true}}, {22.373285, 61.6728, 120.9034}},
      {{{Length{}, {}, true}}, {3.516015, 22.0345, 61.6972}},
      {{{Length{}, {}, true}, {l}}, {15.418206}},
  };
  for (const Ends& ends : all) {
    const Section s = slender();
    const Mesh mesh = Mesh::make(bar(l, s, ends.hangers)).value();
    const auto found = critical_speeds(mesh, Whirl::still, static_cast<int>(ends.beta_l_squared.size())).value();
    ASSERT_EQ(found.speeds.size(), ends.beta_l_squared.size());
    for (std::size_t i = 0; i < found.speeds.size(); ++i)
      EXPECT_NEAR(found.speeds[i].radians_per_second() / (ends.beta_l_squared[i] / 400 * wave_speed(s)), 1, 2e-4);
  }
}

// Source: (pi/L)² sqrt(E I/m), hexagon 50 mm across flats, L = 2 m, E = 207 GPa, 7850 kg/m³: 1594.227 r/min (plain beam); shear and
// rotary inertia take (pi/L)² I/A (1 + E/(k G))/2 of it off still: W. Weaver, S. Timoshenko, D. Young, Vibration Problems.
// Tolerance: 1e-5 relative.
TEST(CriticalSpeeds, BareHexagonBar) {
  const Section s = slender();
  const Mesh plain = Mesh::make(bar(metres(2), without_shear(s), {{Length{}}, {metres(2)}})).value();
  const double rotary = std::pow(std::numbers::pi / 2, 2) * s.second_moment.si() / s.area.si();
  const double got = critical_speeds(plain, Whirl::still, 1)->speeds[0].turns_per_minute();
  EXPECT_NEAR(got / (1594.227 * (1 - rotary / 2)), 1, 1e-5);
  const Mesh mesh = Mesh::make(bar(metres(2), s, {{Length{}}, {metres(2)}})).value();
  const double with = critical_speeds(mesh, Whirl::still, 1)->speeds[0].turns_per_minute();
  const double softer = 2 * 1.3 / s.shear_factor(0.3);
  EXPECT_NEAR(with / (1594.227 * (1 - rotary / 2 * (1 + softer))), 1, 1e-5);
}

// Source: Shigley, 9th ed., example 7-5: 1 in shaft, 31 in span, E = 30e6 psi, 35 lbf at 7 in and 55 lbf at 20 in. Influence
// coefficients 2.0608409e-4, 2.2236330e-4, 3.5340384e-4 in/lbf; both criticals are the roots of the 2 x 2 determinant; Rayleigh's
// from deflections under the weights is above the lower root, Dunkerley's below.
// Tolerance: 1e-6 relative of the coefficients; speeds 1e-6 of the determinant's.
TEST(CriticalSpeeds, TwoWeightsOfTheTextBook) {
  Section s = without_shear(tube_section({inches(1), Length{}}).value());
  Beam b = bar(inches(31), s, {{Length{}}, {inches(31)}});
  b.elastic = {Pressure::from_si(30e6 * 6894.757293168361), 0.3, Density::from_si(1e-6)};
  const double kg = 0.45359237, a11 = 2.0608409e-4, a12 = 2.2236330e-4, a22 = 3.5340384e-4;
  b.bodies = {{inches(7), kilograms(35 * kg), {}, {}, {}, 0, {}}, {inches(20), kilograms(55 * kg), {}, {}, {}, 0, {}}};
  const Mesh mesh = Mesh::make(b).value();
  const Load one{inches(7), pounds_force(1), degrees(0)};
  const auto bent = bent_at_rest(mesh, std::span{&one, 1}, false).value();
  EXPECT_NEAR(bent.line[static_cast<std::size_t>(*mesh.node_at(inches(7)))].out / inches(1) / a11, 1, 1e-6);
  EXPECT_NEAR(bent.line[static_cast<std::size_t>(*mesh.node_at(inches(20)))].out / inches(1) / a12, 1, 1e-6);
  const double g = 9.80665 / 0.0254, m1 = 35 / g, m2 = 55 / g;  // lbf s²/in
  const double half = (a11 * m1 + a22 * m2) / 2, det = m1 * m2 * (a11 * a22 - a12 * a12);
  const double first = 1 / std::sqrt(half + std::sqrt(half * half - det)),
               second = 1 / std::sqrt(half - std::sqrt(half * half - det));
  const auto found = rad_s(critical_speeds(mesh, Whirl::still, 2).value());
  EXPECT_NEAR(found[0] / first, 1, 1e-6);
  EXPECT_NEAR(found[1] / second, 1, 1e-6);
  const double rayleigh = std::sqrt(g * 2.17759832 / 0.05398180), dunkerley = 1 / std::sqrt(2 * half);
  EXPECT_LT(found[0], rayleigh);
  EXPECT_GT(found[0], dunkerley);
  EXPECT_NEAR(found[0] / rayleigh, 1, 0.005);
}

/// A disk in the middle of a weightless shaft between hangers, or at its free end.
struct OneDisk {
  double length = 1, across = 0.08, along = 0.1, mass = 12, with_shaft = 0, own_spin = 0;
};
Mesh overhung(const OneDisk& d) {
  Beam b =
      bar(metres(d.length), without_shear(tube_section({millimetres(30), Length{}}).value()), {{Length{}, {}, true}});
  b.elastic.density = Density::from_si(1e-6);
  b.bodies = {{metres(d.length),
               kilograms(d.mass),
               {},
               kilogram_square_metres(d.across),
               kilogram_square_metres(d.along),
               d.with_shaft,
               radians_per_second(d.own_spin)}};
  return Mesh::make(b).value();
}
constexpr double kBareShaft = 1e6;  // rad/s; the light shaft's own are all above this.
/// Determinant of the overhung disk: (k11 - m w²)(k22 - I w² + w G) - k12², by the closed form of the cantilever.
double determinant(const OneDisk& d, double turn, double w) {
  const double ei = kSteel.youngs_modulus.si() * std::numbers::pi / 64 * std::pow(0.03, 4), l = d.length;
  const double k11 = 12 * ei / (l * l * l), k12 = -6 * ei / (l * l), k22 = 4 * ei / l;
  const double inertia = d.across - turn * d.with_shaft * d.along, g = turn * d.own_spin * d.along;
  return (k11 - d.mass * w * w) * (k22 - inertia * w * w + w * g) - k12 * k12;
}

// Source: two-by-two determinant of a disk on the end of a weightless cantilever (den Hartog, Mechanical Vibrations, ch. 6.14:
// forward whirl of a disk that turns with the shaft has I_t - I_p, backward I_t + I_p). Signs of the closed form either side of each
// speed that was found, and of no other.
// Tolerance: 1e-8 relative either side.
TEST(CriticalSpeeds, GyroscopicsOfAnOverhungDisk) {
  const OneDisk all[] = {{},
                         {.with_shaft = 1},
                         {.along = 0.15, .with_shaft = 1},
                         {.with_shaft = -0.1},
                         {.own_spin = 8},
                         {.own_spin = 60},
                         {.own_spin = -25}};
  for (const OneDisk& d : all)
    for (const double turn : {1.0, -1.0}) {
      const Mesh mesh = overhung(d);
      auto found = rad_s(critical_speeds(mesh, turn > 0 ? Whirl::forward : Whirl::backward, 2).value());
      std::erase_if(found, [](double w) { return w > kBareShaft; });
      int crossings = 0;
      for (double w = 1e-3; w < 2e3; w *= 1.001)
        crossings += determinant(d, turn, w) * determinant(d, turn, w * 1.001) < 0 ? 1 : 0;
      EXPECT_EQ(static_cast<int>(found.size()), crossings);
      for (const double w : found)
        EXPECT_LT(determinant(d, turn, w * (1 - 1e-8)) * determinant(d, turn, w * (1 + 1e-8)), 0) << w;
    }
}

TEST(CriticalSpeeds, ThinDiskThatTurnsWithTheShaftHasOneForward) {
  const auto found = rad_s(critical_speeds(overhung({.along = 0.159, .with_shaft = 1}), Whirl::forward, 2).value());
  EXPECT_LT(found[0], kBareShaft);
  EXPECT_GT(found[1], kBareShaft);
}

TEST(CriticalSpeeds, SayHowFarTheyLookedWhereThereAreFewer) {
  Beam b = bar(metres(2), slender(), {{Length{}}, {metres(2)}});
  b.longest_element = metres(0.5);
  const Mesh mesh = Mesh::make(b).value();
  const auto found = critical_speeds(mesh, Whirl::still, 6).value();
  EXPECT_LT(found.speeds.size(), 6U);
  EXPECT_EQ(found.none_up_to.value(), mesh.fastest());
}

// Source: the count is exact whatever the mesh; two equal spans with a rigid hanger between have pairs that nearly meet.
// Tolerance: none missed: the antisymmetric ones are those of one span alone, 1e-8 relative.
TEST(CriticalSpeeds, NoneOfACloseBunchIsMissed) {
  const Section s = slender();
  const Mesh two = Mesh::make(bar(metres(4), s, {{Length{}}, {metres(2)}, {metres(4)}})).value();
  const Mesh one = Mesh::make([&] {
                     Beam b = bar(metres(2), s, {{Length{}}, {metres(2)}});
                     b.longest_element = metres(4.0 / 64);
                     return b;
                   }())
                       .value();
  const auto both = rad_s(critical_speeds(two, Whirl::forward, 6).value());
  const auto single = rad_s(critical_speeds(one, Whirl::forward, 3).value());
  ASSERT_EQ(both.size(), 6U);
  for (std::size_t i = 0; i < 3; ++i) EXPECT_NEAR(both[2 * i] / single[i], 1, 1e-8);
}

TEST(CriticalSpeeds, AreTheSameBitsInEveryBuild) {
  const Mesh mesh = Mesh::make(long_twenty_four()).value();
  for (const Whirl whirl : {Whirl::forward, Whirl::backward}) {
    const auto base = rad_s(critical_speeds(mesh, whirl, 6, lanes::Width::baseline).value());
    ASSERT_EQ(base.size(), 6U);
    for (const lanes::Width width : lanes::kEveryWidth) {
      if (!lanes::runs_here(width)) continue;
      EXPECT_EQ(rad_s(critical_speeds(mesh, whirl, 6, width).value()), base);
    }
  }
}

TEST(CriticalSpeeds, NearTheRunningSpeedAreNamed) {
  const auto at = [](double w) { return radians_per_second(w); };
  const auto near = within_keep_off({at(50), at(76), at(124), at(126)}, at(100));
  ASSERT_EQ(near.size(), 2U);
  EXPECT_DOUBLE_EQ(near[0].apart, -0.24);
  EXPECT_EQ(near[1].speed, at(124));
}

TEST(CriticalSpeeds, RefuseACountOutOfRange) {
  const Mesh mesh = overhung({});
  EXPECT_EQ(critical_speeds(mesh, Whirl::still, 0).error().field, "count");
  EXPECT_EQ(critical_speeds(mesh, Whirl::still, 65).error().field, "count");
}

}  // namespace
}  // namespace flatwise::beam
