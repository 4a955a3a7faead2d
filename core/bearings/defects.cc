#include "core/bearings/defects.h"

#include <cmath>
#include <numbers>

#include "core/bearings/ratings.h"
#include "core/units/guards.h"

namespace flatwise::bearings {

Result<DefectRates> defect_rates(const DefectTask& task) {
  if (auto bad = problem_with(task.bearing)) return tl::unexpected(*std::move(bad));
  if (auto bad = balls_overlap(task.bearing)) return tl::unexpected(*std::move(bad));
  if (auto bad = outside("contact", any(task.contact), 0, std::numbers::pi / 4)) return tl::unexpected(*std::move(bad));
  const double inner = task.inner.radians_per_second(), outer = task.outer.radians_per_second();
  const double against = std::abs(inner - outer);
  if (!(against > 0) || !std::isfinite(against))
    return tl::unexpected(
        Problem{Code{"bearings.rings_alike"}, "outer", {}, {{"speed", any(task.outer)}}, std::nullopt});
  const double ball = task.bearing.ball / task.bearing.pitch, share = ball * std::cos(task.contact.radians());
  const double balls = task.bearing.balls;
  const auto rate = [](double rad_s) { return hertz(rad_s / (2 * std::numbers::pi)); };
  const double spin = against * (1 - share * share) / (2 * ball);
  return DefectRates{.outer = rate(0.5 * balls * against * (1 - share)),
                     .inner = rate(0.5 * balls * against * (1 + share)),
                     .cage = rate(0.5 * std::abs(inner * (1 - share) + outer * (1 + share))),
                     .ball = rate(spin),
                     .ball_spot = rate(2 * spin)};
}

}  // namespace flatwise::bearings
