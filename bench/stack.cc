// Speed of a stack of 36 parts (24 measured, 12 from a drawing): drawn a hundred million times on two threads, and exactly; each
// beside numpy, in turn.
//
//   build/release/bench/bench_stack [ROUNDS [PEER'S SAMPLES]]      see docs/speed.md; needs python3-numpy
//
// Links: stack
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "bench/measure.h"
#include "core/stack/sample.h"
#include "core/stack/sum.h"

namespace flatwise::bench {
namespace {

constexpr std::uint64_t kSamples = 100'000'000;
constexpr double kLow = 0.00135, kHigh = 0.99865;

std::vector<stack::StackPart> parts() {
  std::vector<stack::StackPart> all;
  for (int i = 0; i < 24; ++i)
    all.push_back({.nominal = millimetres(50), .standard_uncertainty = millimetres(0.004 + 0.0003 * i)});
  for (int i = 0; i < 12; ++i)
    all.push_back(
        {.nominal = millimetres(50), .above = millimetres(0.01 + 0.001 * i), .below = millimetres(0.01 + 0.001 * i)});
  return all;
}

struct Answer {
  double ms = 0, worked_ms = 0, sd_mm = 0, low_mm = 0, high_mm = 0;
};

/// Time on the clock, and time that all threads of this process worked: what others take away is not in it.
struct Watch {
  std::chrono::steady_clock::time_point from = std::chrono::steady_clock::now();
  double worked_from = process_ms();
  static double process_ms() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
  }
  [[nodiscard]] double ms() const {
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count();
  }
  [[nodiscard]] double worked_ms() const { return process_ms() - worked_from; }
};

Answer draw(int threads, std::uint64_t seed, lanes::Width width) {
  const auto all = parts();
  const Watch watch;
  std::vector<std::unique_ptr<stack::SampledLength>> share(static_cast<std::size_t>(threads));
  std::vector<std::thread> working;
  const std::uint64_t each = kSamples / static_cast<std::uint64_t>(threads);
  for (std::uint64_t t = 0; t < share.size(); ++t)
    working.emplace_back([&, t] {
      share[t] = std::make_unique<stack::SampledLength>(
          got(stack::SampledLength::of(all, {.seed = seed, .first = t * each, .count = each}, width),
              "a range of samples"));
    });
  for (std::thread& thread : working) thread.join();
  for (std::size_t t = 1; t < share.size(); ++t) share[0]->add(*share[t]);
  const double centre = 36 * 0.050;
  return {watch.ms(), watch.worked_ms(), share[0]->deviation().si() * 1e3,
          (share[0]->quantile(kLow).si() - centre) * 1e3, (share[0]->quantile(kHigh).si() - centre) * 1e3};
}

Answer exact() {
  const auto all = parts();
  const Watch watch;
  const auto length = got(stack::StackLength::of(all), "the stack");
  const stack::Band band = length.band(kHigh - kLow);
  const double ms = watch.ms(), worked = watch.worked_ms();
  return {ms, worked, 0, (band.least - length.centre()).si() * 1e3, (band.greatest - length.centre()).si() * 1e3};
}

Answer peer(const std::string& what) {
  const std::string command = "/usr/bin/python3 " FLATWISE_SOURCE_DIR "/bench/stack_peer.py " + what;
  const std::unique_ptr<FILE, int (*)(FILE*)> said{popen(command.c_str(), "r"), pclose};
  Answer a;
  if (!said ||
      std::fscanf(said.get(), "%lf %lf %lf %lf %lf", &a.ms, &a.worked_ms, &a.sd_mm, &a.low_mm, &a.high_mm) != 5)
    stop("the peer did not answer: is python3-numpy installed?");
  return a;
}

struct Row {
  std::string name;
  double times = 1;  ///< The peer may draw fewer samples and be multiplied.
  std::vector<Answer> runs = {};
  [[nodiscard]] double middle(double Answer::* what) const {
    std::vector<double> all;
    for (const Answer& a : runs) all.push_back(times * a.*what);
    return median(all);
  }
};

void print(const Row& row) {
  if (row.runs.empty()) return;
  const Answer& last = row.runs.back();
  std::printf("%-52s %11.3f %11.3f   %.7f  %.6f  %.6f\n", row.name.c_str(), row.middle(&Answer::ms),
              row.middle(&Answer::worked_ms), last.sd_mm, last.low_mm, last.high_mm);
}

}  // namespace

int run(int rounds, std::uint64_t peer_samples) {
  const double times = static_cast<double>(kSamples) / static_cast<double>(peer_samples);
  Row two{"1e8 samples, two threads (target 750)"}, one{"1e8 samples, one thread"};
  Row avx2{"1e8 samples, two threads, AVX2 build"}, baseline{"1e8 samples, two threads, baseline build"};
  Row peer_draws{"numpy, one thread, " + std::to_string(peer_samples) + " samples, as for 1e8", times};
  Row sum{"exact sum (target 1)"}, peer_sum{"numpy, characteristic function and FFT"};
  (void)exact();
  for (int round = 0; round < rounds; ++round) {
    const auto seed = static_cast<std::uint64_t>(round + 1);
    two.runs.push_back(draw(2, seed, lanes::widest()));
    peer_draws.runs.push_back(peer("draw " + std::to_string(peer_samples)));
    one.runs.push_back(draw(1, seed, lanes::widest()));
    sum.runs.push_back(exact());
    peer_sum.runs.push_back(peer("exact"));
    if (round > 0) continue;
    baseline.runs.push_back(draw(2, seed, lanes::Width::baseline));
    if (lanes::runs_here(lanes::Width::avx2)) avx2.runs.push_back(draw(2, seed, lanes::Width::avx2));
  }
  std::printf("%-52s %11s %11s   %s\n", "medians", "ms", "worked ms", "sd, 0.135 % and 99.865 % in mm");
  for (const Row* row : {&two, &one, &avx2, &baseline, &peer_draws, &sum, &peer_sum}) print(*row);
  std::printf(
      "drawn on two threads: %.1f times as quick as numpy by the clock, %.1f by work (target 45); exact: %.1f\n",
      peer_draws.middle(&Answer::ms) / two.middle(&Answer::ms),
      peer_draws.middle(&Answer::worked_ms) / (0.5 * two.middle(&Answer::worked_ms)),
      peer_sum.middle(&Answer::ms) / sum.middle(&Answer::ms));
  return 0;
}

}  // namespace flatwise::bench

int main(int argc, char** argv) {
  const int rounds = argc > 1 ? std::atoi(argv[1]) : 5;
  const auto samples = argc > 2 ? std::strtoull(argv[2], nullptr, 10) : 10'000'000ULL;
  return flatwise::bench::run(rounds > 0 ? rounds : 1, samples > 0 ? samples : 1);
}
