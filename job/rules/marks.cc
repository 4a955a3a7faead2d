// Marks: the timing check with its mend, and what each mistake would have done: the kink inside the bearing, what is left
// to shake the machine, and the gap between the tines.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/dynamics/figures.h"
#include "core/timing/check.h"
#include "core/timing/figures.h"
#include "job/figure_use.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

bool contains(const std::vector<int>& list, int value) { return std::ranges::find(list, value) != list.end(); }

Result<timing::Reading> reading_of(const Facts& facts) {
  timing::Reading reading;
  reading.rotors.resize(static_cast<std::size_t>(facts.shaft.rotor_count()));
  for (int r = 1; r <= facts.shaft.rotor_count(); ++r)
    reading.rotors[static_cast<std::size_t>(r) - 1].fixed = !contains(facts.bench.came_off, r);
  for (const MarkRead& m : facts.bench.marks) {
    timing::Marks& marks = reading.rotors[static_cast<std::size_t>(m.rotor) - 1];
    (m.half == Half::a ? marks.a : marks.b) = m.flat.value;
  }
  Result<teardown::State> state = teardown::with_rotors_off(facts.shaft, facts.bench.still_off, facts.bench.new_set);
  if (!state) return tl::unexpected(std::move(state.error()));
  reading.state = *std::move(state);
  reading.prices = {facts.workshop.rate_per_hour, facts.workshop.currency};
  // A mirrored row has the mirrored resultants and the same gaps, unless something else on the shaft has its own azimuth.
  reading.mirror_is_same = facts.shaft.spec().unbalances.empty();
  return reading;
}

void show_kinks(const Facts& facts, const timing::Check& check, StageReport& report) {
  for (const timing::RotorVerdict& v : check.rotors) {
    if (!v.kink) continue;
    const Rotor& part = facts.shaft.rotor(v.rotor);
    show(report, at_rotor(v.rotor), {}, timing::figures(), "kink",
         {given("lean", any(part.lean), rotor_origin(facts.shaft, v.rotor, "lean")),
          measured("flats-out", any_count(*v.pair_out), facts.bench.file),
          given("flats", any_count(facts.shaft.flats()), facts.shaft.origin("shaft.flats")),
          given("misalignment", any(part.bearing.permissible_misalignment), rotor_origin(facts.shaft, v.rotor, "bearing.misalignment"))});
  }
}

/// Tilt azimuths of the rotors as read, where every pair is read and right; a pair that fights itself has no axis.
std::optional<std::vector<Angle>> tilt_as_read(const Facts& facts, const timing::Reading& reading) {
  std::vector<Angle> tilt;
  const int flats = facts.shaft.flats();
  for (const timing::Marks& m : reading.rotors) {
    if (!m.a || !m.b || flats_out(*m.b, turned_flat(*m.a, flats / 2, flats), flats) != 0) return std::nullopt;
    tilt.push_back(azimuth_of_flat(*m.a, flats));
  }
  return tilt;
}

std::vector<Angle> tilt_wanted(const Facts& facts, const timing::Check& check) {
  std::vector<Angle> tilt;
  for (int r = 1; r <= facts.shaft.rotor_count(); ++r)
    tilt.push_back(azimuth_of_flat(timing::wanted_flat(facts.shaft.spec().pattern, facts.shaft.flats(), check.plan.reference, r, Half::a), facts.shaft.flats()));
  return tilt;
}

void show_one(Result<Working> working, const std::string& about, StageReport& report) {
  if (working) report.workings.push_back({{}, about, std::make_shared<const Working>(*std::move(working))});
  else report.problems.push_back(std::move(working.error()));
}

/// What the arrangement leaves, and the gap between tines: information with its figure, never an alarm where the definition
/// wants it so.
void show_arrangement(const Facts& facts, const std::vector<Angle>& tilt, const std::string& about, StageReport& report) {
  show_one(dynamics::arrangement_working(facts.shaft, tilt), about, report);
  if (facts.shaft.rotor_count() > 1) show_one(dynamics::least_gap_working(facts.shaft, tilt), about, report);
}

}  // namespace

void marks(const Facts& facts, StageReport& report) {
  const Result<timing::Reading> reading = reading_of(facts);
  if (!reading) return report.problems.push_back(reading.error());
  const Result<timing::Check> check = timing::check(facts.shaft, *reading);
  if (!check) return report.problems.push_back(check.error());
  std::ranges::copy(check->findings, std::back_inserter(report.findings));
  show_kinks(facts, *check, report);
  show_arrangement(facts, tilt_wanted(facts, *check), "wanted", report);
  if (const auto tilt = tilt_as_read(facts, *reading); tilt && check->answer == Answer::out) show_arrangement(facts, *tilt, "as read", report);
}

}  // namespace flatwise::job::rules
