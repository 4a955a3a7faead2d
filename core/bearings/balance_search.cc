#include "core/bearings/balance_search.h"

#include <algorithm>
#include <cmath>

namespace flatwise::bearings {
namespace {

constexpr int kMostRounds = 400;
constexpr int kLetInRounds = 24;

struct Look {
  Balance balance{};
  double stiffness[15] = {};
  double left[5] = {};
};

void look(const BallRing& ring, const BalanceTask& task, int unknowns, Look& at) {
  FLATWISE_PICK(lanes::widest(), push_at)(ring, task, at.balance, at.stiffness);
  at.balance.misfit = 0;
  for (int i = 0; i < unknowns; ++i) {
    at.left[i] = task.load[i] - at.balance.held[i];
    at.balance.misfit = std::max(at.balance.misfit, std::abs(at.left[i]));
  }
}

/// (K + lambda) x = f by L D L'. K is never negative, so lambda > 0 always goes.
void solve_with(const Look& at, double lambda, int n, double* x) {
  double l[5][5] = {}, d[5] = {};
  for (int i = 0; i < n; ++i) {
    for (int j = 0; j <= i; ++j) {
      double sum = at.stiffness[i * (i + 1) / 2 + j] + (i == j ? lambda : 0.0);
      for (int m = 0; m < j; ++m) sum -= l[i][m] * l[j][m] * d[m];
      if (i == j)
        d[i] = std::max(sum, lambda * 1e-3);
      else
        l[i][j] = sum / d[j];
    }
    x[i] = at.left[i];
    for (int m = 0; m < i; ++m) x[i] -= l[i][m] * x[m];
  }
  for (int i = n - 1; i >= 0; --i) {
    x[i] /= d[i];
    for (int m = i + 1; m < n; ++m) x[i] -= l[m][i] * x[m];
  }
}

double along(const double* left, const double* step, int n) {
  double sum = 0;
  for (int i = 0; i < n; ++i) sum += left[i] * step[i];
  return sum;
}

bool downhill(const BallRing& ring, const BalanceTask& task, int n, Balance& balance) {
  Look here;
  here.balance = balance;
  look(ring, task, n, here);
  double size = 0;
  for (int i = 0; i < n; ++i) size = std::max(size, std::abs(task.load[i]));
  // Stiffness of a bearing that gives by the load's own deflection: a step of that order where nothing is touched yet.
  double lambda = 1e-3 * std::cbrt(size);
  int steps = 0;
  for (; steps < kMostRounds && here.balance.misfit > task.enough; ++steps) {
    double step[5];
    solve_with(here, lambda, n, step);
    Look there = here;
    for (int i = 0; i < n; ++i) there.balance.at[i] += step[i];
    look(ring, task, n, there);
    if (along(there.left, step, n) >= -0.9 * along(here.left, step, n)) {
      lambda = std::max(lambda * 0.15, 1e-14 * std::cbrt(size));
      here = there;
    } else {
      lambda *= 6;
    }
  }
  balance = here.balance;
  balance.steps = steps;
  return balance.misfit <= task.enough;
}

}  // namespace

bool search_rest(const BallRing& ring, const BalanceTask& task, int unknowns, Balance& balance) {
  const Balance start = balance;
  if (downhill(ring, task, unknowns, balance)) return true;
  const double squeezed = std::abs(task.gap) + 0.01;
  balance = start;
  for (int i = 0; i < unknowns; ++i) balance.at[i] = 0;
  for (int round = 0; round < kLetInRounds; ++round) {
    BalanceTask tighter = task;
    tighter.gap = task.gap - squeezed * std::pow(0.5, round);
    tighter.enough = 1e-6 * (task.enough / 1e-10);
    (void)downhill(ring, tighter, unknowns, balance);
  }
  return downhill(ring, task, unknowns, balance);
}

}  // namespace flatwise::bearings
