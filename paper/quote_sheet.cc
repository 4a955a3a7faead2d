// The quote: what the customer is asked for. The price is found first, and whether somebody said yes to it.
#include <algorithm>

#include "paper/sheet_parts.h"

namespace flatwise::paper {
namespace {

using drawing::kHeavy;
using drawing::kWide;

constexpr double kText = 3.5, kSmall = 3.0, kLabel = 3.1;
constexpr double kLabels = 30;  ///< Width of the column of labels, mm.
constexpr double kPad = 1.4;
constexpr double kStripHeight = 16, kSigned = 16;
constexpr double kLine = 6.1;  ///< Of the table of what it is made of.

Block block(double x, double width, double size = kText, bool bold = false) {
  return {.x = x, .width = width, .type = {.size = size, .bold = bold}, .leading = 1.25};
}

/// Sentences as one paragraph.
std::string joined(const std::vector<std::string>& sentences) {
  std::string out;
  for (const std::string& one : sentences) out += (out.empty() ? "" : " ") + one;
  return out;
}

/// Writes at the cursor, on the next page where it has no room, and moves the cursor below.
void write_below(Sheet& page, const std::string& text, const Block& at) {
  page.need(page.height_of(text, at));
  page.y += page.write(text, at, page.y);
}

// --- The price and the yes --------------------------------------------------------------------------------------------

void price_frame(Sheet& page, const QuoteSheet& sheet) {
  const double right = page.code_left();
  const Block way = block(page.left() + 20, right - page.left() - 23, 4, true);
  const Block yes = block(way.x, way.width, 4);
  double height = 15 + page.height_of(sheet.way, way) + 2;
  for (const std::string& line : sheet.yes) height += page.height_of(line, yes);
  height = std::max(height, Sheet::kCodeHeight);
  page.y += 1.5;
  page.need(height + 3);
  drawing::Pen pen = page.pen();
  pen.box({page.left() + 0.45, page.y, right - page.left() - 0.9, height}, kHeavy);
  drawing::draw_flag(pen.list(), sheet.flag, {page.left() + 10, page.y + std::min(height, 25.0) / 2 + 5}, 9);
  pen.text({way.x, page.y + 11}, sheet.price,
           {.size = size_to_fit(page.measure(), sheet.price, {8, true, way.width}, 4), .bold = true});
  double y = page.y + 13;
  y += page.write(sheet.way, way, y) + 1;
  for (const std::string& line : sheet.yes) y += page.write(line, yes, y);
  page.code(code_text(sheet.head, "sheet", "quote"), page.y);
  page.y += height + 3;
}

// --- The ways side by side --------------------------------------------------------------------------------------------

/// One row of the table: its label, what stands in it, how it is set.
struct Row {
  Word label;
  std::string QuoteWay::* text;
  std::string QuoteWay::* below = nullptr;
  double size = kText;
  bool bold = false;
};
constexpr std::string QuoteWay::* kNothing = nullptr;
const Row kRows[] = {{Word{"view.plan.row.off"}, &QuoteWay::comes_off},
                     {Word{"view.plan.row.renewed"}, &QuoteWay::renewed, kNothing, kText, true},
                     {Word{"view.plan.row.time"}, &QuoteWay::time},
                     {Word{"view.plan.row.price"}, &QuoteWay::price, &QuoteWay::price_of, 4.6, true},
                     {Word{"view.plan.row.words"}, &QuoteWay::words, kNothing, kSmall}};

class Ways {
 public:
  Ways(Sheet& page, const QuoteSheet& sheet) : page_{page}, sheet_{sheet} {
    column_ = (page.width() - kLabels) / static_cast<double>(std::max<std::size_t>(sheet.ways.size(), 1));
  }

  void draw() {
    double height = names_height();
    for (const Row& row : kRows) height += height_of(row);
    page_.need(height);
    const double top = page_.y;
    draw_names();
    for (const Row& row : kRows) draw_row(row);
    frame(top);
    page_.y += 2;
  }

