// heating.h: how hot a part must be for the other to drop in, and the other way out when that is too hot.
#pragma once

#include <optional>

#include "core/units/problem.h"
#include "core/units/quantity.h"
#include "core/units/temperature.h"

namespace flatwise::fits {

struct Heating {
  Length diameter;
  Length interference;            ///< Greatest, in full: heating flattens nothing. Negative: clearance.
  Length clearance;               ///< Wanted while the part goes in.
  double heated_expansion = 0.0;  ///< Of the part that is heated, 1/K.
  double cooled_expansion = 0.0;  ///< Of the other part, 1/K.
  Temperature room;
  Temperature greatest;  ///< No hotter: the bearing's own limit.
};

struct HeatingResult {
  Temperature temperature;        ///< That the part must have.
  TemperatureRise rise;           ///< Over room temperature.
  bool too_hot = false;           ///< Over the limit: do not.
  Temperature other_temperature;  ///< Of the other part when the heated one stays at the limit; room where not too hot.
};

/// Temperature for a free drop-in.
///
/// Model      rise = (interference + clearance) / (diameter * expansion), even heating, linear expansion. Over the
///            limit: the heated part is taken to the limit and the rest is made up by cooling the other.
/// Inputs     diameter, expansions > 0; clearance >= 0; greatest over room.
/// Returns    rise 0 where the clearance is there already.
/// Refuses    NaN and non-positive inputs; a limit not over the room: fits.limit_below_room; cooling that would be
///            under absolute zero: fits.heating_cannot_do, field "interference".
/// Accuracy   8 eps. Expansion is known to about 10 %, and a part cools on its way to the press: heat a little more
///            where the limit allows.
/// Source     Linear expansion by definition (ISO 1 for the 20 °C); worked in docs/worked/W5-heating.md.
[[nodiscard]] Result<HeatingResult> heating(const Heating& input);

}  // namespace flatwise::fits
