#include "core/dynamics/wobble.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "core/dynamics/particle_samples.h"

namespace flatwise::dynamics {
namespace {

const double kNaN = std::numeric_limits<double>::quiet_NaN();

CoupleOf thin_disk(double lean_degrees, Spinning spinning) {
  // 10 kg, radius 0.2 m, 540 /min: I_p = m r²/2, I_t = m r²/4.
  const AngularSpeed speed = turns_per_minute(540);
  const Angle lean = degrees(lean_degrees);
  return {speed, lean, kilogram_square_metres(0.1), kilogram_square_metres(0.2), spin_of(spinning, speed, lean)};
}

// Source: skewed disk on a shaft, (I_t - I_p) W² sin a cos a (Huston and Liu, Dynamics of Mechanical Systems, problem
// 7.5.10, for the inertias): 10 kg, 0.2 m, 540 /min, 5°: 27.764189 N m; at bearings 1.2 m apart 23.136824 N each.
// Tolerance: 1e-6 relative, digits given.
TEST(RotatingCouple, OfALockedDiskIsTheTextbookSkewedDisk) {
  const double couple = rotating_couple(thin_disk(5, Spinning::with_shaft))->si();
  EXPECT_NEAR(-couple, 27.764189, 28e-6);
  EXPECT_NEAR(-couple / 1.2, 23.136824, 24e-6);
}

// Source: derived apart from this code for a rotor held from turning, W² sin a (I_t cos a + I_p (1 - cos a)): 16.758676 N m at
// 3°, 27.976298 N m at 5°, in the opposite sense to the locked disk; the particle model below is its review.
// Tolerance: 1e-6 relative, digits given.
TEST(RotatingCouple, OfAHeldDiskHasTheOtherSense) {
  EXPECT_NEAR(rotating_couple(thin_disk(3, Spinning::held))->si(), 16.758676, 17e-6);
  EXPECT_NEAR(rotating_couple(thin_disk(5, Spinning::held))->si(), 27.976298, 28e-6);
}

// Source: transverse inertia of a thin disk tilted by t about a diameter seen from the shaft, m r²/4 (1 + cos² t): m = 10, r = 0.2, 5°: 0.199240388
// (the same textbook); by the particle cloud of a disk.
// Tolerance: 1e-9 absolute on the closed form used here.
TEST(SkewedDisk, InertiaOfATiltedDisk) {
  const double t = degrees(5).radians(), it = 0.1, ip = 0.2;
  EXPECT_NEAR(it * std::sin(t) * std::sin(t) + ip * std::cos(t) * std::cos(t), 0.199240388, 1e-9);
}

// Source: the invented rotor of W26: 0.085 and 0.160 kg m², 480 /min, 5°, rolling at 6 km/h on 230 mm: 13.57 N m; held 13.9 ft·lb.
// Tolerance: half of the last digit given.
TEST(RotatingCouple, MeetsW26) {
  CoupleOf of{turns_per_minute(480), degrees(5), kilogram_square_metres(0.085), kilogram_square_metres(0.160),
              radians_per_second(6 / 3.6 / 0.23)};
  EXPECT_NEAR(rotating_couple(of)->si(), 13.57, 0.005);
  of.spin = spin_of(Spinning::held, of.speed, of.lean);
  EXPECT_NEAR(*rotating_couple(of) / foot_pounds(1), 13.9, 0.05);
}

// Source: a cloud of 14,000 point masses moved by its rotation alone (particle_samples.h), Newton's law by differences in time.
// Tolerance: 1e-7 relative; the differences are good to (W h)²/12 = 1e-9.
TEST(RotatingCouple, MeetsFourteenThousandParticles) {
  const Cloud cloud = seven_armed_cloud(2000, 5);
  ASSERT_EQ(cloud.points.size(), 14000U);
  for (const double lean_degrees : {2.0, 5.0, 10.0})
    for (const double spin : {7.25, -3.0, 0.0, 50.0}) {
      const Motion motion{50.265L, degrees(lean_degrees).radians(), 0.7L, spin};
      const CoupleOf of{radians_per_second(50.265), degrees(lean_degrees),
                        Inertia::from_si(static_cast<double>(cloud.across())),
                        Inertia::from_si(static_cast<double>(cloud.along())), radians_per_second(spin)};
      const double couple = rotating_couple(of)->si();
      const double force = rotating_force({of.speed, of.lean, kilograms(static_cast<double>(cloud.mass())),
                                           metres(static_cast<double>(cloud.offset()))})
                               ->si();
      for (const long double t : {0.0L, 0.03L}) {
        const Pressed p = pressed(cloud, motion, t);
        const long double at = motion.azimuth + motion.speed * t;
        // Out at the tilt azimuth, and across it: a force out at z > 0 turns about the azimuth plus a quarter turn.
        EXPECT_NEAR(static_cast<double>(p.force[0] * std::cos(at) + p.force[1] * std::sin(at)), force,
                    1e-7 * std::abs(force));
        EXPECT_NEAR(static_cast<double>(-p.force[0] * std::sin(at) + p.force[1] * std::cos(at)), 0,
                    1e-7 * std::abs(force));
        EXPECT_NEAR(static_cast<double>(-p.moment[0] * std::sin(at) + p.moment[1] * std::cos(at)), couple, 1e-7 * 20)
            << lean_degrees << ' ' << spin;
        EXPECT_NEAR(static_cast<double>(p.moment[0] * std::cos(at) + p.moment[1] * std::sin(at)), 0, 1e-7 * 20);
      }
    }
}

// A couple without the spin's share, or with its sign turned, must be seen by the particles' tolerance.
// Source: the two terms of the formula apart.
// Tolerance: the spin's share is over a million times what the particles allow.
TEST(RotatingCouple, AForgottenSpinWouldBeSeen) {
  CoupleOf of{radians_per_second(50.265), degrees(5), kilogram_square_metres(0.085), kilogram_square_metres(0.160),
              radians_per_second(7.25)};
  const double right = rotating_couple(of)->si();
  of.spin = {};
  EXPECT_GT(std::abs(rotating_couple(of)->si() - right), 1e6 * 1e-7 * 20);
}

TEST(Wobble, RefusesAndNamesTheField) {
  const CoupleOf good = thin_disk(5, Spinning::held);
  const auto field = [](const CoupleOf& of) { return rotating_couple(of).error().field; };
  CoupleOf bad = good;
  bad.lean = degrees(50);
  EXPECT_EQ(field(bad), "lean");
  bad = good;
  bad.lean = degrees(kNaN);
  EXPECT_EQ(field(bad), "lean");
  bad = good;
  bad.speed = radians_per_second(kNaN);
  EXPECT_EQ(field(bad), "speed");
  bad = good;
  bad.along = kilogram_square_metres(0.3);
  EXPECT_EQ(field(bad), "along");
  bad = good;
  bad.across = kilogram_square_metres(-0.3);
  EXPECT_EQ(field(bad), "across");
  EXPECT_EQ(rotating_force({turns_per_minute(480), degrees(5), kilograms(-1), metres(0)}).error().field, "mass");
  EXPECT_EQ(tine_swing({metres(0), degrees(5), turns_per_minute(480)}).error().field, "tip-radius");
}

// Source: geometry; the closed forms of amplitude, greatest speed and end acceleration against differences of tine_place over a turn.
// Tolerance: 1e-6 relative, 1e-4 rad steps.
TEST(TineSwing, MeetsDifferencesOfThePlace) {
  for (const double lean : {2.0, 5.0, 20.0}) {
    const TineOf of{millimetres(230), degrees(lean), turns_per_minute(480)};
    const auto swing = tine_swing(of).value();
    const double w = of.speed.radians_per_second(), h = 1e-4;
    const auto at = [&](double psi) { return tine_place(of.tip_radius, of.lean, radians(psi)).si(); };
    double furthest = 0, fastest = 0;
    for (int i = 0; i < 3600; ++i) {
      const double psi = i * std::numbers::pi / 1800;
      furthest = std::max(furthest, std::abs(at(psi)));
      fastest = std::max(fastest, std::abs(at(psi + h) - at(psi - h)) / (2 * h) * w);
    }
    EXPECT_NEAR(furthest, swing.amplitude.si(), 1e-6 * furthest);
    EXPECT_NEAR(fastest, swing.speed.si(), 1e-6 * fastest);
    EXPECT_NEAR((at(h) - 2 * at(0) + at(-h)) / (h * h) * w * w, swing.at_ends.si(), 1e-6 * swing.at_ends.si());
    EXPECT_NEAR(swing.frequency.hertz(), 8, 1e-12);
    // A point of the tip circle lies in the plane across the rotor axis, at the tip radius from the wobble centre.
    const double z = at(0.4), across = std::sqrt(0.23 * 0.23 - z * z), a = of.lean.radians();
    EXPECT_NEAR(across * std::sin(a) * std::cos(0.4) + z * std::cos(a), 0, 1e-12);
  }
}

// Source: a tine on a locked rotor never swings over the body; one on a held rotor swings at nearly the shaft's own frequency.
// Tolerance: 1e-12 absolute; (1 - cos a) of it.
TEST(RidingFrequency, OfLockedAndHeldRotors) {
  const AngularSpeed speed = turns_per_minute(480);
  EXPECT_NEAR(riding_frequency(speed, degrees(5), spin_of(Spinning::with_shaft, speed, degrees(5))).hertz(), 0, 1e-12);
  EXPECT_NEAR(riding_frequency(speed, degrees(5), spin_of(Spinning::held, speed, degrees(5))).hertz(), 8, 1e-12);
}

// Properties: the couple grows with the square of the speed when the spin grows with it; turns a minute and radians agree.
// Tolerance: 1e-12 relative.
TEST(RotatingCouple, PropertiesHold) {
  EXPECT_TRUE(rc::check("square of speed", [] {
    const double rpm = *rc::gen::inRange(10, 2000), lean = *rc::gen::inRange(1, 30), factor = *rc::gen::inRange(2, 9);
    const double it = *rc::gen::inRange(10, 300) / 1000.0, ip = it * *rc::gen::inRange(0, 200) / 100.0,
                 spin = *rc::gen::inRange(-50, 50);
    const CoupleOf once{turns_per_minute(rpm), degrees(lean), kilogram_square_metres(it), kilogram_square_metres(ip),
                        radians_per_second(spin)};
    const CoupleOf faster{radians_per_second(factor * rpm * std::numbers::pi / 30), degrees(lean), once.across,
                          once.along, radians_per_second(factor * spin)};
    const double a = rotating_couple(once)->si(), b = rotating_couple(faster)->si();
    RC_ASSERT(std::abs(b - factor * factor * a) <= 1e-10 * (std::abs(b) + 1));
  }));
}

}  // namespace
}  // namespace flatwise::dynamics
