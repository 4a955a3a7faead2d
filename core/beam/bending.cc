#include "core/beam/bending.h"

#include <algorithm>
#include <cmath>

#include "core/beam/critical.h"
#include "core/beam/solve.h"
#include "core/units/guards.h"

namespace flatwise::beam {
namespace {

/// A part that is rounding beside the other is nought, so that straight down is 180°, not nearly -180°.
Angle direction_of(Phasor v) {
  constexpr double kRounding = 1e-12;
  const double x = std::abs(v.real()) > kRounding * std::abs(v) ? v.real() : 0.0;
  const double y = std::abs(v.imag()) > kRounding * std::abs(v) ? v.imag() : 0.0;
  return radians(std::atan2(y, x));
}

/// Shear and moment of both sides of every node, and what the nodes must be given from outside to stay in balance.
struct Inside {
  std::vector<double> shear, moment;
  std::vector<Phasor> force, couple;
};

Inside inside_of(const Mesh& mesh, const Solved& x, const Moving& moving) {
  const auto count = static_cast<std::size_t>(mesh.nodes());
  Inside in{std::vector<double>(count), std::vector<double>(count), std::vector<Phasor>(count),
            std::vector<Phasor>(count)};
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const EndForces f =
        end_forces(mesh.element(static_cast<int>(i)), {x.out[i], x.slope[i], x.out[i + 1], x.slope[i + 1]}, moving);
    for (const std::size_t side : {std::size_t{0}, std::size_t{1}}) {
      in.shear[i + side] = std::max(in.shear[i + side], std::abs(f[2 * side]));
      in.moment[i + side] = std::max(in.moment[i + side], std::abs(f[2 * side + 1]));
      in.force[i + side] += f[2 * side];
      in.couple[i + side] += f[2 * side + 1];
    }
  }
  return in;
}

/// What the bodies at the nodes ask for while they move.
void add_bodies(const Mesh& mesh, const Solved& x, double w, Inside& in) {
  for (std::size_t i = 0; i < mesh.beam().bodies.size(); ++i) {
    const Body& b = mesh.beam().bodies[i];
    const auto node = static_cast<std::size_t>(mesh.body_node(static_cast<int>(i)));
    const double moment_kg_m = b.mass.si() * b.mass_offset.si();
    const double across = b.across.si() - b.with_shaft * b.along.si();
    in.force[node] -= w * w * (b.mass.si() * x.out[node] + moment_kg_m * x.slope[node]);
    in.couple[node] -= w * w * (moment_kg_m * x.out[node] + across * x.slope[node]) -
                       w * b.own_spin.radians_per_second() * b.along.si() * x.slope[node];
  }
}

/// What the loads give at a node.
struct Given {
  Phasor force, couple;
};
Given given_at(const NodeLoads& loads, std::size_t node, double square, double once) {
  const double *p = &loads.by_square[4 * node], *q = &loads.by_speed[4 * node];
  return {Phasor{p[0], p[1]} * square + Phasor{q[0], q[1]} * once,
          Phasor{p[2], p[3]} * square + Phasor{q[2], q[3]} * once};
}

std::vector<Reaction> reactions_of(const Mesh& mesh, const Solved& x, const Inside& in, const NodeLoads& loads,
                                   const Moving& moving) {
  const double square = moving.w > 0 ? moving.w * moving.w : 1;
  std::vector<Reaction> out;
  for (std::size_t i = 0; i < mesh.beam().hangers.size(); ++i) {
    const Hanger& h = mesh.beam().hangers[i];
    const auto node = static_cast<std::size_t>(mesh.hanger_node(static_cast<int>(i)));
    const Given given = given_at(loads, node, square, moving.w);
    // The hanger gives the node what its neighbours, its bodies and the loads leave; the shaft presses back the opposite.
    const Phasor pressed = h.stiffness ? h.stiffness->si() * x.out[node] : given.force - in.force[node];
    const Phasor couple = h.clamped ? given.couple - in.couple[node] : Phasor{};
    out.push_back({h.at, Force::from_si(std::abs(pressed)), direction_of(pressed), Torque::from_si(std::abs(couple))});
  }
  return out;
}

Bent bent_of(const Mesh& mesh, const Solver& solver, const NodeLoads& loads, const Moving& moving) {
  const Solved x = solver.taken(0);
  Inside in = inside_of(mesh, x, moving);
  // The element's own weight was taken off its end forces; the nodes' loads hold it, so it goes back for the balance.
  if (moving.weight > 0) {
    const Inside bare = inside_of(mesh, x, {});
    in.force = bare.force;
    in.couple = bare.couple;
  }
  if (moving.w > 0) add_bodies(mesh, x, moving.w, in);
  Bent out{reactions_of(mesh, x, in, loads, moving), {}};
  for (std::size_t i = 0; i < x.out.size(); ++i)
    out.line.push_back({metres(mesh.z_m(static_cast<int>(i))), metres(std::abs(x.out[i])), direction_of(x.out[i]),
                        radians(std::abs(x.slope[i])), Torque::from_si(in.moment[i]), Force::from_si(in.shear[i])});
  return out;
}

}  // namespace

const LinePoint& Bent::greatest_out() const { return *std::ranges::max_element(line, {}, &LinePoint::out); }

Result<Bent> bent_at_rest(const Mesh& mesh, std::span<const Load> loads, bool own_weight) {
  const Result<NodeLoads> at = loads_at_rest(mesh, loads, own_weight);
  if (!at) return tl::unexpected(at.error());
  Solver solver{mesh, Whirl::still, *at};
  solver.at_rest();
  return bent_of(mesh, solver, *at, {.weight = own_weight ? 1.0 : 0.0});
}

Result<Bent> bent_turning(const Mesh& mesh, std::span<const Turning> turning, AngularSpeed speed) {
  if (auto p = not_above_nought("speed", any(speed))) return tl::unexpected(*std::move(p));
  if (auto p = too_coarse(mesh, speed)) return tl::unexpected(*std::move(p));
  const Result<NodeLoads> at = loads_turning(mesh, turning);
  if (!at) return tl::unexpected(at.error());
  Solver solver{mesh, Whirl::forward, *at};
  std::array<double, 8> speeds;
  speeds.fill(speed.radians_per_second());
  solver.turning(speeds);
  return bent_of(mesh, solver, *at, {.w = speed.radians_per_second(), .rotary = -1});
}

}  // namespace flatwise::beam
