// solve.h: the banded solution at one speed or many, and what follows from it at the nodes. Not for other folders.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/beam/loads.h"
#include "core/beam/mesh.h"
#include "core/lanes/lanes.h"

namespace flatwise::beam {

/// Out and slope of every node, complex, at one speed.
struct Solved {
  std::vector<Phasor> out, slope;
};

/// A pencil, loads and room to work in, for as many speeds as are asked.
class Solver {
 public:
  Solver(const Mesh& mesh, Whirl whirl, NodeLoads loads, lanes::Width width = lanes::widest());

  /// Turning loads at eight speeds (rad/s); the answer stands in x() until the next call.
  void turning(std::span<const double, 8> speeds);
  /// Loads as they are, nothing moves.
  void at_rest();
  [[nodiscard]] const std::vector<double>& x() const { return x_; }
  /// Answer of one of the eight.
  [[nodiscard]] Solved taken(int lane) const;
  [[nodiscard]] Phasor out(int node, int lane) const;
  [[nodiscard]] Phasor slope(int node, int lane) const;
  [[nodiscard]] const Pencil& pencil() const { return pencil_; }

 private:
  void solve(const double* w, const double* square, const double* once);
  int nodes_;
  lanes::Width width_;
  Pencil pencil_;
  NodeLoads loads_;
  std::vector<double> work_, x_;
};

/// Forces and couples that the nodes press an element's ends with: (shear A, couple A, shear B, couple B).
using EndForces = std::array<Phasor, 4>;
struct Moving {
  double w = 0;       ///< rad/s; nought: at rest.
  double rotary = 1;  ///< As mass_of() takes it.
  double weight = 0;  ///< 1: less the element's own weight.
};
[[nodiscard]] EndForces end_forces(const Element& e, const std::array<Phasor, 4>& ends, const Moving& moving);

}  // namespace flatwise::beam
