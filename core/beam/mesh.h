// mesh.h: the beam cut into elements: plain numbers in SI, two unknowns a node (how far out, and its slope).
//
// Both planes across the shaft are one complex number: x + j y = size e^{j direction}. Sections and hangers are alike in
// both, so stiffness and mass are real and the same for its two parts; only loads and answers are complex.
#pragma once

#include <complex>
#include <span>
#include <vector>

#include "core/beam/model.h"

namespace flatwise::beam {

using Phasor = std::complex<double>;
struct Band;

/// Symmetric 4 x 4 over (out, slope) at A and (out, slope) at B.
struct ElementMatrix {
  double v[4][4];
};

/// One element in SI.
struct Element {
  double length_m, bending_n_m2, shear_n, mass_kg_m, rotary_kg_m;  ///< E I, k G A, rho A, rho I.
};

/// Timoshenko element, interpolated so that it does not lock; consistent mass.
///
/// Model      Cubic shape with shear; exact for loads at its ends.
/// Source     [Przemieniecki], [Friedman-Kosmatka]; k by [Cowper].
[[nodiscard]] ElementMatrix stiffness_of(const Element& e);
/// Translation and rotary inertia; `rotary` multiplies rho I: 1 not turning, -1 forward and 3 backward synchronous whirl,
/// because the shaft's own polar inertia is twice its transverse one.
[[nodiscard]] ElementMatrix mass_of(const Element& e, double rotary);

/// How the shaft's bent line turns.
enum class Whirl {
  still,     ///< Nothing spins: ordinary bending vibration.
  forward,   ///< The bent line turns with the shaft, at its speed.
  backward,  ///< Against it, at its speed.
};

/// Block tridiagonal symmetric pencil K - w² M + w G: for node i the block (uu, us, ss), then the block to node i + 1 by rows.
struct Pencil {
  [[nodiscard]] Band band() const;             ///< The same for the kernels; it points into this one.
  std::vector<double> k_diagonal, m_diagonal;  ///< 3 a node.
  std::vector<double> k_next, m_next;          ///< 4 a node; the last is nought.
  std::vector<double> g;                       ///< 1 a node, in ss.
};

class Mesh {
 public:
  /// Cuts the beam. Hangers, bodies, ends of stretches and places become nodes.
  ///
  /// Refuses    Nothing to hold it, or one hanger that it can turn about; what lies off the shaft; moduli, density,
  ///            stiffness, mass or inertia that cannot be; a body flatter than a disk; more than 20,000 nodes.
  [[nodiscard]] static Result<Mesh> make(const Beam& beam);

  [[nodiscard]] const Beam& beam() const { return beam_; }
  [[nodiscard]] int nodes() const { return static_cast<int>(z_m_.size()); }
  [[nodiscard]] double z_m(int node) const { return z_m_[static_cast<std::size_t>(node)]; }
  [[nodiscard]] const Element& element(int i) const { return elements_[static_cast<std::size_t>(i)]; }
  [[nodiscard]] const Section& section(int element) const;
  [[nodiscard]] Length total() const { return metres(z_m_.back()); }
  /// The node at a place; none where there is no node.
  [[nodiscard]] std::optional<int> node_at(Length place) const;
  [[nodiscard]] int hanger_node(int hanger) const { return hanger_nodes_[static_cast<std::size_t>(hanger)]; }
  [[nodiscard]] int body_node(int body) const { return body_nodes_[static_cast<std::size_t>(body)]; }
  /// Held rows are set to the identity, so that the answer there is exactly nought.
  [[nodiscard]] Pencil pencil(Whirl whirl) const;
  [[nodiscard]] bool holds_place(int node) const { return held_[static_cast<std::size_t>(node)] & 1; }
  [[nodiscard]] bool holds_slope(int node) const { return held_[static_cast<std::size_t>(node)] & 2; }
  /// Where the elements are too long: above this the bending wave is shorter than 2 pi elements (0.1 % off there).
  [[nodiscard]] AngularSpeed fastest() const;

 private:
  Mesh() = default;
  Beam beam_;
  std::vector<double> z_m_;
  std::vector<Element> elements_;
  std::vector<int> stretch_of_, hanger_nodes_, body_nodes_;
  std::vector<unsigned char> held_;
};

}  // namespace flatwise::beam
