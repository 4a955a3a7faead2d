#include <cmath>
#include <numbers>

#include "drawing/pen.h"
#include "drawing/signs.h"
#include "paper/sheets.h"

namespace flatwise::paper {
namespace {

using drawing::Pen;
using drawing::Point;

constexpr double kWidth = 60, kHeight = 40, kPad = 4.5;
constexpr double kCode = 18;
constexpr double kBeside = kWidth - 2 * kPad - kCode - 3;  // What the code leaves.
constexpr int kAbreast = 3;

std::vector<Point> rounded(double width, double height, double radius) {
  std::vector<Point> points;
  const Point corners[] = {
      {width - radius, radius}, {width - radius, height - radius}, {radius, height - radius}, {radius, radius}};
  constexpr int kPieces = 6;
  for (int k = 0; k < 4; ++k) {
    for (int i = 0; i <= kPieces; ++i) {
      const double turn = (k + static_cast<double>(i) / kPieces) * std::numbers::pi / 2;
      points.push_back({corners[k].x + radius * std::sin(turn), corners[k].y - radius * std::cos(turn)});
    }
  }
  return points;
}

void draw_renew(Pen pen, const std::string& words, const TextMeasure& measure) {
  const drawing::Box box{kWidth - kPad - kCode, 25.7, kCode, 6.4};
  pen.box(box, {.stroke = drawing::Stroke::wide, .fill = drawing::Fill::renew});
  const double size = size_to_fit(measure, words, {3.2, true, kCode - 4}, 1.5);
  const double half = measure.width(words, size, true) / 2 + 0.9;
  const double middle = box.x + kCode / 2;
  pen.box({middle - half, box.y + 1.2, 2 * half, box.height - 2.4}, drawing::kGround);
  pen.text({middle, box.y + box.height / 2 + 0.36 * size}, words,
           {.size = size, .bold = true, .anchor = drawing::Anchor::middle});
}

// As large as it can be read: one line, or two where the words of a name are long.
void draw_name(Pen pen, const std::string& name, const TextMeasure& measure) {
  constexpr double kGreatest = 18;
  constexpr double kBase = 7.1 + 0.72 * kGreatest;
  constexpr double kTwoLines = 9.4;
  const double size = size_to_fit(measure, name, {kGreatest, true, kBeside}, 3);
  const std::size_t space = name.find(' ');
  if (size >= kTwoLines || space == std::string::npos) {
    pen.text({kPad, kBase}, name, {.size = size, .bold = true});
    return;
  }
  double base = kBase - 10;
  for (const std::string& line : {name.substr(0, space), name.substr(space + 1)}) {
    pen.text({kPad, base}, line, {.size = size_to_fit(measure, line, {kTwoLines, true, kBeside}, 3), .bold = true});
    base += 10;
  }
}

// Whose part it is: one line, two where names are long, smaller only then.
void draw_whose(Pen pen, const Head& head, const TextMeasure& measure) {
  const Code code = head.invented ? Code{"paper.label_invented"} : Code{"paper.label_whose"};
  const std::string words =
      say(code.id(), {{"shaft", head.shaft}, {"job", head.job}, {"workshop", head.workshop}}, head.voice);
  const Setting one_line{2.5, false, kWidth - 2 * kPad};
  double size = size_to_fit(measure, words, one_line, 0.5);
  if (size >= 1.9) {
    pen.text({kPad, 37.2}, words, {.size = size});
    return;
  }
  size = 2.5;
  std::vector<std::string> lines;
  do {
    lines = break_lines(measure, words, {size, false, kWidth - 2 * kPad});
    size -= 0.1;
  } while (lines.size() > 2 && size > 0.8);
  size += 0.1;
  double base = 38.2 - 1.15 * size * static_cast<double>(lines.size() - 1);
  for (const std::string& line : lines) {
    pen.text({kPad, base}, line, {.size = size});
    base += 1.15 * size;
  }
}

drawing::DisplayList draw(const Label& label, const Head& head, const TextMeasure& measure) {
  drawing::DisplayList list;
  list.width = kWidth;
  list.height = kHeight;
  list.items.emplace_back(drawing::Code{{kWidth - kPad - kCode, kPad}, kCode, code_text(head, "part", label.code)});
  Pen pen{list};
  pen.polygon(rounded(kWidth, kHeight, 1.6), drawing::kNarrow);
  draw_name(pen, label.name, measure);
  const auto line = [&](double base, const std::string& text, Setting setting) {
    const double fit = size_to_fit(measure, text, setting, 1.2);
    pen.text({kPad, base}, text, {.size = fit, .bold = setting.bold});
  };
  line(26.9, label.what, {4, true, kBeside});
  line(31.4, label.where, {3.2, false, kBeside});
  draw_whose(pen, head, measure);
  if (label.renew)
    draw_renew(pen, word("paper.renew", head.voice), measure);
  else
    drawing::draw_end_arrow(list, label.end == End::a ? "A" : "B", {kWidth - kPad - kCode, 26.6, kCode, 5});
  return list;
}

}  // namespace

Pages label_sheet(const LabelSheet& sheet, const TextMeasure& measure) {
  const PaperSize size = size_of(sheet.head.paper);
  const double gap_x = (size.width - 2 * kMargin - kAbreast * kWidth) / (kAbreast - 1);
  constexpr double kGapY = 2.4;
  const int rows = static_cast<int>((size.height - 2 * kMargin + kGapY) / (kHeight + kGapY));
  Pages pages;
  for (std::size_t i = 0; i < sheet.labels.size(); ++i) {
    const auto on_page = i % static_cast<std::size_t>(rows * kAbreast);
    if (on_page == 0) pages.push_back({size.width, size.height, {}});
    const auto column = static_cast<double>(on_page % kAbreast);
    const auto row = static_cast<double>(on_page / kAbreast);
    append(pages.back(), draw(sheet.labels[i], sheet.head, measure),
           {kMargin + column * (kWidth + gap_x), kMargin + row * (kHeight + kGapY)});
  }
  return pages;
}

}  // namespace flatwise::paper
