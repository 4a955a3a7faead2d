#include "core/metrology/roundness.h"

#include <cmath>

#include "core/metrology/check.h"
#include "core/units/guards.h"

namespace flatwise::metrology {

Result<double> v_block_factor(int lobes, Angle included) {
  if (auto p = count_outside("lobes", lobes < 0 ? 0 : static_cast<std::size_t>(lobes), 1, 100))
    return tl::unexpected(*std::move(p));
  if (auto p = outside("v-angle", any(included), degrees(1).radians(), degrees(179).radians()))
    return tl::unexpected(*std::move(p));
  const double half = included.radians() / 2;
  return 1 + std::cos(lobes * (degrees(90).radians() + half)) / std::sin(half);
}

}  // namespace flatwise::metrology
