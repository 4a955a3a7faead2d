// The table of steps of the tear-down and of the way back.
#include <algorithm>

#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

using drawing::kNarrow;
using drawing::kWide;
using teardown::Step;

constexpr double kText = 3.9;
constexpr double kSmall = 3.2;
constexpr double kLeading = 1.2;
constexpr double kLeastRow = 6.4;
constexpr double kGreatestRow = 8.2;
constexpr double kStop = 10.5;
constexpr double kInset = 2.4;  // Of the boxes, so that a frame round the row stays clear of them.

std::string joined(const std::vector<std::string>& parts) {
  std::string out;
  for (const std::string& part : parts) out += (out.empty() ? "" : ", ") + part;
  return out;
}

/// A step in words, and where its columns stand.
struct Row {
  std::string what, note, tools, labels;
  std::vector<std::string> cautions;
  bool stop = false, ask = false;
};

class Table {
 public:
  Table(Sheet& page, const StepTable& table) : page_{page}, table_{table} {
    for (const Step& step : table.steps) rows_.push_back(in_words(step));
    boxes_ = table.second_look ? 2 : 1;
    labels_ = std::any_of(rows_.begin(), rows_.end(), [](const Row& row) { return !row.labels.empty(); });
  }
  void draw();

 private:
  [[nodiscard]] Row in_words(const Step& step) const;
  [[nodiscard]] double do_x() const { return page_.left() + 11; }
  [[nodiscard]] double with_x() const {
    return page_.left() + (labels_ ? (boxes_ == 1 ? 0.635 : 0.6) : 0.69) * page_.width();
  }
  [[nodiscard]] double label_x() const {
    return labels_ ? page_.left() + (boxes_ == 1 ? 0.795 : 0.73) * page_.width() : box_x(0) - 1;
  }
  [[nodiscard]] double box_x(int k) const {
    return page_.right() - drawing::kTickSide - kInset - (boxes_ - 1 - k) * 12.5;
  }
  [[nodiscard]] Block what_block(bool bold) const {
    return {.x = do_x(), .width = with_x() - do_x() - 2, .type = {.size = kText, .bold = bold}, .leading = kLeading};
  }
  [[nodiscard]] Block note_block() const {
    return {.x = do_x(), .width = with_x() - do_x() - 2, .type = {.size = kSmall}, .leading = kLeading};
  }
  [[nodiscard]] Block tool_block() const {
    return {.x = with_x(), .width = label_x() - with_x() - 2, .type = {.size = kSmall}, .leading = kLeading};
  }
  [[nodiscard]] Block label_block() const {
    return {
        .x = label_x(), .width = box_x(0) - label_x() - 2, .type = {.size = kSmall, .bold = true}, .leading = kLeading};
  }
  [[nodiscard]] double text_height(const Row& row) const;
  [[nodiscard]] double row_height(const Row& row) const;
  [[nodiscard]] double total(double row) const;
  [[nodiscard]] double stop_height(const Row& row) const;
  void head();
  void draw_row(const Row& row, int number);
  void draw_stop(const Row& row, int number);
  [[nodiscard]] Block stop_block() const {
    return {.x = do_x(),
            .width = page_.right() - do_x() - 4,
            .type = {.size = 5.2, .bold = true, .on_solid = true},
            .leading = kLeading};
  }
  void choose_row();
  void draw_first();
  [[nodiscard]] Caution between(const Row& row) const {
    return {.lines = row.cautions, .right = page_.right(), .triangle = 5.4};
  }

  Sheet& page_;
  const StepTable& table_;
  std::vector<Row> rows_;
  int boxes_ = 1;
  bool labels_ = true;
  double row_ = kGreatestRow;
};

Row Table::in_words(const Step& step) const {
  Row row;
  row.what = page_.say(step.what);
  if (step.note) row.note = page_.say(*step.note);
  std::vector<std::string> tools;
  for (const Word& tool : step.tools) tools.push_back(page_.word(tool));
  std::vector<std::string> labels;
  for (const Message& label : step.labels) labels.push_back(page_.say(label));
  for (const Message& caution : step.cautions) row.cautions.push_back(page_.say(caution));
  row.tools = joined(tools);
  row.labels = joined(labels);
  row.stop = step.stop;
  row.ask = step.before_you_go_on;
  return row;
}

double Table::text_height(const Row& row) const {
  double text = page_.height_of(row.what, what_block(row.ask));
  if (!row.note.empty()) text += page_.height_of(row.note, note_block());
  if (row.ask) text += kSmall * kLeading;
  return text;
}

double Table::row_height(const Row& row) const {
  const double beside = std::max(page_.height_of(row.tools, tool_block()), page_.height_of(row.labels, label_block()));
  return std::max(row_, std::max(text_height(row), beside) + (row.ask ? 3.0 : 1.8));
}

double Table::stop_height(const Row& row) const { return std::max(kStop, page_.height_of(row.what, stop_block()) + 4); }

double Table::total(double row) const {
  Table copy = *this;
  copy.row_ = row;
  double sum = 7;
  for (const Row& r : copy.rows_) {
    if (&r != &copy.rows_.front() && !r.cautions.empty()) sum += caution_height(page_, between(r));
    sum += r.stop ? copy.stop_height(r) : copy.row_height(r);
  }
  return sum;
}

