#include "core/beam/band_kernel.h"
#include "core/beam/mesh.h"

namespace flatwise::beam {
namespace {

struct Blocks {
  std::vector<double>&diagonal, &next;

  void add(std::size_t node, const ElementMatrix& e) const {
    double* a = &diagonal[3 * node];
    double* b = &diagonal[3 * (node + 1)];
    double* n = &next[4 * node];
    a[0] += e.v[0][0], a[1] += e.v[0][1], a[2] += e.v[1][1];
    b[0] += e.v[2][2], b[1] += e.v[2][3], b[2] += e.v[3][3];
    n[0] += e.v[0][2], n[1] += e.v[0][3], n[2] += e.v[1][2], n[3] += e.v[1][3];
  }
  /// Takes one of a node's two rows and columns out: its unknown is nought.
  void clear(std::size_t node, int row, double on_diagonal) const {
    double* a = &diagonal[3 * node];
    a[row == 0 ? 0 : 2] = on_diagonal;
    a[1] = 0;
    next[4 * node + static_cast<std::size_t>(2 * row)] = next[4 * node + static_cast<std::size_t>(2 * row) + 1] = 0;
    if (node > 0)
      next[4 * (node - 1) + static_cast<std::size_t>(row)] = next[4 * (node - 1) + static_cast<std::size_t>(row) + 2] =
          0;
  }
};

double turning(Whirl whirl) { return whirl == Whirl::forward ? 1 : whirl == Whirl::backward ? -1 : 0; }

}  // namespace

Pencil Mesh::pencil(Whirl whirl) const {
  const std::size_t count = z_m_.size();
  Pencil p{std::vector<double>(3 * count), std::vector<double>(3 * count), std::vector<double>(4 * count),
           std::vector<double>(4 * count), std::vector<double>(count)};
  const Blocks k{p.k_diagonal, p.k_next}, m{p.m_diagonal, p.m_next};
  const double turn = turning(whirl);
  for (std::size_t i = 0; i + 1 < count; ++i) {
    k.add(i, stiffness_of(elements_[i]));
    m.add(i, mass_of(elements_[i], 1 - 2 * turn));
  }
  for (std::size_t i = 0; i < beam_.hangers.size(); ++i)
    if (beam_.hangers[i].stiffness)
      p.k_diagonal[3 * static_cast<std::size_t>(hanger_nodes_[i])] += beam_.hangers[i].stiffness->si();
  for (std::size_t i = 0; i < beam_.bodies.size(); ++i) {
    const Body& b = beam_.bodies[i];
    const auto node = static_cast<std::size_t>(body_nodes_[i]);
    p.m_diagonal[3 * node] += b.mass.si();
    p.m_diagonal[3 * node + 1] += b.mass.si() * b.mass_offset.si();
    p.m_diagonal[3 * node + 2] += b.across.si() - turn * b.with_shaft * b.along.si();
    p.g[node] += turn * b.own_spin.radians_per_second() * b.along.si();
  }
  for (std::size_t node = 0; node < count; ++node)
    for (const int row : {0, 1})
      if (held_[node] & (1 << row)) {
        k.clear(node, row, 1);
        m.clear(node, row, 0);
        if (row == 1) p.g[node] = 0;
      }
  return p;
}

Band Pencil::band() const {
  return {static_cast<int>(g.size()), k_diagonal.data(), m_diagonal.data(), k_next.data(), m_next.data(), g.data()};
}

}  // namespace flatwise::beam
