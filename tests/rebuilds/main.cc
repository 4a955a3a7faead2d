// rebuilds: simulates rebuilds, asks the program, counts what it catches.
//
//   rebuilds [--seed N] [--count N] [--write FILE] [--break CODE[:misplace]] [--show SEED] [--keep DIR] [--brief]
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "tests/rebuilds/runner.h"
#include "tests/rebuilds/simulate.h"

namespace {

using namespace rebuilds;

struct Asked {
  unsigned long long seed = 1;
  int count = 10000;
  std::string write, broken, keep;
  bool show = false, brief = false;
};

int usage() {
  std::fputs(
      "rebuilds [--seed N] [--count N] [--write FILE] [--break CODE[:misplace]] [--show SEED] [--keep DIR] [--brief]\n",
      stderr);
  return 2;
}

bool read_args(int count, char** args, Asked& to) {
  for (int i = 1; i < count; ++i) {
    const std::string flag = args[i];
    if (flag == "--brief") {
      to.brief = true;
      continue;
    }
    if (i + 1 == count) return false;
    const std::string value = args[++i];
    if (flag == "--seed" || flag == "--show") to.seed = std::strtoull(value.c_str(), nullptr, 10);
    to.show = to.show || flag == "--show";
    if (flag == "--count") to.count = std::atoi(value.c_str());
    if (flag == "--write") to.write = value;
    if (flag == "--break") to.broken = value;
    if (flag == "--keep") to.keep = value;
    if (flag != "--seed" && flag != "--show" && flag != "--count" && flag != "--write" && flag != "--break" &&
        flag != "--keep")
      return false;
  }
  return to.count > 0;
}

void save(const std::string& path, const std::string& text) { std::ofstream{path, std::ios::binary} << text; }

void keep(const std::string& folder, const Texts& texts) {
  std::filesystem::create_directories(folder);
  save(folder + "/shaft.toml", texts.shaft);
  save(folder + "/workshop.toml", texts.workshop);
  save(folder + "/readings.toml", texts.readings);
}

void print(const Told& t) {
  constexpr const char* kNames[] = {"note", "unanswered", "cannot tell", "OUT"};
  std::printf("  %-11s %-28s %s", kNames[static_cast<int>(t.severity)], t.code.c_str(), t.place.c_str());
  for (const auto& [name, value] : t.args) std::printf(" %s=%s", name.c_str(), value.c_str());
  std::puts("");
}

/// One rebuild for people: what was put in, what was said.
int show(const Asked& asked) {
  const Rebuild rebuild = make_rebuild(asked.seed);
  const Texts texts = texts_of(rebuild);
  if (!asked.keep.empty()) keep(asked.keep, texts);
  const AllTold told = broken_by(read_break(asked.broken), said_of(rebuild));
  for (const Mistake& m : rebuild.mistakes)
    std::printf("put in: %s: %s (p %.6f)\n", row_of(m.kind).words, m.told.c_str(), m.promised);
  for (const std::string& p : told.refused) std::printf("refused: %s\n", p.c_str());
  for (const std::string& p : told.problems) std::printf("problem: %s\n", p.c_str());
  for (const Told& t : told.findings)
    if (!asked.brief || t.severity != Told::Severity::note) print(t);
  const Outcome outcome = compare(rebuild, told);
  for (const MistakeOutcome& m : outcome.mistakes)
    std::printf("caught %d, named %d, cannot tell %d %s\n", m.caught, m.named, m.cannot_tell, m.why.c_str());
  for (const std::string& a : outcome.discrete_alarms) std::printf("alarm: %s\n", a.c_str());
  for (const std::string& a : outcome.gauge_alarm_codes) std::printf("gauge alarm: %s\n", a.c_str());
  return 0;
}

}  // namespace

int main(int count, char** args) {
  Asked asked;
  if (!read_args(count, args, asked)) return usage();
  if (asked.show) return show(asked);
  const auto start = std::chrono::steady_clock::now();
  const Tally tally = simulate(asked.seed, asked.count, read_break(asked.broken));
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  std::fputs(table(tally).c_str(), stdout);
  const std::size_t shown = asked.brief ? 20 : tally.misses.size();
  for (std::size_t i = 0; i < std::min(shown, tally.misses.size()); ++i) std::printf("%s\n", tally.misses[i].c_str());
  if (!asked.write.empty()) save(asked.write, page(tally));
  const auto broken = broken_promises(tally);
  for (const std::string& b : broken) std::printf("BROKEN: %s\n", b.c_str());
  std::printf("%.1f s, %.2f ms a rebuild\n", took.count(), 1e3 * took.count() / asked.count);
  return broken.empty() ? 0 : 1;
}
