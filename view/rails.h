// rails.h: the shaft across the top with a cell for every station, and the rule of stages above it.
#pragma once

#include <vector>

#include "drawing/shaft_strip.h"
#include "view/bench_view.h"
#include "view/stage_sheets.h"

namespace flatwise::view {

/// Width that the page scales a strip from, mm.
inline constexpr double kStripWidth = 186;
/// Of a low strip, in stages with much entry: tines are broken off.
inline constexpr double kLowStrip = 25;

/// A stage in the one or two words of the stage rule: "Book in", "Time".
[[nodiscard]] std::string stage_word(job::Stage stage, const Voice& voice);
/// The stage rule: [StageMark]. `here`: the stage that is shown.
[[nodiscard]] Json stage_marks(const job::Standing& standing, job::Stage here, const Voice& voice);

/// Marks of all rotors as they were read and agreed.
[[nodiscard]] std::vector<drawing::RotorMarks> marks_read(const job::OpenJob& job);
/// What is on and off, as it stands; flags and hatches are the stage's.
[[nodiscard]] std::vector<drawing::StationState> stations_now(const job::OpenJob& job);

/// Strip: the drawing and the cells of a stage.
[[nodiscard]] Json strip_json(const Subject& subject, const Screen& screen, const Spot& spot, CellOf cell_of);

/// Where the hand-over record is printed from.
[[nodiscard]] std::string hand_over_address(const Subject& subject);

}  // namespace flatwise::view