// One page if it can be had with rows a pencil still finds, else comfortable rows on as many as it takes.
void Table::choose_row() {
  for (const double below : {table_.keep_below, 0.0}) {
    for (double row = kGreatestRow; row >= kLeastRow - 1e-9; row -= 0.2) {
      row_ = row;
      if (total(row) <= page_.room() - below) return;
    }
  }
  row_ = kGreatestRow;
}

void Table::head() {
  drawing::Pen pen = page_.pen();
  const double base = page_.y + 4;
  const drawing::Type type{.size = 3, .bold = true};
  pen.text({do_x(), base}, page_.word(Word{"paper.do"}), type);
  pen.text({with_x(), base}, page_.word(Word{"paper.with"}), type);
  if (labels_) pen.text({label_x(), base}, page_.word(Word{"paper.label"}), type);
  const std::string names[] = {page_.word(Word{"paper.done"}), page_.word(Word{"paper.second"})};
  for (int k = 0; k < boxes_; ++k) {
    const auto& name = names[static_cast<std::size_t>(k)];
    const double size = size_to_fit(page_.measure(), name, {3, true, 11.5}, 1.5);
    const double middle = box_x(k) + drawing::kTickSide / 2;
    const double half = page_.measure().width(name, size, true) / 2;
    pen.text({std::min(middle, page_.right() - half), base}, name,
             {.size = size, .bold = true, .anchor = drawing::Anchor::middle});
  }
  page_.y += 5.8;
  page_.rule(page_.y, kWide);
}

// Numbered like every step: 'step 15' is the same on paper and on the page.
void Table::draw_stop(const Row& row, int number) {
  const double height = stop_height(row);
  if (page_.need(height)) head();
  drawing::Pen pen = page_.pen();
  pen.box({page_.left(), page_.y, page_.width(), height}, drawing::kBlack, "stop");
  const double what = page_.measure().width(row.what, 5.2, true);
  const double note = row.note.empty() ? 0 : page_.measure().width(row.note, 3.5, false);
  const double top = page_.y + (height - page_.height_of(row.what, stop_block())) / 2;
  pen.text({do_x() - 3.2, top + 5.2}, std::to_string(number),
           {.size = 4.2, .bold = true, .anchor = drawing::Anchor::end, .on_solid = true});
  page_.write(row.what, stop_block(), top);
  page_.y += height;
  if (row.note.empty()) return;
  if (do_x() - page_.left() + what + note + 12 < page_.width()) {
    pen.text({page_.right() - 4, page_.y - height / 2 + 1.2}, row.note,
             {.size = 3.5, .anchor = drawing::Anchor::end, .on_solid = true});
    return;
  }
  page_.y += page_.write(row.note, note_block(), page_.y + 0.6) + 1.4;
  page_.rule(page_.y);
}

void Table::draw_row(const Row& row, int number) {
  const double height = row_height(row);
  if (page_.need(height)) head();
  drawing::Pen pen = page_.pen();
  const double top = page_.y + (height - text_height(row)) / 2 - 0.25;
  double at = top;
  if (row.ask) at += page_.write(page_.word(Word{"paper.before_you_go_on"}), note_block(), at);
  pen.text({do_x() - 3.2, at + kText}, std::to_string(number),
           {.size = 4.2, .bold = true, .anchor = drawing::Anchor::end});
  at += page_.write(row.what, what_block(row.ask), at);
  if (!row.note.empty()) page_.write(row.note, note_block(), at);
  page_.write(row.tools, tool_block(), page_.y + (height - page_.height_of(row.tools, tool_block())) / 2 - 0.2);
  page_.write(row.labels, label_block(), page_.y + (height - page_.height_of(row.labels, label_block())) / 2 - 0.2);
  for (int k = 0; k < boxes_; ++k)
    drawing::draw_tick_box(pen.list(), {box_x(k), page_.y + (height - drawing::kTickSide) / 2}, drawing::kTickSide);
  if (row.ask) pen.box({page_.left() + 0.25, page_.y + 0.5, page_.width() - 0.5, height - 1}, kWide);
  page_.y += height;
  if (!row.ask) page_.rule(page_.y);
}

// What goes before everything, beside the code to scan.
void Table::draw_first() {
  const double top = page_.y;
  page_.code(table_.code, top + 0.9);
  caution_box(page_, {.lines = rows_.front().cautions, .right = page_.code_left()});
  const Block sentence{
      .x = page_.left(), .width = page_.code_left() - page_.left(), .type = {.size = 3.5}, .leading = 1.25};
  page_.y += page_.write(table_.sentence, sentence, page_.y + 0.8) + 0.8;
  page_.y = std::max(page_.y, top + Sheet::kCodeHeight + 0.5);
}

void Table::draw() {
  if (rows_.empty()) return;
  draw_first();
  choose_row();
  head();
  int number = 0;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const Row& row = rows_[i];
    if (i > 0 && !row.cautions.empty()) {
      // A caution never stands on another page than its step.
      if (page_.need(caution_height(page_, between(row)) + row_height(row))) head();
      caution_box(page_, between(row));
    }
    ++number;
    if (row.stop)
      draw_stop(row, number);
    else
      draw_row(row, number);
  }
}

}  // namespace

void step_table(Sheet& page, const StepTable& table) { Table{page, table}.draw(); }

}  // namespace flatwise::paper
