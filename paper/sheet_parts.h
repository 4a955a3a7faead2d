// sheet_parts.h: pieces that several sheets share. Inside paper/ only.
#pragma once

#include <string>
#include <vector>

#include "paper/sheet_frame.h"

namespace flatwise::paper {

[[nodiscard]] std::string profile_words(int flats, const Voice& voice);
[[nodiscard]] std::string pattern_words(const Pattern& pattern, const Voice& voice);
/// "1 to 4", "2", "1, 2 and 7": what a list of numbers is shortened to in a cell.
[[nodiscard]] std::string numbers_words(const std::vector<int>& numbers, const Voice& voice);

/// Lines in a heavy frame with the triangle, at the cursor. The first line is bold.
struct Caution {
  std::vector<std::string> lines;
  double right = 0;       ///< Edge of its frame on the page.
  double triangle = 8.5;  ///< Smaller between the lines of a table.
};
void caution_box(Sheet& page, const Caution& caution);
[[nodiscard]] double caution_height(const Sheet& page, const Caution& caution);

/// Machine and customer under the title block, as a row of it; nothing where neither is named.
void whose_row(Sheet& page, const std::string& machine, const std::string& customer);

/// The strip of a plan: what comes off in outline, a bar at each stop point. Moves the cursor below it.
struct PlanStrip {
  const Shaft* shaft = nullptr;
  const teardown::Plan* plan = nullptr;
  std::span<const drawing::RotorMarks> marks;
  bool stops = true;  ///< With a bar at each stop point.
};
void plan_strip(Sheet& page, const PlanStrip& strip);

/// Table of steps; see step_table.cc.
struct StepTable {
  std::span<const teardown::Step> steps;
  bool second_look = false;  ///< A second tick at every line.
  double keep_below = 0;     ///< Room wanted below the table on the same page.
  std::string code;          ///< To scan, beside the first caution.
  std::string sentence;      ///< Below the first caution.
};
void step_table(Sheet& page, const StepTable& table);

/// A picture whose words keep to its width, measured as they will be set.
[[nodiscard]] drawing::DisplayList within_its_width(drawing::DisplayList picture, const TextMeasure& measure);

}  // namespace flatwise::paper