 private:
  [[nodiscard]] double left_of(std::size_t way) const {
    return page_.left() + kLabels + static_cast<double>(way) * column_;
  }
  [[nodiscard]] Block cell(std::size_t way, const Row& row) const {
    return block(left_of(way) + kPad + 0.6, column_ - 2 * kPad - 0.6, row.size, row.bold);
  }
  [[nodiscard]] Block label() const { return block(page_.left() + kPad, kLabels - 2 * kPad, kLabel, true); }
  [[nodiscard]] double height_of(const Row& row) const {
    double height = page_.height_of(page_.word(row.label), label());
    for (std::size_t i = 0; i < sheet_.ways.size(); ++i) {
      const QuoteWay& way = sheet_.ways[i];
      double here = page_.height_of(way.*row.text, cell(i, row));
      if (row.below != nullptr) here += page_.height_of(way.*row.below, block(0, column_ - 2 * kPad - 0.6, kSmall));
      height = std::max(height, here);
    }
    return height + 2 * kPad;
  }
  [[nodiscard]] drawing::StripDrawing strip_of(const QuoteWay& way) const {
    return drawing::shaft_strip(
        *sheet_.shaft, way.states, sheet_.marks,
        {.width = column_ - 2 * kPad, .greatest_height = kStripHeight, .numbers = false, .draw_marks = false});
  }
  [[nodiscard]] double strips_height() const {
    double height = 0;
    for (const QuoteWay& way : sheet_.ways) height = std::max(height, strip_of(way).list.height);
    return height;
  }
  [[nodiscard]] double names_height() const { return 12 + strips_height() + kPad; }

  void draw_names() {
    const double top = page_.y;
    page_.write(page_.word(Word{"view.plan.title"}), label(), top + kPad);
    page_.write(page_.word(Word{"view.plan.aside"}), block(page_.left() + kPad, kLabels - 2 * kPad, 2.6), top + 8);
    drawing::Pen pen = page_.pen();
    for (std::size_t i = 0; i < sheet_.ways.size(); ++i) {
      const QuoteWay& way = sheet_.ways[i];
      const double x = left_of(i) + kPad + 0.6, room = column_ - 2 * kPad - 0.6;
      pen.text({x, top + 5.6}, way.name,
               {.size = size_to_fit(page_.measure(), way.name, {4.2, true, room}, 2), .bold = true});
      pen.text({x, top + 10.2}, way.chip, {.size = kSmall, .bold = true});
      drawing::append(pen.list(), strip_of(way).list, {left_of(i) + kPad, top + 11.5});
    }
    page_.y = top + names_height();
    page_.rule(page_.y);
  }
  void draw_row(const Row& row) {
    const double height = height_of(row);
    page_.write(page_.word(row.label), label(), page_.y + kPad);
    for (std::size_t i = 0; i < sheet_.ways.size(); ++i) {
      const QuoteWay& way = sheet_.ways[i];
      const Block at = cell(i, row);
      const double below = page_.y + kPad + page_.write(way.*row.text, at, page_.y + kPad);
      if (row.below != nullptr) page_.write(way.*row.below, block(at.x, at.width, kSmall), below);
    }
    page_.y += height;
    page_.rule(page_.y);
  }
  /// Frame and columns; the heavy frame goes last, over the rest.
  void frame(double top) {
    drawing::Pen pen = page_.pen();
    pen.box({page_.left(), top, page_.width(), page_.y - top}, kWide);
    for (std::size_t i = 0; i < sheet_.ways.size(); ++i) pen.line({left_of(i), top}, {left_of(i), page_.y});
    for (std::size_t i = 0; i < sheet_.ways.size(); ++i)
      if (sheet_.ways[i].framed)
        pen.box({left_of(i) + 0.5, top + 0.5, column_ - 1, page_.y - top - 1}, kHeavy, "asked");
  }

