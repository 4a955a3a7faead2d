// judge.h: everything the workshop can say about one shaft from what was read and answered: what is right, what is wrong,
// what cannot be told, what nobody answered, and the one thing to do next.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/working/working.h"
#include "job/bench.h"
#include "job/questions.h"

namespace flatwise::job {

/// A working with the part it is about, in the order it is to be shown.
struct Shown {
  Where where;
  std::string about;  ///< Plane, nut, tray, joint: what tells it from its neighbours; may be empty.
  WorkingPtr working;
  std::optional<Answer> answer = std::nullopt;  ///< What its answer is worth with the gauge that took it (take_judged).

  /// The answer that counts: that one, else the working's own; none where nothing was judged.
  [[nodiscard]] std::optional<Answer> counts() const { return answer ? answer : working->answer; }
};

struct StageReport {
  Stage stage = Stage::booking_in;
  std::vector<Finding> findings;
  std::vector<Shown> workings;
  std::vector<Problem> problems;  ///< Readings that a figure could not be computed from.

  [[nodiscard]] Severity worst() const;  ///< Severity::note when nothing is wrong; a problem cannot tell.
};

struct JobReport {
  std::vector<StageReport> stages;  ///< In the order of the bench, those asked for.

  [[nodiscard]] Severity worst() const;
  /// The finding to deal with first: safety before anything, then the earliest stage; out before cannot tell before
  /// unanswered. nullptr when all is in order.
  [[nodiscard]] const Finding* first_open() const;
};

/// Facts of one job that the rules look at. Nothing is copied; all must outlive the call.
struct Facts {
  const Shaft& shaft;
  const Workshop& workshop;
  const Bench& bench;
};

/// The rules of one stage.
[[nodiscard]] StageReport judge(const Facts& facts, Stage stage);
/// The rules of all stages up to and with `through`.
[[nodiscard]] JobReport judge_through(const Facts& facts, Stage through);

/// Which stations left the shaft, by index: all up to the last rotor that came off at each end. Rotors that came off but
/// lie behind one that stayed are contradictory; the stations up to them count as off too.
[[nodiscard]] std::vector<bool> stations_off(const Shaft& shaft, const Bench& bench);
/// Origin of a rotor's value: its own line where it has one, else the line for all rotors. `field` as in the file: "lean".
[[nodiscard]] Origin rotor_origin(const Shaft& shaft, int rotor, std::string_view field);
/// Origin of a nut's value: its own table where it has one, else the table of both nuts. `field` as in the file: "torque".
[[nodiscard]] Origin nut_origin(const Shaft& shaft, End end, std::string_view field);
/// Where a rotor finding points.
[[nodiscard]] inline Where at_rotor(int number) { return {Where::Part::rotor, number}; }
[[nodiscard]] inline Where at_station(int index) { return {Where::Part::station, index + 1}; }

}  // namespace flatwise::job
