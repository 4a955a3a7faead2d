#include "core/fits/heating.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

std::optional<Problem> check_heating(const Heating& input) {
  if (auto bad = not_above_nought("diameter", any(input.diameter))) return bad;
  if (auto bad = not_finite("interference", any(input.interference))) return bad;
  if (auto bad = negative("clearance", any(input.clearance))) return bad;
  if (auto bad = not_above_nought("heated_expansion", any_expansion(input.heated_expansion))) return bad;
  if (auto bad = not_above_nought("cooled_expansion", any_expansion(input.cooled_expansion))) return bad;
  if (auto bad = not_above_nought("room", any(input.room))) return bad;
  if (input.greatest > input.room && std::isfinite(input.greatest.kelvin())) return std::nullopt;
  return Problem{Code{"fits.limit_below_room"},
                 "greatest",
                 {},
                 {{"limit", any(input.greatest)}, {"room", any(input.room)}},
                 std::nullopt};
}

}  // namespace

Result<HeatingResult> heating(const Heating& input) {
  if (auto bad = check_heating(input)) return tl::unexpected(*bad);
  const Length needed = std::max(input.interference + input.clearance, Length{});
  const TemperatureRise rise = kelvins(needed / input.diameter / input.heated_expansion);
  HeatingResult result{
      .temperature = input.room + rise, .rise = rise, .too_hot = false, .other_temperature = input.room};
  result.too_hot = result.temperature > input.greatest;
  if (!result.too_hot) return result;
  const double by_heat = (input.greatest - input.room).kelvins() * input.heated_expansion;
  const double cooling_k = (needed / input.diameter - by_heat) / input.cooled_expansion;
  result.other_temperature = input.room + kelvins(-cooling_k);
  if (!(result.other_temperature.kelvin() > 0))
    return tl::unexpected(Problem{Code{"fits.heating_cannot_do"},
                                  "interference",
                                  {},
                                  {{"needed", any(result.temperature)}, {"limit", any(input.greatest)}},
                                  std::nullopt});
  return result;
}

}  // namespace flatwise::fits
