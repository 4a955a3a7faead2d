#include "core/beam/solve.h"

#include "core/beam/band_kernel.h"
#include "core/units/gravity.h"

namespace flatwise::beam {

Solver::Solver(const Mesh& mesh, Whirl whirl, NodeLoads loads, lanes::Width width)
    : nodes_{mesh.nodes()},
      width_{width},
      pencil_{mesh.pencil(whirl)},
      loads_{std::move(loads)},
      work_(static_cast<std::size_t>(nodes_ * kWorkPerNode)),
      x_(static_cast<std::size_t>(4 * kSpeedsAtOnce * nodes_)) {
  // A row that is held has the identity in it and answers nought: it takes its own load itself.
  for (int node = 0; node < nodes_; ++node)
    for (std::vector<double>* v : {&loads_.by_square, &loads_.by_speed}) {
      double* at = &(*v)[static_cast<std::size_t>(4 * node)];
      if (mesh.holds_place(node)) at[0] = at[1] = 0;
      if (mesh.holds_slope(node)) at[2] = at[3] = 0;
    }
}

void Solver::solve(const double* w, const double* square, const double* once) {
  const Band band = pencil_.band();
  const BandLoad load{loads_.by_square.data(), loads_.by_speed.data()};
  FLATWISE_PICK(width_, solve_eight)(band, load, Speeds{w, square, once}, work_.data(), x_.data());
}

void Solver::turning(std::span<const double, 8> speeds) {
  std::array<double, 8> squares;
  for (std::size_t i = 0; i < 8; ++i) squares[i] = speeds[i] * speeds[i];
  solve(speeds.data(), squares.data(), speeds.data());
}

void Solver::at_rest() {
  constexpr std::array<double, 8> kNone{}, kOnes{1, 1, 1, 1, 1, 1, 1, 1};
  solve(kNone.data(), kOnes.data(), kNone.data());
}

Phasor Solver::out(int node, int lane) const {
  const double* at = &x_[static_cast<std::size_t>(4 * kSpeedsAtOnce * node + lane)];
  return {at[0], at[kSpeedsAtOnce]};
}

Phasor Solver::slope(int node, int lane) const {
  const double* at = &x_[static_cast<std::size_t>(4 * kSpeedsAtOnce * node + lane)];
  return {at[2 * kSpeedsAtOnce], at[3 * kSpeedsAtOnce]};
}

Solved Solver::taken(int lane) const {
  Solved s;
  for (int node = 0; node < nodes_; ++node) {
    s.out.push_back(out(node, lane));
    s.slope.push_back(slope(node, lane));
  }
  return s;
}

EndForces end_forces(const Element& e, const std::array<Phasor, 4>& ends, const Moving& moving) {
  const ElementMatrix k = stiffness_of(e), m = mass_of(e, moving.rotary);
  EndForces f{};
  for (std::size_t i = 0; i < 4; ++i)
    for (std::size_t j = 0; j < 4; ++j) f[i] += (k.v[i][j] - moving.w * moving.w * m.v[i][j]) * ends[j];
  const double down = -moving.weight * e.mass_kg_m * kGravity * e.length_m;
  const double own[4] = {down / 2, down * e.length_m / 12, down / 2, -down * e.length_m / 12};
  for (std::size_t i = 0; i < 4; ++i) f[i] -= own[i];
  return f;
}

}  // namespace flatwise::beam
