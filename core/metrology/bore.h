// bore.h: one plane of a bore judged: its sizes, its ovality, and everything that stands in the way of an answer.
//
//   const auto plane = judge_plane({.readings = readings, .gauge = gauge, .thermal = thermal,
//                                   .limits = {millimetres(99.955), millimetres(99.990)},
//                                   .ovality_limit = micrometres(17.5)});
//   if (plane->answer == Answer::out) ...
#pragma once

#include <optional>
#include <span>

#include "core/metrology/decide.h"
#include "core/metrology/form.h"
#include "core/metrology/gauge.h"
#include "core/metrology/temperature.h"

namespace flatwise::metrology {

/// All readings of one plane: one gauge, one pair of temperatures.
struct PlaneReadings {
  std::span<const Reading> readings;
  GaugeFacts gauge;
  ThermalState thermal;
  SizeLimits limits = {};                              ///< At 20 °C.
  std::optional<Length> ovality_limit = std::nullopt;  ///< On diameter.
  Rule rule = Rule::guard_u;
  TemperatureRise furthest = kelvins(15);    ///< From 20 °C; default assumed.
  TemperatureRise thermometer = kelvins(1);  ///< U (k = 2) of the thermometer there would be, where none was used.
};

/// What keeps a plane from an answer of its own.
struct Obstacles {
  bool too_far_from_20 = false;
  bool far_off = false;     ///< A reading no worn bore can have: a wrong unit or a slipped digit.
  bool no_scatter = false;  ///< Nothing says how much the gauge scatters.
  bool disagree = false;    ///< The readings do not fit together, and were not all taken twice.
  bool overdue = false;     ///< The gauge is past its date and nobody has accepted it.
  [[nodiscard]] bool any() const { return too_far_from_20 || far_off || no_scatter || disagree || overdue; }
};

struct PlaneJudged {
  Sized mean, least, greatest;   ///< At 20 °C.
  std::optional<Sized> ovality;  ///< Where a form was fitted.
  double spread_m = 0;           ///< Greatest less least of the directions' means: what was read, nothing more.
  Angle greatest_at;
  bool direction_known = false;
  int readings = 0, directions = 0;
  bool enough_directions = false;  ///< A form was fitted.
  bool not_two_lobed = false;      ///< Readings taken twice stand off the form: sizes go out to them.
  Scatter scatter;
  Correction correction;
  Farthest farthest;
  Standing standing = Standing::in_date;

  Judged least_judged, greatest_judged, ovality_judged;
  Obstacles obstacles;
  Answer size = Answer::in;
  Answer form = Answer::in;      ///< Ovality; cannot tell where there are too few directions.
  Answer would_be = Answer::in;  ///< Of the sizes and the form alone.
  Answer answer = Answer::in;
  Settle settle_least, settle_greatest, settle_ovality;

  /// Shares of the mean's uncertainty: its own scatter and resolution, the gauge's calibration, the temperatures.
  Combined own;
  double gauge_u_m = 0, temperature_u_m = 0;
};

/// Judges one plane.
///
/// Model      Each reading brought to 20 °C; two-lobe form of three or more directions; least and greatest diameter of
///            the form inside the limits, ovality inside its own. U of a size: calibration and ring (k = 2), resolution
///            (rectangular, not averaged away), temperature, scatter averaged by the fit, by the GUM. Calibration and
///            temperature cancel in the ovality. Out beats cannot tell beats in. What keeps the readings from deciding
///            (obstacles) makes it cannot tell, with what it would have been.
/// Inputs     As fit_form, check_gauge and check_thermal say; least limit under the greatest; ovality limit over nought.
/// Refuses    What those refuse, naming the field.
/// Source     [GUM], [ISO14253-1], ISO 8015 (two-point sizes); docs/worked/W13-bore-at-plane.md.
[[nodiscard]] Result<PlaneJudged> judge_plane(const PlaneReadings& in);

}  // namespace flatwise::metrology