  Sheet& page_;
  const QuoteSheet& sheet_;
  double column_ = 0;
};

// --- What the price is made of ----------------------------------------------------------------------------------------

struct Columns {
  double item, number, count, each, sum;  ///< The last three are right edges.
};
Columns columns_of(const Sheet& page) {
  const auto at = [&](double share) { return page.left() + share * page.width(); };
  return {at(0), at(0.36), at(0.62), at(0.81), page.right()};
}

/// A line of the table. A sum in a line of its own has its words in `item`.
struct Line {
  std::string item, number, count, each, sum;
  bool bold = false;
};
void draw_line(Sheet& page, const Line& line) {
  const Columns c = columns_of(page);
  const bool sums = line.number.empty() && line.count.empty();
  drawing::Pen pen = page.pen();
  const auto put = [&](double x, double room, const std::string& text, drawing::Anchor anchor) {
    pen.text({x, page.y + 4.5}, text,
             {.size = size_to_fit(page.measure(), text, {kText, line.bold, room}, 1.8),
              .bold = line.bold,
              .anchor = anchor});
  };
  put(c.item, (sums ? c.each : c.number) - c.item - 2, line.item, drawing::Anchor::start);
  put(c.number, c.count - c.number - 14, line.number, drawing::Anchor::start);
  put(c.count, 12, line.count, drawing::Anchor::end);
  put(c.each, c.each - c.count - 3, line.each, drawing::Anchor::end);
  put(c.sum, c.sum - c.each - 3, line.sum, drawing::Anchor::end);
  page.y += kLine;
  page.rule(page.y, line.bold ? kWide : drawing::kNarrow);
}

void made_of(Sheet& page, const QuoteSheet& sheet) {
  const auto heads = [&] {
    page.rule(page.y, kWide);
    draw_line(page, {page.word(Word{"paper.quote_made_of"}), page.word(Word{"paper.part_number"}),
                     page.word(Word{"paper.quote_count"}), page.word(Word{"paper.quote_each"}),
                     page.word(Word{"view.plan.row.price"}), true});
  };
  std::vector<Line> lines;
  for (const QuotePart& part : sheet.parts)
    lines.push_back({part.item, part.part_number, std::to_string(part.count), part.each, part.sum});
  lines.push_back({page.word(Word{"paper.quote_parts"}), {}, {}, {}, sheet.parts_price});
  lines.push_back({sheet.work, {}, {}, {}, sheet.work_price});
  lines.push_back({page.word(Word{"paper.quote_together"}), {}, {}, {}, sheet.price, true});
  page.need(4 * kLine);
  heads();
  for (const Line& line : lines) {
    if (page.need(kLine)) heads();
    draw_line(page, line);
  }
  page.y += 1.5;
  if (!sheet.why.empty()) write_below(page, joined(sheet.why), block(page.left(), page.width(), kSmall));
  page.y += 1.5;
}

// --- What it holds for, and who says so -------------------------------------------------------------------------------

void holds(Sheet& page, const QuoteSheet& sheet) {
  const Block text = block(page.left(), page.width(), 3.2);
  const std::string says = joined(sheet.holds);
  page.need(8.5 + page.height_of(says, text) + kSigned);  // The signatures stand with what they sign.
  page.rule(page.y, kWide);
  page.pen().text({page.left(), page.y + 6}, page.word(Word{"paper.quote_holds"}), {.size = 4.4, .bold = true});
  page.y += 7.5;
  write_below(page, says, text);
  page.y += 1;
}

/// A blank to write on, with what is to be written under it.
void blank(Sheet& page, const Word& what, double x, double width) {
  drawing::Pen pen = page.pen();
  pen.line({x, page.y + 11}, {x + width - 5, page.y + 11});
  const std::string says = page.word(what);
  pen.text({x, page.y + 15}, says,
           {.size = size_to_fit(page.measure(), says, {kText, true, width - 5}, 2), .bold = true});
}

void signed_by(Sheet& page) {
  const double each = page.width() / 3;
  blank(page, Word{"paper.quote_until"}, page.left(), each);
  blank(page, Word{"paper.quote_lead"}, page.left() + each, each);
  blank(page, Word{"paper.quote_customer"}, page.left() + 2 * each, each);
  page.y += kSigned;
}

}  // namespace

Pages quote_sheet(const QuoteSheet& sheet, const TextMeasure& measure) {
  const Voice& voice = sheet.head.voice;
  std::vector<Cell> cells;
  if (!sheet.hour_meter.empty()) cells.push_back({word("paper.hour_meter", voice), sheet.hour_meter});
  Sheet page{sheet.head, measure, word("paper.quote", voice), std::move(cells)};
  whose_row(page, sheet.machine, sheet.customer);
  price_frame(page, sheet);
  if (!sheet.complaint.empty()) write_below(page, sheet.complaint, block(page.left(), page.width(), 4));
  page.y += 1;
  Ways{page, sheet}.draw();
  made_of(page, sheet);
  holds(page, sheet);
  signed_by(page);
  return page.finish();
}

}  // namespace flatwise::paper
