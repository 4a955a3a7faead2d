// directions.h: unit vectors of n index positions, with the exact noughts, halves and opposites that such vectors have.
// Inside core/dynamics only.
#pragma once

#include <cmath>
#include <complex>
#include <numbers>
#include <vector>

namespace flatwise::dynamics {

/// e^{j 2 pi k/n} for k = 0..n-1, turned and mirrored from the first eighth of a turn: opposite ones cancel to nought exactly.
[[nodiscard]] inline std::vector<std::complex<double>> directions(int positions) {
  std::vector<std::complex<double>> out;
  for (int k = 0; k < positions; ++k) {
    const int quarter = 4 * k / positions, rest = 4 * k % positions;  // Angle = (quarter + rest / positions) of 90°.
    const auto sine_of = [&](int part) {
      if (part == 0) return 0.0;
      if (part == positions) return 1.0;
      if (3 * part == positions) return 0.5;
      const double angle = 0.5 * std::numbers::pi * part / positions;
      return 2 * part <= positions ? std::sin(angle)
                                   : std::cos(0.5 * std::numbers::pi * (positions - part) / positions);
    };
    const double cosine = sine_of(positions - rest), sine = sine_of(rest);
    const std::complex<double> turned[] = {{cosine, sine}, {-sine, cosine}, {-cosine, -sine}, {sine, -cosine}};
    out.push_back(turned[quarter]);
  }
  return out;
}

}  // namespace flatwise::dynamics
