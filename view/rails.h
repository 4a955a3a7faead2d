// rails.h: the shaft across the top with a cell for every station, and the rule of stages above it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "drawing/shaft_strip.h"
#include "view/bench_view.h"
#include "view/stage_sheets.h"

namespace flatwise::view {

/// Width that the page scales a strip from, mm.
inline constexpr double kStripWidth = 186;
/// Of a low strip, in stages with much entry: tines are broken off.
inline constexpr double kLowStrip = 25;
/// Of a strip with whole tines: a short shaft is drawn smaller sooner than that it takes the sheet's room.
inline constexpr double kFullStrip = 44;

/// How a strip with cells beside it is drawn: without marks and numbers, the cells say them.
[[nodiscard]] drawing::StripOptions strip_options(bool low);
/// The rail that the cell of a station stands in; "none": too thin to be pointed at, a tap on it means its neighbour.
[[nodiscard]] std::string_view rail_of(StationKind kind);
/// The station that stands for another one: of a washer its nut, else its neighbour; of all others themselves.
[[nodiscard]] int with_a_cell(const Shaft& shaft, int station);

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
