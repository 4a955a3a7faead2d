#include "core/dynamics/pattern_hangers.h"

#include <algorithm>
#include <cmath>

#include "core/dynamics/directions.h"

namespace flatwise::dynamics {

Pressed hardest_pressed(const PatternTask& task, std::span<const int> places) {
  CORE_CHECK(!task.hangers.empty());
  const auto directions = dynamics::directions(task.positions);
  Pressed hardest{0, -1};
  for (std::size_t h = 0; h < task.hangers.size(); ++h) {
    const HangerRow& row = task.hangers[h];
    std::complex<double> sum = row.fixed_n;
    for (std::size_t i = 0; i < places.size(); ++i)
      sum += row.rotors_n[i] * directions[static_cast<std::size_t>(places[i])];
    if (std::abs(sum) > hardest.force_n) hardest = {static_cast<int>(h), std::abs(sum)};
  }
  return hardest;
}

double hangers_floor(const PatternTask& task) {
  const double error = std::hypot(task.errors.share, task.errors.azimuth.radians());
  double most = 0;
  for (const HangerRow& row : task.hangers) {
    double squares = std::norm(row.fixed_n);
    for (const double rotor : row.rotors_n) squares += rotor * rotor;
    most = std::max(most, error * std::sqrt(squares / 3));
  }
  return most;
}

double reaction_step(double force_n, double floor_n) {
  if (!(floor_n > 0)) return force_n;
  constexpr double kRounding = 1e-9;
  return std::max(0.0, std::ceil(force_n / floor_n - 1 - kRounding));
}

}  // namespace flatwise::dynamics
