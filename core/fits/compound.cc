#include "core/fits/compound.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

constexpr double kRoundingPa = 1e-2, kRoundingM = 1e-15;  // A joint that just touches may be called either.
constexpr double kApart = 0.01;  // Neighbours' diameters may differ by this share, and fits be as much.

/// How a tube's two diameters answer to the pressures inside and outside, in metres a pascal.
struct Answers {
  double inside_to_inside, inside_to_outside, outside_to_inside, outside_to_outside;
};
Answers answers(const Tube& tube) {
  const double a = tube.inside.si(), b = tube.outside.si(), e = tube.metal.youngs_modulus.si(), nu = tube.metal.poisson;
  const double wall = b * b - a * a, factor = (b * b + a * a) / wall;
  return {a / e * (factor + nu), -a / e * 2 * b * b / wall, b / e * 2 * a * a / wall, -b / e * (factor - nu)};
}

std::string named(const char* list, std::size_t i, const char* field = "") {
  return std::string{list} + "[" + std::to_string(i + 1) + "]" + field;
}

std::optional<Problem> wrong_tube(const Tube& tube, std::size_t i) {
  if (auto bad = negative(named("tubes", i, ".inside"), any(tube.inside))) return bad;
  if (auto bad = not_above_nought(named("tubes", i, ".outside"), any(tube.outside))) return bad;
  if (auto bad = not_above_nought(named("tubes", i, ".youngs_modulus"), any(tube.metal.youngs_modulus))) return bad;
  if (auto bad = outside(named("tubes", i, ".poisson"), any_ratio(tube.metal.poisson), -0.99, 0.5)) return bad;
  if (tube.inside < tube.outside) return std::nullopt;
  return Problem{Code{"fits.not_inside"},
                 named("tubes", i, ".inside"),
                 {},
                 {{"inside", any(tube.inside)}, {"outside", any(tube.outside)}},
                 std::nullopt};
}

std::optional<Problem> wrong(std::span<const Tube> tubes, std::span<const Length> fits) {
  if (tubes.size() < 2 || tubes.size() > kMostTubes || fits.size() + 1 != tubes.size())
    return Problem{Code{"fits.tube_count"},
                   "tubes",
                   {},
                   {{"tubes", static_cast<std::int64_t>(tubes.size())},
                    {"fits", static_cast<std::int64_t>(fits.size())},
                    {"greatest", kMostTubes}},
                   std::nullopt};
  for (std::size_t i = 0; i < tubes.size(); ++i)
    if (auto bad = wrong_tube(tubes[i], i)) return bad;
  for (std::size_t j = 0; j < fits.size(); ++j) {
    const double most = kApart * tubes[j].outside.si();
    if (auto bad = outside(named("fits", j), any(fits[j]), -most, most)) return bad;
    if (std::abs((tubes[j].outside - tubes[j + 1].inside).si()) <= most) continue;
    return Problem{Code{"fits.tubes_apart"},
                   named("tubes", j + 1, ".inside"),
                   {},
                   {{"inside", any(tubes[j + 1].inside)}, {"outside", any(tubes[j].outside)}},
                   std::nullopt};
  }
  return std::nullopt;
}

/// A row of the tridiagonal system: what the joint needs of its own pressure and of its neighbours'.
struct Row {
  double before, here, after, wanted;
};

/// Pressures of the joints that are shut; Thomas' elimination, well-conditioned because `here` outweighs the others.
std::vector<double> solve(const std::vector<Row>& all, const std::vector<bool>& shut) {
  std::vector<double> pressure(all.size(), 0.0), after(all.size(), 0.0);
  double last_after = 0, last = 0;
  for (std::size_t j = 0; j < all.size(); ++j) {
    const Row row = shut[j] ? all[j] : Row{0, 1, 0, 0};
    const double pivot = row.here - row.before * last_after;
    after[j] = last_after = row.after / pivot;
    pressure[j] = last = (row.wanted - row.before * last) / pivot;
  }
  for (std::size_t j = all.size() - 1; j-- > 0;) pressure[j] -= after[j] * pressure[j + 1];
  return pressure;
}

std::vector<Row> rows(std::span<const Tube> tubes, std::span<const Length> fits) {
  std::vector<Row> out;
  for (std::size_t j = 0; j < fits.size(); ++j) {
    const Answers inner = answers(tubes[j]), outer = answers(tubes[j + 1]);
    out.push_back({-inner.outside_to_inside, outer.inside_to_inside - inner.outside_to_outside, outer.inside_to_outside,
                   fits[j].si()});
  }
  return out;
}

double stays_open(const Row& row, const std::vector<double>& p, std::size_t j) {
  const double before = j > 0 ? p[j - 1] : 0, after = j + 1 < p.size() ? p[j + 1] : 0;
  return -(row.wanted - row.before * before - row.after * after - row.here * p[j]);
}

/// Shut joints press, open ones stay open: every choice is tried, few as they are; one fits (the energy is convex).
std::vector<double> pressures(const std::vector<Row>& all) {
  const std::size_t joints = all.size();
  for (unsigned choice = (1U << joints); choice-- > 0;) {
    std::vector<bool> shut(joints);
    for (std::size_t j = 0; j < joints; ++j) shut[j] = (choice >> j & 1U) != 0;
    auto p = solve(all, shut);
    bool holds = true;
    for (std::size_t j = 0; j < joints && holds; ++j)
      holds = shut[j] ? p[j] >= -kRoundingPa : stays_open(all[j], p, j) >= -kRoundingM;
    for (double& one : p) one = std::max(one, 0.0);
    if (holds) return p;
  }
  CORE_CHECK(false);
}

}  // namespace

Result<Compound> compound(std::span<const Tube> tubes, std::span<const Length> fits) {
  if (auto bad = wrong(tubes, fits)) return tl::unexpected(*std::move(bad));
  const std::vector<Row> all = rows(tubes, fits);
  const std::vector<double> p = pressures(all);
  Compound out;
  for (std::size_t j = 0; j < p.size(); ++j) {
    out.pressure.push_back(pascals(p[j]));
    out.clearance.push_back(p[j] > 0 ? Length{} : metres(std::max(stays_open(all[j], p, j), 0.0)));
  }
  for (std::size_t i = 0; i < tubes.size(); ++i) {
    const Answers answer = answers(tubes[i]);
    const double in = i > 0 ? p[i - 1] : 0, outward = i < p.size() ? p[i] : 0;
    out.inside_change.push_back(metres(answer.inside_to_inside * in + answer.inside_to_outside * outward));
    out.outside_change.push_back(metres(answer.outside_to_inside * in + answer.outside_to_outside * outward));
  }
  return out;
}

}  // namespace flatwise::fits
