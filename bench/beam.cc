// Speed of the beam: response over speed and critical speeds of ninety-six elements, twenty-four rotors and three hangers, against
// scipy on the same matrices (tests/data/beam_scipy.py), asked in turn through a pipe. scipy tells its own seconds, so that the pipe is
// not in them.
//
//   build/release/bench/bench_beam      wants Debian's python3-scipy
//
// Links: beam
#include <cstdio>
#include <sstream>
#include <string>
#include <vector>

#include "bench/measure.h"
#include "bench/peer.h"
#include "core/beam/beam_samples.h"
#include "core/beam/response.h"

namespace flatwise::bench {
namespace {

constexpr int kRounds = 15, kSpeeds = 500;
constexpr double kFastest = 450;  // rad/s

/// Milliseconds that scipy took, and the number it found.
std::pair<double, double> asked(PythonPeer& peer, const std::string& line) {
  std::istringstream answer{peer.ask(line)};
  double seconds = 0, found = 0;
  if (!(answer >> seconds >> found)) stop("scipy did not answer");
  return {seconds * 1e3, found};
}

struct Row {
  std::string name, line;  ///< What scipy is asked.
  double target_ms, times;
  std::vector<double> own = {}, worked = {}, peer = {};
  double own_found = 0, peer_found = 0;
};

template <class F>
void time_own(Row& row, F&& once) {
  const double worked = worked_ms();
  const auto from = std::chrono::steady_clock::now();
  row.own_found = once();
  row.worked.push_back(worked_ms() - worked);
  row.own.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
}

struct Sample {
  beam::Beam beam = beam::long_twenty_four();
  std::vector<beam::Turning> turning;
  std::vector<AngularSpeed> speeds;

  Sample() {
    for (std::size_t i = 0; i < beam.bodies.size(); ++i)
      turning.push_back(beam::turning_of(beam.bodies[i], degrees(5), degrees(i % 2 == 0 ? 0 : 180)));
    for (int i = 1; i <= kSpeeds; ++i) speeds.push_back(radians_per_second(kFastest * i / kSpeeds));
  }
};

double response_once(const Sample& s, const beam::Mesh& mesh, lanes::Width width) {
  return got(beam::response(mesh, s.turning, {s.speeds}, width), "response").back().hangers[0].si();
}
double critical_once(const beam::Mesh& mesh, lanes::Width width) {
  const auto forward = got(beam::critical_speeds(mesh, beam::Whirl::forward, 6, width), "critical");
  const auto backward = got(beam::critical_speeds(mesh, beam::Whirl::backward, 6, width), "critical");
  return std::min(forward.speeds[0], backward.speeds[0]).radians_per_second();
}

void print(const Row& r) {
  const double own = median(r.own), peer = median(r.peer);
  std::printf("%-44s %9.3f %9.3f %9.3f %8.1f %10.3f %7.1f %7.0f%s   %.9g | %.9g\n", r.name.c_str(), own,
              median(r.worked), std::ranges::min(r.own), r.target_ms, peer, peer / own, r.times,
              own <= r.target_ms && peer / own >= r.times ? "" : "  MISSED", r.own_found, r.peer_found);
}

int run() {
  const Sample sample;
  const beam::Mesh mesh = got(beam::Mesh::make(sample.beam), "mesh");
  PythonPeer peer{FLATWISE_SOURCE_DIR "/tests/data/beam_scipy.py", "--serve"};
  std::vector<Row> rows{{"response, 500 speeds; scipy, four unknowns", "response 500 4", 4, 20},
                        {"the same; scipy, one plane, two unknowns", "response 500 2", 4, 1},
                        {"six critical speeds each way; eigsh of both", "critical 4", 4, 6},
                        {"the same; eigsh, one plane, twice", "critical 2", 4, 1}};
  const char* names[] = {"baseline", "avx2", "avx512"};
  std::vector<Row> widths;
  for (const lanes::Width width : lanes::kEveryWidth)
    if (lanes::runs_here(width)) {
      widths.push_back({std::string{"  response, "} + names[static_cast<int>(width)], {}, 4, 0});
      widths.push_back({std::string{"  critical, "} + names[static_cast<int>(width)], {}, 4, 0});
    }
  for (int round = -1; round < kRounds; ++round) {  // Once before, for cold pages.
    for (Row& r : rows) {
      const auto [ms, found] = asked(peer, r.line);
      r.peer.push_back(ms);
      r.peer_found = found;
      const bool response = r.line.starts_with("response");
      time_own(r, [&] {
        return response ? response_once(sample, mesh, lanes::widest()) : critical_once(mesh, lanes::widest());
      });
    }
    std::size_t at = 0;
    for (const lanes::Width width : lanes::kEveryWidth) {
      if (!lanes::runs_here(width)) continue;
      time_own(widths[at++], [&] { return response_once(sample, mesh, width); });
      time_own(widths[at++], [&] { return critical_once(mesh, width); });
    }
    if (round >= 0) continue;
    for (Row& r : rows) r.own.clear(), r.worked.clear(), r.peer.clear();
    for (Row& r : widths) r.own.clear(), r.worked.clear();
  }
  std::printf("%-44s %9s %9s %9s %8s %10s %7s %7s\n", "", "median ms", "worked ms", "least ms", "target", "scipy ms",
              "times", "wanted");
  for (const Row& r : rows) print(r);
  for (const Row& r : widths)
    std::printf("%-44s %9.3f %9.3f %9.3f\n", r.name.c_str(), median(r.own), median(r.worked), std::ranges::min(r.own));
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main() { return flatwise::bench::run(); }
