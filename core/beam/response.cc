#include "core/beam/response.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/beam/critical.h"
#include "core/beam/solve.h"
#include "core/units/guards.h"

namespace flatwise::beam {
namespace {

std::optional<Problem> wrong_speeds(const Mesh& mesh, std::span<const AngularSpeed> speeds) {
  if (auto p = outside("speeds", any_count(static_cast<std::int64_t>(speeds.size())), 1, kMostSpeeds)) return p;
  for (const AngularSpeed speed : speeds) {
    if (auto p = not_above_nought("speed", any(speed))) return p;
    if (auto p = too_coarse(mesh, speed)) return p;
  }
  return std::nullopt;
}

/// One hanger, with what its balance needs where it does not give: the elements and bodies beside it.
class HangerRow {
 public:
  HangerRow(const Mesh& mesh, int hanger, const NodeLoads& loads) : node_{mesh.hanger_node(hanger)} {
    const Hanger& h = mesh.beam().hangers[static_cast<std::size_t>(hanger)];
    if (h.stiffness) gives_n_m_ = h.stiffness->si();
    const auto fill = [&](int element, std::size_t row, std::size_t to) {
      const ElementMatrix k = stiffness_of(mesh.element(element)), m = mass_of(mesh.element(element), -1);
      for (std::size_t j = 0; j < 4; ++j) {
        k_[to + j] += k.v[row][j];
        m_[to + j] += m.v[row][j];
      }
    };
    left_ = node_ > 0;
    right_ = node_ + 1 < mesh.nodes();
    if (left_) fill(node_ - 1, 2, 0);
    if (right_) fill(node_, 0, 2);
    for (std::size_t i = 0; i < mesh.beam().bodies.size(); ++i) {
      if (mesh.body_node(static_cast<int>(i)) != node_) continue;
      const Body& b = mesh.beam().bodies[i];
      m_[2] += b.mass.si();
      m_[3] += b.mass.si() * b.mass_offset.si();
    }
    const double* p = &loads.by_square[static_cast<std::size_t>(4 * node_)];
    load_ = {p[0], p[1]};
  }

  [[nodiscard]] double size(const Solver& solver, int lane, double w) const {
    if (gives_n_m_ > 0) return gives_n_m_ * std::abs(solver.out(node_, lane));
    Phasor sum = load_ * (w * w);
    for (int side = -1; side <= 1; ++side) {
      if ((side < 0 && !left_) || (side > 0 && !right_)) continue;
      const auto at = static_cast<std::size_t>(2 * (side + 1));
      sum -= (k_[at] - w * w * m_[at]) * solver.out(node_ + side, lane) +
             (k_[at + 1] - w * w * m_[at + 1]) * solver.slope(node_ + side, lane);
    }
    return std::abs(sum);
  }

 private:
  int node_;
  double gives_n_m_ = 0;
  bool left_ = false, right_ = false;
  std::array<double, 6> k_{}, m_{};
  Phasor load_;
};

struct Watch {
  std::vector<HangerRow> hangers;
  std::vector<int> nodes;
};

ResponsePoint point_of(const Solver& solver, const Watch& watch, int lane, AngularSpeed speed) {
  ResponsePoint point{speed, {}, {}};
  point.hangers.reserve(watch.hangers.size());
  point.out.reserve(watch.nodes.size());
  for (const HangerRow& h : watch.hangers)
    point.hangers.push_back(Force::from_si(h.size(solver, lane, speed.radians_per_second())));
  for (const int node : watch.nodes) point.out.push_back(metres(std::abs(solver.out(node, lane))));
  return point;
}

}  // namespace

Result<std::vector<ResponsePoint>> response(const Mesh& mesh, std::span<const Turning> turning, const ResponseAt& at,
                                            lanes::Width width) {
  if (auto p = wrong_speeds(mesh, at.speeds)) return tl::unexpected(*std::move(p));
  const Result<NodeLoads> loads = loads_turning(mesh, turning);
  if (!loads) return tl::unexpected(loads.error());
  Watch watch;
  for (std::size_t i = 0; i < mesh.beam().hangers.size(); ++i)
    watch.hangers.emplace_back(mesh, static_cast<int>(i), *loads);
  for (const Length place : at.watched) {
    const std::optional<int> node = mesh.node_at(place);
    if (!node) return tl::unexpected(Problem{Code{"beam.no_place"}, "watched", {}, {{"at", any(place)}}, std::nullopt});
    watch.nodes.push_back(*node);
  }
  Solver solver{mesh, Whirl::forward, *loads, width};
  std::vector<ResponsePoint> points;
  points.reserve(at.speeds.size());
  for (std::size_t first = 0; first < at.speeds.size(); first += 8) {
    std::array<double, 8> speeds;
    const std::size_t here = std::min<std::size_t>(8, at.speeds.size() - first);
    for (std::size_t i = 0; i < 8; ++i) speeds[i] = at.speeds[first + std::min(i, here - 1)].radians_per_second();
    solver.turning(speeds);
    for (std::size_t i = 0; i < here; ++i)
      points.push_back(point_of(solver, watch, static_cast<int>(i), at.speeds[first + i]));
  }
  return points;
}

}  // namespace flatwise::beam
