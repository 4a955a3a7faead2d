// decide.h: in, out or cannot tell, and what would settle it. No allocation.
//
//   const Judged j = judge({.value_si = 80.0201e-3, .u_si = 6e-6}, limits, Rule::guard_u);
#pragma once

#include <optional>

#include "core/metrology/uncertainty.h"
#include "core/units/quantity.h"

namespace flatwise::metrology {

/// Which guard band stands between a value and its limit.
enum class Rule {
  guard_u,    ///< U at 95 % two-sided, the default.
  one_sided,  ///< The one-sided 95 % factor (1.65 u where nothing limits the degrees of freedom).
};

struct SizeLimits {
  std::optional<Length> least = std::nullopt;
  std::optional<Length> greatest = std::nullopt;
};
/// Limits of any kind of quantity, in its SI unit.
struct Bounds {
  std::optional<double> least_si = std::nullopt;
  std::optional<double> greatest_si = std::nullopt;
};

/// A value of any kind with its uncertainty, in its SI unit. `allowance_si` widens U beyond k·u (form.h).
struct Sized {
  double value_si = 0;
  double u_si = 0;
  double dof = kEndless;
  double allowance_si = 0;

  /// Expanded uncertainty at 95 % two-sided, allowance and all.
  [[nodiscard]] Uncertainty uncertainty() const;
  /// The guard band of a rule.
  [[nodiscard]] double guard_si(Rule rule) const;
};

/// The answer, and the limit it hangs on.
struct Judged {
  Answer answer = Answer::in;
  enum class Against { nothing, least, greatest } against = Against::nothing;
  double margin_si = 0;  ///< To that limit: over nought inside, under nought outside.
  double limit_si = 0;
};

/// Judges a value against one or two limits.
///
/// Model      In where value ± guard lies inside, out where it is outside by more than the guard, else cannot tell.
///            Without limits: in, against nothing.
/// Source     [ISO14253-1]; guard U is the default here, the one-sided factor of the 2017 edition is from memory.
[[nodiscard]] Judged judge(const Sized& value, const Bounds& limits, Rule rule);
[[nodiscard]] Judged judge(const Sized& value, const SizeLimits& limits, Rule rule);

/// Out beats cannot tell beats in.
[[nodiscard]] Answer worse(Answer a, Answer b);

/// Probability that the true value lies inside the limits, given the value read: normal, or Student where the degrees of
/// freedom are few.
///
/// Source     [JCGM106] 7: Φ((TU − y)/u) − Φ((TL − y)/u); with few degrees of freedom the same with Student's distribution.
[[nodiscard]] double conformance(const Sized& value, const SizeLimits& limits);

/// What stands behind U, apart, so that the better remedy can be found.
struct Budget {
  double own_u_m = 0;  ///< Scatter of the readings as they were averaged: falls with more of them.
  double own_dof = kEndless;
  double gauge_u_m = 0;  ///< Calibration, setting ring, resolution.
  double temperature_u_m = 0;
  double temperature_if_taken_u_m = 0;  ///< The same, had both temperatures been taken.
  double allowance_m = 0;
  int readings = 1;
  int round = 1;  ///< Readings in one more round of all directions.
};

enum class Remedy {
  none,                    ///< Too near the limit for any workshop gauge.
  take_temperatures,       ///< Take both temperatures, or let both stand at 20 °C.
  readings,                ///< `readings` more, in whole rounds.
  gauge,                   ///< A gauge that holds ± `holds_m`.
  temperatures_and_gauge,  ///< Both.
};
struct Settle {
  Remedy remedy = Remedy::none;
  int readings = 0;
  double holds_m = 0;
};

inline constexpr int kMostMoreReadings = 24;      ///< More are not asked for: nobody takes them. Common practice.
inline constexpr double kFinestGauge_m = 0.5e-6;  ///< Nearer to a limit nothing in a workshop decides. Common practice.

/// The least trouble that would bring the guard under the margin, the value staying where it is: temperatures where they
/// were not taken, then more readings (at most 24), then a finer gauge.
[[nodiscard]] Settle what_settles(const Budget& budget, double margin_si, Rule rule);

}  // namespace flatwise::metrology
