#include "core/units/near.h"

#include <algorithm>
#include <vector>

namespace flatwise {
namespace {

/// Optimal string alignment distance: three rows are enough.
std::size_t edits(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), row(b.size() + 1), next(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    next[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = row[j - 1] + (a[i - 1] == b[j - 1] ? 0U : 1U);
      next[j] = std::min({row[j] + 1, next[j - 1] + 1, change});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) next[j] = std::min(next[j], before[j - 2] + 1);
    }
    before.swap(row);
    row.swap(next);
  }
  return row[b.size()];
}

constexpr std::size_t kLongestCompared = 64;  // Longer is no slip of the hand, and the comparison is quadratic.

}  // namespace

std::string_view nearest(std::string_view typed, std::span<const std::string_view> names) {
  if (typed.size() > kLongestCompared) return {};
  std::string_view best;
  std::size_t fewest = 0;
  for (const std::string_view name : names) {
    const std::size_t allowed = std::max<std::size_t>(name.size() / 3, name.size() > 4 ? 2 : 1);
    const std::size_t distance = edits(typed, name);
    if (distance > allowed || (!best.empty() && distance >= fewest)) continue;
    best = name;
    fewest = distance;
  }
  return best;
}

}  // namespace flatwise
