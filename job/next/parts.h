// parts.h: what of an entry or of the shelf the standing of a job looks at. Only job/next uses it.
#pragma once

#include <string>
#include <vector>

#include "job/judge.h"
#include "job/kit.h"
#include "job/next.h"
#include "job/steps.h"

namespace flatwise::job::standing_parts {

/// What of the shaft an entry is about.
[[nodiscard]] Where where_of(const Shaft& shaft, const EntryBody& body);
/// Where the nut of an end is; nowhere if that end has none.
[[nodiscard]] Where where_of_nut(const Shaft& shaft, End end);

/// How far the job is, apart from what the rules of the stages say.
struct Course {
  std::optional<ChosenWay> way;  ///< Worked out once: all below that asks for the plan or its steps looks here.
  bool opened = false;           ///< A rotor left the shaft.
  bool way_chosen = false;       ///< Somebody decided what to open.
  bool customer_yes = false;     ///< To the way that is chosen now.
  bool customer_no = false;      ///< To the way that is chosen now.
  std::vector<int> to_come_off;  ///< Rotors of the way chosen that are still on and never came off.
  std::vector<int> not_played;   ///< Rotors whose side play nobody read.
  std::vector<std::string> stations_off;   ///< Labels of what is off at this moment.
  std::vector<PartWanted> wanted;          ///< What is still to be laid on the trays.
  std::vector<std::string> parts_missing;  ///< Part numbers that the trays want and the shelf does not hold.
};
[[nodiscard]] Course course_of(const Facts& facts, const JobState& state);

/// The steps of a phase as far as somebody answers them one by one.
struct PhaseSteps {
  bool kept = false;                    ///< At least one was answered: all of them are to be.
  std::vector<const JobStep*> left;     ///< Not done, in order; steps of the course.
  std::vector<const JobStep*> refused;  ///< Answered no.
};
[[nodiscard]] PhaseSteps steps_of(const Course& course, const JobState& state, Phase phase);

}  // namespace flatwise::job::standing_parts
