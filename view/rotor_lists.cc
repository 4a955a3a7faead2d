#include "view/rotor_lists.h"

#include <algorithm>

#include "view/blocks.h"

namespace flatwise::view {

std::string rotor_runs(const Screen& screen, const std::vector<int>& rotors) {
  std::vector<int> sorted = rotors;
  std::ranges::sort(sorted);
  sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
  std::vector<std::string> runs;
  for (std::size_t i = 0; i < sorted.size();) {
    std::size_t last = i;
    while (last + 1 < sorted.size() && sorted[last + 1] == sorted[last] + 1) ++last;
    if (last >= i + 2) {
      runs.push_back(tell(screen, Code{"view.run"}, {{"from", sorted[i]}, {"to", sorted[last]}}));
    } else {
      for (std::size_t k = i; k <= last; ++k) runs.push_back(std::to_string(sorted[k]));
    }
    i = last + 1;
  }
  const int count = static_cast<int>(sorted.size());
  return tell(screen, Code{"view.rotors_named"}, {{"count", count}, {"rotors", std::move(runs)}});
}

}  // namespace flatwise::view
