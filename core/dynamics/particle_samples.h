// particle_samples.h: a rotor as a cloud of point masses moved by its rotation alone; forces by differences of places in time.
// Only for tests: it shares no formula with the kernels.
#pragma once

#include <array>
#include <cmath>
#include <random>
#include <vector>

namespace flatwise::dynamics {

using Point = std::array<long double, 3>;

struct Cloud {
  std::vector<Point> points;  ///< In the body: z along the rotor axis, origin the wobble centre.
  std::vector<long double> masses;

  [[nodiscard]] long double mass() const {
    long double sum = 0;
    for (const auto m : masses) sum += m;
    return sum;
  }
  [[nodiscard]] long double offset() const {
    long double sum = 0;
    for (std::size_t i = 0; i < points.size(); ++i) sum += masses[i] * points[i][2];
    return sum / mass();
  }
  [[nodiscard]] long double along() const {
    long double sum = 0;
    for (std::size_t i = 0; i < points.size(); ++i)
      sum += masses[i] * (points[i][0] * points[i][0] + points[i][1] * points[i][1]);
    return sum;
  }
  [[nodiscard]] long double across() const {
    long double sum = 0;
    for (std::size_t i = 0; i < points.size(); ++i)
      sum += masses[i] * (points[i][1] * points[i][1] + points[i][2] * points[i][2]);
    return sum;
  }
};

/// Rings of seven alike arms at random radii and heights: equal transverse inertias, an offset of the centroid.
inline Cloud seven_armed_cloud(int rings, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> even;
  Cloud cloud;
  for (int ring = 0; ring < rings; ++ring) {
    const long double radius = 0.05L + 0.2L * even(random), z = -0.02L + 0.06L * even(random),
                      turn = 6.3L * even(random);
    const long double mass = (0.5L + even(random)) * 11.6L / (7.0L * rings);
    for (int arm = 0; arm < 7; ++arm) {
      const long double angle = turn + 2 * std::acos(-1.0L) * arm / 7;
      cloud.points.push_back({radius * std::cos(angle), radius * std::sin(angle), z});
      cloud.masses.push_back(mass);
    }
  }
  return cloud;
}

struct Motion {
  long double speed, lean, azimuth, spin;  ///< spin: s, inertial angular velocity along the rotor axis.
};

/// Where a body point is at time t: turned about its own axis, leant, turned with the shaft.
inline Point place(const Point& body, const Motion& m, long double t) {
  const long double own = (m.spin - m.speed * std::cos(m.lean)) * t, shaft = m.azimuth + m.speed * t;
  const long double x = body[0] * std::cos(own) - body[1] * std::sin(own),
                    y = body[0] * std::sin(own) + body[1] * std::cos(own);
  const long double leant_x = x * std::cos(m.lean) + body[2] * std::sin(m.lean),
                    leant_z = -x * std::sin(m.lean) + body[2] * std::cos(m.lean);
  return {leant_x * std::cos(shaft) - y * std::sin(shaft), leant_x * std::sin(shaft) + y * std::cos(shaft), leant_z};
}

struct Pressed {
  Point force, moment;  ///< What the body presses on its shaft with, about the wobble centre.
};
inline Pressed pressed(const Cloud& cloud, const Motion& m, long double t) {
  const long double h = 1e-4L / m.speed;
  Pressed out{{0, 0, 0}, {0, 0, 0}};
  for (std::size_t i = 0; i < cloud.points.size(); ++i) {
    const Point before = place(cloud.points[i], m, t - h), here = place(cloud.points[i], m, t),
                after = place(cloud.points[i], m, t + h);
    Point f;
    for (std::size_t k = 0; k < 3; ++k) f[k] = -cloud.masses[i] * (after[k] - 2 * here[k] + before[k]) / (h * h);
    for (std::size_t k = 0; k < 3; ++k) out.force[k] += f[k];
    out.moment[0] += here[1] * f[2] - here[2] * f[1];
    out.moment[1] += here[2] * f[0] - here[0] * f[2];
    out.moment[2] += here[0] * f[1] - here[1] * f[0];
  }
  return out;
}

}  // namespace flatwise::dynamics
