// sheet_frame.h: page, title block, cursor and foot shared by all sheets. Inside paper/ only.
#pragma once

#include <string>
#include <vector>

#include "drawing/pen.h"
#include "drawing/signs.h"
#include "paper/sheets.h"

namespace flatwise::paper {

struct Cell {
  std::string caption, value;
};

/// A text block: where its lines go.
struct Block {
  double x = 0, width = 0;
  drawing::Type type;
  double leading = 1.35;
};

class Sheet {
 public:
  Sheet(const Head& head, const TextMeasure& measure, std::string title, std::vector<Cell> cells);

  [[nodiscard]] drawing::Pen pen() { return drawing::Pen{pages_.back()}; }
  [[nodiscard]] double left() const { return kMargin; }
  [[nodiscard]] double right() const { return size_.width - kMargin; }
  [[nodiscard]] double width() const { return size_.width - 2 * kMargin; }
  [[nodiscard]] double bottom() const { return size_.height - kFoot; }
  [[nodiscard]] double room() const { return bottom() - y; }
  [[nodiscard]] const Voice& voice() const { return head_.voice; }
  [[nodiscard]] const Head& head() const { return head_; }
  [[nodiscard]] const TextMeasure& measure() const { return *measure_; }

  [[nodiscard]] std::string word(const Word& id) const { return flatwise::word(id.id, head_.voice); }
  [[nodiscard]] std::string say(const Message& message) const { return flatwise::say(message, head_.voice); }

  /// A new page with the title block repeated small. The cursor stands below it.
  void next_page();
  /// True when a page was begun because `height` was not left.
  bool need(double height);
  void rule(double at, drawing::Look look = drawing::kNarrow);
  /// Lines of a block at the cursor's height; the first base line is one size below `top`. Returns their height.
  double write(const std::string& text, const Block& block, double top);
  [[nodiscard]] double height_of(const std::string& text, const Block& block) const;
  /// Code to scan at the upper right below the head; text beside it must end at code_left().
  void code(const std::string& text, double top);
  [[nodiscard]] double code_left() const { return right() - kCodeSide - 5; }
  /// 'Bench ____ Second look ____' at the cursor.
  void signatures();
  struct Count {
    std::size_t before = 0, total = 0;
  };
  [[nodiscard]] std::size_t page_count() const { return pages_.size(); }
  [[nodiscard]] Pages finish() { return finish({.before = 0, .total = pages_.size()}); }
  /// As part of a longer print.
  [[nodiscard]] Pages finish(Count count);

  double y = 0;
  static constexpr double kCodeSide = 18;
  static constexpr double kCodeHeight = kCodeSide + 7;

 private:
  static constexpr double kFoot = 23;
  void title_block(bool first);
  [[nodiscard]] std::vector<double> cell_widths(double value_size) const;
  void foot(std::size_t page, Count of);

  Head head_;
  const TextMeasure* measure_;
  std::string title_;
  std::vector<Cell> cells_;
  PaperSize size_;
  Pages pages_;
};

}  // namespace flatwise::paper
