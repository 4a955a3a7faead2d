// text_measure.h: how wide words are, and breaking them into lines. Sheets are laid out with this; the one that knows
// the fonts lives in paper/render.h.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace flatwise::paper {

class TextMeasure {
 public:
  virtual ~TextMeasure() = default;
  /// Width in mm of one line set at `size` mm.
  [[nodiscard]] virtual double width(std::string_view text, double size, bool bold) const = 0;
};

struct Setting {
  double size = 3.5;
  bool bold = false;
  double width = 0;  ///< Lines are no wider than this.
};

/// The text without line ends and tabs: each line end that somebody typed is shown as a sign, a tab is a space. Line ends are LF,
/// CR, CR LF, VT, FF, NEL, U+2028 and U+2029.
[[nodiscard]] std::string in_one_line(std::string_view text);

/// Lines at the line ends in the text and at spaces (not at no-break spaces); a word wider than the line is broken inside,
/// between characters. A text with more than a dozen line ends keeps none: it would outgrow its page. Never returns nothing: an
/// empty text is one empty line.
[[nodiscard]] std::vector<std::string> break_lines(const TextMeasure& measure, std::string_view text,
                                                   const Setting& setting);

/// The greatest size up to `setting.size` (down to `least`) at which the text takes one line of the width.
[[nodiscard]] double size_to_fit(const TextMeasure& measure, std::string_view text, const Setting& setting,
                                 double least);

}  // namespace flatwise::paper
