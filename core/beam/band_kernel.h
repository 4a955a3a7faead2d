// band_kernel.h: the two hot sums over a banded pencil, eight speeds at once. Not for other folders.
#pragma once

#include "core/lanes/lanes.h"

namespace flatwise::beam {

inline constexpr int kSpeedsAtOnce = 8;

/// K - w² M + w G as in Pencil (mesh.h), by plain pointers.
struct Band {
  int nodes;
  const double *k_diagonal, *m_diagonal, *k_next, *m_next, *g;
};
/// Loads by node: (out, slope) by (real, imaginary), 4 a node; each speed takes square * by_square + once * by_speed.
struct BandLoad {
  const double *by_square, *by_speed;
};
/// Of eight speeds.
struct Speeds {
  const double *w, *square, *once;
};

inline constexpr int kWorkPerNode = 8 * kSpeedsAtOnce;

/// Solves (K - w² M + w G) x = load for eight speeds. x: (out real, out imaginary, slope real, slope imaginary) of node 0
/// for eight speeds each, then of node 1, ... `work` holds nodes * kWorkPerNode.
FLATWISE_KERNEL(void solve_eight(const Band& band, const BandLoad& load, const Speeds& speeds, double* work, double* x))

/// How many eigenvalues lie under each of eight speeds (Sylvester: signs of the pivots). `least` is the smallest pivot block
/// against what it was taken from: next to nought says that the count stands on rounding.
FLATWISE_KERNEL(void count_eight(const Band& band, const double* w, double* counts, double* least))

}  // namespace flatwise::beam
