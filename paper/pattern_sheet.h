// pattern_sheet.h: the quietest arrangements of a shaft, on paper.
#pragma once

#include "job/arrange.h"
#include "paper/sheets.h"

namespace flatwise::paper {

struct PatternSheet {
  Head head;
  const Shaft* shaft = nullptr;
  const job::Arranged* arranged = nullptr;
  Kind judged = Kind::force;  ///< Or torque, where the couple judges.
};
/// What the advised arrangement is, in large; the list with its couples head to tail, the advised one in the heavy frame; why; what a
/// mistake in timing would do to it; and the lines that keep it.
[[nodiscard]] Pages pattern_sheet(const PatternSheet& sheet, const TextMeasure& measure);

}  // namespace flatwise::paper
