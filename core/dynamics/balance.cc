#include "core/dynamics/balance.h"

#include <utility>

#include "core/units/guards.h"

namespace flatwise::dynamics {

Result<PermissibleUnbalance> permissible_unbalance(const BalanceQuality& quality) {
  if (auto p = not_above_nought("grade", any(quality.grade))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("mass", any(quality.mass))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("speed", any(quality.speed))) return tl::unexpected(*std::move(p));
  const Length offset = Length::from_si(quality.grade.si() / quality.speed.radians_per_second());
  return PermissibleUnbalance{quality.mass * offset, offset};
}

}  // namespace flatwise::dynamics
