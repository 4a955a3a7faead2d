#include "core/beam/critical.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/beam/band_kernel.h"
#include "core/units/guards.h"

namespace flatwise::beam {
namespace {

constexpr double kFound = 1e-11;          // Of itself.
constexpr double kStandsFast = 1e-9;      // A pivot block of less than this of its parts is mostly rounding ...
constexpr double kMovedWhileOver = 1e-7;  // ... and the speed is moved by a hair, while its bracket is wider than this.
constexpr int kMostRounds = 4000;         // Never reached: each round leaves a ninth of one bracket.

using EightSpeeds = std::array<double, kSpeedsAtOnce>;
struct Bracket {
  double below = 0, above = 0;
};

class Search {
 public:
  Search(const Mesh& mesh, Whirl whirl, lanes::Width width) : width_{width}, pencil_{mesh.pencil(whirl)} {}

  /// How many lie under each of eight speeds. A speed at which a part of the shaft stands on the edge is moved by a hair
  /// where that is allowed: its pivots say nothing there.
  EightSpeeds count(EightSpeeds& speeds, bool may_move) const {
    const Band band = pencil_.band();
    EightSpeeds counts, least;
    for (int go = 1; go <= 8; ++go) {
      FLATWISE_PICK(width_, count_eight)(band, speeds.data(), counts.data(), least.data());
      bool moved = false;
      for (std::size_t i = 0; i < speeds.size(); ++i)
        if (may_move && !(least[i] > kStandsFast)) {
          speeds[i] *= 1 + kStandsFast * go;
          moved = true;
        }
      if (!moved) break;
    }
    return counts;
  }

  void find(std::vector<Bracket>& brackets) const {
    for (int round = 0; round < kMostRounds; ++round) {
      const auto widest = std::ranges::max_element(brackets, {}, [](const Bracket& b) { return width_of(b); });
      if (width_of(*widest) <= kFound) return;
      EightSpeeds speeds = between(*widest);
      const EightSpeeds counts = count(speeds, width_of(*widest) > kMovedWhileOver);
      for (std::size_t i = 0; i < speeds.size(); ++i)
        for (std::size_t j = 0; j < brackets.size(); ++j) {
          Bracket& b = brackets[j];
          if (counts[i] > static_cast<double>(j))
            b.above = std::min(b.above, speeds[i]);
          else
            b.below = std::min(b.above, std::max(b.below, speeds[i]));
        }
    }
  }

 private:
  static double width_of(const Bracket& b) { return (b.above - b.below) / b.above; }
  /// Evenly between; from nought by halves, because nobody knows yet how low the lowest is.
  static EightSpeeds between(const Bracket& b) {
    EightSpeeds s;
    for (std::size_t i = 0; i < s.size(); ++i)
      s[i] = b.below > 0 ? b.below + (b.above - b.below) * static_cast<double>(i + 1) / (kSpeedsAtOnce + 1)
                         : b.above * std::exp2(static_cast<double>(i) - kSpeedsAtOnce);
    return s;
  }
  lanes::Width width_;
  Pencil pencil_;
};

}  // namespace

Result<CriticalSpeeds> critical_speeds(const Mesh& mesh, Whirl whirl, int count, lanes::Width width) {
  if (auto p = outside("count", any_count(count), 1, kMostCriticals)) return tl::unexpected(*std::move(p));
  const Search search{mesh, whirl, width};
  EightSpeeds top;
  top.fill(mesh.fastest().radians_per_second());
  const int there = std::min(count, static_cast<int>(search.count(top, true)[0]));
  std::vector<Bracket> brackets(static_cast<std::size_t>(there), Bracket{0, top[0]});
  if (there > 0) search.find(brackets);
  CriticalSpeeds out;
  for (const Bracket& b : brackets) out.speeds.push_back(radians_per_second(0.5 * (b.below + b.above)));
  if (there < count) out.none_up_to = radians_per_second(top[0]);
  return out;
}

std::vector<NearSpeed> within_keep_off(const std::vector<AngularSpeed>& criticals, AngularSpeed running) {
  std::vector<NearSpeed> near;
  const double w = running.radians_per_second();
  for (const AngularSpeed c : criticals)
    if (const double apart = (c.radians_per_second() - w) / w; std::abs(apart) <= kKeepOff) near.push_back({c, apart});
  return near;
}

std::optional<Problem> too_coarse(const Mesh& mesh, AngularSpeed speed) {
  if (speed <= mesh.fastest()) return std::nullopt;
  return Problem{
      Code{"beam.too_coarse"}, "speed", {}, {{"value", any(speed)}, {"greatest", any(mesh.fastest())}}, std::nullopt};
}

}  // namespace flatwise::beam
