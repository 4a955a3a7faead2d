// gauge.h: the gauge a size is read with: its certificate, its own study, and whether it is in date.
#pragma once

#include <optional>
#include <span>

#include "core/metrology/form.h"

namespace flatwise::metrology {

/// Whether the instrument may decide. Overdue still reads; the answer is then cannot tell until somebody accepts it.
enum class Standing { in_date, overdue, accepted };

inline constexpr int kLeastStudy = 3;  ///< A scatter is never taken from one or two readings.

struct GaugeFacts {
  Length calibration;                                  ///< U of its certificate, k = 2.
  Length resolution;                                   ///< One step of its display or scale.
  std::optional<Length> repeatability = std::nullopt;  ///< Standard deviation of one reading, from its own study.
  int repeatability_readings = 0;                      ///< Readings in that study, 3 or more.
  Length ring = {};  ///< U (k = 2) of the ring it is set on; nought where there is none.
  Standing standing = Standing::in_date;
};

/// Problem naming the field where one of these is negative, not finite, or the study has fewer than three readings.
[[nodiscard]] std::optional<Problem> check_gauge(const GaugeFacts& gauge);

/// Scatter from the gauge's own study, where it has one.
[[nodiscard]] std::optional<Scatter> study_of(const GaugeFacts& gauge);

/// A gauge study: standard deviation of readings of the same place.
///
/// Inputs     3 to 1000 readings, each over nought.
/// Returns    s with n − 1 degrees of freedom, and the mean.
/// Source     [GUM] 4.2.2.
struct Study {
  Length mean;
  Scatter scatter;
};
[[nodiscard]] Result<Study> gauge_study(std::span<const Length> readings);

}  // namespace flatwise::metrology
