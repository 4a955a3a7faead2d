#include "core/fits/creep.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

constexpr double kSmallShare = 0.3;  // Of C0.

std::optional<Problem> wrong(const CreepLoad& load) {
  if (auto p = not_above_nought("diameter", any(load.diameter))) return p;
  if (auto p = not_above_nought("width", any(load.width))) return p;
  if (auto p = negative("radial", any(load.radial))) return p;
  if (auto p = negative("couple", any(load.couple))) return p;
  if (auto p = outside("temperature_rise", any(load.temperature_rise), 0, 200)) return p;
  if (load.static_rating)
    if (auto p = not_above_nought("static_rating", any(*load.static_rating))) return p;
  if (load.interference_least <= load.interference_greatest) return std::nullopt;
  return Problem{Code{"fits.range_reversed"},
                 "interference",
                 {},
                 {{"least", any(load.interference_least)}, {"greatest", any(load.interference_greatest)}},
                 std::nullopt};
}

}  // namespace

Result<CreepMargin> creep_margin(const CreepLoad& load) {
  if (auto p = wrong(load)) return tl::unexpected(*std::move(p));
  CreepMargin out;
  out.equivalent = load.radial + 6 * (load.couple / load.width);
  const double d_mm = load.diameter.si() * 1e3, b_mm = load.width.si() * 1e3, f_n = out.equivalent.si();
  const double small = 0.08 * std::sqrt(d_mm * f_n / b_mm), great = 0.02 * f_n / b_mm;
  const bool over = load.static_rating && out.equivalent > kSmallShare * *load.static_rating;
  // Where the rules cross the greater one counts: over the limit the loss may not fall.
  out.loss_by_load = micrometres(over ? std::max(small, great) : small);
  out.loss_by_heat = micrometres(1.5e-3 * d_mm * load.temperature_rise.kelvins());
  out.wanted = out.loss_by_load + out.loss_by_heat;
  out.margin = out.wanted > Length{} ? load.interference_least / out.wanted : 0.0;
  if (load.interference_least > out.wanted)
    out.answer = Answer::in;
  else if (load.interference_greatest < out.wanted)
    out.answer = Answer::out;
  return out;
}

}  // namespace flatwise::fits
