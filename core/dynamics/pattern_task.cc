#include "core/dynamics/pattern_task.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/dynamics/directions.h"

namespace flatwise::dynamics {
namespace {

int apart_of(int before, int place, int positions) {
  const int way = (place - before + positions) % positions;
  return std::min(way, positions - way);
}

}  // namespace

bool PatternTask::keeps(int rotor) const { return !kept.empty() && kept[static_cast<std::size_t>(rotor)].has_value(); }

bool PatternTask::turn_is_free() const {
  return unbalances.empty() && std::ranges::none_of(kept, [](const auto& k) { return k.has_value(); });
}

bool PatternTask::may_follow(int rotor, int place_before, int place) const {
  if (apart.empty()) return true;
  return (apart[static_cast<std::size_t>(rotor - 1)] >> apart_of(place_before, place, positions) & 1u) != 0;
}

bool PatternTask::allows(std::span<const int> places) const {
  for (int i = 0; i < count(); ++i) {
    const auto at = static_cast<std::size_t>(i);
    if (keeps(i) && *kept[at] != places[at]) return false;
    if (i > 0 && !may_follow(i, places[at - 1], places[at])) return false;
  }
  return true;
}

PatternSums::PatternSums(const PatternTask& task)
    : directions_{dynamics::directions(task.positions)}, judged_{task.judged} {
  const double a_m = task.planes.a.si(), apart_m = (task.planes.b - task.planes.a).si();
  const double error = std::hypot(task.errors.share, task.errors.azimuth.radians());
  double squares[2] = {}, sizes[2] = {};
  const auto shares = [&](const RotatingSet& set) {
    const double f = set.force.si(), c = set.couple.si(), z_m = set.position.si();
    if (judged_ == Judged::couple) return std::array{c + f * (z_m - a_m - 0.5 * apart_m), 0.0};
    const double at_b = (c + f * (z_m - a_m)) / apart_m;
    return std::array{f - at_b, at_b};
  };
  const auto add = [&](const std::array<double, 2>& own) {
    for (std::size_t plane = 0; plane < 2; ++plane) {
      squares[plane] += own[plane] * own[plane];
      sizes[plane] += std::abs(own[plane]);
    }
  };
  for (const RotatingSet& set : task.rotors) add(own_.emplace_back(shares(set)));
  for (const RotatingSet& set : task.unbalances) {
    const auto own = shares(set);
    add(own);
    for (std::size_t plane = 0; plane < 2; ++plane)
      constant_[plane] += own[plane] * std::polar(1.0, set.azimuth.radians());
  }
  rounding_ = 32 * std::numeric_limits<double>::epsilon() * (sizes[0] + sizes[1]);
  const bool both = judged_ == Judged::both_planes;
  floor_rms_ = error / std::sqrt(3.0) * std::sqrt(both ? squares[0] + squares[1] : std::max(squares[0], squares[1]));
  floor_worst_ = error * (both ? std::hypot(sizes[0], sizes[1]) : std::max(sizes[0], sizes[1]));
}

double PatternSums::of(Phasor a, Phasor b) const {
  const double size_a = std::abs(a), size_b = std::abs(b);
  const double left = judged_ == Judged::both_planes ? std::hypot(size_a, size_b) : std::max(size_a, size_b);
  return left <= rounding_ ? 0.0 : left;
}

double PatternSums::of(std::span<const int> places) const {
  std::array<double, 24> a{}, b{};
  for (std::size_t i = 0; i < places.size(); ++i) {
    a[static_cast<std::size_t>(places[i])] += own_[i][0];
    b[static_cast<std::size_t>(places[i])] += own_[i][1];
  }
  // Opposite positions first: like rotors that face each other cancel exactly, whatever their number.
  const std::size_t n = directions_.size(), half = n % 2 == 0 ? n / 2 : n;
  Phasor sum_a = constant_[0], sum_b = constant_[1];
  for (std::size_t k = 0; k < half; ++k) {
    sum_a += (half < n ? a[k] - a[k + half] : a[k]) * directions_[k];
    sum_b += (half < n ? b[k] - b[k + half] : b[k]) * directions_[k];
  }
  return of(sum_a, sum_b);
}

std::vector<int> flats_of(std::span<const int> places) {
  std::vector<int> flats(places.begin(), places.end());
  for (int& flat : flats) ++flat;
  return flats;
}

std::vector<Angle> tilt_of(std::span<const int> places, int positions) {
  std::vector<Angle> tilt;
  for (const int place : places) tilt.push_back(azimuth_of_flat(place + 1, positions));
  return tilt;
}

}  // namespace flatwise::dynamics
