#include "core/dynamics/pattern_halves.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/dynamics/pattern_join.h"
#include "core/dynamics/pattern_points.h"

namespace flatwise::dynamics {
namespace {

using halves::HalfRotor;
using halves::HalfRotors;
using halves::Points;
using halves::Sum;
using Phasor = PatternSums::Phasor;

/// Pairs looked at after the least is proven, for the rows that follow it.
constexpr std::int64_t kTestsForMore = 20'000'000;

/// Planes A and B turned into each other so that P spreads most and Q least: where no rotor has an offset Q is nought, and
/// four coordinates are really two. A square of both is the same before and after.
struct Axes {
  double cosine = 1, sine = 0, scale = 1;
  double spread_p = 0, spread_q = 0;  ///< Squares summed, scaled.
  double stretch = 1;                 ///< Reach in P and Q for one newton of what judges.

  [[nodiscard]] Sum of(Phasor a, Phasor b) const {
    const Phasor p = (cosine * a + sine * b) * scale, q = spread_q > 0 ? (cosine * b - sine * a) * scale : Phasor{};
    return {p.real(), p.imag(), q.real(), q.imag()};
  }
};

Axes axes_of(const PatternSums& sums, const std::vector<int>& rotors) {
  Axes axes;
  double aa = 0, ab = 0, bb = 0, greatest = 0;
  for (const int i : rotors) {
    const auto [a, b] = sums.own(i);
    aa += a * a;
    ab += a * b;
    bb += b * b;
    greatest = std::max({greatest, std::abs(a), std::abs(b)});
  }
  axes.scale = greatest > 0 ? 1 / greatest : 1;
  const double angle = 0.5 * std::atan2(2 * ab, aa - bb), square = axes.scale * axes.scale;
  axes.cosine = std::cos(angle);
  axes.sine = std::sin(angle);
  const double middle = 0.5 * (aa + bb), off = std::hypot(0.5 * (aa - bb), ab);
  axes.spread_p = (middle + off) * square;
  axes.spread_q = (middle - off) * square;
  if (axes.spread_q < 1e-24 * axes.spread_p) axes.spread_q = 0;
  axes.stretch = axes.scale * (sums.judged() == Judged::larger_plane ? std::sqrt(2.0) : 1.0);
  return axes;
}

/// Like rotors one after the other; else as they stand on the shaft.
std::vector<int> in_order(const PatternSums& sums, const Halves& halves) {
  std::vector<int> order = halves.free;
  if (halves.sets_only) std::ranges::stable_sort(order, {}, [&](int i) { return sums.own(i); });
  return order;
}

struct Split {
  HalfRotors left, right;
};

/// `from` to `to` of the order as one half.
HalfRotors half_of(const PatternTask& task, const PatternSums& sums, const Halves& halves, const Axes& axes,
                   std::span<const int> rotors) {
  HalfRotors out;
  for (std::size_t i = 0; i < rotors.size(); ++i) {
    HalfRotor rotor{.rotor = rotors[i], .at = {}};
    for (const Phasor& d : sums.directions())
      rotor.at.push_back(axes.of(sums.own(rotors[i])[0] * d, sums.own(rotors[i])[1] * d));
    rotor.repeats = halves.sets_only && i > 0 && sums.alike(rotors[i - 1], rotors[i]);
    if (!halves.sets_only && !task.apart.empty() && i > 0 && rotors[i - 1] + 1 == rotors[i]) {
      rotor.ways = 0;
      for (int k = 0; k < task.positions; ++k) rotor.ways |= task.may_follow(rotors[i], 0, k) ? 1u << k : 0u;
    }
    out.push_back(std::move(rotor));
  }
  return out;
}

/// Cut where the larger half is least; the left one is the smaller of equals, because all of it is kept where nothing is free.
Split split(const PatternTask& task, const PatternSums& sums, const Halves& halves, const Axes& axes) {
  const std::vector<int> order = in_order(sums, halves);
  const std::span<const int> all{order};
  Split best;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t cut = 0; cut <= all.size(); ++cut) {
    Split now{half_of(task, sums, halves, axes, all.first(cut)), half_of(task, sums, halves, axes, all.subspan(cut))};
    const double greater =
        std::max(halves::sums_of(now.left, task.positions), halves::sums_of(now.right, task.positions));
    if (!(greater < least)) continue;
    least = greater;
    best = std::move(now);
  }
  return best;
}

std::vector<int> everybody(const PatternTask& task) {
  std::vector<int> all;
  for (int i = 0; i < task.count(); ++i) all.push_back(i);
  return all;
}

/// Nothing outside the search has a direction of its own: a turn and a mirror image of all are as good.
bool all_turn(const PatternTask& task, const Halves& halves) {
  return task.turn_is_free() && static_cast<int>(halves.free.size()) == task.count();
}

/// One search: the points of the left half once, those of the right for each reach.
struct Search {
  const PatternTask& task;
  const PatternSums& sums;
  const Halves& halves;
  const Effort& effort;
  Keeper& keeper;
  Axes axes;
  Split parts;
  std::int64_t tests;

