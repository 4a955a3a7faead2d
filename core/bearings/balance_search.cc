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
  const int before = balance.steps;
  balance = here.balance;
  balance.steps = before + steps;
  return balance.misfit <= task.enough;
}

/// From a load under which the contacts give as much as the play, so that most balls carry, down to the load itself by eighths: each
/// rest is where the next begins, pressed in further than it needs.
bool let_load_down(const BallRing& ring, const BalanceTask& task, int n, Balance& balance) {
  double size = 0;
  for (int i = 0; i < n; ++i) size = std::max(size, std::abs(task.load[i]));
  const double gap = std::abs(task.gap);
  for (double times = std::max(1.0, gap * std::sqrt(gap) / size); times > 1; times /= 8) {
    BalanceTask more = task;
    for (double& part : more.load) part *= times;
    more.enough = 1e-3 * times * size;
    (void)downhill(ring, more, n, balance);
  }
  return downhill(ring, task, n, balance);
}

/// From a preload that presses every ball to the play that there is, by halves of the way.
bool let_play_in(const BallRing& ring, const BalanceTask& task, int n, Balance& balance) {
  const double squeezed = std::abs(task.gap) + 0.01;
  for (int i = 0; i < n; ++i) balance.at[i] = 0;
  for (int round = 0; round < kLetInRounds; ++round) {
    BalanceTask tighter = task;
    tighter.gap = task.gap - squeezed * std::pow(0.5, round);
    tighter.enough = 1e4 * task.enough;
    (void)downhill(ring, tighter, n, balance);
  }
  return downhill(ring, task, n, balance);
}

}  // namespace

bool search_rest(const BallRing& ring, const BalanceTask& task, int unknowns, Balance& balance) {
  const Balance start = balance;
  for (const auto way : {let_load_down, downhill, let_play_in}) {
    balance = start;
    if (way(ring, task, unknowns, balance)) return true;
  }
  return false;
}

}  // namespace flatwise::bearings
