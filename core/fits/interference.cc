#include "core/fits/interference.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

constexpr double kFlattenedShare = 0.8;  // Of Rz hole + Rz shaft, on diameter: DIN 7190-1.

std::optional<Problem> check_limits(std::string_view field, const Limits& limits) {
  if (limits.least.si() > 0 && limits.greatest >= limits.least && std::isfinite(limits.greatest.si()))
    return std::nullopt;
  return Problem{Code{"fits.limits_reversed"},
                 std::string{field},
                 {},
                 {{"least", any(limits.least)}, {"greatest", any(limits.greatest)}},
                 std::nullopt};
}

}  // namespace

Result<InterferenceRange> interference(const Mating& mating) {
  if (auto bad = check_limits("hole", mating.hole)) return tl::unexpected(*bad);
  if (auto bad = check_limits("shaft", mating.shaft)) return tl::unexpected(*bad);
  const Length least = mating.shaft.least - mating.hole.greatest;
  const Length greatest = mating.shaft.greatest - mating.hole.least;
  return InterferenceRange{.least = least, .mean = 0.5 * (least + greatest), .greatest = greatest};
}

Length after_flattening(Length interference, Length loss) {
  if (interference <= Length{}) return interference;
  return std::max(interference - loss, Length{});
}

Result<Length> flattening_loss(const Roughness& roughness) {
  if (auto bad = negative("roughness.hole", any(roughness.hole))) return tl::unexpected(*bad);
  if (auto bad = negative("roughness.shaft", any(roughness.shaft))) return tl::unexpected(*bad);
  return kFlattenedShare * (roughness.hole + roughness.shaft);
}

}  // namespace flatwise::fits
