// Marks: the timing check with its mend, and what each mistake would have done: the kink inside the bearing, what is left
// to shake the machine, and the gap between the tines.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/dynamics/figures.h"
#include "core/timing/figures.h"
#include "job/figure_use.h"
#include "job/marks.h"
#include "job/rules.h"

namespace flatwise::job::rules {
namespace {

void show_kinks(const Facts& facts, const timing::Check& check, StageReport& report) {
  for (const timing::RotorVerdict& v : check.rotors) {
    if (!v.kink) continue;
    const Rotor& part = facts.shaft.rotor(v.rotor);
    show(report, at_rotor(v.rotor), {}, timing::figures(), "kink",
         {given("lean", any(part.lean), rotor_origin(facts.shaft, v.rotor, "lean")),
          measured("flats-out", any_count(*v.pair_out), facts.bench.file),
          given("flats", any_count(facts.shaft.flats()), facts.shaft.origin("shaft.flats")),
          given("misalignment", any(part.bearing.permissible_misalignment),
                rotor_origin(facts.shaft, v.rotor, "bearing.misalignment"))});
  }
}

/// Tilt azimuths of the rotors as read. A pair that fights itself has no axis of its own: the middle of its halves' axes is
/// taken. None where a half was not read, or where the halves are half a turn out and have no middle.
std::optional<std::vector<Angle>> tilt_as_read(const Facts& facts, const timing::Reading& reading) {
  std::vector<Angle> tilt;
  const int flats = facts.shaft.flats();
  for (const timing::Marks& m : reading.rotors) {
    if (!m.a || !m.b) return std::nullopt;
    const int apart = flats_out(*m.b, turned_flat(*m.a, flats / 2, flats), flats);
    if (2 * apart == flats) return std::nullopt;
    tilt.push_back(azimuth_of_flat(*m.a, flats) + 0.5 * (azimuth_of_flat(apart + 1, flats)));
  }
  return tilt;
}

std::vector<Angle> tilt_wanted(const Facts& facts, const timing::Check& check) {
  std::vector<Angle> tilt;
  for (int r = 1; r <= facts.shaft.rotor_count(); ++r)
    tilt.push_back(azimuth_of_flat(
        timing::wanted_flat(facts.shaft.spec().pattern, facts.shaft.flats(), check.plan.reference, r, Half::a),
        facts.shaft.flats()));
  return tilt;
}

WorkingPtr show_one(Result<Working> working, const std::string& about, StageReport& report) {
  if (!working) {
    report.problems.push_back(std::move(working.error()));
    return nullptr;
  }
  report.workings.push_back({{}, about, std::make_shared<const Working>(*std::move(working))});
  return report.workings.back().working;
}

/// What an arrangement leaves at the hangers and between the tines.
struct Left {
  WorkingPtr couple, gap;  ///< One rotor alone has no gap.
};
Left show_arrangement(const Facts& facts, const std::vector<Angle>& tilt, const std::string& about,
                      StageReport& report) {
  Left left{show_one(dynamics::arrangement_working(facts.shaft, tilt), about, report), nullptr};
  if (facts.shaft.rotor_count() > 1) left.gap = show_one(dynamics::least_gap_working(facts.shaft, tilt), about, report);
  return left;
}

/// What the mistakes would have done. What the defined pattern leaves is information, never an alarm.
void compare(const Left& wanted, const Left& read, StageReport& report) {
  if (wanted.couple == nullptr || read.couple == nullptr) return;
  Args args{{"couple", AnyQuantity{read.couple->si("left-couple"), Kind::torque}},
            {"couple_wanted", AnyQuantity{wanted.couple->si("left-couple"), Kind::torque}},
            {"hanger", AnyQuantity{read.couple->si("larger"), Kind::force}},
            {"hanger_wanted", AnyQuantity{wanted.couple->si("larger"), Kind::force}}};
  if (wanted.gap != nullptr && read.gap != nullptr) {
    args.emplace_back("gap", AnyQuantity{read.gap->si("gap"), Kind::length});
    args.emplace_back("gap_wanted", AnyQuantity{wanted.gap->si("gap"), Kind::length});
  }
  report.findings.push_back({Code{"timing.would_have_left"}, Severity::note, std::move(args), {}, std::nullopt});
}

}  // namespace

void marks(const Facts& facts, StageReport& report) {
  const Result<timing::Reading> reading = marks_reading(facts);
  if (!reading) return report.problems.push_back(reading.error());
  const Result<timing::Check> check = timing::check(facts.shaft, *reading);
  if (!check) return report.problems.push_back(check.error());
  std::ranges::copy(check->findings, std::back_inserter(report.findings));
  show_kinks(facts, *check, report);
  const Left wanted = show_arrangement(facts, tilt_wanted(facts, *check), "wanted", report);
  if (wanted.gap != nullptr) take_findings(report, {}, *wanted.gap);
  if (check->answer != Answer::out) return;
  if (const auto tilt = tilt_as_read(facts, *reading))
    compare(wanted, show_arrangement(facts, *tilt, "as read", report), report);
}

}  // namespace flatwise::job::rules
