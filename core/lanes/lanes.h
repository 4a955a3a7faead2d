// lanes.h: one kernel, built three times: for any processor, for AVX2 and for AVX-512; the widest that runs here is taken.
//
//   // root_sum.h                                     // root_sum_kernel.cc, listed with flatwise_kernel()
//   FLATWISE_KERNEL(double root_sum(const Row& row))   namespace flatwise::beam::FLATWISE_LANES {
//                                                       double root_sum(const Row& row) { ... }
//   const auto sum = FLATWISE_PICK(width, root_sum);   }
//
// The same kernel gives the same result to 1e-12 of it in every build: a test of each kernel compares them.
#pragma once

namespace flatwise::lanes {

/// How many doubles a processor's instructions take at once: 2, 4 or 8.
enum class Width { baseline, avx2, avx512 };
inline constexpr Width kEveryWidth[] = {Width::baseline, Width::avx2, Width::avx512};

/// Whether kernels of this width are in this program, and this processor runs them.
[[nodiscard]] bool runs_here(Width width);
/// The widest that runs here. The same on every call; results do not depend on it (to 1e-12 of them), speed does.
[[nodiscard]] Width widest();

/// The function of that width. Width must run here (runs_here).
template <class Function>
[[nodiscard]] constexpr Function* pick(Width width, Function* baseline, Function* avx2, Function* avx512) {
  return width == Width::baseline ? baseline : width == Width::avx2 ? avx2 : avx512;
}

}  // namespace flatwise::lanes

// FLATWISE_KERNEL(double root_sum(const Row&)) declares a kernel in each of its builds; FLATWISE_PICK(width, root_sum) is the
// one for a width. Both stand inside the kernel's own namespace.
#if defined(__x86_64__)
#define FLATWISE_KERNEL(...) \
  namespace baseline {       \
  __VA_ARGS__;               \
  }                          \
  namespace avx2 {           \
  __VA_ARGS__;               \
  }                          \
  namespace avx512 {         \
  __VA_ARGS__;               \
  }
#define FLATWISE_PICK(width, name) ::flatwise::lanes::pick((width), baseline::name, avx2::name, avx512::name)
#else
#define FLATWISE_KERNEL(...) \
  namespace baseline {       \
  __VA_ARGS__;               \
  }
#define FLATWISE_PICK(width, name) ::flatwise::lanes::pick((width), baseline::name, baseline::name, baseline::name)
#endif

// Which build this is; the build says it. Elsewhere, as in the browser, there is only one.
#ifndef FLATWISE_LANES
#define FLATWISE_LANES baseline
#endif
