// Block elimination (L D L^T with blocks of 2 x 2) from end A. Eight speeds side by side: one vector of the compiler's own,
// which it makes of whatever registers the build has. No sum of products is fused, so every build gives the same bits.
#include "core/beam/band_kernel.h"

namespace flatwise::beam::FLATWISE_LANES {
namespace {

using Eight = double __attribute__((vector_size(64)));
static_assert(sizeof(Eight) == kSpeedsAtOnce * sizeof(double));

/// By copy: the callers' rows of doubles stand at any address, and a vector is read from its own only.
struct Read {
  Eight v;  ///< In a struct: how a bare vector is returned depends on the registers of the build.
};
inline Read at(const double* from) {
  Read read;
  __builtin_memcpy(&read.v, from, sizeof read.v);
  return read;
}
inline void put(double* to, const Eight& eight) { __builtin_memcpy(to, &eight, sizeof eight); }
/// Four in a row.
inline void put(double* to, const Eight& e0, const Eight& e1, const Eight& e2, const Eight& e3) {
  put(to, e0), put(to + 8, e1), put(to + 16, e2), put(to + 24, e3);
}

/// A symmetric block of 2 x 2, or its inverse: (first, between, second).
struct Symmetric {
  Eight a, b, c;
};
/// A block of 2 x 2 by rows.
struct Full {
  Eight v00, v01, v10, v11;
};

/// K - w² M + w G of a node.
inline Symmetric own_block(const Band& band, int node, const Eight& w, const Eight& w2) {
  const double *k = band.k_diagonal + 3 * node, *m = band.m_diagonal + 3 * node;
  return {k[0] - w2 * m[0], k[1] - w2 * m[1], k[2] - w2 * m[2] + w * band.g[node]};
}
/// The block between a node and the one before it.
inline Full block_before(const Band& band, int node, const Eight& w2) {
  const double *k = band.k_next + 4 * (node - 1), *m = band.m_next + 4 * (node - 1);
  return {k[0] - w2 * m[0], k[1] - w2 * m[1], k[2] - w2 * m[2], k[3] - w2 * m[3]};
}
inline Full times(const Symmetric& i, const Full& o) {
  return {i.a * o.v00 + i.b * o.v10, i.a * o.v01 + i.b * o.v11, i.b * o.v00 + i.c * o.v10, i.b * o.v01 + i.c * o.v11};
}
/// Takes from a block what the eliminated node before it holds: o^T t, with t its inverse times o.
inline void eliminate(Symmetric& block, const Full& o, const Full& t) {
  block.a -= o.v00 * t.v00 + o.v10 * t.v10;
  block.b -= o.v00 * t.v01 + o.v10 * t.v11;
  block.c -= o.v01 * t.v01 + o.v11 * t.v11;
}
inline Symmetric inverse(const Symmetric& block, const Eight& one_over) {
  return {block.c * one_over, -block.b * one_over, block.a * one_over};
}

}  // namespace

void solve_eight(const Band& band, const BandLoad& load, const Speeds& speeds, double* work, double* x) {
  const Eight w = at(speeds.w).v, w2 = w * w;
  const Eight square = at(speeds.square).v;
  const Eight once = at(speeds.once).v;
  Symmetric inv{};
  Eight y0{}, y1{}, y2{}, y3{};
  double* kept = work;
  for (int node = 0; node < band.nodes; ++node) {
    const double *p = load.by_square + 4 * node, *q = load.by_speed + 4 * node;
    Symmetric block = own_block(band, node, w, w2);
    Eight r0 = square * p[0] + once * q[0], r1 = square * p[1] + once * q[1];
    Eight r2 = square * p[2] + once * q[2], r3 = square * p[3] + once * q[3];
    if (node > 0) {
      const Full o = block_before(band, node, w2), t = times(inv, o);
      eliminate(block, o, t);
      r0 -= o.v00 * y0 + o.v10 * y2, r1 -= o.v00 * y1 + o.v10 * y3;
      r2 -= o.v01 * y0 + o.v11 * y2, r3 -= o.v01 * y1 + o.v11 * y3;
      put(kept + 32, t.v00, t.v01, t.v10, t.v11);
      kept += kWorkPerNode;
    }
    inv = inverse(block, 1.0 / (block.a * block.c - block.b * block.b));
    y0 = inv.a * r0 + inv.b * r2, y1 = inv.a * r1 + inv.b * r3;
    y2 = inv.b * r0 + inv.c * r2, y3 = inv.b * r1 + inv.c * r3;
    put(kept, y0, y1, y2, y3);
  }
  double* out = x + 32 * (band.nodes - 1);
  put(out, y0, y1, y2, y3);
  for (int node = band.nodes - 2; node >= 0; --node) {
    kept -= kWorkPerNode;
    out -= 32;
    const Full t{at(kept + 32).v, at(kept + 40).v, at(kept + 48).v, at(kept + 56).v};
    const Eight x0 = at(kept).v - (t.v00 * y0 + t.v01 * y2), x1 = at(kept + 8).v - (t.v00 * y1 + t.v01 * y3);
    const Eight x2 = at(kept + 16).v - (t.v10 * y0 + t.v11 * y2), x3 = at(kept + 24).v - (t.v10 * y1 + t.v11 * y3);
    y0 = x0, y1 = x1, y2 = x2, y3 = x3;
    put(out, y0, y1, y2, y3);
  }
}

void count_eight(const Band& band, const double* speeds, double* counts, double* least) {
  const Eight w = at(speeds).v, w2 = w * w;
  const Eight none{}, one = none + 1.0, two = none + 2.0;
  Symmetric inv{};
  Eight found{}, weakest = one;
  for (int node = 0; node < band.nodes; ++node) {
    Symmetric block = own_block(band, node, w, w2);
    if (node > 0) {
      const Full o = block_before(band, node, w2);
      eliminate(block, o, times(inv, o));
    }
    const Eight ac = block.a * block.c, bb = block.b * block.b, det = ac - bb;
    inv = inverse(block, 1.0 / det);
    // A block of two: signs differ where the determinant is negative, else both are the sign of a.
    found += det < none ? one : (block.a < none ? two : none);
    const Eight size = (det < none ? -det : det) / ((ac < none ? -ac : ac) + bb);
    weakest = size < weakest ? size : weakest;
  }
  put(counts, found);
  put(least, weakest);
}

}  // namespace flatwise::beam::FLATWISE_LANES
