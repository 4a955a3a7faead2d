#include "core/beam/mesh.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/units/guards.h"

namespace flatwise::beam {
namespace {

constexpr double kElementsOfShaft = 64;

std::string at_index(const char* list, std::size_t index, const char* field) {
  return std::string{list} + "[" + std::to_string(index + 1) + "]." + field;
}

double length_of(const Beam& beam) {
  double total_m = 0;
  for (const Stretch& s : beam.stretches) total_m += s.length.si();
  return total_m;
}

std::optional<Problem> wrong_shaft(const Beam& beam) {
  if (beam.stretches.empty()) return Problem{Code{"beam.no_length"}, "shaft", {}, {}, std::nullopt};
  for (std::size_t i = 0; i < beam.stretches.size(); ++i) {
    const Stretch& s = beam.stretches[i];
    if (auto p = not_above_nought(at_index("stretch", i, "length"), any(s.length))) return p;
    if (auto p = not_above_nought(at_index("stretch", i, "section"), any(s.section.second_moment))) return p;
  }
  if (auto p = not_above_nought("youngs-modulus", any(beam.elastic.youngs_modulus))) return p;
  if (auto p = not_above_nought("density", any(beam.elastic.density))) return p;
  if (auto p = outside("poisson", any_ratio(beam.elastic.poisson), 0, 0.499)) return p;
  return negative("longest-element", any(beam.longest_element));
}

std::optional<Problem> wrong_hangers(const Beam& beam) {
  const double total_m = length_of(beam);
  bool held_twice = false;
  for (std::size_t i = 0; i < beam.hangers.size(); ++i) {
    const Hanger& h = beam.hangers[i];
    if (auto p = outside(at_index("hanger", i, "at"), any(h.at), 0, total_m * (1 + 1e-12))) return p;
    if (h.stiffness)
      if (auto p = not_above_nought(at_index("hanger", i, "stiffness"), any(*h.stiffness))) return p;
    held_twice = held_twice || h.clamped || std::abs((h.at - beam.hangers.front().at).si()) > kOnePlace.si();
  }
  if (beam.hangers.empty()) return Problem{Code{"beam.no_hanger"}, "hanger", {}, {}, std::nullopt};
  if (held_twice) return std::nullopt;
  return Problem{Code{"beam.turns_about"}, "hanger", {}, {{"at", any(beam.hangers.front().at)}}, std::nullopt};
}

std::optional<Problem> wrong_body(const Body& b, std::size_t i, double total_m) {
  if (auto p = outside(at_index("body", i, "at"), any(b.at), 0, total_m * (1 + 1e-12))) return p;
  if (auto p = negative(at_index("body", i, "mass"), any(b.mass))) return p;
  if (auto p = negative(at_index("body", i, "across"), any(b.across))) return p;
  if (auto p = negative(at_index("body", i, "along"), any(b.along))) return p;
  if (auto p = not_finite(at_index("body", i, "mass-offset"), any(b.mass_offset))) return p;
  if (auto p = not_finite(at_index("body", i, "own-spin"), any(b.own_spin))) return p;
  if (auto p = not_finite(at_index("body", i, "with-shaft"), any_ratio(b.with_shaft))) return p;
  // About the centroid: the same test as for one rotor (a flat disk has along twice across), and never under nought.
  const double own = b.across.si() - b.mass.si() * b.mass_offset.si() * b.mass_offset.si();
  const double slack = 1e-9 * b.across.si();
  if (own >= -slack && b.along.si() <= 2 * own + 2 * slack) return std::nullopt;
  return Problem{
      Code{"beam.inertias"},
      at_index("body", i, "across"),
      {},
      {{"across", any(b.across)}, {"along", any(b.along)}, {"offset", any(b.mass_offset)}, {"mass", any(b.mass)}},
      std::nullopt};
}

std::optional<Problem> wrong(const Beam& beam) {
  if (auto p = wrong_shaft(beam)) return p;
  if (auto p = wrong_hangers(beam)) return p;
  const double total_m = length_of(beam);
  for (std::size_t i = 0; i < beam.bodies.size(); ++i)
    if (auto p = wrong_body(beam.bodies[i], i, total_m)) return p;
  for (std::size_t i = 0; i < beam.places.size(); ++i)
    if (auto p = outside(at_index("place", i, "at"), any(beam.places[i]), 0, total_m * (1 + 1e-12))) return p;
  return std::nullopt;
}

/// Where there must be a node, in order, each once.
std::vector<double> corners(const Beam& beam) {
  std::vector<double> z_m{0};
  for (const Stretch& s : beam.stretches) z_m.push_back(z_m.back() + s.length.si());
  for (const Hanger& h : beam.hangers) z_m.push_back(h.at.si());
  for (const Body& b : beam.bodies) z_m.push_back(b.at.si());
  for (const Length place : beam.places) z_m.push_back(place.si());
  std::ranges::sort(z_m);
  std::vector<double> once{0};
  for (const double z : z_m)
    if (z - once.back() > kOnePlace.si()) once.push_back(z);
  return once;
}

std::vector<double> cut(const std::vector<double>& corners_m, double longest_m) {
  std::vector<double> z_m{0};
  for (std::size_t i = 1; i < corners_m.size(); ++i) {
    const double from = corners_m[i - 1], apart = corners_m[i] - from;
    const double parts = std::max(1.0, std::ceil(apart / longest_m * (1 - 1e-9)));
    if (static_cast<double>(z_m.size()) + parts > kMostNodes) return {};
    for (double k = 1; k < parts; ++k) z_m.push_back(from + apart * k / parts);
    z_m.push_back(corners_m[i]);
  }
  return z_m;
}

Element element_of(const Elastic& elastic, const Section& s, double length_m) {
  const double e_pa = elastic.youngs_modulus.si(), g_pa = e_pa / (2 * (1 + elastic.poisson));
  const double rho = elastic.density.si();
  return {length_m, e_pa * s.second_moment.si(), s.shear_factor(elastic.poisson) * g_pa * s.area.si(),
          rho * s.area.si(), rho * s.second_moment.si()};
}

}  // namespace

Result<Mesh> Mesh::make(const Beam& beam) {
  if (auto p = wrong(beam)) return tl::unexpected(*std::move(p));
  Mesh m;
  m.beam_ = beam;
  const double longest_m =
      beam.longest_element.si() > 0 ? beam.longest_element.si() : length_of(beam) / kElementsOfShaft;
  m.z_m_ = cut(corners(beam), longest_m);
  if (m.z_m_.empty())
    return tl::unexpected(Problem{Code{"beam.too_many_nodes"},
                                  "longest-element",
                                  {},
                                  {{"value", any(metres(longest_m))}, {"most", kMostNodes}},
                                  std::nullopt});
  int stretch = 0;
  double end_m = beam.stretches[0].length.si();
  for (std::size_t i = 1; i < m.z_m_.size(); ++i) {
    while (m.z_m_[i - 1] > end_m - kOnePlace.si() && stretch + 1 < static_cast<int>(beam.stretches.size()))
      end_m += beam.stretches[static_cast<std::size_t>(++stretch)].length.si();
    m.stretch_of_.push_back(stretch);
    m.elements_.push_back(
        element_of(beam.elastic, beam.stretches[static_cast<std::size_t>(stretch)].section, m.z_m_[i] - m.z_m_[i - 1]));
  }
  m.held_.assign(m.z_m_.size(), 0);
  for (const Hanger& h : beam.hangers) {
    m.hanger_nodes_.push_back(m.node_at(h.at).value());
    auto& held = m.held_[static_cast<std::size_t>(m.hanger_nodes_.back())];
    held = static_cast<unsigned char>(held | (h.stiffness ? 0 : 1) | (h.clamped ? 2 : 0));
  }
  for (const Body& b : beam.bodies) m.body_nodes_.push_back(m.node_at(b.at).value());
  return m;
}

const Section& Mesh::section(int element) const {
  return beam_.stretches[static_cast<std::size_t>(stretch_of_[static_cast<std::size_t>(element)])].section;
}

std::optional<int> Mesh::node_at(Length place) const {
  const auto after = std::ranges::lower_bound(z_m_, place.si());
  std::optional<int> best;
  double least = 2 * kOnePlace.si();
  for (auto it = after == z_m_.begin() ? after : after - 1; it != z_m_.end() && it <= after; ++it)
    if (const double off = std::abs(*it - place.si()); off <= least) {
      least = off;
      best = static_cast<int>(it - z_m_.begin());
    }
  return best;
}

AngularSpeed Mesh::fastest() const {
  double fastest = std::numeric_limits<double>::infinity();
  for (const Element& e : elements_)
    fastest = std::min(fastest, std::sqrt(e.bending_n_m2 / e.mass_kg_m) / (e.length_m * e.length_m));
  return radians_per_second(fastest);
}

}  // namespace flatwise::beam
