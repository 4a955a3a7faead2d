// told.h: what the program said about one rebuild, as plain text, and how it compares with what was put in. Stands with the
// truth model: nothing of the program here.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "tests/rebuilds/timing_truth.h"
#include "tests/rebuilds/truth.h"

namespace rebuilds {

struct Told {
  std::string code;
  enum class Severity { note, unanswered, cannot_tell, out } severity = Severity::note;
  std::string place;  ///< "rotor 3", "station 5", "shaft".
  std::vector<std::pair<std::string, std::string>> args;
  std::string todo;  ///< Code of the instruction.
  std::vector<std::pair<std::string, std::string>> todo_args;

  [[nodiscard]] std::string arg(const std::string& name) const;
  [[nodiscard]] std::string todo_arg(const std::string& name) const;
};
struct AllTold {
  std::vector<std::string> refused;  ///< Problems of the files: nothing was judged then.
  std::vector<std::string>
      corrected;  ///< Values the reader refused by name, as typed; corrected, and the files read again.
  std::vector<std::string> problems;  ///< Problems of readings that no figure could be computed from.
  std::vector<Told> findings;
};

struct MistakeOutcome {
  bool caught = false;       ///< Something of its kind was said.
  bool named = false;        ///< The right thing about the right part.
  bool cannot_tell = false;  ///< Gauge-limited: not called out, but said to be undecided.
  std::string why;
};
struct Outcome {
  std::vector<MistakeOutcome> mistakes;  ///< One a mistake of the rebuild.
  bool marks_judged = false, mend_right = false, other_story = false;
  std::vector<std::string> discrete_alarms;  ///< Clean rebuilds: said to be wrong or unanswered for certain.
  int gauge_alarms = 0, undecided = 0;       ///< Clean rebuilds: called out, and cannot tell, by a gauge.
  std::vector<std::string> gauge_alarm_codes;
};
[[nodiscard]] TimingTold timing_told(const AllTold& told);
[[nodiscard]] Outcome compare(const Rebuild& rebuild, const AllTold& told);

}  // namespace rebuilds
