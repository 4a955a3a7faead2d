#include "drawing/bars.h"

#include <algorithm>
#include <cmath>

#include "drawing/pen.h"
#include "drawing/plot_labels.h"

namespace flatwise::drawing {
namespace {

constexpr double kText = 4, kBarHeight = 11, kOver = 1.4, kTop = 1.8, kDot = 1.7;
constexpr Look kHatch{.stroke = Stroke::none, .fill = Fill::cut};

Ink ink_of(Answer answer) {
  if (answer == Answer::in) return Ink::in;
  return answer == Answer::out ? Ink::out : Ink::tell;
}

/// What of the line of numbers is drawn, and where on the page.
struct Scale {
  double from = 0, to = 1;
  double left = 0, width = 1;
  [[nodiscard]] double x(double value) const { return left + (value - from) / (to - from) * width; }
  [[nodiscard]] bool shows(double value) const { return value >= from && value <= to; }
};

struct Reading {
  double value = 0, expanded = 0;
  Answer answer = Answer::cannot_tell;
};

void draw_dot(Pen pen, Point at, Answer answer) {
  const Ink ink = ink_of(answer);
  if (answer != Answer::cannot_tell)
    return pen.circle(at, kDot, {.stroke = Stroke::none, .fill = Fill::ink, .ink = ink}, "reading");
  pen.circle(at, kDot, {.stroke = Stroke::wide, .fill = Fill::sheet, .ink = ink}, "reading");
  pen.list().items.emplace_back(Arc{at, kDot, 0, 180, {.stroke = Stroke::none, .fill = Fill::ink, .ink = ink}, {}});
}

void draw_beyond(Pen pen, const Scale& scale, double middle, const Reading& reading) {
  const bool low = reading.value < scale.from;
  const double edge = low ? scale.left : scale.left + scale.width;
  const double back = low ? 1 : -1;
  pen.polygon({{edge, middle}, {edge + back * 3.2, middle - 1.8}, {edge + back * 3.2, middle + 1.8}},
              {.stroke = Stroke::none, .fill = Fill::ink, .ink = ink_of(reading.answer)}, "reading");
}

/// The reading with its whisker; an arrow at the edge when it lies beyond what is drawn.
void draw_reading(Pen pen, const Scale& scale, double middle, const Reading& reading) {
  if (!scale.shows(reading.value)) return draw_beyond(pen, scale, middle, reading);
  const Look line{.stroke = Stroke::wide, .ink = ink_of(reading.answer)};
  const double low = std::max(scale.from, reading.value - reading.expanded);
  const double high = std::min(scale.to, reading.value + reading.expanded);
  pen.open_path({{scale.x(low), middle}, {scale.x(high), middle}}, line, "whisker");
  // A whisker that runs on beyond the drawing has no end there.
  for (const double end : {reading.value - reading.expanded, reading.value + reading.expanded})
    if (reading.expanded > 0 && scale.shows(end))
      pen.line({scale.x(end), middle - 2.2}, {scale.x(end), middle + 2.2}, line);
  draw_dot(pen, {scale.x(reading.value), middle}, reading.answer);
}

void draw_limit(Pen pen, double x, const std::string& id) {
  pen.open_path({{x, kTop - kOver}, {x, kTop + kBarHeight + kOver}}, kHeavy, id);
}

Scale scale_of(const AnswerBar& bar, double width) {
  Scale scale{.left = 0, .width = width};
  const double low = bar.least.value_or(0);
  const double high = bar.greatest.value_or(bar.least.value_or(1) * 2);
  const double tolerance = high - low;
  const auto reach = [&](double over) { return std::clamp(over, 0.5 * tolerance, 1.5 * tolerance); };
  double over = 0, under = 0;
  for (const auto& [value, u] : {std::pair{bar.value, bar.expanded}, std::pair{bar.before, 0.0}}) {
    if (!value) continue;
    over = std::max(over, 1.1 * (*value + u - high));
    under = std::max(under, 1.1 * (low - *value + u));
  }
  scale.from = bar.least ? low - reach(under) : low;
  scale.to = high + reach(over);
  return scale;
}

/// A figure under a limit, kept on the drawing.
void limit_words(Pen pen, double x, const std::string& words, double width) {
  const double half = 0.26 * kText * static_cast<double>(words.size());
  const double middle = half * 2 >= width ? width / 2 : std::clamp(x, half, width - half);
  pen.text({middle, kTop + kBarHeight + kOver + kText + 0.6}, words, {.size = kText, .anchor = Anchor::middle});
}

void hatch(Pen pen, double from, double to) {
  if (to > from) pen.box({from, kTop, to - from, kBarHeight}, kHatch);
}

DisplayList sheet(double width, double height) {
  DisplayList list;
  list.width = width;
  list.height = height;
  return list;
}

}  // namespace

DisplayList answer_bar(const AnswerBar& bar, double width) {
  DisplayList list = sheet(width, kTop + kBarHeight + kOver + kText + 2.2);
  Pen pen{list};
  const Scale scale = scale_of(bar, width);
  const double middle = kTop + kBarHeight / 2;
  if (bar.least) hatch(pen, 0, scale.x(*bar.least));
  if (bar.greatest) hatch(pen, scale.x(*bar.greatest), width);
  if (!bar.least) pen.line({0, middle}, {scale.x(bar.greatest.value_or(scale.to)), middle});
  if (bar.least) draw_limit(pen, scale.x(*bar.least), "limit-least");
  if (bar.greatest) draw_limit(pen, scale.x(*bar.greatest), "limit-greatest");
  if (bar.least) limit_words(pen, scale.x(*bar.least), bar.least_words, width);
  if (bar.greatest) limit_words(pen, scale.x(*bar.greatest), bar.greatest_words, width);
  if (bar.before && scale.shows(*bar.before))
    pen.circle({scale.x(*bar.before), middle}, kDot, {.stroke = Stroke::wide, .fill = Fill::sheet}, "before");
  if (bar.value) draw_reading(pen, scale, middle, {*bar.value, bar.expanded, bar.answer});
  return list;
}

namespace {
/// With a space behind it, as a telephone sets it: there no words are smaller than 14 px.
double name_width(const std::string& words) { return 1.15 * words_width(words, kText) + kText; }
}  // namespace

DisplayList length_scale(const LengthScale& s, double width) {
  DisplayList list = sheet(width, kTop + kBarHeight + kOver + 4 * (kText + 1) + 1);
  Pen pen{list};
  const double band = s.greatest - s.least;
  const double low = s.value ? std::max(s.least - 4 * band, *s.value - 1.1 * s.expanded) : s.least;
  const double high = s.value ? std::min(s.one_open + 4 * band, *s.value + 1.1 * s.expanded) : s.one_open;
  const Scale scale{.from = std::min(s.least - 0.8 * band, low),
                    .to = std::max(s.one_open + 0.8 * band, high),
                    .left = 0,
                    .width = width};
  const double middle = kTop + kBarHeight / 2;
  const double a = scale.x(s.least), b = scale.x(s.greatest), open = scale.x(s.open_from);
  hatch(pen, 0, a);
  pen.box({a, kTop, b - a, kBarHeight}, {.stroke = Stroke::none, .fill = Fill::tone});
  hatch(pen, open, width);
  draw_limit(pen, a, "limit-least");
  draw_limit(pen, b, "limit-greatest");
  draw_limit(pen, open, "open-from");
  const double whole = scale.x(s.one_open);
  pen.open_path({{whole, kTop}, {whole, kTop + kBarHeight}}, kAxis, "one-open");
  if (s.value) draw_reading(pen, scale, middle, {*s.value, s.expanded, s.answer});
  const double row = kTop + kBarHeight + kOver + kText + 0.6;
  pen.text({a, row}, s.least_words, {.size = kText, .anchor = Anchor::middle});
  pen.text({b, row + kText + 1}, s.greatest_words, {.size = kText, .anchor = Anchor::middle});
  pen.text({open, row}, s.open_words, {.size = kText, .anchor = Anchor::start});
  const double names = row + 2 * (kText + 1);
  pen.text({0, names}, s.contradiction, {.size = kText, .bold = true});
  pen.text({width, names}, s.one_joint, {.size = kText, .bold = true, .anchor = Anchor::end});
  // The middle range is the narrowest: its name goes a line lower where the others leave it no room.
  const double half = name_width(s.seated) / 2, at = (a + b) / 2;
  const bool fits = at - half > name_width(s.contradiction) && at + half < width - name_width(s.one_joint);
  pen.text({at, fits ? names : names + kText + 1}, s.seated, {.size = kText, .bold = true, .anchor = Anchor::middle});
  return list;
}

DisplayList chance_bars(const ChanceBars& bars, double width) {
  constexpr double kHeight = 22, kBar = 2.4;
  DisplayList list = sheet(width, kText + 1.5 + kHeight + kText + 2.5);
  Pen pen{list};
  const Scale scale{.from = bars.from, .to = bars.to, .left = kText, .width = width - 2 * kText};
  const double foot = kText + 1.5 + kHeight;
  double most = 0;
  for (const JointChance& j : bars.joints) most = std::max(most, j.chance);
  pen.line({0, foot}, {width, foot}, kWide);
  for (const JointChance& j : bars.joints) {
    const double height = most > 0 ? kHeight * j.chance / most : 0;
    const double x = scale.x(j.at);
    const Look look{.stroke = Stroke::none, .fill = j.first ? Fill::next : Fill::solid};
    pen.box({x - kBar / 2, foot - height, kBar, height}, look, "joint-" + std::to_string(j.joint));
    pen.text({x, foot - height - 1}, j.words,
             {.size = kText, .bold = true, .anchor = Anchor::middle, .ink = j.first ? Ink::next : Ink::ink});
  }
  for (const NamedPlace& place : bars.names)
    pen.text({scale.x(place.at), foot + kText + 1}, place.name,
             {.size = kText, .bold = true, .anchor = Anchor::middle});
  return list;
}

namespace {

/// A line across one row, on a ground of its own so that it is seen on the bar too.
void draw_good(Pen pen, double x, double middle, const std::string& id) {
  constexpr double kHalf = 2.6;
  pen.box({x - 0.7, middle - kHalf, 1.4, 2 * kHalf}, kGround);
  pen.open_path({{x, middle - kHalf}, {x, middle + kHalf}}, kWide, id);
}

}  // namespace

DisplayList run_bars(const RunBars& bars, double width) {
  constexpr double kRow = 6.5, kBar = 2.6, kName = 0.24, kWords = 0.24;
  DisplayList list = sheet(width, kRow * static_cast<double>(bars.rows.size()) + kText + 3);
  Pen pen{list};
  double most = bars.limit.value_or(0);
  for (const RunRow& row : bars.rows) most = std::max({most, row.value, row.good.value_or(0)});
  const Scale scale{
      .from = 0, .to = most > 0 ? 1.25 * most : 1, .left = kName * width, .width = (1 - kName - kWords) * width};
  const double foot = kRow * static_cast<double>(bars.rows.size());
  if (bars.limit) {
    const double x = scale.x(*bars.limit);
    pen.box({x, 0, scale.left + scale.width - x, foot}, kHatch);
    pen.open_path({{x, 0}, {x, foot + 1}}, kHeavy, "limit-greatest");
    pen.text({x, foot + kText + 1.4}, bars.limit_words, {.size = kText, .anchor = Anchor::middle});
  }
  double y = kRow / 2;
  for (const RunRow& row : bars.rows) {
    const double length = std::max(0.0, scale.x(row.value) - scale.left);
    pen.text({0, y + 0.36 * kText}, row.name, {.size = kText, .bold = true});
    pen.box({scale.left, y - kBar / 2, length, kBar}, {.stroke = Stroke::none, .fill = Fill::solid}, row.id);
    pen.text({width, y + 0.36 * kText}, row.words, {.size = kText, .anchor = Anchor::end});
    if (row.good) draw_good(pen, scale.x(*row.good), y, row.id + "-good");
    y += kRow;
  }
  return list;
}

DisplayList band_bar(const BandBar& bar, double width) {
  constexpr double kMiddle = 4, kHalf = 1.6;
  DisplayList list = sheet(width, kMiddle + 3 + kText + 2);
  Pen pen{list};
  const double end = std::max(bar.end, bar.greatest);
  const Scale scale{.from = 0, .to = end, .left = 0.3, .width = width - 0.6};
  pen.line({scale.x(0), kMiddle}, {scale.x(end), kMiddle});
  for (const double tick : {0.0, 0.25, 0.5, 0.75, 1.0})
    pen.line({scale.x(tick * bar.end), kMiddle - 1.6}, {scale.x(tick * bar.end), kMiddle + 1.6});
  pen.box({scale.x(bar.least), kMiddle - kHalf, scale.x(bar.greatest) - scale.x(bar.least), 2 * kHalf},
          {.stroke = Stroke::none, .fill = Fill::ink}, "band");
  const double notch = scale.x((bar.least + bar.greatest) / 2);
  pen.box({notch - 0.9, kMiddle - kHalf, 1.8, 2 * kHalf}, kGround);
  pen.open_path({{notch, kMiddle - 3}, {notch, kMiddle + 3}}, kHeavy, "notch");
  pen.text({0, kMiddle + 3 + kText}, "0", {.size = kText});
  pen.text({width, kMiddle + 3 + kText}, bar.end_words, {.size = kText, .anchor = Anchor::end});
  return list;
}

}  // namespace flatwise::drawing
