#include "core/metrology/gauge.h"

#include <cmath>

#include "core/metrology/check.h"
#include "core/units/guards.h"

namespace flatwise::metrology {

std::optional<Problem> check_gauge(const GaugeFacts& gauge) {
  if (auto p = negative("calibration", any(gauge.calibration))) return p;
  if (auto p = negative("resolution", any(gauge.resolution))) return p;
  if (auto p = negative("ring-calibration", any(gauge.ring))) return p;
  if (!gauge.repeatability) return std::nullopt;
  if (auto p = negative("repeatability", any(*gauge.repeatability))) return p;
  const auto count = static_cast<std::size_t>(gauge.repeatability_readings < 0 ? 0 : gauge.repeatability_readings);
  return count_outside("repeatability-readings", count, kLeastStudy, 1000000);
}

std::optional<Scatter> study_of(const GaugeFacts& gauge) {
  if (!gauge.repeatability) return std::nullopt;
  return Scatter{Scatter::From::study, gauge.repeatability->si(), gauge.repeatability_readings - 1.0};
}

Result<Study> gauge_study(std::span<const Length> readings) {
  if (auto p = count_outside("reading", readings.size(), kLeastStudy, kMostReadings))
    return tl::unexpected(*std::move(p));
  // About the first reading: micrometres on top of a hundred millimetres keep their digits.
  double sum = 0, squares = 0;
  for (const Length r : readings) {
    if (auto p = not_above_nought("reading", any(r))) return tl::unexpected(*std::move(p));
    sum += (r - readings.front()).si();
  }
  const double n = static_cast<double>(readings.size()), mean = sum / n;
  for (const Length r : readings) squares += std::pow((r - readings.front()).si() - mean, 2);
  return Study{readings.front() + metres(mean), {Scatter::From::study, std::sqrt(squares / (n - 1)), n - 1}};
}

}  // namespace flatwise::metrology
