#include "job/judge.h"

#include <algorithm>
#include <array>
#include <utility>

#include "job/rules.h"

namespace flatwise::job {
namespace {

using Rule = void (*)(const Facts&, StageReport&);
struct StageRules {
  Stage stage;
  std::array<Rule, 4> rules;  ///< Called in order; the rest is nullptr.
};
constexpr StageRules kRules[] = {
    {Stage::booking_in, {rules::answers, rules::play}},
    {Stage::finding, {rules::play}},
    {Stage::teardown, {rules::answers, rules::way_off, rules::spacers_off}},
    {Stage::inspection, {rules::answers, rules::bores}},
    {Stage::kit, {rules::answers, rules::parts_fitted, rules::count_out}},
    {Stage::press, {rules::answers, rules::presses}},
    {Stage::timing, {rules::marks}},
    {Stage::stack, {rules::answers, rules::order_back, rules::spacers_back, rules::seating}},
    {Stage::torque, {rules::nuts, rules::turns}},
    {Stage::test_run, {rules::answers, rules::run, rules::due}},
};

}  // namespace

Severity StageReport::worst() const {
  Severity worst = problems.empty() ? Severity::note : Severity::cannot_tell;
  for (const Finding& f : findings) worst = std::max(worst, f.severity);
  return worst;
}

Severity JobReport::worst() const {
  Severity worst = Severity::note;
  for (const StageReport& s : stages) worst = std::max(worst, s.worst());
  return worst;
}

const Finding* JobReport::first_open() const {
  for (const StageReport& stage : stages) {
    const Severity worst = stage.worst();
    if (worst == Severity::note) continue;
    const auto it = std::ranges::find_if(stage.findings, [&](const Finding& f) { return f.severity == worst; });
    if (it != stage.findings.end()) return &*it;
  }
  return nullptr;
}

StageReport judge(const Facts& facts, Stage stage) {
  StageReport report;
  report.stage = stage;
  for (const StageRules& row : kRules) {
    if (row.stage != stage) continue;
    for (const Rule rule : row.rules)
      if (rule != nullptr) rule(facts, report);
  }
  return report;
}

JobReport judge_through(const Facts& facts, Stage through) {
  JobReport report;
  for (const StageRules& row : kRules)
    if (row.stage <= through) report.stages.push_back(judge(facts, row.stage));
  return report;
}

namespace {

Origin own_or_common(const Shaft& shaft, const std::string& own, const std::string& common) {
  return shaft.origin(shaft.spec().origins.contains(own) ? own : common);
}

/// Every rotor came off: from which end is what somebody said, else what the other parts tell; else both.
teardown::Opening opened_with_all_off(const Shaft& shaft, const Bench& bench) {
  if (bench.opened) return {bench.opened->from, bench.opened->rotors_from_a, {}};
  const int first = shaft.station_of_rotor(1) + 1, last = shaft.station_of_rotor(shaft.rotor_count()) + 1;
  const bool a = std::ranges::any_of(bench.parts_off, [&](int part) { return part < first; });
  const bool b = std::ranges::any_of(bench.parts_off, [&](int part) { return part > last; });
  if (a == b) return {};
  return {a ? teardown::OpenedFrom::a : teardown::OpenedFrom::b, 0, {}};
}

/// Stations off from end A, and the first one off from end B, where every rotor came off.
std::pair<int, int> bare_with_all_off(const Shaft& shaft, const Bench& bench) {
  const int size = static_cast<int>(shaft.stations().size()), count = shaft.rotor_count();
  const teardown::Opening opening = opened_with_all_off(shaft, bench);
  if (opening.from == teardown::OpenedFrom::a) return {shaft.station_of_rotor(count) + 1, size};
  if (opening.from == teardown::OpenedFrom::b) return {0, shaft.station_of_rotor(1)};
  const int share = opening.rotors_from_a;
  if (share < 1 || share >= count) return {size, size};
  return {shaft.station_of_rotor(share) + 1, shaft.station_of_rotor(share + 1)};
}

/// An obstacle stays, and so does what stands between it and its end of the shaft.
void leave_obstacles_on(const Shaft& shaft, std::vector<bool>& off) {
  const auto first = static_cast<std::size_t>(shaft.station_of_rotor(1));
  const auto last = static_cast<std::size_t>(shaft.station_of_rotor(shaft.rotor_count()));
  for (std::size_t i = 0; i < off.size(); ++i) {
    if (!shaft.stations()[i].obstacle) continue;
    off[i] = false;
    if (i < first) std::fill(off.begin(), off.begin() + static_cast<std::ptrdiff_t>(i), false);
    if (i > last) std::fill(off.begin() + static_cast<std::ptrdiff_t>(i), off.end(), false);
  }
}

}  // namespace

Origin rotor_origin(const Shaft& shaft, int rotor, std::string_view field) {
  const std::string name{field};
  return own_or_common(shaft, "rotors[" + std::to_string(rotor - 1) + "]." + name, "rotor." + name);
}

Origin nut_origin(const Shaft& shaft, End end, std::string_view field) {
  const std::string name{field};
  return own_or_common(shaft, (end == End::a ? "nut.A." : "nut.B.") + name, "nut." + name);
}

std::vector<bool> stations_off(const Shaft& shaft, const Bench& bench) {
  const int count = shaft.rotor_count();
  std::vector<bool> rotor_off(static_cast<std::size_t>(count) + 2, false);
  for (const int r : bench.came_off) rotor_off[static_cast<std::size_t>(r)] = true;
  int from_a = 0;  // Rotors 1..from_a came off at end A.
  while (from_a < count && rotor_off[static_cast<std::size_t>(from_a) + 1]) ++from_a;
  int from_b = count + 1;  // Rotors from_b..N came off at end B.
  while (from_b > from_a + 1 && rotor_off[static_cast<std::size_t>(from_b) - 1]) --from_b;
  std::vector<bool> off(shaft.stations().size(), false);
  const auto mark = [&](int begin, int end) {
    for (int i = begin; i < end; ++i) off[static_cast<std::size_t>(i)] = true;
  };
  const int size = static_cast<int>(off.size());
  std::pair<int, int> bare{from_a > 0 ? shaft.station_of_rotor(from_a) + 1 : 0,
                           from_b <= count ? shaft.station_of_rotor(from_b) : size};
  if (from_a == count) bare = bare_with_all_off(shaft, bench);
  mark(0, bare.first);
  mark(bare.second, size);
  for (int r = from_a + 1; r < from_b; ++r)
    if (rotor_off[static_cast<std::size_t>(r)]) off[static_cast<std::size_t>(shaft.station_of_rotor(r))] = true;
  leave_obstacles_on(shaft, off);
  for (const int part : bench.parts_off)
    if (part >= 1 && part <= size) off[static_cast<std::size_t>(part) - 1] = true;
  return off;
}

}  // namespace flatwise::job
