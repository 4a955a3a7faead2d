// pictures.h: a study's plots and couples drawn, and as numbers for programs.
#pragma once

#include <string>

#include "drawing/display_list.h"
#include "drawing/plot.h"
#include "study/study.h"

namespace flatwise::study {

/// Title of a plot and the question it answers.
[[nodiscard]] std::string title_of(PlotKey key, const Voice& voice);
[[nodiscard]] std::string question_of(PlotKey key, const Voice& voice);

/// A plot, drawn in the voice's units. Ways on one curve are named as one curve.
[[nodiscard]] drawing::DisplayList picture_of(const Study& study, const PlotData& plot, const Voice& voice,
                                              const drawing::PlotSize& size = {.width = 120, .height = 84});
/// The same in words, for who cannot see it: each curve with what it has where the way works.
[[nodiscard]] std::string aloud(const Study& study, const PlotData& plot, const Voice& voice);
/// One way's couples head to tail.
[[nodiscard]] drawing::DisplayList couples_of(const Study& study, int way, double width, double height);

/// Numbers of a plot (RFC 4180): a line a point, the way's name first, SI but for speeds (/min) and azimuths (degrees).
[[nodiscard]] std::string csv_of(const Study& study, const PlotData& plot);
/// The whole table: row, way, value and to in SI with their unit, and what it says.
[[nodiscard]] std::string csv_of(const Study& study, const Voice& voice);

}  // namespace flatwise::study
