#include "core/bearings/balance_kernel.h"

#include <cmath>

namespace flatwise::bearings::FLATWISE_LANES {
namespace {

using Lanes = double __attribute__((vector_size(64)));
using Bits = long long __attribute__((vector_size(64)));
using Half = double __attribute__((vector_size(32)));
using Pair = double __attribute__((vector_size(16)));

// By reference everywhere: a vector passed by value has another way of being passed in each build.
inline void load(Lanes& to, const double* from) { __builtin_memcpy(&to, from, sizeof to); }
inline void root(Lanes& to, const Lanes& of) {
  double each[8];
  __builtin_memcpy(each, &of, sizeof each);
  for (double& x : each) x = std::sqrt(x);
  __builtin_memcpy(&to, each, sizeof each);
}
inline void above_nought(Lanes& x) {
  const Lanes nought{};
  x = (Lanes)((Bits)x & (Bits)(x > nought));
}
inline double greater(double a, double b) { return a > b ? a : b; }
inline double size_of(double a) { return a < 0 ? -a : a; }
inline void total(double& sum, const Lanes& v) {
  const Half h = __builtin_shufflevector(v, v, 0, 1, 2, 3) + __builtin_shufflevector(v, v, 4, 5, 6, 7);
  const Pair p = __builtin_shufflevector(h, h, 0, 1) + __builtin_shufflevector(h, h, 2, 3);
  sum = p[0] + p[1];
}

/// One block of balls at the place looked at.
struct Block {
  Lanes c, s;
  Lanes across, along;  ///< Direction of the contact.
  Lanes squeeze;        ///< Deflection, over A.
  Lanes rooted;         ///< Its root, times the weight.
  Lanes push;           ///< Deflection^1.5.
  Lanes inverse;        ///< 1 / distance of the groove centres.
};

inline void look(Block& b, const BallRing& ring, int block, const double* at, double gap) {
  Lanes w, r;
  load(b.c, ring.cosine + 8 * block);
  load(b.s, ring.sine + 8 * block);
  load(w, ring.weight + 8 * block);
  const Lanes u = at[0] * b.c + at[1] * b.s - gap;
  const Lanes v = at[3] * b.s + at[4] * b.c + at[2];
  // Distance less one as (distance² - 1) / (distance + 1): nothing is lost where the grooves barely touch the ball.
  const Lanes excess = u * (u + 2.0) + v * v;
  root(r, excess + 1.0);
  b.inverse = 1.0 / (r + 1e-300);
  b.squeeze = excess / (r + 1.0);
  above_nought(b.squeeze);
  root(b.rooted, b.squeeze);
  b.rooted *= w;
  b.push = b.squeeze * b.rooted;
  b.across = (u + 1.0) * b.inverse;
  b.along = v * b.inverse;
}

/// Sums over the balls that the push and its slopes need.
template <int N>
struct Sums {
  Lanes push[5] = {};
  Lanes uu[3] = {}, uv[5] = {}, vv[6] = {};  ///< Times c², cs, s²; c, s, c², cs, s²; 1, c, s, c², cs, s².
  Lanes inner = {}, outer = {}, most = {}, flattest = Lanes{} + 1.0;  ///< What Balance returns of the balls.
};

template <int N>
inline void add(Sums<N>& sums, const Block& b) {
  const Lanes q_u = b.push * b.across, q_v = b.push * b.along;
  const Lanes side = b.push * b.inverse, more = 1.5 * b.rooted - side;
  const Lanes uu = side + more * b.across * b.across, uv = more * b.across * b.along;
  const Lanes vv = side + more * b.along * b.along;
  const Lanes cc = b.c * b.c, cs = b.c * b.s, ss = b.s * b.s;
  const Lanes cube = b.push * b.squeeze * b.squeeze * b.squeeze;
  sums.inner += cube;
  sums.outer += cube * b.rooted;
  sums.most = sums.most > b.squeeze ? sums.most : b.squeeze;
  sums.flattest = b.push > 0.0 && b.across < sums.flattest ? b.across : sums.flattest;
  sums.push[0] += q_u * b.c;
  sums.push[1] += q_u * b.s;
  sums.push[2] += q_v;
  sums.push[3] += q_v * b.s;
  sums.push[4] += q_v * b.c;
  sums.uu[0] += uu * cc;
  sums.uu[1] += uu * cs;
  sums.uu[2] += uu * ss;
  sums.uv[0] += uv * b.c;
  sums.uv[1] += uv * b.s;
  sums.vv[0] += vv;
  if constexpr (N == 5) {
    sums.uv[2] += uv * cc;
    sums.uv[3] += uv * cs;
    sums.uv[4] += uv * ss;
    sums.vv[1] += vv * b.c;
    sums.vv[2] += vv * b.s;
    sums.vv[3] += vv * cc;
    sums.vv[4] += vv * cs;
    sums.vv[5] += vv * ss;
  }
}

/// Lower triangle by rows: x across c, x across s, along, tilt by s, tilt by c.
template <int N>
inline void spread(const Sums<N>& sums, double* held, double* k) {
  for (int i = 0; i < N; ++i) total(held[i], sums.push[i]);
  total(k[0], sums.uu[0]);
  total(k[1], sums.uu[1]);
  total(k[2], sums.uu[2]);
  total(k[3], sums.uv[0]);
  total(k[4], sums.uv[1]);
  total(k[5], sums.vv[0]);
  if constexpr (N == 5) {
    total(k[6], sums.uv[3]);
    total(k[7], sums.uv[4]);
    total(k[8], sums.vv[2]);
    total(k[9], sums.vv[5]);
    total(k[10], sums.uv[2]);
    k[11] = k[6];
    total(k[12], sums.vv[1]);
    total(k[13], sums.vv[4]);
    total(k[14], sums.vv[3]);
  }
}

template <int N>
inline void push_and_slope(const BallRing& ring, double gap, const double* at, Sums<N>& sums, double* held, double* k) {
  sums = {};
  for (int block = 0; block < ring.blocks; ++block) {
    Block b;
    look(b, ring, block, at, gap);
    add<N>(sums, b);
  }
  spread<N>(sums, held, k);
}

/// Solves k x = f, k by rows of its lower triangle, as L D L'. False where k is not safely positive.
template <int N>
inline bool solved(const double* k, const double* f, double* x) {
  double l[N][N], d[N], inverse[N];
  for (int i = 0; i < N; ++i) {
    const double* row = k + i * (i + 1) / 2;
    double sum = row[i];
    for (int j = 0; j < i; ++j) {
      double part = row[j];
      for (int m = 0; m < j; ++m) part -= l[i][m] * l[j][m] * d[m];
      l[i][j] = part * inverse[j];
      sum -= l[i][j] * part;
    }
    if (!(sum > 1e-13 * row[i])) return false;
    d[i] = sum;
    inverse[i] = 1.0 / sum;
  }
  for (int i = 0; i < N; ++i) {
    x[i] = f[i];
    for (int m = 0; m < i; ++m) x[i] -= l[i][m] * x[m];
  }
  for (int i = N - 1; i >= 0; --i) {
    x[i] *= inverse[i];
    for (int m = i + 1; m < N; ++m) x[i] -= l[m][i] * x[m];
  }
  return true;
}

/// Of three, by cofactors: one division, and nothing waits for it. k by rows of its lower triangle.
template <>
inline bool solved<3>(const double* k, const double* f, double* x) {
  const double a = k[2] * k[5] - k[4] * k[4], b = k[4] * k[3] - k[1] * k[5], c = k[1] * k[4] - k[2] * k[3];
  const double d = k[0] * k[5] - k[3] * k[3], e = k[1] * k[3] - k[0] * k[4], g = k[0] * k[2] - k[1] * k[1];
  const double whole = k[0] * a + k[1] * b + k[3] * c;
  if (!(whole > 1e-13 * k[0] * k[2] * k[5]) || !(a > 0) || !(k[5] > 0)) return false;
  const double inverse = 1.0 / whole;
  x[0] = (a * f[0] + b * f[1] + c * f[2]) * inverse;
  x[1] = (b * f[0] + d * f[1] + e * f[2]) * inverse;
  x[2] = (c * f[0] + e * f[1] + g * f[2]) * inverse;
  return true;
}

template <int N>
inline double misfit_of(const BalanceTask& task, const double* held, double* left) {
  double most = 0;
  for (int i = 0; i < N; ++i) {
    left[i] = task.load[i] - held[i];
    most = greater(most, size_of(left[i]));
  }
  return most;
}

template <int N>
inline double slope_along(const double* left, const double* step) {
  double sum = 0;
  for (int i = 0; i < N; ++i) sum += left[i] * step[i];
  return sum;
}

/// Goes along the step, as far as the slope there does not turn into a worse one. False where no part of it does.
template <int N>
struct Place {
  Sums<N> sums;
  double k[15], left[5];
};

template <int N>
inline bool moved(const BallRing& ring, const BalanceTask& task, const double* step, Balance& b, Place<N>& p) {
  const double before = slope_along<N>(p.left, step);
  double at[5], part = 1;
  for (int cut = 0; cut < 30; ++cut) {
    for (int i = 0; i < 5; ++i) at[i] = b.at[i] + (i < N ? part * step[i] : 0.0);
    push_and_slope<N>(ring, task.gap, at, p.sums, b.held, p.k);
    b.misfit = misfit_of<N>(task, b.held, p.left);
    const double after = slope_along<N>(p.left, step);
    if (after >= -0.9 * before) {
      for (int i = 0; i < N; ++i) b.at[i] = at[i];
      return true;
    }
    const double down = before / (before - after);
    part *= down > 0.1 ? down : 0.1;
  }
  return false;
}

template <int N>
inline void sum_up(const Sums<N>& sums, Balance& b) {
  total(b.inner_sum, sums.inner);
  total(b.outer_sum, sums.outer);
  for (int i = N; i < 5; ++i) total(b.held[i], sums.push[i]);
  b.greatest = 0;
  b.steepest_cosine = 1;
  for (int i = 0; i < 8; ++i) {
    b.greatest = greater(b.greatest, sums.most[i]);
    b.steepest_cosine = b.steepest_cosine < sums.flattest[i] ? b.steepest_cosine : sums.flattest[i];
  }
}

template <int N>
inline void descend(const BallRing& ring, const BalanceTask& task, Balance& b) {
  Place<N> p;
  double step[5];
  b.steps = 0;
  push_and_slope<N>(ring, task.gap, b.at, p.sums, b.held, p.k);
  b.misfit = misfit_of<N>(task, b.held, p.left);
  while (b.misfit > task.enough && b.steps < task.most_steps) {
    ++b.steps;
    if (!solved<N>(p.k, p.left, step) || !moved<N>(ring, task, step, b, p)) break;
  }
  sum_up<N>(p.sums, b);
}

}  // namespace

void balance_three(const BallRing& ring, const BalanceTask& task, Balance& balance) { descend<3>(ring, task, balance); }

void balance_five(const BallRing& ring, const BalanceTask& task, Balance& balance) { descend<5>(ring, task, balance); }

void push_at(const BallRing& ring, const BalanceTask& task, Balance& balance, double* stiffness) {
  Sums<5> sums;
  double left[5];
  push_and_slope<5>(ring, task.gap, balance.at, sums, balance.held, stiffness);
  balance.misfit = misfit_of<5>(task, balance.held, left);
  sum_up<5>(sums, balance);
}

}  // namespace flatwise::bearings::FLATWISE_LANES
