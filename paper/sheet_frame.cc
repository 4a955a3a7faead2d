#include "paper/sheet_frame.h"

#include <algorithm>
#include <numeric>

namespace flatwise::paper {
namespace {

constexpr double kCaption = 2.6;
constexpr double kValue = 4;
constexpr double kCellPad = 1.5;

}  // namespace

PaperSize size_of(Paper paper) { return paper == Paper::a4 ? PaperSize{210, 297} : PaperSize{215.9, 279.4}; }

std::string code_text(const Head& head, const std::string& key, const std::string& value) {
  const auto plain = [](std::string text) {
    for (char& c : text)
      if (c == ';' || c == '=' || static_cast<unsigned char>(c) < 0x21) c = '_';
    return text;
  };
  return "flatwise:job=" + plain(head.job) + ";" + plain(key) + "=" + plain(value);
}

Sheet::Sheet(const Head& head, const TextMeasure& measure, std::string title, std::vector<Cell> cells)
    : head_{head},
      measure_{&measure},
      title_{std::move(title)},
      cells_{std::move(cells)},
      size_{paper::size_of(head.paper)} {
  cells_.insert(cells_.begin(), {{word(Word{"paper.shaft"}), head.shaft},
                                 {word(Word{"paper.job"}), head.job},
                                 {word(Word{"paper.workshop"}), head.workshop}});
  std::erase_if(cells_,
                [](const Cell& cell) { return cell.value.empty(); });  // A caption over nothing asks to be filled in.
  pages_.push_back({size_.width, size_.height, {}});
  title_block(true);
}

void Sheet::next_page() {
  pages_.push_back({size_.width, size_.height, {}});
  title_block(false);
}

bool Sheet::need(double height) {
  if (room() >= height) return false;
  next_page();
  return true;
}

void Sheet::rule(double at, drawing::Look look) { pen().line({left(), at}, {right(), at}, look); }

double Sheet::height_of(const std::string& text, const Block& block) const {
  const auto lines = break_lines(*measure_, text, {block.type.size, block.type.bold, block.width});
  return static_cast<double>(lines.size()) * block.leading * block.type.size;
}

double Sheet::write(const std::string& text, const Block& block, double top) {
  const auto lines = break_lines(*measure_, text, {block.type.size, block.type.bold, block.width});
  double base = top + block.type.size;
  for (const std::string& line : lines) {
    pen().text({block.x, base}, line, block.type);
    base += block.leading * block.type.size;
  }
  return static_cast<double>(lines.size()) * block.leading * block.type.size;
}

// As wide as their words; what is left over is shared out, what is too much is taken from the widest.
std::vector<double> Sheet::cell_widths(double value_size) const {
  std::vector<double> widths;
  for (const Cell& cell : cells_)
    widths.push_back(2 * kCellPad + std::max(measure_->width(cell.caption, kCaption, false),
                                             measure_->width(cell.value, value_size, true)));
  double total = std::accumulate(widths.begin(), widths.end(), 0.0);
  for (int i = 0; i < 64 && total > width() + 1e-9; ++i) {
    const auto widest = std::max_element(widths.begin(), widths.end());
    const double less = std::min(total - width(), *widest * 0.1);
    *widest -= less;
    total -= less;
  }
  if (total < width())
    for (double& w : widths) w += (width() - total) / static_cast<double>(widths.size());
  return widths;
}

void Sheet::title_block(bool first) {
  drawing::Pen p = pen();
  const std::string paper = say({Code{"paper.black"}, {{"paper", head_.paper == Paper::a4 ? "A4" : "Letter"}}});
  const double note = measure_->width(paper, 3.4, false);
  const double size = size_to_fit(*measure_, title_, {first ? 7.0 : 5.0, true, width() - note - 6}, 3.5);
  p.text({left(), first ? 18.0 : 17.0}, title_, {.size = size, .bold = true});
  p.text({right(), first ? 18.0 : 17.0}, paper, {.size = 3.4, .anchor = drawing::Anchor::end});
  const double top = first ? 21.5 : 19.5;
  rule(top, drawing::kHeavy);
  const double value_size = first ? kValue : 3.4;
  const auto widths = cell_widths(value_size);
  double x = left();
  double lowest = 0;
  for (std::size_t i = 0; i < cells_.size(); ++i) {
    const double text_x = i == 0 ? x : x + kCellPad;
    p.text({text_x, top + 4.1}, cells_[i].caption, {.size = kCaption});
    const Block block{.x = text_x,
                      .width = widths[i] - kCellPad - (i == 0 ? 0 : kCellPad) + 1e-6,
                      .type = {.size = value_size, .bold = true},
                      .leading = 1.15};
    lowest = std::max(lowest, write(cells_[i].value, block, top + 4.9));
    x += widths[i];
  }
  const double below = top + 4.9 + lowest + 1.4;
  x = left();
  for (std::size_t i = 1; i < cells_.size(); ++i) {
    x += widths[i - 1];
    p.line({x, top + 1.3}, {x, below - 1.2});
  }
  rule(below);
  y = below + 2;
}

void Sheet::code(const std::string& text, double top) {
  pages_.back().items.emplace_back(drawing::Code{{right() - kCodeSide, top}, kCodeSide, text});
  const std::string caption = word(Word{"paper.scan"});
  const double size = size_to_fit(*measure_, caption, {2.8, false, kCodeSide}, 1.5);
  pen().text({right() - kCodeSide / 2, top + kCodeSide + 3.3 + size}, caption,
             {.size = size, .anchor = drawing::Anchor::middle});
}

void Sheet::signatures() {
  drawing::Pen p = pen();
  const double base = y + 7;
  double x = left();
  const double each = width() / 2;
  for (const Word& id : {Word{"paper.bench"}, Word{"paper.second_look"}}) {
    const std::string name = word(id);
    p.text({x, base}, name, {.size = 3.6, .bold = true});
    p.line({x + measure_->width(name, 3.6, true) + 2, base + 0.8}, {x + each - 6, base + 0.8});
    x += each;
  }
  y = base + 3;
}

void Sheet::foot(std::size_t page, Count of) {
  drawing::Pen p{pages_[page]};
  const double top = size_.height - 20.5;
  p.line({left(), top}, {right(), top});
  const std::string count = std::to_string(of.before + page + 1) + " / " + std::to_string(of.total);
  p.text({right(), top + 4}, count, {.size = 3, .anchor = drawing::Anchor::end});
  const std::string printed = head_.printed.empty()
                                  ? say({Code{"paper.printed_from"}, {{"from", head_.from}}})
                                  : say({Code{"paper.printed"}, {{"when", head_.printed}, {"from", head_.from}}});
  const double room = width() - measure_->width(count, 3, false) - 6;
  p.text({left(), top + 4}, printed, {.size = size_to_fit(*measure_, printed, {3, false, room}, 1.2)});
  if (head_.invented) p.text({left(), top + 8}, word(Word{"paper.invented"}), {.size = 3});
}

Pages Sheet::finish(Count count) {
  for (std::size_t i = 0; i < pages_.size(); ++i) foot(i, count);
  return std::move(pages_);
}

}  // namespace flatwise::paper
