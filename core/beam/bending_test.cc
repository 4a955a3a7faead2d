#include "core/beam/bending.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/beam/beam_samples.h"
#include "core/beam/stress.h"
#include "core/dynamics/wobble.h"
#include "core/units/gravity.h"

namespace flatwise::beam {
namespace {

const LinePoint& point_at(const Mesh& mesh, const Bent& bent, double z_m) {
  return bent.line[static_cast<std::size_t>(mesh.node_at(metres(z_m)).value())];
}

// Source: simply supported beam, force F at the middle: F L³/48 E I + F L/4 k G A (shear), moment F L/4, reactions F/2; under its
// own weight 5 w L⁴/384 E I + w L²/8 k G A, moment w L²/8. Any
// handbook; shear by Timoshenko.
// Tolerance: 1e-9 relative.
TEST(BentAtRest, IsTheHandbookBeam) {
  const Section s = slender();
  const double l = 1.5, f = 800, ei = kSteel.youngs_modulus.si() * s.second_moment.si();
  const double kga = s.shear_factor(0.3) * kSteel.youngs_modulus.si() / 2.6 * s.area.si();
  Beam b = bar(metres(l), s, {{Length{}}, {metres(l)}});
  b.places = {metres(l / 2)};
  const Mesh mesh = Mesh::make(b).value();
  const Load middle{metres(l / 2), newtons(f), degrees(90)};
  const Bent bent = bent_at_rest(mesh, std::span{&middle, 1}, false).value();
  const LinePoint& m = point_at(mesh, bent, l / 2);
  EXPECT_NEAR(m.out.si() / (f * l * l * l / 48 / ei + f * l / 4 / kga), 1, 1e-9);
  EXPECT_NEAR(m.direction.degrees(), 90, 1e-9);
  EXPECT_NEAR(m.moment.si(), f * l / 4, 1e-9 * f);
  EXPECT_NEAR(m.shear.si(), f / 2, 1e-7);
  EXPECT_NEAR(bent.reactions[0].size.si(), f / 2, 1e-7);
  EXPECT_NEAR(bent.reactions[1].direction.degrees(), 90, 1e-9);
  const double w = kSteel.density.si() * s.area.si() * kGravity;
  const Bent own = bent_at_rest(mesh, {}).value();
  const LinePoint& o = point_at(mesh, own, l / 2);
  EXPECT_NEAR(o.out.si() / (5 * w * std::pow(l, 4) / 384 / ei + w * l * l / 8 / kga), 1, 1e-9);
  EXPECT_NEAR(o.moment.si() / (w * l * l / 8), 1, 1e-9);
  EXPECT_NEAR(own.reactions[0].size.si() / (w * l / 2), 1, 1e-9);
  EXPECT_NEAR(std::abs(own.reactions[0].direction.degrees()), 180, 1e-9);
}

// Source: cantilever, force at the end: F L³/3 E I + F L/k G A, couple F L; any handbook, shear by Timoshenko.
// Tolerance: 1e-9 relative; 1e-7 of the force for what balances the clamp.
TEST(BentAtRest, IsTheHandbookCantilever) {
  const Section s = slender();
  const double l = 0.8, f = 300, ei = kSteel.youngs_modulus.si() * s.second_moment.si();
  const double kga = s.shear_factor(0.3) * kSteel.youngs_modulus.si() / 2.6 * s.area.si();
  const Mesh mesh = Mesh::make(bar(metres(l), s, {{Length{}, {}, true}})).value();
  const Load end{metres(l), newtons(f), degrees(180)};
  const Bent bent = bent_at_rest(mesh, std::span{&end, 1}, false).value();
  EXPECT_NEAR(bent.greatest_out().out.si() / (f * l * l * l / 3 / ei + f * l / kga), 1, 1e-9);
  EXPECT_NEAR(bent.reactions[0].couple.si(), f * l, 1e-7 * f);
  EXPECT_NEAR(bent.reactions[0].size.si(), f, 1e-7 * f);
}

// Source: two equal spans on three rigid hangers, even load w: 3/8, 10/8, 3/8 of w L (three-moment equation, any handbook; plain
// beam); with hangers that give much more than the shaft bends, thirds of the whole load.
// Tolerance: 1e-6 relative; thirds 1e-3.
TEST(BentAtRest, SharesBetweenThreeHangers) {
  const Section s = without_shear(slender());
  const double l = 3, w = kSteel.density.si() * s.area.si() * kGravity;
  const auto reactions = [&](std::optional<Stiffness> k) {
    const Mesh mesh = Mesh::make(bar(metres(2 * l), s, {{Length{}, k}, {metres(l), k}, {metres(2 * l), k}})).value();
    const Bent bent = bent_at_rest(mesh, {}).value();
    return std::array{bent.reactions[0].size.si(), bent.reactions[1].size.si(), bent.reactions[2].size.si()};
  };
  const auto rigid = reactions(std::nullopt), stiff = reactions(Stiffness::from_si(1e13)),
             soft = reactions(Stiffness::from_si(10));
  EXPECT_NEAR(rigid[0] / (3 * w * l / 8), 1, 1e-6);
  EXPECT_NEAR(rigid[1] / (10 * w * l / 8), 1, 1e-6);
  EXPECT_NEAR(stiff[1] / rigid[1], 1, 1e-6);
  for (const double r : soft) EXPECT_NEAR(r / (2 * w * l / 3), 1, 1e-3);
}

/// A leaning disk on a stiff, light shaft between two hangers 1.2 m apart.
struct Skewed {
  Mesh mesh;
  Turning turning;
  Body body;
};
Skewed skewed(double lean, double with_shaft, double offset_m = 0, double own_spin = 0) {
  Beam b = bar(metres(1.2), tube_section({millimetres(400), Length{}}).value(), {{Length{}}, {metres(1.2)}});
  b.elastic.density = Density::from_si(1e-6);
  b.elastic.youngs_modulus = gigapascals(1e6);
  const Body body{metres(0.6),
                  kilograms(10),
                  metres(offset_m),
                  kilogram_square_metres(0.1 + 10 * offset_m * offset_m),
                  kilogram_square_metres(0.2),
                  with_shaft,
                  radians_per_second(own_spin)};
  b.bodies = {body};
  return {Mesh::make(b).value(), turning_of(body, degrees(lean), degrees(30)), body};
}

// Source: skewed disk m = 10 kg, r = 0.2 m, 5° on a shaft at 540 r/min: 27.764189 N m, reactions at 1.2 m 23.136824 N each, opposite
// (angular momentum about the middle; Huston and Liu); held from turning 27.976298 N m.
// Tolerance: 1e-6 relative; the shaft is so stiff that it does not bend.
TEST(BentTurning, SkewedDiskPressesItsHangers) {
  const Skewed disk = skewed(5, std::cos(degrees(5).radians()));
  const Bent bent = bent_turning(disk.mesh, std::span{&disk.turning, 1}, turns_per_minute(540)).value();
  for (const Reaction& r : bent.reactions) EXPECT_NEAR(r.size.si() / 23.136824, 1, 1e-6);
  const double apart = (bent.reactions[1].direction - bent.reactions[0].direction).degrees();
  EXPECT_NEAR(std::abs(apart), 180, 1e-6);
  const Skewed held = skewed(5, -(1 - std::cos(degrees(5).radians())));
  const Bent other = bent_turning(held.mesh, std::span{&held.turning, 1}, turns_per_minute(540)).value();
  EXPECT_NEAR(other.reactions[0].size.si() / (27.976298 / 1.2), 1, 1e-6);
  // A thin disk that turns straightens itself: its couple points the other way from that of one that is held.
  EXPECT_NEAR(std::abs((other.reactions[0].direction - bent.reactions[0].direction).degrees()), 180, 1e-6);
}

// Source: rotating_force and rotating_couple of core/dynamics, themselves held against 14,000 point masses; statics of two hangers.
// Tolerance: 1e-12 relative for the loads; 1e-6 for the reactions of the stiff shaft.
TEST(BentTurning, TakesForceAndCoupleAsTheRotorHasThem) {
  const Angle lean = degrees(7);
  const AngularSpeed speed = turns_per_minute(700), spin = radians_per_second(9);
  const Skewed rotor = skewed(7, 0, 0.02, 9);
  const double w = speed.radians_per_second();
  const double force = dynamics::rotating_force({speed, lean, rotor.body.mass, rotor.body.mass_offset})->si();
  const double couple = dynamics::rotating_couple({speed, lean, rotor.body.across, rotor.body.along, spin})->si();
  EXPECT_NEAR(rotor.turning.unbalance.si() * w * w / force, 1, 1e-12);
  EXPECT_NEAR((rotor.turning.couple_by_square_kg_m2 * w * w + rotor.turning.couple_by_speed_kg_m2_s * w) / couple, 1,
              1e-12);
  const Bent bent = bent_turning(rotor.mesh, std::span{&rotor.turning, 1}, speed).value();
  EXPECT_NEAR(bent.reactions[0].size.si() / std::abs(force / 2 - couple / 1.2), 1, 1e-6);
  EXPECT_NEAR(bent.reactions[1].size.si() / (force / 2 + couple / 1.2), 1, 1e-6);
}

// Source: three unbalances 40 at 30° z = 0.1, 18 at 150° z = 0.3, 28 at 270° z = 0.5 kg mm between planes at 0 and 0.6 m: balance
// weights 26.764404 at 218.0603° and 15.631165 at 82.5723° (force and moment balance); the hangers feel the opposite.
// Tolerance: 1e-6 relative, 1e-4 degrees.
TEST(BentTurning, TwoPlanesOfAStiffRotor) {
  Beam b = bar(metres(0.6), tube_section({millimetres(400), Length{}}).value(), {{Length{}}, {metres(0.6)}});
  b.elastic = {gigapascals(1e6), 0.3, Density::from_si(1e-6)};
  b.places = {metres(0.1), metres(0.3), metres(0.5)};
  const Mesh mesh = Mesh::make(b).value();
  const Turning all[] = {{metres(0.1), degrees(30), Unbalance::from_si(0.040)},
                         {metres(0.3), degrees(150), Unbalance::from_si(0.018)},
                         {metres(0.5), degrees(270), Unbalance::from_si(0.028)}};
  const double w = 50;
  const Bent bent = bent_turning(mesh, all, radians_per_second(w)).value();
  const auto turn = [](double d) { return d < 0 ? d + 360 : d; };
  EXPECT_NEAR(bent.reactions[0].size.si() / (w * w) * 1e3 / 26.764404, 1, 1e-6);
  EXPECT_NEAR(turn(bent.reactions[0].direction.degrees()), 218.0603 - 180, 1e-4);
  EXPECT_NEAR(bent.reactions[1].size.si() / (w * w) * 1e3 / 15.631165, 1, 1e-6);
  EXPECT_NEAR(turn(bent.reactions[1].direction.degrees()), 82.5723 + 180, 1e-4);
}

// Source: Jeffcott's rotor, a point mass in the middle of a light shaft, unbalance m e: out e w²/(w_c² - w²), w_c² = 48 E I/(m L³).
// Below the critical speed outwards, above it inwards (H. H. Jeffcott, Phil. Mag. 37, 1919; any text).
// Tolerance: 1e-6 relative.
TEST(BentTurning, JeffcottsRotorTurnsItsHeavySideIn) {
  const Section s = without_shear(slender());
  Beam b = bar(metres(1), s, {{Length{}}, {metres(1)}});
  b.elastic.density = Density::from_si(1e-6);
  b.bodies = {{metres(0.5), kilograms(20), {}, {}, {}, 1, {}}};
  const Mesh mesh = Mesh::make(b).value();
  const double critical = std::sqrt(48 * kSteel.youngs_modulus.si() * s.second_moment.si() / 20);
  const Turning heavy{metres(0.5), Angle{}, Unbalance::from_si(20 * 1e-4)};
  for (const double part : {0.3, 0.8, 1.2, 2.5}) {
    const double w = part * critical;
    const Bent bent = bent_turning(mesh, std::span{&heavy, 1}, radians_per_second(w)).value();
    const LinePoint& m = point_at(mesh, bent, 0.5);
    EXPECT_NEAR(m.out.si() / std::abs(1e-4 * part * part / (1 - part * part)), 1, 1e-6);
    EXPECT_NEAR(std::abs(m.direction.degrees()), part < 1 ? 0 : 180, 1e-9);
    // What the hangers feel together is the stiffness times the bend.
    EXPECT_NEAR((bent.reactions[0].size + bent.reactions[1].size).si() / (20 * critical * critical * m.out.si()), 1,
                1e-5);
  }
}

// Source: balance of forces: what the hangers feel is the sum of all loads and inertia forces; a hanger between rotors, rotors at
// hangers, offset and spin. Tolerance: 1e-7 of the largest.
TEST(BentTurning, ReactionsBalanceTheLoads) {
  Beam b = long_twenty_four();
  b.hangers[1].stiffness.reset();
  b.bodies[3].at = b.hangers[1].at;
  const Mesh mesh = Mesh::make(b).value();
  std::vector<Turning> turning;
  for (std::size_t i = 0; i < b.bodies.size(); ++i)
    turning.push_back(turning_of(b.bodies[i], degrees(5), degrees(60.0 * static_cast<double>(i * i % 6))));
  const double w = 40;
  const Bent bent = bent_turning(mesh, turning, radians_per_second(w)).value();
  Phasor left, pressed;
  for (const Reaction& r : bent.reactions) pressed += std::polar(r.size.si(), r.direction.radians());
  for (const Turning& t : turning) left += std::polar(t.unbalance.si() * w * w, t.azimuth.radians());
  for (std::size_t i = 0; i < b.bodies.size(); ++i) {
    const LinePoint& p = bent.line[static_cast<std::size_t>(mesh.body_node(static_cast<int>(i)))];
    left += std::polar(b.bodies[i].mass.si() * w * w * p.out.si(), p.direction.radians());
  }
  for (std::size_t i = 0; i + 1 < bent.line.size(); ++i) {  // The shaft's own mass, by its trapezoids.
    const Element& e = mesh.element(static_cast<int>(i));
    const Phasor a = std::polar(bent.line[i].out.si(), bent.line[i].direction.radians()),
                 c = std::polar(bent.line[i + 1].out.si(), bent.line[i + 1].direction.radians());
    left += 0.5 * e.mass_kg_m * e.length_m * w * w * (a + c);
  }
  EXPECT_NEAR(std::abs(left - pressed) / std::abs(pressed), 0,
              2e-3);  // Offsets tilt the centroids a little; trapezoids.
}

// Source: sigma = M/W at a corner, tau = T/W_t; hexagon 50 mm: W = 5/48 b³, 1000 N m gives 42.62725 MPa; von Mises' rule.
// Tolerance: 1e-6 relative.
TEST(Stresses, UseTheCornerAndTheTorqueBetweenItsEnds) {
  const Section s = slender();
  Beam b = bar(metres(2), s, {{Length{}}, {metres(2)}});
  b.places = {metres(1)};
  const Mesh mesh = Mesh::make(b).value();
  const Load middle{metres(1), newtons(1000), degrees(180)};
  const Bent rest = bent_at_rest(mesh, std::span{&middle, 1}, false).value();
  const Turning none{metres(1), Angle{}, Unbalance{}};
  const Bent turning = bent_turning(mesh, std::span{&none, 1}, radians_per_second(10)).value();
  const TorqueAt torques[] = {{metres(2), newton_metres(1000)}, {metres(1), newton_metres(-1000)}};
  const auto all = stresses(mesh, rest, turning, torques).value();
  const auto at = [&](double z) { return all[static_cast<std::size_t>(*mesh.node_at(metres(z)))]; };
  EXPECT_NEAR(at(1).at_rest.si() / (500 / (5.0 / 48 * 1.25e-4)), 1, 1e-6);
  EXPECT_NEAR(at(1).torsion.si() / 42.62725e6, 1, 1e-6);
  EXPECT_NEAR(at(0.5).torsion.si(), 0, 1e-3);
  EXPECT_NEAR(at(1).equivalent.si() / std::hypot(at(1).at_rest.si(), std::sqrt(3) * 42.62725e6), 1, 1e-6);
  EXPECT_EQ(at(1).turning.si(), 0);
}

std::string refused(const Beam& beam) {
  const auto mesh = Mesh::make(beam);
  return mesh ? "none" : std::string{mesh.error().code.id()} + " " + mesh.error().field;
}

TEST(Mesh, RefusesWhatCannotStandOrCannotBe) {
  const Section s = slender();
  const Beam good = bar(metres(2), s, {{Length{}}, {metres(2)}});
  EXPECT_EQ(refused(good), "none");
  Beam b = good;
  b.hangers.clear();
  EXPECT_EQ(refused(b), "beam.no_hanger hanger");
  b.hangers = {{metres(1), Stiffness::from_si(1e7)}};
  EXPECT_EQ(refused(b), "beam.turns_about hanger");
  b.hangers.push_back({metres(1)});
  EXPECT_EQ(refused(b), "beam.turns_about hanger");
  b = good;
  b.hangers[1].at = metres(2.1);
  EXPECT_EQ(refused(b), "input.outside hanger[2].at");
  b = good;
  b.hangers[1].stiffness = Stiffness{};
  EXPECT_EQ(refused(b), "input.not_above_nought hanger[2].stiffness");
  b = good;
  b.bodies = {{metres(1), kilograms(-1), {}, {}, {}, 1, {}}};
  EXPECT_EQ(refused(b), "input.negative body[1].mass");
  b.bodies = {{metres(1), kilograms(1), metres(0.1), {}, {}, 1, {}}};
  EXPECT_EQ(refused(b), "beam.inertias body[1].across");
  b.bodies = {{metres(1), kilograms(1), {}, kilogram_square_metres(0.1), kilogram_square_metres(0.21), 1, {}}};
  EXPECT_EQ(refused(b), "beam.inertias body[1].across");
  b = good;
  b.longest_element = millimetres(0.05);
  EXPECT_EQ(refused(b), "beam.too_many_nodes longest-element");
  b = good;
  b.stretches.clear();
  EXPECT_EQ(refused(b), "beam.no_length shaft");
  b = good;
  b.elastic.density = Density{};
  EXPECT_EQ(refused(b), "input.not_above_nought density");
}

TEST(BentTurning, RefusesSpeedsBeyondItsElements) {
  const Mesh mesh = Mesh::make(bar(metres(2), slender(), {{Length{}}, {metres(2)}})).value();
  const Turning none{metres(1), Angle{}, Unbalance{}};
  const AngularSpeed over = radians_per_second(mesh.fastest().radians_per_second() * 1.01);
  EXPECT_EQ(bent_turning(mesh, std::span{&none, 1}, over).error().code.id(), "beam.too_coarse");
  EXPECT_EQ(bent_turning(mesh, std::span{&none, 1}, {}).error().field, "speed");
  const Turning off{metres(0.777), Angle{}, Unbalance{}};
  EXPECT_EQ(bent_turning(mesh, std::span{&off, 1}, radians_per_second(5)).error().code.id(), "beam.no_place");
}

}  // namespace
}  // namespace flatwise::beam
