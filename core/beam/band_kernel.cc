// Block elimination (L D L^T with blocks of 2 x 2) from end A. Eight speeds side by side: one vector of the compiler's own,
// which it makes of whatever registers the build has. No sum of products is fused, so every build gives the same bits.
#include "core/beam/band_kernel.h"

namespace flatwise::beam::FLATWISE_LANES {
namespace {

using Eight = double __attribute__((vector_size(64), aligned(8), may_alias));
static_assert(sizeof(Eight) == kSpeedsAtOnce * sizeof(double));

}  // namespace

void solve_eight(const Band& band, const BandLoad& load, const Speeds& speeds, double* work, double* x) {
  const Eight w = *reinterpret_cast<const Eight*>(speeds.w), w2 = w * w;
  const Eight square = *reinterpret_cast<const Eight*>(speeds.square);
  const Eight once = *reinterpret_cast<const Eight*>(speeds.once);
  Eight i00{}, i01{}, i11{}, y0{}, y1{}, y2{}, y3{};
  Eight* kept = reinterpret_cast<Eight*>(work);
  for (int node = 0; node < band.nodes; ++node) {
    const double *k = band.k_diagonal + 3 * node, *m = band.m_diagonal + 3 * node;
    const double *p = load.by_square + 4 * node, *q = load.by_speed + 4 * node;
    Eight a = k[0] - w2 * m[0], b = k[1] - w2 * m[1], c = k[2] - w2 * m[2] + w * band.g[node];
    Eight r0 = square * p[0] + once * q[0], r1 = square * p[1] + once * q[1];
    Eight r2 = square * p[2] + once * q[2], r3 = square * p[3] + once * q[3];
    if (node > 0) {
      const double *kn = band.k_next + 4 * (node - 1), *mn = band.m_next + 4 * (node - 1);
      const Eight o00 = kn[0] - w2 * mn[0], o01 = kn[1] - w2 * mn[1];
      const Eight o10 = kn[2] - w2 * mn[2], o11 = kn[3] - w2 * mn[3];
      const Eight t00 = i00 * o00 + i01 * o10, t01 = i00 * o01 + i01 * o11;
      const Eight t10 = i01 * o00 + i11 * o10, t11 = i01 * o01 + i11 * o11;
      a -= o00 * t00 + o10 * t10, b -= o00 * t01 + o10 * t11, c -= o01 * t01 + o11 * t11;
      r0 -= o00 * y0 + o10 * y2, r1 -= o00 * y1 + o10 * y3;
      r2 -= o01 * y0 + o11 * y2, r3 -= o01 * y1 + o11 * y3;
      kept[4] = t00, kept[5] = t01, kept[6] = t10, kept[7] = t11;
      kept += 8;
    }
    const Eight one_over = 1.0 / (a * c - b * b);
    i00 = c * one_over, i01 = -b * one_over, i11 = a * one_over;
    y0 = i00 * r0 + i01 * r2, y1 = i00 * r1 + i01 * r3, y2 = i01 * r0 + i11 * r2, y3 = i01 * r1 + i11 * r3;
    kept[0] = y0, kept[1] = y1, kept[2] = y2, kept[3] = y3;
  }
  Eight* out = reinterpret_cast<Eight*>(x) + 4 * (band.nodes - 1);
  out[0] = y0, out[1] = y1, out[2] = y2, out[3] = y3;
  for (int node = band.nodes - 2; node >= 0; --node) {
    kept -= 8;
    out -= 4;
    const Eight x0 = kept[0] - (kept[4] * y0 + kept[5] * y2), x1 = kept[1] - (kept[4] * y1 + kept[5] * y3);
    const Eight x2 = kept[2] - (kept[6] * y0 + kept[7] * y2), x3 = kept[3] - (kept[6] * y1 + kept[7] * y3);
    y0 = x0, y1 = x1, y2 = x2, y3 = x3;
    out[0] = y0, out[1] = y1, out[2] = y2, out[3] = y3;
  }
}

void count_eight(const Band& band, const double* speeds, double* counts, double* least) {
  const Eight w = *reinterpret_cast<const Eight*>(speeds), w2 = w * w;
  const Eight none{}, one = none + 1.0, two = none + 2.0;
  Eight i00{}, i01{}, i11{}, found{}, weakest = one;
  for (int node = 0; node < band.nodes; ++node) {
    const double *k = band.k_diagonal + 3 * node, *m = band.m_diagonal + 3 * node;
    Eight a = k[0] - w2 * m[0], b = k[1] - w2 * m[1], c = k[2] - w2 * m[2] + w * band.g[node];
    if (node > 0) {
      const double *kn = band.k_next + 4 * (node - 1), *mn = band.m_next + 4 * (node - 1);
      const Eight o00 = kn[0] - w2 * mn[0], o01 = kn[1] - w2 * mn[1];
      const Eight o10 = kn[2] - w2 * mn[2], o11 = kn[3] - w2 * mn[3];
      const Eight t00 = i00 * o00 + i01 * o10, t01 = i00 * o01 + i01 * o11;
      const Eight t10 = i01 * o00 + i11 * o10, t11 = i01 * o01 + i11 * o11;
      a -= o00 * t00 + o10 * t10, b -= o00 * t01 + o10 * t11, c -= o01 * t01 + o11 * t11;
    }
    const Eight ac = a * c, bb = b * b, det = ac - bb, one_over = 1.0 / det;
    i00 = c * one_over, i01 = -b * one_over, i11 = a * one_over;
    // A block of two: signs differ where the determinant is negative, else both are the sign of a.
    found += det < none ? one : (a < none ? two : none);
    const Eight size = (det < none ? -det : det) / ((ac < none ? -ac : ac) + bb);
    weakest = size < weakest ? size : weakest;
  }
  *reinterpret_cast<Eight*>(counts) = found;
  *reinterpret_cast<Eight*>(least) = weakest;
}

}  // namespace flatwise::beam::FLATWISE_LANES
