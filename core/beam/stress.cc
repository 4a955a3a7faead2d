#include "core/beam/stress.h"

#include <algorithm>
#include <cmath>

namespace flatwise::beam {
namespace {

/// Torque in the shaft on either side of each node, larger of the two.
std::vector<double> torque_line(const Mesh& mesh, std::span<const TorqueAt> torques) {
  const auto count = static_cast<std::size_t>(mesh.nodes());
  std::vector<double> put_in(count), line(count);
  for (const TorqueAt& t : torques) put_in[static_cast<std::size_t>(*mesh.node_at(t.at))] += t.torque.si();
  double inside = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double before = inside;
    inside += put_in[i];
    // Beyond the last node there is no shaft: what is left there is a sum that was not nought.
    line[i] = std::max(std::abs(before), i + 1 < count ? std::abs(inside) : 0.0);
  }
  return line;
}

struct Weakest {
  double bending_m3, torsion_m3;
};
Weakest weakest_at(const Mesh& mesh, int node) {
  Weakest w{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  for (const int element : {node - 1, node}) {
    if (element < 0 || element + 1 >= mesh.nodes()) continue;
    w.bending_m3 = std::min(w.bending_m3, mesh.section(element).corner_modulus.si());
    w.torsion_m3 = std::min(w.torsion_m3, mesh.section(element).torsion_modulus.si());
  }
  return w;
}

}  // namespace

Result<std::vector<StressAt>> stresses(const Mesh& mesh, const Bent& at_rest, const Bent& turning,
                                       std::span<const TorqueAt> torques) {
  CORE_CHECK(at_rest.line.size() == turning.line.size() && static_cast<int>(at_rest.line.size()) == mesh.nodes());
  for (const TorqueAt& t : torques)
    if (!mesh.node_at(t.at))
      return tl::unexpected(Problem{Code{"beam.no_place"}, "torque", {}, {{"at", any(t.at)}}, std::nullopt});
  const std::vector<double> torque = torque_line(mesh, torques);
  std::vector<StressAt> out;
  for (int node = 0; node < mesh.nodes(); ++node) {
    const auto i = static_cast<std::size_t>(node);
    const Weakest w = weakest_at(mesh, node);
    const double rest = at_rest.line[i].moment.si() / w.bending_m3, turns = turning.line[i].moment.si() / w.bending_m3;
    const double twist = torque[i] / w.torsion_m3;
    out.push_back({metres(mesh.z_m(node)), pascals(rest), pascals(turns), pascals(twist),
                   pascals(std::hypot(rest + turns, std::sqrt(3.0) * twist))});
  }
  return out;
}

}  // namespace flatwise::beam
