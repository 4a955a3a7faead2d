// run.h: what was read on the test run against its limits: a hanger's heat above the room, the vibration of its housing.
//
//   const std::optional<Sized> rise = rise_above(hanger, room);   // then judge(*rise, {.greatest_si = 40}, rule)
#pragma once

#include <optional>

#include "core/metrology/decide.h"

namespace flatwise::metrology {

/// One reading and what is known of the instrument, in the SI unit of what it shows (temperatures: kelvin).
struct InstrumentRead {
  double value_si = 0;
  std::optional<double> calibration_si = std::nullopt;  ///< U of its certificate, k = 2. None: nothing is known of it.
  double resolution_si = 0;                             ///< One step of its display.
  std::optional<Component> scatter = std::nullopt;      ///< Of one reading, from its own study.
};

/// A single reading with its uncertainty; none where nothing is known of the instrument.
///
/// Model      u² = (U/2)² + (step²/12) + s². One reading is not a study: without one its scatter is left out, and a person who
///            reads a needle that wanders has to say so.
/// Source     [GUM]
[[nodiscard]] std::optional<Sized> sized_from(const InstrumentRead& read);

/// How far one reading stands above another, taken as independent: the larger U, also where one thermometer took both and
/// its error would cancel.
///
/// Returns    The difference with its uncertainty; none where nothing is known of either instrument.
/// Source     [GUM]
[[nodiscard]] std::optional<Sized> rise_above(const InstrumentRead& hanger, const InstrumentRead& room);

enum class Support { rigid, flexible };
enum class MachineGroup { large, medium };  ///< Over 300 kW; 15 to 300 kW.
enum class Zone { a, b, c, d };

/// The zone of ISO 20816-3 in which a housing's vibration lies: advice where the definition gives no limit, never a verdict.
///
/// Inputs     rms speed of the housing, 10 Hz (2 Hz under 600 turns a minute) to 1000 Hz.
/// Model      A newly commissioned machines; B long operation; C not for long operation; D severe enough to do damage. A
///            value on a boundary lies in the better zone.
/// Accuracy   The standard was made for industrial machines from 120 turns a minute, not for a shaft with wobbling rotors.
/// Source     [ISO20816-3], boundaries from memory.
[[nodiscard]] Zone vibration_zone(Speed rms, MachineGroup group, Support support);

// Finer than this no instrument of a workshop decides: a thermometer on a housing, a meter held to it. Common practice.
inline constexpr double kFinestThermometer_K = 0.1;
inline constexpr double kFinestMeter_m_s = 0.05e-3;

}  // namespace flatwise::metrology
