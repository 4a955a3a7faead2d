#include "core/dynamics/pattern_keeper.h"

#include <algorithm>
#include <limits>
#include <tuple>
#include <utility>

namespace flatwise::dynamics {

Places first_image(const Places& places, const PatternTask& task) {
  if (!task.turn_is_free() || places.empty()) return places;
  const int n = task.positions, first = places.front();
  Places turned, mirrored;
  for (const int place : places) {
    turned.push_back((place - first + n) % n);
    mirrored.push_back((first - place + n) % n);
  }
  return std::min(turned, mirrored);
}

Keeper::Keeper(const PatternTask& task, const PatternSums& sums, int most, double ceiling)
    : task_{task}, sums_{sums}, most_{most}, limit_{ceiling} {}

double Keeper::best() const {
  double least = std::numeric_limits<double>::infinity();
  for (const Kept& k : kept_) least = std::min(least, k.left_si);
  return least;
}

/// The one to let go: it leaves the most, and of those the same within rounding it is the least simple.
std::size_t Keeper::worst() const {
  double most = 0;
  for (const Kept& k : kept_) most = std::max(most, k.left_si);
  std::size_t worst = kept_.size();
  for (std::size_t i = 0; i < kept_.size(); ++i) {
    if (kept_[i].left_si < most - sums_.rounding()) continue;
    if (worst == kept_.size() ||
        std::tie(kept_[worst].simplicity, kept_[worst].places) < std::tie(kept_[i].simplicity, kept_[i].places))
      worst = i;
  }
  return worst;
}

double Keeper::offer(const Places& places) {
  if (!task_.allows(places)) return limit_;
  const double left = sums_.of(places);
  if (!(left <= limit_ + sums_.rounding())) return limit_;
  Kept fresh{first_image(places, task_), left, simplicity_of(places, task_.positions)};
  fresh.simplicity = simplicity_of(fresh.places, task_.positions);
  for (const Kept& k : kept_)
    if (k.places == fresh.places) return limit_;
  kept_.push_back(std::move(fresh));
  if (size() > most_) kept_.erase(kept_.begin() + static_cast<std::ptrdiff_t>(worst()));
  if (size() == most_) limit_ = std::min(limit_, kept_[worst()].left_si);
  return limit_;
}

std::vector<Kept> Keeper::sorted() const {
  std::vector<Kept> out = kept_;
  std::ranges::sort(out, {}, &Kept::left_si);
  for (std::size_t from = 0; from < out.size();) {
    std::size_t to = from;
    while (to < out.size() && out[to].left_si <= out[from].left_si + sums_.rounding()) ++to;
    std::ranges::sort(out.begin() + static_cast<std::ptrdiff_t>(from), out.begin() + static_cast<std::ptrdiff_t>(to),
                      {}, [](const Kept& k) { return std::tie(k.simplicity, k.places); });
    from = to;
  }
  return out;
}

}  // namespace flatwise::dynamics
