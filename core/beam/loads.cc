#include "core/beam/loads.h"

#include <cmath>
#include <string>

#include "core/units/gravity.h"
#include "core/units/guards.h"

namespace flatwise::beam {
namespace {

NodeLoads none(const Mesh& mesh) {
  const auto size = static_cast<std::size_t>(4 * mesh.nodes());
  return {std::vector<double>(size), std::vector<double>(size)};
}

void add(std::vector<double>& to, int node, Phasor force, Phasor couple) {
  double* at = &to[static_cast<std::size_t>(4 * node)];
  at[0] += force.real(), at[1] += force.imag(), at[2] += couple.real(), at[3] += couple.imag();
}

Problem no_node(Length place, std::size_t index) {
  return {Code{"beam.no_place"}, "load[" + std::to_string(index + 1) + "].at", {}, {{"at", any(place)}}, std::nullopt};
}

}  // namespace

Turning turning_of(const Body& body, Angle lean, Angle azimuth) {
  const double s = std::sin(lean.radians()), c = std::cos(lean.radians()), along = body.along.si();
  return {body.at, azimuth, Unbalance::from_si(body.mass.si() * body.mass_offset.si() * s),
          body.across.si() * s * c - body.with_shaft * along * s, -body.own_spin.radians_per_second() * along * s};
}

Result<NodeLoads> loads_at_rest(const Mesh& mesh, std::span<const Load> loads, bool own_weight) {
  NodeLoads out = none(mesh);
  for (int i = 0; own_weight && i + 1 < mesh.nodes(); ++i) {
    const Element& e = mesh.element(i);
    const double down = -e.mass_kg_m * kGravity * e.length_m;
    add(out.by_square, i, down / 2, down * e.length_m / 12);
    add(out.by_square, i + 1, down / 2, -down * e.length_m / 12);
  }
  for (std::size_t i = 0; own_weight && i < mesh.beam().bodies.size(); ++i) {
    const Body& b = mesh.beam().bodies[i];
    const double down = -b.mass.si() * kGravity;
    add(out.by_square, mesh.body_node(static_cast<int>(i)), down, down * b.mass_offset.si());
  }
  for (std::size_t i = 0; i < loads.size(); ++i) {
    const std::optional<int> node = mesh.node_at(loads[i].at);
    if (!node) return tl::unexpected(no_node(loads[i].at, i));
    if (auto p = not_finite("load", any(loads[i].force))) return tl::unexpected(*std::move(p));
    add(out.by_square, *node, std::polar(1.0, loads[i].direction.radians()) * loads[i].force.si(), 0);
  }
  return out;
}

Result<NodeLoads> loads_turning(const Mesh& mesh, std::span<const Turning> turning) {
  NodeLoads out = none(mesh);
  for (std::size_t i = 0; i < turning.size(); ++i) {
    const Turning& t = turning[i];
    const std::optional<int> node = mesh.node_at(t.at);
    if (!node) return tl::unexpected(no_node(t.at, i));
    if (!std::isfinite(t.unbalance.si() + t.couple_by_square_kg_m2 + t.couple_by_speed_kg_m2_s))
      return tl::unexpected(Problem{Code{"input.not_finite"}, "turning", {}, {}, std::nullopt});
    const Phasor towards = std::polar(1.0, t.azimuth.radians());
    add(out.by_square, *node, towards * t.unbalance.si(), towards * t.couple_by_square_kg_m2);
    add(out.by_speed, *node, 0, towards * t.couple_by_speed_kg_m2_s);
  }
  return out;
}

}  // namespace flatwise::beam
