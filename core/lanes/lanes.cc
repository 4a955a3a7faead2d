#include "core/lanes/lanes.h"

namespace flatwise::lanes {

bool runs_here(Width width) {
#if defined(__x86_64__)
  if (width == Width::avx2) return __builtin_cpu_supports("x86-64-v3") != 0;
  if (width == Width::avx512) return __builtin_cpu_supports("x86-64-v4") != 0;
#endif
  return width == Width::baseline;
}

Width widest() {
  static const Width here = runs_here(Width::avx512) ? Width::avx512
                            : runs_here(Width::avx2) ? Width::avx2
                                                     : Width::baseline;
  return here;
}

}  // namespace flatwise::lanes
