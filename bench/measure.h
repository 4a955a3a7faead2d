// measure.h: what the programs here share: cases run one after the other in rounds, and the table of their medians.
#pragma once

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <iterator>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace flatwise::bench {

/// What is timed; `peer` names the case that it is held against.
struct Case {
  std::string name;
  double target_ms = 0;  ///< 0: none.
  std::function<void()> once;
  std::string peer = {};
  int every = 1;  ///< Run only in each such round: for the slow ones.
  std::vector<double> ms = {};
  std::vector<double> worked_ms = {};  ///< Time on a processor: what others take away is not in it.
};

[[noreturn]] inline void stop(const std::string& why) {
  std::fprintf(stderr, "%s\n", why.c_str());
  std::exit(1);
}

template <class T, class E>
T got(tl::expected<T, E> result, const std::string& what) {
  if (!result) stop(what + " was refused");
  if constexpr (!std::is_void_v<T>) return *std::move(result);
}

inline std::string text_of(const std::filesystem::path& file) {
  std::ifstream in{file, std::ios::binary};
  if (!in) stop("cannot read " + file.string());
  return {std::istreambuf_iterator<char>{in}, {}};
}

/// Of values in order: `part` 0.5 is the median.
inline double quantile(std::vector<double> values, double part) {
  std::ranges::sort(values);
  return values[std::min(values.size() - 1, static_cast<std::size_t>(part * static_cast<double>(values.size())))];
}
inline double median(std::vector<double> values) { return quantile(std::move(values), 0.5); }

/// What this thread has worked so far.
inline double worked_ms() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

/// Interleaved: each round runs every case once, so that a busy moment falls on all of them alike.
inline void measure(std::vector<Case>& cases, int rounds) {
  for (Case& c : cases) c.once();  // Once before, so that nobody pays for cold pages.
  for (int round = 0; round < rounds; ++round)
    for (Case& c : cases) {
      if (round % c.every != 0) continue;
      const double worked = worked_ms();
      const auto from = std::chrono::steady_clock::now();
      c.once();
      c.worked_ms.push_back(worked_ms() - worked);
      c.ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
    }
}

/// How often that of the peer goes into that of the case, or the other way round where the peer is the quicker one.
inline void print_ratio(double own, double peer, const std::string& name) {
  if (own * 3 < peer)
    std::printf("    %.0f times as quick as: %s\n", peer / own, name.c_str());
  else
    std::printf("    takes %.2f times as long as: %s\n", own / peer, name.c_str());
}

inline void print(const std::vector<Case>& cases) {
  std::printf("%-62s %10s %10s %10s %10s %6s\n", "", "median ms", "worked ms", "least ms", "target ms", "runs");
  for (const Case& c : cases) {
    const double middle = median(c.ms);
    std::printf("%-62s %10.3f %10.3f %10.3f ", c.name.c_str(), middle, median(c.worked_ms), std::ranges::min(c.ms));
    if (c.target_ms > 0)
      std::printf("%10.0f %6zu%s\n", c.target_ms, c.ms.size(), middle <= c.target_ms ? "" : "  MISSED");
    else
      std::printf("%10s %6zu\n", "", c.ms.size());
    const auto peer = std::ranges::find(cases, c.peer, &Case::name);
    if (peer != cases.end()) print_ratio(middle, median(peer->ms), peer->name);
  }
}

}  // namespace flatwise::bench
