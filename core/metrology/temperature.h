// temperature.h: a length read warm, brought to 20 °C with the expansion of part and gauge.
//
//   ThermalState state{.part = thermometer(celsius(32), kelvins(1)), .gauge = thermometer(celsius(32), kelvins(1)),
//                      .part_expansion = {10.5e-6}, .gauge_expansion = {11.5e-6}};
//   const Correction c = to_20(state);            // length at 20 °C = reading * (1 + c.relative)
#pragma once

#include <optional>

#include "core/metrology/uncertainty.h"
#include "core/units/quantity.h"
#include "core/units/temperature.h"

namespace flatwise::metrology {

/// Linear expansion with its relative rectangular half width. The default of 10 % is assumed (handbook values differ by
/// so much between sources and are means over wide ranges).
struct Expansion {
  double per_kelvin = 0;
  double relative_half_width = 0.10;
};

/// A temperature and how well it is known. Not known: the room's setting.
struct Warmth {
  Temperature value;
  double standard_k = 0;  ///< Standard uncertainty, K.
  bool measured = false;
};
/// Read with a thermometer whose expanded uncertainty (k = 2) is given.
[[nodiscard]] Warmth thermometer(Temperature read, TemperatureRise expanded);
/// Not read: what the room is said to be, rectangular.
[[nodiscard]] Warmth room(Temperature setting, TemperatureRise half_width);

struct ThermalState {
  Warmth part, gauge;
  /// Part and gauge have stood together long enough to be as warm as each other, but for `apart`. False: their errors
  /// are taken as independent even where both come from the same room's setting, which gives the larger U.
  bool together = false;
  TemperatureRise apart = kelvins(1);  ///< Rectangular half width of their difference, used when together. Assumed.
  Expansion part_expansion, gauge_expansion;
};

/// Length at 20 °C = reading (1 + relative); standard uncertainty of that factor.
struct Correction {
  double relative = 0;
  double u_relative = 0;
};

/// Correction of a reading to the reference temperature.
///
/// Model      L20 = L (1 + α_g (t_g − 20 °C) − α_p (t_p − 20 °C)), linear; the gauge was set at its own temperature on a
///            ring of its own expansion. Temperatures and coefficients independent, second-order terms kept; together:
///            one temperature for both with a small difference, so that only α_g − α_p sees the common error.
/// Inputs     Checked by check_thermal().
/// Accuracy   The linear form leaves out (α Δt)²: 3 nm on 100 mm at 15 K.
/// Source     [ISO1] reference temperature; [GUM] H.1.2 (the linear model), H.1.7 (second order).
[[nodiscard]] Correction to_20(const ThermalState& state);

/// Problem naming the field where a temperature, an expansion or an uncertainty is not possible (−40 to 120 °C; 0 to
/// 100e-6 /K).
[[nodiscard]] std::optional<Problem> check_thermal(const ThermalState& state);

/// Distance of the farther of part and gauge from 20 °C, and whether it is the gauge.
struct Farthest {
  TemperatureRise from_20;
  bool gauge = false;
};
[[nodiscard]] Farthest farthest_from_20(const ThermalState& state);
/// True where the reading cannot be used until the part, or the gauge, has come nearer to 20 °C.
[[nodiscard]] bool too_far_from_20(const ThermalState& state, TemperatureRise furthest);

}  // namespace flatwise::metrology
