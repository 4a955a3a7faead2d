// bars.h: readings against their limits, drawn to scale for the screen and for paper: the bar of the three answers, the
// scale of the stack's length, chances joint by joint, run readings, a clamping band. Words come in as arguments.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/working/working.h"
#include "drawing/display_list.h"

namespace flatwise::drawing {

/// A reading with its answer against one or two limits. All numbers in one unit.
struct AnswerBar {
  std::optional<double> least{}, greatest{};  ///< Limits; at least one of them, least < greatest.
  std::optional<double> value{};
  double expanded = 0;                  ///< U, half the whisker.
  Answer answer = Answer::cannot_tell;  ///< Colour and form of the dot.
  std::optional<double> before{};       ///< The reading before it: an open circle.
  std::string least_words{}, greatest_words{};
};
/// The bar: what lies outside the limits is hatched, the reading stands with its whisker of ± U at one scale. Half the
/// tolerance is shown beyond each limit, up to one and a half where the reading needs it; a reading further out is an arrow
/// at the edge, never a dot inside the drawn range. One limit alone: the scale begins at nought.
/// Ids     "limit-least", "limit-greatest", "reading", "whisker", "before".
[[nodiscard]] DisplayList answer_bar(const AnswerBar& bar, double width);

/// Where a measured stack stands between contradiction, seated, and one joint open. All in one unit.
struct LengthScale {
  double least = 0, greatest = 0;  ///< 95 % band of a seated stack.
  double open_from = 0;            ///< From here a joint may be open.
  double one_open = 0;             ///< Where one joint open by its whole step would read.
  std::optional<double> value{};
  double expanded = 0;
  Answer answer = Answer::cannot_tell;
  std::string least_words{}, greatest_words{}, open_words{};
  std::string contradiction{}, seated{}, one_joint{};  ///< Names of the three ranges.
};
/// Ids     "limit-least", "limit-greatest", "open-from", "one-open", "reading", "whisker".
[[nodiscard]] DisplayList length_scale(const LengthScale& scale, double width);

/// One joint that may be open: where it lies along the shaft (any unit) and its chance.
struct JointChance {
  int joint = 0;
  double at = 0;        ///< From `from` to `to` of chance_bars().
  double chance = 0;    ///< 0 to 1.
  std::string words{};  ///< Above the bar; empty where it is too low to label.
  bool first = false;
};
struct NamedPlace {
  double at = 0;
  std::string name;
};
/// Bars straight below the joints of the shaft, one scale up to the greatest. Ids "joint-<number>".
struct ChanceBars {
  double from = 0, to = 1;
  std::vector<JointChance> joints;
  std::vector<NamedPlace> names;  ///< Below the line: the rotors.
};
[[nodiscard]] DisplayList chance_bars(const ChanceBars& bars, double width);

/// One reading of the run: its bar from nought, and the limit where there is one.
struct RunRow {
  std::string id, name, words;
  double value = 0;
  std::optional<double> good{};  ///< What the last good run read there: a line across the row.
};
struct RunBars {
  std::vector<RunRow> rows;
  std::optional<double> limit;
  std::string limit_words{};
};
/// Ids     of the rows, "<row>-good", "limit-greatest".
[[nodiscard]] DisplayList run_bars(const RunBars& bars, double width);

/// A band with a notch in its middle on a scale from nought: a clamping force up to proof. Ids "band", "notch".
struct BandBar {
  double least = 0, greatest = 0;
  double end = 1;  ///< Of the scale.
  std::string end_words{};
};
[[nodiscard]] DisplayList band_bar(const BandBar& bar, double width);

}  // namespace flatwise::drawing
