// findings.h: what a judged plane or bore has to say, as codes with arguments.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/metrology/taper.h"

namespace flatwise::metrology {

/// Names for the sentences; all may be empty.
struct Named {
  std::string plane = {};        ///< "A", "B", "C" (the middle).
  std::string gauge = {};        ///< As the shop calls it.
  std::string until = {};        ///< Day its calibration ended.
  std::string accepted_by = {};  ///< Who accepted it although overdue.
};

/// "plane A", "plane B", "plane C", "this plane".
[[nodiscard]] Word plane_word(std::string_view plane);
/// "in", "out" or "cannot_tell": the text output of a figure.
[[nodiscard]] std::string_view answer_text(Answer answer);

/// What to do about an answer that cannot be told; `scatter_only` where calibration does not matter (ovality, taper).
[[nodiscard]] Message settle_message(const Settle& settle, bool scatter_only, const Word& plane);

/// Everything that one plane has to say, the worst first. With an obstacle nothing is said to be out: those findings then
/// are cannot tell, behind the obstacle.
[[nodiscard]] std::vector<Finding> plane_findings(const PlaneJudged& plane, Rule rule, const Named& named);
/// The gauge is past its date; `would_be` is the answer it would have given.
[[nodiscard]] Finding overdue_finding(Answer would_be, const Named& named, const Word& plane);
[[nodiscard]] std::vector<Finding> taper_findings(const TaperJudged& taper, Rule rule);

}  // namespace flatwise::metrology
