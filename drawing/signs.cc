#include "drawing/signs.h"

#include <algorithm>
#include <cmath>

namespace flatwise::drawing {
namespace {

Ink ink_of(Answer answer) {
  if (answer == Answer::in) return Ink::in;
  return answer == Answer::out ? Ink::out : Ink::tell;
}

void half_disc(Pen pen, Point centre, double radius, Ink ink) {
  pen.circle(centre, radius, {.stroke = Stroke::wide, .fill = Fill::sheet, .ink = ink});
  pen.list().items.emplace_back(
      Arc{centre, radius, 0, 180, {.stroke = Stroke::none, .fill = Fill::ink, .ink = ink}, {}});
}

}  // namespace

void draw_answer(DisplayList& list, Answer answer, Point at, double height) {
  Pen pen{list};
  const double gap = 0.88 * height;
  const double radius = 0.21 * height;
  const double middle = at.y + height / 2;
  const Ink ink = ink_of(answer);
  const double right = at.x + gap;
  if (answer == Answer::cannot_tell)
    pen.line({right - 0.55 * height, middle}, {right + 0.55 * height, middle}, {.stroke = Stroke::wide, .ink = ink});
  for (const double x : {at.x, right}) pen.line({x, at.y}, {x, at.y + height}, {.stroke = Stroke::heavy, .ink = ink});
  const Look dot{.stroke = Stroke::none, .fill = Fill::ink, .ink = ink};
  if (answer == Answer::in) pen.circle({at.x + gap / 2, middle}, radius, dot);
  if (answer == Answer::out) pen.circle({right + 2.0 * radius, middle}, radius, dot);
  if (answer == Answer::cannot_tell) half_disc(pen, {right, middle}, radius, ink);
}

void draw_gauge_bar(DisplayList& list, const GaugeBar& bar, const Box& at) {
  Pen pen{list};
  const double room = (bar.greatest - bar.least) / 2;  // Shown beyond each limit.
  const double scale = at.width / (bar.greatest - bar.least + 2 * room);
  const double low = at.x + room * scale;
  const double high = at.x + at.width - room * scale;
  pen.box({at.x, at.y, low - at.x, at.height}, {.stroke = Stroke::narrow, .fill = Fill::cut});
  pen.box({high, at.y, at.x + at.width - high, at.height}, {.stroke = Stroke::narrow, .fill = Fill::cut});
  pen.box({low, at.y, high - low, at.height}, {.stroke = Stroke::narrow, .fill = Fill::sheet});
  for (const double x : {low, high}) pen.line({x, at.y - 1.2}, {x, at.y + at.height + 1.2}, kHeavy);
  const double below = at.y + at.height + 4.6;
  pen.text({low, below}, bar.least_words, {.size = 3, .anchor = Anchor::middle});
  pen.text({high, below}, bar.greatest_words, {.size = 3, .anchor = Anchor::middle});
  if (!bar.value) return;
  const double x = low + (*bar.value - bar.least) * scale;
  const double middle = at.y + at.height / 2;
  if (x < at.x || x > at.x + at.width) {
    const double edge = x < at.x ? at.x : at.x + at.width;
    const double way = x < at.x ? -1 : 1;
    pen.polygon({{edge + way * 2.4, middle}, {edge, middle - 1.2}, {edge, middle + 1.2}}, kBlack);
    return;
  }
  const double from = std::max(at.x, x - bar.expanded * scale);
  const double to = std::min(at.x + at.width, x + bar.expanded * scale);
  pen.box({from - 0.4, middle - 0.9, to - from + 0.8, 1.8}, kGround);
  pen.line({from, middle}, {to, middle}, kWide);
  pen.circle({x, middle}, 1.1, {.stroke = Stroke::narrow, .fill = Fill::ink, .ink = Ink::sheet});
}

void draw_caution(DisplayList& list, Point at, double side) {
  Pen pen{list};
  const double height = 0.87 * side;
  pen.polygon({{at.x + side / 2, at.y}, {at.x + side, at.y + height}, {at.x, at.y + height}},
              {.stroke = Stroke::heavy, .fill = Fill::sheet});
  const double x = at.x + side / 2;
  pen.polygon({{x - 0.055 * side, at.y + 0.34 * height},
               {x + 0.055 * side, at.y + 0.34 * height},
               {x + 0.03 * side, at.y + 0.68 * height},
               {x - 0.03 * side, at.y + 0.68 * height}},
              kBlack);
  pen.circle({x, at.y + 0.80 * height}, 0.05 * side, kBlack);
}

void draw_tick_box(DisplayList& list, Point at, double side, bool done) {
  Pen pen{list};
  pen.box({at.x, at.y, side, side}, kNarrow);
  if (done)
    pen.open_path({{at.x + 0.2 * side, at.y + 0.55 * side},
                   {at.x + 0.42 * side, at.y + 0.8 * side},
                   {at.x + 0.85 * side, at.y + 0.18 * side}},
                  kWide);
}

double draw_digit_boxes(DisplayList& list, Point at, const std::string& known, double known_width, int digits) {
  Pen pen{list};
  pen.text({at.x, at.y + 7.6}, known, {.size = 6.4});
  const double left = at.x + known_width + 0.6;
  for (int i = 0; i < digits; ++i) pen.box({left + i * kDigitPitch, at.y, kDigitWidth, kDigitHeight}, kNarrow);
  return known_width + 0.6 + digits * kDigitPitch;
}

void draw_end_arrow(DisplayList& list, const std::string& letter, const Box& at) {
  Pen pen{list};
  const double middle = at.y + at.height / 2;
  const double size = at.height;
  const bool left = letter != "B";
  pen.text({left ? at.x : at.x + at.width, middle + 0.36 * size}, letter,
           {.size = size, .bold = true, .anchor = left ? Anchor::start : Anchor::end});
  const double head = 0.8 * size;
  const double tip = left ? at.x + 0.92 * size : at.x + at.width - 0.92 * size;
  const double tail = left ? at.x + at.width : at.x;
  const double way = left ? 1 : -1;
  pen.polygon({{tip, middle}, {tip + way * head, middle - size / 2}, {tip + way * head, middle + size / 2}}, kBlack);
  pen.box({std::min(tip + way * head, tail), middle - 0.12 * size, std::abs(tail - tip - way * head), 0.24 * size},
          kBlack);
}

}  // namespace flatwise::drawing
