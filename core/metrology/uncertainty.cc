#include "core/metrology/uncertainty.h"

#include <algorithm>
#include <cmath>

namespace flatwise::metrology {

Combined combine(std::span<const Component> parts) {
  double sum = 0;
  for (const Component& part : parts) sum += (part.sensitivity * part.u) * (part.sensitivity * part.u);
  if (!(sum > 0)) return {};
  // Shares of the sum instead of fourth powers: lengths of nanometres to the fourth would lose their digits.
  double freedom = 0;
  for (const Component& part : parts) {
    const double share = (part.sensitivity * part.u) * (part.sensitivity * part.u) / sum;
    freedom += share * share / part.dof;
  }
  return {std::sqrt(sum), std::min(1 / freedom, kEndless)};
}

double coverage_factor(double dof, double share) { return student_quantile(0.5 + share / 2, std::max(dof, 1.0)); }

Uncertainty expand(const Combined& combined) {
  Uncertainty out{combined.u, std::nullopt, coverage_factor(combined.dof) * combined.u};
  if (combined.dof < kEndless / 2) out.degrees_of_freedom = combined.dof;
  return out;
}

Component second_order(double scale, double u_x, double u_y) { return {std::abs(scale) * u_x * u_y, 1, kEndless}; }

}  // namespace flatwise::metrology
