#include <cmath>

#include "core/lanes/lanes_samples.h"

namespace flatwise::lanes::FLATWISE_LANES {

double root_sum(const double* values, int count) {
  double sum = 0;
  for (int i = 0; i < count; ++i) sum += std::sqrt(values[i]);
  return sum;
}

int doubles_at_once() {
#if defined(__AVX512F__)
  return 8;
#elif defined(__AVX2__)
  return 4;
#else
  return 2;
#endif
}

}  // namespace flatwise::lanes::FLATWISE_LANES
