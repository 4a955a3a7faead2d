// gauges.h: how well the truth model's gauges know what they read, by the textbook (GUM), for the chances it promises.
#pragma once

#include "tests/rebuilds/truth.h"

namespace rebuilds {

/// Standard uncertainties of one rotor's bore readings, four directions a plane.
struct BoreKnown {
  double scatter = 0;     ///< Of one reading: the gauge's study and its resolution.
  double common = 0;      ///< Calibration, setting ring, temperatures: the same in all readings.
  double factor = 0;      ///< Coverage of the rule: two-sided 95 %, or the one-sided factor.
  double resolution = 0;  ///< Of one reading; more readings do not make it smaller.
  double student = 0;     ///< Coverage with the degrees of freedom of the gauge's study: never less than the factor.
  double tail = 0;        ///< What a sound decision may be out by: 2.5 %, or 5 % one-sided.

  [[nodiscard]] double mean() const;   ///< Of a plane's mean diameter.
  [[nodiscard]] double size() const;   ///< Of its least or greatest diameter.
  [[nodiscard]] double oval() const;   ///< Of greatest less least.
  [[nodiscard]] double taper() const;  ///< Of the difference of two planes.
};
[[nodiscard]] BoreKnown bore_known(const Rebuild& rebuild, const Rotor& rotor);

/// Band of the press force as the bore readings and the friction known make it, when the bore reads wider by `wide` than it is
/// and its uncertainty `u` is taken off on the safe side.
struct ForceBand {
  double least = 0, greatest = 0;
};
[[nodiscard]] ForceBand force_band(const Rebuild& rebuild, const Rotor& rotor, double wide, double u);
[[nodiscard]] double force_expanded(const Gauge& gauge, double force);

/// The seated stack's 95 % band and what the gauge that reads it adds.
struct StackKnown {
  double nominal = 0, least = 0, greatest = 0;
  double true_length = 0;  ///< Parts alone.
  double sigma = 0, step = 0, expanded = 0;
};
[[nodiscard]] StackKnown stack_known(const Rebuild& rebuild);

/// Joints of the clamped stack beside a part that came off, counted from end A; a rotor is two parts.
[[nodiscard]] std::vector<int> joints_touched(const Rebuild& rebuild);
/// What the nut really gets from what is shown, as a factor.
[[nodiscard]] double lever_of(const TorqueSheet& pull);

}  // namespace rebuilds
