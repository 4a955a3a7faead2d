// Speed of the core as the bench uses it: one full recompute, the least-work mend, reading the files, start-up.
//
//   build/release/bench/bench_core [PROJECT FOLDER [PART OF A NAME]]      see docs/speed.md
//
// Links: definition job figures words
#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmath>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include "bench/measure.h"
#include "core/timing/check.h"
#include "core/timing/map.h"
#include "definition/read.h"
#include "job/judge.h"
#include "job/questions.h"

namespace flatwise::bench {
namespace {

namespace fs = std::filesystem;

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  if (at == std::string::npos) stop("the demo has no '" + from + "'");
  return text.replace(at, from.size(), to);
}

// --- Material: the demo's long nine made longer ------------------------------------------------------------------------

std::string shaft_text(const fs::path& demo, int rotors, const std::string& pattern = "\"facing\"") {
  std::string text = replaced(text_of(demo / "long-nine.toml"), "repeat = 5", "repeat = " + std::to_string(rotors / 2));
  text = replaced(text, "repeat = 4", "repeat = " + std::to_string(rotors - rotors / 2));
  return replaced(text, "pattern = \"facing\"", "pattern = " + pattern);
}

std::string rotor_text(int number) {
  const bool odd = number % 2 == 1;
  std::string text = "\n[[rotor]]\nnumber = " + std::to_string(number) + "\n";
  text += odd ? "marks = { a = 1, b = 4 }\n" : "marks = { a = 4, b = 1 }\n";
  text += "fitted = \"TH-55-100-C3\"\nlean_marked = { a = \"5°\", b = \"5°\" }\nrings_sound = [\"yes\", \"yes\"]\n";
  text += "press = { force = \"600 lbf\", gauge = \"PG-1\", ring = \"outer\" }\n";
  text +=
      "count_out = { set = { laid = 1, left = 0 }, seal = { laid = 2, left = 0 }, snap_ring = { laid = 2, left = 0 } "
      "}\n";
  text += "bore = { gauge = \"BG-1\", part = \"68 °F\", gauge_at = \"68 °F\", thermometer = \"TH-1\", ";
  text += "A = [\"3.9359 in\", \"3.9360 in\", \"3.9359 in\", \"3.9358 in\"], ";
  return text + "B = [\"3.9358 in\", \"3.9359 in\", \"3.9358 in\", \"3.9358 in\"] }\n";
}

/// Marks of every rotor; of the first `off` all that was read and answered.
std::string readings_text(const Shaft& shaft, int off) {
  std::string numbers, each;
  for (int r = 1; r <= off; ++r) numbers += (r > 1 ? ", " : "") + std::to_string(r);
  for (int r = 1; r <= off; ++r) each += (r > 1 ? ", " : "") + std::to_string(r) + " = \"yes\"";
  std::string text = "[readings]\njob = \"1\"\ndate = 2026-02-03\ncame_off = [" + numbers + "]\nnew_set = [" + numbers +
                     "]\n\n[answers]\n";
  for (const char* asked :
       {"power_locked_off", "stored_energy_let_off", "frame_chocked", "tines_clear", "spacers_labelled"})
    text += std::string{asked} + " = \"yes\"\n";
  for (const char* asked : {"seals_new", "bearing_greased", "snap_rings_home"})
    text += std::string{asked} + " = { " + each + " }\n";
  for (int r = 1; r <= off; ++r) text += rotor_text(r);
  for (int r = off + 1; r <= shaft.rotor_count(); ++r)
    text += "\n[[rotor]]\nnumber = " + std::to_string(r) +
            (r % 2 == 1 ? "\nmarks = { a = 1, b = 4 }\n" : "\nmarks = { a = 4, b = 1 }\n");
  Length nuts;
  for (const Station& s : shaft.stations())
    if (s.kind == StationKind::nut) nuts = nuts + s.length.nominal;
  const double clamped_mm = (shaft.total_length() - nuts).si() * 1e3;
  text += "\n[[stack]]\nlength = \"" + std::to_string(clamped_mm) + " mm\"\ngauge = \"BAR-1\"\n";
  for (const char* nut : {"A", "B"})
    text += std::string{"\n[[torque]]\nnut = \""} + nut +
            "\"\nwith = \"wrench\"\nshown = \"225 ft·lb\"\ngauge = \"TW-1\"\nmultiplier = 4\n";
  return text;
}

struct Job {
  Shaft shaft;
  Workshop workshop;
  Bench bench;
};

Job job(const fs::path& demo, int rotors, int off) {
  Shaft shaft = got(definition::read_shaft(shaft_text(demo, rotors), "shaft"), "the shaft");
  Workshop workshop = got(definition::read_workshop(text_of(demo / "workshop.toml"), "workshop"), "the workshop");
  Bench bench = got(definition::read_bench(readings_text(shaft, off), "readings", shaft, workshop, job::question_ids()),
                    "the readings");
  return {std::move(shaft), std::move(workshop), std::move(bench)};
}

void recompute(const Job& j) {
  const auto map = timing::map(j.shaft);
  const job::JobReport report = job::judge_through({j.shaft, j.workshop, j.bench}, job::Stage::release);
  if (!map || report.stages.empty()) stop("nothing was computed");
}

// --- The least-work mend, and every mend tried -------------------------------------------------------------------------

/// Marks as the pattern wants them, then four mistakes along the shaft, nothing fixed, all on the shaft.
timing::Reading wrong_marks(const Shaft& shaft) {
  timing::Reading reading;
  reading.state = teardown::all_on(shaft);
  reading.prices = {.rate_per_hour = 48.0, .currency = "GBP"};
  const int n = shaft.flats(), count = shaft.rotor_count();
  for (const timing::RotorMarks& r : got(timing::map(shaft), "the map").rotors)
    reading.rotors.push_back({.a = r.flat_a, .b = r.flat_b});
  const auto turn = [&](int number, bool a, int by) {
    timing::Marks& marks = reading.rotors[static_cast<std::size_t>(number) - 1];
    std::optional<int>& flat = a ? marks.a : marks.b;
    flat = turned_flat(*flat, by, n);
  };
  turn(1, false, 1);
  turn(count, true, 2);
  if (count < 8) return reading;
  turn(count / 2, true, 1);
  turn(count / 2, false, 1);
  turn(count / 3, false, 3);
  return reading;
}

/// Of all ways to set all halves, the least work among those that end right: no insight, every flat of every half.
double least_by_brute_force(const Shaft& shaft, const timing::Reading& reading) {
  const int n = shaft.flats(), count = shaft.rotor_count();
  const teardown::Reach reach{shaft, reading.state, reading.prices};
  std::vector<int> flats(static_cast<std::size_t>(2 * count), 1);
  double least = -1;
  for (bool more = true; more;) {
    bool right = false;
    for (int first = 1; first <= n && !right; ++first)
      for (const bool as_listed : {true, false}) {
        if (!as_listed && !timing::hand_is_free(shaft)) continue;
        bool all = true;
        for (int r = 1; r <= count && all; ++r)
          for (const Half half : {Half::a, Half::b})
            all = all && flats[static_cast<std::size_t>(2 * (r - 1) + (half == Half::b ? 1 : 0))] ==
                             timing::wanted_flat(shaft.spec().pattern, n, {first, as_listed}, r, half);
        right = right || all;
      }
    if (right) {
      std::vector<int> stations;
      int halves = 0;
      for (int r = 1; r <= count; ++r) {
        const timing::Marks& marks = reading.rotors[static_cast<std::size_t>(r) - 1];
        const int wrong = (flats[static_cast<std::size_t>(2 * r - 2)] != marks.a ? 1 : 0) +
                          (flats[static_cast<std::size_t>(2 * r - 1)] != marks.b ? 1 : 0);
        if (wrong > 0) stations.push_back(shaft.station_of_rotor(r));
        halves += wrong;
      }
      if (const auto cost = reach.cheapest(stations)) {
        const Time time = cost->time + halves * shaft.spec().policies.turn_a_half;
        const double money = reach.money(time, cost->parts_price).value_or(-1);
        if (least < 0 || money < least) least = money;
      }
    }
    std::size_t digit = 0;
    while (digit < flats.size() && ++flats[digit] > n) flats[digit++] = 1;
    more = digit < flats.size();
  }
  return least;
}

// --- Start-up and size -------------------------------------------------------------------------------------------------

void start(const std::string& program) {
  posix_spawn_file_actions_t to_nowhere;
  ::posix_spawn_file_actions_init(&to_nowhere);
  ::posix_spawn_file_actions_addopen(&to_nowhere, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
  std::string name = program, version = "--version";
  char* const words[] = {name.data(), version.data(), nullptr};
  pid_t child = -1;
  const int spawned = ::posix_spawn(&child, program.c_str(), &to_nowhere, nullptr, words, environ);
  ::posix_spawn_file_actions_destroy(&to_nowhere);
  int state = 0;
  if (spawned != 0 || ::waitpid(child, &state, 0) < 0 || state != 0) stop(program + " does not start");
}

void print_size(const fs::path& module) {
  std::error_code none;
  const auto bytes = fs::file_size(module, none);
  if (none)
    std::printf("WebAssembly module: not built (scripts/build-wasm.sh)\n");
  else
    std::printf("WebAssembly module: %ju bytes\n", static_cast<std::uintmax_t>(bytes));
}

int run(const fs::path& project, const std::string& only) {
  const fs::path demo = project / "demo", here = fs::read_symlink("/proc/self/exe").parent_path();
  const Job some = job(demo, 14, 4), all = job(demo, 14, 14);
  const std::string shaft_14 = shaft_text(demo, 14), readings_14 = readings_text(all.shaft, 14);
  const Shaft facing = got(definition::read_shaft(shaft_text(demo, 24), "shaft"), "24 facing");
  const Shaft stepped = got(definition::read_shaft(shaft_text(demo, 24, "{ step = 2 }"), "shaft"), "24 stepped");
  const Shaft three = got(definition::read_shaft(shaft_text(demo, 3, "{ step = 2 }"), "shaft"), "3 stepped");
  const timing::Reading of_facing = wrong_marks(facing), of_stepped = wrong_marks(stepped),
                        of_three = wrong_marks(three);
  const double tried = least_by_brute_force(three, of_three);
  const double found = got(timing::check(three, of_three), "the check").plan.money.value_or(-2);
  if (std::abs(tried - found) > 1e-9 * tried) stop("the search and every mend tried do not agree");
  const std::string peer = "every mend of 3 rotors tried, 6^6 of them", program = (here / "../cli/flatwise").string();
  std::vector<Case> cases{
      {"full recompute, 14 rotors, 4 of them off", 1, [&] { recompute(some); }},
      {"full recompute, 14 rotors, all of them off", 0, [&] { recompute(all); }},
      {"marks of 24 rotors and their least-work mend, facing", 10,
       [&] { got(timing::check(facing, of_facing), "the check"); }},
      {"marks of 24 rotors and their least-work mend, step 2", 10,
       [&] { got(timing::check(stepped, of_stepped), "the check"); }},
      {"marks of 3 rotors and their least-work mend, step 2", 0,
       [&] { got(timing::check(three, of_three), "the check"); }, peer},
      {peer, 0, [&] { least_by_brute_force(three, of_three); }, "", 10},
      {"read a shaft file of 14 rotors", 0, [&] { got(definition::read_shaft(shaft_14, "shaft"), "the shaft"); }},
      {"read a readings file of 14 rotors, all of them off", 0,
       [&] {
         got(definition::read_bench(readings_14, "readings", all.shaft, all.workshop, job::question_ids()),
             "the readings");
       }},
      {"start-up: flatwise --version, from its start to its end", 20, [&] { start(program); }}};
  std::erase_if(cases, [&](const Case& c) { return c.name.find(only) == std::string::npos; });
  measure(cases, 101);
  print(cases);
  print_size(project / "build/wasm/flatwise.wasm");
  return 0;
}

}  // namespace
}  // namespace flatwise::bench

int main(int argc, char** argv) { return flatwise::bench::run(argc > 1 ? argv[1] : ".", argc > 2 ? argv[2] : ""); }
