// Speed of one bearing with its life: nine balls, three unknowns (tilt given) and five, two thousand seeded cases a round, against
// scipy.optimize.root on the same equations (bearing_peer.py), asked in turn.
//
//   build/release/bench/bench_bearing [ROUNDS]      wants Debian's python3-scipy
//
// Links: bearings draws
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <sstream>
#include <string>
#include <vector>

#include "bench/measure.h"
#include "bench/peer.h"
#include "core/bearings/life.h"
#include "core/draws/draws.h"

namespace flatwise::bench {
namespace {

using namespace flatwise::bearings;

constexpr int kCases = 2000, kPeerCases = 200;
/// So that a round of ours takes tens of milliseconds as one of the peer does, and both are met warm.
constexpr int kPasses = 20;

struct Loaded {
  RingLoad load;
  RingTilt tilt;
};
struct Row {
  std::string name;
  bool tilted;
  double target_us, times;
  std::vector<Loaded> cases = {};
  std::vector<double> own = {}, worked = {}, peer = {}, peer_worked = {}, lives = {};
  int failed = 0, peer_failed = 0;
  double steps = 0, peer_median = 0;
};

const BallBearing kBearing{9, millimetres(12.7), millimetres(65), millimetres(6.604), millimetres(6.604)};

/// 0.5 to 8 kN across, 0.1 to 3 kN along, tilts to 3 mrad; with five unknowns couples to 60 N m instead.
std::vector<Loaded> cases(bool tilted) {
  draws::Stream stream{281, tilted ? 3U : 5U};
  const auto between = [&](double least, double most) { return least + (most - least) * stream.uniform(); };
  std::vector<Loaded> all;
  for (int i = 0; i < kCases; ++i) {
    Loaded l{.load = {.x = newtons(between(500, 8000)), .z = newtons(between(100, 3000))}, .tilt = {}};
    if (tilted) {
      l.tilt.about_y = radians(-between(0, 3e-3));
    } else {
      l.load.about_x = newton_metres(between(-20, 20));
      l.load.about_y = newton_metres(between(-60, 60));
    }
    all.push_back(l);
  }
  return all;
}

std::string told(const LoadedBearing& b, const BallRatings& q) {
  std::ostringstream line;
  line.precision(17);
  line << "bearing " << b.contacts.together << ' ' << b.reach << ' ' << b.gap * b.reach << ' ' << b.circle << ' '
       << q.inner.si() << ' ' << q.outer.si();
  for (int j = 0; j < b.at.bearing.balls; ++j) line << ' ' << b.ring.cosine[j];
  for (int j = 0; j < b.at.bearing.balls; ++j) line << ' ' << b.ring.sine[j];
  return line.str();
}
std::string told(const Loaded& l, const std::string& name) {
  std::ostringstream line;
  line.precision(17);
  line << "case " << name << ' ' << l.load.x.si() << ' ' << l.load.y.si() << ' ' << l.load.z.si() << ' '
       << l.load.about_x.si() << ' ' << l.load.about_y.si() << ' ' << l.tilt.about_x.radians() << ' '
       << l.tilt.about_y.radians();
  return line.str();
}

void run_pass(Row& row, const LoadedBearing& b, const BallRatings& q) {
  row.lives.clear();
  row.failed = 0;
  row.steps = 0;
  for (const Loaded& l : row.cases) {
    const auto rest = row.tilted ? rest_tilted(b, l.load, l.tilt) : rest_under(b, l.load);
    if (!rest) {
      ++row.failed;
      continue;
    }
    row.steps += rest->steps;
    row.lives.push_back(reference_life(q, {rest->inner_cubes, rest->outer_powers}));
  }
}

void run_own(Row& row, const LoadedBearing& b, const BallRatings& q) {
  const double worked = worked_ms();
  const auto from = std::chrono::steady_clock::now();
  for (int pass = 0; pass < kPasses; ++pass) run_pass(row, b, q);
  const double clock_us = std::chrono::duration<double, std::micro>(std::chrono::steady_clock::now() - from).count();
  row.worked.push_back((worked_ms() - worked) * 1e3 / (kPasses * kCases));
  row.own.push_back(clock_us / (kPasses * kCases));
}

void run_peer(Row& row, PythonPeer& peer) {
  std::istringstream answer{peer.ask("run " + row.name + " " + std::to_string(kPeerCases))};
  double ms = 0, worked = 0, first = 0, second = 0;
  answer >> ms >> worked >> row.peer_failed >> first >> second >> row.peer_median;
  row.peer.push_back(ms * 1e3 / kPeerCases);
  row.peer_worked.push_back(worked * 1e3 / kPeerCases);
  if (std::abs(first / row.lives[0] - 1) > 1e-6 || std::abs(second / row.lives[1] - 1) > 1e-6)
    stop(row.name + ": the peer finds another life");
}

void print(const Row& row) {
  const double own = median(row.own), worked = median(row.worked), peer = median(row.peer_worked);
  std::printf("%-6s %9.3f %9.3f %9.3f %8.1f %10.1f %10.1f %8.0f %6.0f  %5.2f %4d %4d  %.9g%s\n", row.name.c_str(), own,
              worked, std::ranges::min(row.own), row.target_us, median(row.peer), peer, peer / worked, row.times,
              row.steps / kCases, row.failed, row.peer_failed, row.lives[0],
              worked <= row.target_us && peer / worked >= row.times ? "" : "  MISSED");
}

int run(int rounds) {
  const auto contacts = got(point_contacts(kBearing, kBearingSteel), "the contacts");
  const LoadedBearing b = got(loaded_bearing({kBearing, micrometres(12)}, contacts, Angle{}), "the bearing");
  const BallRatings q = ball_ratings(kBearing, got(ratings_of(kBearing), "the ratings").dynamic);
  std::vector<Row> rows{{"three", true, 0.7, 500}, {"five", false, 3, 300}};
  PythonPeer peer{FLATWISE_SOURCE_DIR "/bench/bearing_peer.py"};
  peer.ask(told(b, q));
  for (Row& row : rows) {
    row.cases = cases(row.tilted);
    for (const Loaded& l : row.cases) peer.ask(told(l, row.name));
    run_own(row, b, q);
  }
  for (int round = 0; round < rounds; ++round)
    for (Row& row : rows) {
      run_own(row, b, q);
      run_peer(row, peer);
    }
  std::printf("%-6s %9s %9s %9s %8s %10s %10s %8s %6s  %5s %4s %4s  %s\n", "", "median us", "worked", "least", "target",
              "peer us", "worked", "times", "wanted", "steps", "fail", "peer", "first life");
  for (const Row& row : rows) print(row);
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main(int argc, char** argv) { return flatwise::bench::run(argc > 1 ? std::atoi(argv[1]) : 15); }
