// form.h: the two-lobe form of a bore from diameters read in several directions. No allocation.
//
//   std::array<Reading, 4> readings{{{millimetres(99.985), degrees(0)}, ...}};
//   const Result<Form> form = fit_form(readings);
#pragma once

#include <array>
#include <optional>
#include <span>

#include "core/metrology/uncertainty.h"
#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::metrology {

/// One diameter: direction d and d + 180° are the same diameter.
struct Reading {
  Length diameter;
  Angle direction;
};

inline constexpr int kMostReadings = 1000;
inline constexpr double kSameDirection = 2.5;   ///< Degrees: nearer ones count as repeats of one direction.
inline constexpr double kWorstLeverage = 10.0;  ///< A form that is less sure than this in some direction is not fitted.

/// How much one reading scatters, and where that is known from.
struct Scatter {
  enum class From { none, study, repeats, residual } from = From::none;
  double s_m = 0;
  double dof = kEndless;
};

/// What the readings alone say; lengths in metres, all for one reading's variance of 1.
struct Form {
  bool fitted = false;  ///< False: fewer than three directions, or directions that do not open the form.
  int readings = 0;
  int directions = 0;           ///< Different ones.
  bool all_repeated = false;    ///< Every direction was read at least twice.
  double mean_m = 0;            ///< D0; the mean of the directions' means where no form is fitted.
  double cos_m = 0, sin_m = 0;  ///< D(θ) = D0 + cos_m cos 2θ + sin_m sin 2θ.
  double v00 = 0, v01 = 0, v02 = 0, v11 = 0, v12 = 0,
         v22 = 0;                                          ///< Covariance of (D0, cos, sin); only v00 when not fitted.
  double least_direction_m = 0, greatest_direction_m = 0;  ///< Least and greatest of the directions' means.
  int least_repeats = 0, greatest_repeats = 0;             ///< Readings behind these two.
  /// Largest distance of a direction's mean from the form, and of a reading from its direction's mean, each over what it
  /// scatters by for a reading's s of 1, m; 0 where there is nothing to spare.
  double form_residual = 0, repeat_residual = 0;
  Scatter repeats;   ///< From three or more readings of one direction; From::none otherwise.
  Scatter residual;  ///< From the fit's residuals with two or more degrees of freedom; From::none otherwise.

  [[nodiscard]] double amplitude_m() const;  ///< e/2 as fitted, noise and all.
  [[nodiscard]] Angle greatest_at() const;   ///< Direction of the greatest diameter, 0 to 180°.
};

/// Fits D(θ) = D0 + (e/2) cos 2(θ − θ0) by least squares.
///
/// Model      Every reading of the same weight. Odd lobes do not show in a diameter, so this is blind to them; even ones
///            beyond two show as residuals.
/// Inputs     1 to 1000 readings, diameters > 0, directions any finite angle.
/// Returns    Not fitted where fewer than three directions more than 2.5° apart were read, or where some direction would
///            be less sure than √10 of one reading (three within 60° of each other): then the directions' own means.
/// Refuses    No or too many readings; a diameter that is not a length over nought; a direction that is not finite.
/// Accuracy   Normal equations of three unknowns about the mean: 1e-12 of the spread at leverage 10.
/// Source     Linear least squares, [GUM] H.3; the form is that of an ellipse to first order. docs/worked/W12-form.md.
[[nodiscard]] Result<Form> fit_form(std::span<const Reading> readings);

/// How much one reading scatters: the gauge's own study; else three or more repeats of one direction (pooled over such
/// directions); else the residuals where two or more degrees of freedom are left (five readings in four directions).
/// Never from one or two readings.
[[nodiscard]] Scatter scatter_of(const Form& form, std::optional<Scatter> study);

/// A value with what is needed to judge it. `allowance_m` is added to k·u: the part of U that is not a standard uncertainty.
struct Estimate {
  double value_m = 0;
  double own_u_m = 0;  ///< From this plane's own readings: scatter.
  double own_dof = kEndless;
  double allowance_m = 0;
};
struct FormEstimates {
  Estimate mean, least, greatest;
  std::optional<Estimate> ovality;
  bool direction_known = false;  ///< The lobes stand out of the scatter, so where they lie means something.
};

/// Mean, least and greatest diameter and ovality of the form, with the noise's share taken off.
///
/// Model      The fitted amplitude R is that of the form plus two noises, so R² is too great by their variances on
///            average: e/2 = √(R² − v), and nought where that is negative. The true amplitude is over R + k u in at most
///            2.5 % of cases; and √(R² − w) − k u is over nought in 2 % of round bores where w is the 2 % point of the F
///            distribution with (2, ν) degrees of freedom, less k². `allowance_m` is the larger distance of R and
///            √(R² − w) from e/2, so that value ± U has tails of at most 2.5 % whether the bore is round or not.
///            Not fitted: the directions' own means; U then covers the choosing of the extreme one of two.
/// Source     Rice's distribution; the bound by the F distribution with (2, ν) degrees of freedom in closed form. Both
///            are checked by simulation in bore_simulation_test.cc. docs/worked/W12-form.md.
[[nodiscard]] FormEstimates estimates_of(const Form& form, const Scatter& scatter);

/// What the readings say against each other (one sound plane in 1000 by chance).
struct Discord {
  bool repeats = false;  ///< Two readings of one direction differ by more than the scatter: a slip of the hand.
  bool form = false;     ///< The directions do not lie on an oval: a slip, or a bore that is neither round nor oval.
};
[[nodiscard]] Discord discord_of(const Form& form, const Scatter& scatter);

}  // namespace flatwise::metrology
