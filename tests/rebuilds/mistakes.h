// mistakes.h: tools of the files that put mistakes in.
#pragma once

#include <algorithm>
#include <string>

#include "tests/rebuilds/gauges.h"
#include "tests/rebuilds/timing_truth.h"
#include "tests/rebuilds/truth.h"

namespace rebuilds {

[[nodiscard]] inline std::string at_rotor(int number) { return "rotor " + std::to_string(number); }
[[nodiscard]] inline bool has_claim(const Rebuild& r, const std::string& what) {
  return std::ranges::find(r.claimed, what) != r.claimed.end();
}
/// Keeps a place to one mistake. False: another has it.
[[nodiscard]] inline bool claim(Rebuild& r, const std::string& what) {
  if (has_claim(r, what)) return false;
  r.claimed.push_back(what);
  return true;
}
/// A rotor that came off and of which nothing has claimed `what`; 0 where there is none.
[[nodiscard]] inline int free_rotor(Rebuild& r, const std::string& what, Random& random) {
  std::vector<int> free;
  for (const int n : r.off())
    if (!has_claim(r, at_rotor(n) + " " + what)) free.push_back(n);
  if (free.empty()) return 0;
  const int n = random.pick(free);
  r.claimed.push_back(at_rotor(n) + " " + what);
  return n;
}

// False: this mistake has no place on this shaft.
[[nodiscard]] bool put_in_marks(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_stack(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_bore(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_press(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_torque(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_parts(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool leave_out(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_run(Rebuild& r, Mistake& m, Random& random);
[[nodiscard]] bool put_in_readings(Rebuild& r, Mistake& m, Random& random);

}  // namespace rebuilds
