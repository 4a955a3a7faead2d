#include "tests/rebuilds/physics.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rebuilds {

double normal_cdf(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

double student_95(int n) {
  constexpr double kTable[] = {4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201,
                               2.179, 2.160, 2.145, 2.131, 2.120, 2.110, 2.101, 2.093, 2.086, 2.080,
                               2.074, 2.069, 2.064, 2.060, 2.056, 2.052, 2.048, 2.045, 2.042};
  if (n < 2) return 12.71;
  return n > 30 ? 1.96 : kTable[n - 2];
}

double force_to_press(const Joint& j, double interference, double friction) {
  const double left = interference - j.flattening;
  if (!(left > 0)) return 0;
  const double d2 = j.diameter * j.diameter;
  // Radial give of a thick ring under unit pressure, over its diameter: outwards for the hub, inwards for the ring.
  const auto thick = [&](double other) { return (other * other + d2) / std::abs(other * other - d2); };
  const double hub = (thick(j.hub_outside) + j.hub_poisson) / j.hub_modulus;
  const double ring = (thick(j.ring_inside) - j.ring_poisson) / j.ring_modulus;
  const double pressure = left / j.diameter / (hub + ring);
  return friction * pressure * std::numbers::pi * j.diameter * j.width;
}

Axis bore_axis(double lean, double azimuth) {
  return {std::sin(lean) * std::cos(azimuth), std::sin(lean) * std::sin(azimuth), std::cos(lean)};
}

double angle_between(const Axis& a, const Axis& b) {
  const Axis cross{a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
  return std::atan2(std::hypot(cross[0], cross[1], cross[2]), a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
}

double shown_warm(double at_20, double part_c, double part_expansion, double gauge_c, double gauge_expansion) {
  return at_20 * (1 + part_expansion * (part_c - 20)) / (1 + gauge_expansion * (gauge_c - 20));
}

namespace {

constexpr int kCells = 1 << 11;

/// Density after one more even part of this half width (in cells): a moving average, ends shared out.
void spread(std::vector<double>& density, double half_cells) {
  std::vector<double> sum(density.size() + 1, 0);
  for (std::size_t i = 0; i < density.size(); ++i) sum[i + 1] = sum[i] + density[i];
  const auto up_to = [&](double x) {
    x = std::clamp(x, 0.0, static_cast<double>(density.size()));
    const auto whole = std::min(static_cast<std::size_t>(x), density.size() - 1);
    return sum[whole] + (x - static_cast<double>(whole)) * density[whole];
  };
  std::vector<double> out(density.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    const double middle = static_cast<double>(i) + 0.5;
    out[i] = (up_to(middle + half_cells) - up_to(middle - half_cells)) / (2 * half_cells);
  }
  density = std::move(out);
}

}  // namespace

SumBand sum_band(const std::vector<double>& half_widths, double sigma) {
  double reach = 0;
  for (const double w : half_widths) reach += w;
  reach = 1.02 * (reach + 5 * sigma);
  if (!(reach > 0)) return {};
  const double cell = 2 * reach / kCells;
  std::vector<double> density(kCells, 0.0);
  density[kCells / 2 - 1] = density[kCells / 2] = 0.5;
  for (const double w : half_widths)
    if (w > 0) spread(density, w / cell);
  if (sigma > 0)  // Four even parts of the same variance stand for a normal one; good to a percent here.
    for (int i = 0; i < 4; ++i) spread(density, sigma * std::sqrt(3.0 / 4) / cell);
  double below = 0;
  for (int i = 0; i < kCells; ++i) {
    below += density[static_cast<std::size_t>(i)];
    if (below < 0.975) continue;
    const double past = (below - 0.975) / density[static_cast<std::size_t>(i)];
    const double greatest = (i + 1 - past) * cell - reach;
    return {-greatest, greatest};
  }
  return {-reach, reach};
}

double chance_below(double value, double sigma, double step, double bound) {
  constexpr int kParts = 32;
  double sum = 0;
  for (int i = 0; i < kParts; ++i) {
    const double shifted = value + step * ((i + 0.5) / kParts - 0.5);
    sum += sigma > 0 ? normal_cdf((bound - shifted) / sigma) : shifted < bound ? 1.0 : 0.0;
  }
  return sum / kParts;
}

}  // namespace rebuilds
