// Parts leave the shaft from its ends only: a rotor said to be off between two that stayed is a slip of the pen.
#include <algorithm>

#include "job/rules.h"

namespace flatwise::job::rules {

void way_off(const Facts& facts, StageReport& report) {
  const auto off = [&](int rotor) {
    return std::ranges::find(facts.bench.came_off, rotor) != facts.bench.came_off.end();
  };
  const int count = facts.shaft.rotor_count();
  int from_a = 0, from_b = 0;
  while (from_a < count && off(from_a + 1)) ++from_a;
  while (from_b < count - from_a && off(count - from_b)) ++from_b;
  for (int r = from_a + 1; r <= count - from_b; ++r) {
    if (!off(r)) continue;
    const Args args{{"rotor", r}};
    report.findings.push_back({Code{"teardown.rotor_held_between"}, Severity::out, args, at_rotor(r),
                               Message{Code{"teardown.check_what_came_off"}, args}});
  }
}

}  // namespace flatwise::job::rules
