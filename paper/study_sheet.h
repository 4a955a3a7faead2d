// study_sheet.h: ways of one shaft side by side, on paper.
#pragma once

#include "paper/sheets.h"
#include "study/study.h"

namespace flatwise::paper {

struct StudySheet {
  Head head;
  const study::Study* study = nullptr;
};
/// The ruled table with the advised way in its heavy frame, what to do and why, the plots in which the ways differ, and behind them
/// the workings of the advised way.
[[nodiscard]] Pages study_sheet(const StudySheet& sheet, const TextMeasure& measure);

}  // namespace flatwise::paper