  [[nodiscard]] Sum constant() const {
    Phasor a = sums.constant()[0], b = sums.constant()[1];
    for (int i = 0; i < task.count(); ++i) {
      if (std::ranges::find(halves.free, i) != halves.free.end()) continue;
      const Phasor d = sums.directions()[static_cast<std::size_t>(halves.places[static_cast<std::size_t>(i)])];
      a += sums.own(i)[0] * d;
      b += sums.own(i)[1] * d;
    }
    return axes.of(a, b);
  }

  /// Reach within which about `wanted` arrangements are to be expected, were sums spread as by chance.
  [[nodiscard]] double first_limit(double wanted) const {
    const double orbit = all_turn(task, halves) ? 2.0 * task.positions : 1.0;
    const double rows =
        halves::sums_of(parts.left, task.positions) * halves::sums_of(parts.right, task.positions) / orbit;
    const double var_p = 0.5 * axes.spread_p, var_q = 0.5 * axes.spread_q;
    const double flat = std::sqrt(2 * wanted * var_p / rows), full = std::pow(8 * wanted * var_p * var_q / rows, 0.25);
    return std::max(flat, full) / axes.stretch;
  }

  /// All pairs that leave no more than `limit`; false where the effort ran out.
  bool within(double limit, const Points& left) {
    const double reach = std::min(limit, keeper.limit()) * axes.stretch + sums.rounding() * axes.scale;
    const Points right = halves::points_of(
        parts.right, task.positions,
        {.reach = reach + 1e-9 * (1 + std::abs(constant()[0])), .folded = false, .most = effort.points_a_half});
    if (right.overflow) return false;
    Places places = halves.places;
    halves::Joining joining{
        reach, tests, [&](std::size_t l, std::size_t r) {
          const halves::Image image =
              left.image.empty() ? halves::Image{} : halves::Image{left.image[l] / 2, left.image[l] % 2 != 0};
          halves::read_code(left.code[l], parts.left, task.positions, {}, places);
          halves::read_code(right.code[r], parts.right, task.positions, image.back(task.positions), places);
          const double now = std::min(limit, keeper.offer(places));
          return now * axes.stretch + sums.rounding() * axes.scale;
        }};
    const bool all = halves::join(left, right, joining);
    tests = joining.tests;
    return all;
  }

  /// The reach grows until the least is seen, and then as far as a little more effort goes until all rows to be kept are: where
  /// neighbours may not stand anyhow, few of the pairs nearest to opposite are arrangements.
  Seen run() {
    Seen seen;
    const bool free = all_turn(task, halves);
    const Points left = halves::points_of(
        parts.left, task.positions,
        {.sign = -1, .constant = constant(), .reach = 1e-9, .folded = !free, .most = effort.points_a_half});
    if (left.overflow) return seen;
    const double everything = sums.rounding() / (32 * std::numeric_limits<double>::epsilon());
    for (double limit = first_limit(4.0 * keeper.most());; limit *= axes.spread_q > 0 ? 2 : 3) {
      if (!within(limit, left)) return seen;
      if (!seen.least && keeper.best() <= limit) {
        seen.least = true;
        tests = std::min(tests, kTestsForMore);
      }
      seen.to = limit;
      if (limit >= std::min(keeper.limit(), everything)) return {.least = true, .to = limit};
    }
  }
};

}  // namespace

bool fits(const PatternTask& task, const PatternSums& sums, const Halves& halves, const Effort& effort) {
  const Split parts = split(task, sums, halves, axes_of(sums, everybody(task)));
  const double left = halves::sums_of(parts.left, task.positions), right = halves::sums_of(parts.right, task.positions);
  if (std::max(left, right) > effort.sums_a_half) return false;
  const double most = static_cast<double>(effort.points_a_half), sector = 2.0 * task.positions;
  return left / (all_turn(task, halves) ? sector : 1.0) <= 0.9 * most && right / sector <= 0.9 * most;
}

Seen search_halves(const PatternTask& task, const PatternSums& sums, const Halves& halves, const Effort& effort,
                   Keeper& keeper) {
  const Axes axes = axes_of(sums, everybody(task));
  Search search{task, sums, halves, effort, keeper, axes, split(task, sums, halves, axes), effort.tests};
  return search.run();
}

}  // namespace flatwise::dynamics
