// quote.h: the quote of a job, filled from its plan and, where there is a record, from what was chosen and said.
#pragma once

#include "job/plan.h"
#include "paper/hand_over.h"
#include "paper/sheets.h"

namespace flatwise::paper {

struct QuoteOrder {
  const Shaft* shaft = nullptr;
  const Workshop* workshop = nullptr;
  const job::PlanReport* offered = nullptr;  ///< For the rotors that are to be opened.
  const HandOverOrder* record = nullptr;     ///< nullptr: nobody chose or said anything yet.
  std::vector<drawing::RotorMarks> marks{};  ///< As the rotors are drawn.
  Head head;
};

[[nodiscard]] QuoteSheet quote(const QuoteOrder& order);

}  // namespace flatwise::paper
