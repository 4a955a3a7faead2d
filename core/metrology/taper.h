// taper.h: the planes of one bore against each other: taper, bell-mouth, and the mean diameter that goes into the fit.
#pragma once

#include "core/metrology/bore.h"

namespace flatwise::metrology {

/// Mean diameter of one plane and its uncertainty in two parts: what is this plane's own (scatter, resolution), and what
/// comes with the gauge and the temperatures.
struct PlaneMean {
  double mean_m = 0;
  Combined own;
  double gauge_u_m = 0;
  double temperature_u_m = 0;
  int readings = 4;  ///< Behind the mean; one more round is as many again.
};
[[nodiscard]] PlaneMean plane_mean(const PlaneJudged& plane);

/// Two planes, or three with one in the middle.
struct Planes {
  PlaneMean a, b;
  std::optional<PlaneMean> middle = std::nullopt;
  bool same_gauge = true;         ///< Its calibration error is then in both means alike, and cancels in the taper.
  bool same_temperatures = true;  ///< The same temperatures, taken or assumed once for all planes: their error cancels.
  std::optional<Length> limit;    ///< For the taper and the bell-mouth, on diameter.
  Rule rule = Rule::guard_u;
};

struct TaperJudged {
  Sized taper;  ///< |mean A − mean B|.
  bool wider_at_b = false;
  std::optional<Sized> bell_mouth;  ///< Smaller end less the middle; nought or less: no bell-mouth.
  Judged taper_judged, bell_judged;
  Settle settle_taper, settle_bell;
  Sized mean;  ///< Mean of the end planes: what goes into the fit.
  Answer answer = Answer::in;
};

/// Judges taper and bell-mouth.
///
/// Model      Difference of mean diameters. With the same gauge and the same temperatures only the planes' own parts are
///            left in its uncertainty; in the mean of the planes the common parts stay whole.
/// Inputs     Means over nought, uncertainties nought or more, limit over nought.
/// Source     [GUM] 5.2 (correlated influences: here fully, so they cancel in a difference). docs/worked/W14-taper.md.
[[nodiscard]] Result<TaperJudged> judge_taper(const Planes& planes);

/// The whole bore: every plane and the taper; out beats cannot tell beats in.
[[nodiscard]] Answer judge_bore(std::span<const Answer> planes, const TaperJudged& taper);

}  // namespace flatwise::metrology
