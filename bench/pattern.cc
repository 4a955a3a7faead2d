// Speed of the search for the quietest arrangement, beside a peer on numpy and scipy that is asked in the same run.
//
//   build/release/bench/bench_pattern [ROUNDS]            see docs/speed.md; needs Debian's python3-scipy
//
// Links: dynamics
#include <sys/resource.h>

#include <cmath>
#include <cstdio>
#include <iostream>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "bench/measure.h"
#include "bench/peer.h"
#include "core/dynamics/pattern_search.h"

namespace flatwise::bench {
namespace {

using namespace dynamics;

/// Invented rotors from a fixed seed: couples of 10 N m within 15 %, offsets that press with up to 20 N, 160 mm apart.
PatternTask task_of(int rotors, Judged judged, std::uint32_t seed = 600) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> even(-1, 1);
  PatternTask task;
  task.judged = judged;
  for (int i = 0; i < rotors; ++i) {
    const double couple = 10 * (1 + 0.15 * even(random)), force = 20 * even(random);
    task.rotors.push_back(
        {metres(0.2 + 0.16 * i), Angle{}, newtons(judged == Judged::couple ? 0 : force), newton_metres(couple)});
  }
  task.planes = {metres(0), metres(0.24 + 0.16 * rotors)};
  return task;
}

struct Question {
  std::string name;
  double target_ms;
  PatternTask task;
  std::string peer_fixed = "-";
  bool with_peer = true;
  std::vector<double> own_ms = {}, worked = {}, peer_ms = {}, peer_worked = {};
  double own = 0, peer = 0;
};

std::string case_of(const Question& q, std::size_t index) {
  const PatternSums sums{q.task};
  std::ostringstream line;
  line.precision(17);
  line << "case " << index << (q.task.judged == Judged::couple ? " couple " : " both ") << q.task.positions << " "
       << q.peer_fixed;
  for (int i = 0; i < sums.count(); ++i) line << " " << sums.own(i)[0] << " " << sums.own(i)[1];
  return line.str();
}

void ask_own(Question& q) {
  const double worked = worked_ms();
  const auto from = std::chrono::steady_clock::now();
  const auto found = got(find_pattern(q.task), q.name);
  q.own_ms.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count());
  q.worked.push_back(worked_ms() - worked);
  q.own = found.best[0].left_si;
  if (q.peer_fixed == "-" ? found.proof != Proof::complete : q.own > PatternSums{q.task}.floor_rms())
    stop(q.name + ": not proven");
}

void ask_peer(Question& q, PythonPeer& peer, std::size_t index) {
  std::istringstream answer{peer.ask("run " + std::to_string(index) + " 1")};
  double ms = 0, worked = 0;
  answer >> ms >> worked >> q.peer;
  q.peer_ms.push_back(ms);
  q.peer_worked.push_back(worked);
  if (q.peer_fixed == "-" && std::abs(q.own - q.peer) > 1e-9 * (1 + q.peer))
    stop(q.name + ": the peer finds another least");
}

std::vector<Question> questions() {
  std::vector<Question> all{{"N = 10, two planes, proven least", 2, task_of(10, Judged::both_planes)},
                            {"N = 14, two planes, proven least", 80, task_of(14, Judged::both_planes)},
                            {"N = 16, couple, proven least", 200, task_of(16, Judged::couple)},
                            {"N = 16, two planes, proven least", 0, task_of(16, Judged::both_planes)},
                            {"N = 18, couple, proven least", 0, task_of(18, Judged::couple)},
                            {"N = 24, two planes, under the floor", 100, task_of(24, Judged::both_planes)},
                            {"N = 24, larger plane, under the floor", 100, task_of(24, Judged::larger_plane)}};
  for (Question& q : all)
    if (q.task.count() == 24) q.peer_fixed = "0,3,0,3,0,3,0,3,0,3,0,3,0,3";
  all[3].with_peer = all[4].with_peer = false;  // The peer takes half a minute and more.
  return all;
}

void print(const std::vector<Question>& all) {
  std::printf("%-40s %9s %9s %9s %9s %11s %11s %6s  %s\n", "", "median ms", "worked", "least", "target", "peer",
              "worked", "times", "left");
  for (const Question& q : all) {
    const double own = median(q.own_ms), own_worked = median(q.worked);
    const double peer = q.with_peer ? median(q.peer_ms) : 0, peer_worked = q.with_peer ? median(q.peer_worked) : 0;
    std::printf("%-40s %9.3f %9.3f %9.3f %9.0f %11.2f %11.2f %6.1f  %.6g%s\n", q.name.c_str(), own, own_worked,
                std::ranges::min(q.own_ms), q.target_ms, peer, peer_worked, peer_worked / own_worked, q.own,
                q.target_ms > 0 && own > q.target_ms ? "  MISSED" : "");
  }
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  std::printf("most memory of this program: %ld MiB\n", used.ru_maxrss / 1024);
}

int run(int rounds) {
  PythonPeer peer{FLATWISE_SOURCE_DIR "/bench/pattern_peer.py"};
  std::vector<Question> all = questions();
  for (std::size_t i = 0; i < all.size(); ++i) peer.ask(case_of(all[i], i));
  for (int round = 0; round <= rounds; ++round)
    for (std::size_t i = 0; i < all.size(); ++i) {
      ask_own(all[i]);
      if (all[i].with_peer) ask_peer(all[i], peer, i);
    }
  for (Question& q : all)  // The first round pays for cold pages.
    for (auto* times : {&q.own_ms, &q.worked, &q.peer_ms, &q.peer_worked})
      if (times->size() > 1) times->erase(times->begin());
  print(all);
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main(int argc, char** argv) { return flatwise::bench::run(argc > 1 ? std::max(1, std::atoi(argv[1])) : 9); }
