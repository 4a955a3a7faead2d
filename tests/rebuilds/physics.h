// physics.h: the few laws the truth model needs, written down again from the textbooks: nothing of the program is used.
#pragma once

#include <array>
#include <vector>

namespace rebuilds {

[[nodiscard]] double normal_cdf(double z);
/// Two-sided 95 % quantile of Student's distribution; tables, 2 to 30 degrees of freedom, then 1.96.
[[nodiscard]] double student_95(int degrees_of_freedom);

/// A ring pressed into a hub.
struct Joint {
  double diameter = 0, width = 0, ring_inside = 0, hub_outside = 0;
  double ring_modulus = 207e9, ring_poisson = 0.3, hub_modulus = 0, hub_poisson = 0;
  double flattening = 0;  ///< Interference lost, on diameter.
};
/// Axial force to press it home: Lamé's thick rings, plane stress, friction over the whole seat.
[[nodiscard]] double force_to_press(const Joint& joint, double interference, double friction);

using Axis = std::array<double, 3>;
/// Axis of a bore that leans by `lean` towards the azimuth of its mark; z along the shaft, radians.
[[nodiscard]] Axis bore_axis(double lean, double azimuth);
[[nodiscard]] double angle_between(const Axis& a, const Axis& b);

/// What a gauge at its own temperature shows for a length true at 20 °C; expansion per kelvin.
[[nodiscard]] double shown_warm(double at_20, double part_c, double part_expansion, double gauge_c,
                                double gauge_expansion);

/// Middle 95 % of a sum of independent even tolerances, as distances from the sum of the nominals: one moving average a
/// part over a grid.
struct SumBand {
  double least = 0, greatest = 0;
};
[[nodiscard]] SumBand sum_band(const std::vector<double>& half_widths, double sigma);

/// Chance that value + normal error (sigma) + even error (over one step) lies below a bound.
[[nodiscard]] double chance_below(double value, double sigma, double step, double bound);

}  // namespace rebuilds
