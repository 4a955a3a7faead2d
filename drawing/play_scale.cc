#include "drawing/play_scale.h"

#include <algorithm>
#include <cmath>

#include "drawing/pen.h"
#include "drawing/station_shapes.h"

namespace flatwise::drawing {
namespace {

constexpr double kText = 4, kTop = 7.5, kBar = 10, kTick = 1.6;
constexpr double kAgeText = 3.6, kAgeLetter = 0.55 * kAgeText;

double text_x(double x, const std::string& words, double width) {
  const double half = 0.28 * kText * static_cast<double>(words.size());
  return 2 * half >= width ? width / 2 : std::clamp(x, half, width - half);
}

void draw_value(Pen pen, const PlayScale& scale, double width) {
  const double middle = kTop + kBar / 2;
  const Look line{.stroke = Stroke::wide, .ink = Ink::next};
  const auto x = [&](double value) { return std::clamp(value / scale.end, 0.0, 1.0) * width; };
  if (*scale.value > scale.end) {
    pen.polygon({{width, middle}, {width - 3.2, middle - 1.8}, {width - 3.2, middle + 1.8}},
                {.stroke = Stroke::none, .fill = Fill::next}, "reading");
    return;
  }
  const double low = x(*scale.value - scale.expanded);
  const double high = x(*scale.value + scale.expanded);
  pen.open_path({{low, middle}, {high, middle}}, line, "whisker");
  for (const double end : {low, high})
    if (scale.expanded > 0) pen.line({end, middle - 2.2}, {end, middle + 2.2}, line);
  pen.circle({x(*scale.value), middle}, 1.7, {.stroke = Stroke::none, .fill = Fill::next}, "reading");
}

/// Everything about the picture of measuring, in millimetres of the part, from the axis and the middle of the hub.
struct Measure {
  Pen pen;
  double scale = 1, x0 = 0, y0 = 0;
  [[nodiscard]] Point at(double along, double up) const { return {x0 + along * scale, y0 - up * scale}; }
};

void hand(Pen pen, Point at, const std::string& number) {
  const double r = 3.4;
  pen.circle(at, r, {.stroke = Stroke::wide, .fill = Fill::sheet}, "hand-" + number);
  pen.text({at.x, at.y + 1.5}, number, {.size = 4.2, .bold = true, .anchor = Anchor::middle}, "hand-" + number);
}

void arrow_head(Pen pen, Point tip, double way) {
  pen.polygon({tip, {tip.x - way * 3.2, tip.y - 1.7}, {tip.x - way * 3.2, tip.y + 1.7}},
              {.stroke = Stroke::none, .fill = Fill::next});
}

void dial(Pen pen, Point centre) {
  const double r = 5.2;
  pen.circle(centre, r, {.stroke = Stroke::wide, .fill = Fill::sheet});
  for (int i = 0; i < 12; ++i) {
    const double a = i * 0.5235987755982988;
    pen.line({centre.x + 0.78 * r * std::sin(a), centre.y - 0.78 * r * std::cos(a)},
             {centre.x + r * std::sin(a), centre.y - r * std::cos(a)});
  }
  pen.line(centre, {centre.x + 0.5 * r, centre.y - 0.45 * r}, kWide);
  pen.circle(centre, 0.7, kBlack);
}

/// The dial stands on the shaft and touches the tine at its radius, which is drawn beside it: without it a reading is worth nothing.
void draw_dial(Measure& m, double tine, double dial_at, double side, double beside) {
  Pen& pen = m.pen;
  const Point touch = m.at(0.25 * tine, dial_at);
  const Point face{touch.x + 14, touch.y};
  pen.line(touch, face, kWide);
  pen.line(face, {face.x, m.at(0, side).y - 1.8}, kWide);
  pen.box({face.x - 3, m.at(0, side).y - 2.6, 6, 2.6}, kBlack);
  dial(pen, face);
  const double left = m.at(beside, 0).x;
  pen.line({left, m.at(0, 0).y}, {left, touch.y}, kNarrow);
  pen.line({left - 1.6, touch.y}, {touch.x, touch.y}, kNarrow);
}

/// Where the ages stand on the page.
struct AgeScale {
  double top = 0, bottom = 1, from = 0, to = 1, left = 0, right = 1;
  [[nodiscard]] double y(double hours) const {
    return top + (std::clamp(hours, from, to) - from) / (to - from) * (bottom - top);
  }
};

double nice_step(double span) {
  for (double step = 100;; step *= 10)
    for (const double share : {1.0, 2.0, 5.0})
      if (span / (step * share) <= 6) return step * share;
}

void draw_age_grid(Pen pen, const AgeScale& scale, const Ages& is) {
  pen.box({scale.left, scale.top, scale.right - scale.left, scale.bottom - scale.top},
          {.stroke = Stroke::narrow, .fill = Fill::sheet});
  const double step = nice_step(scale.to - scale.from);
  for (double h = std::ceil(scale.from / step) * step; h < scale.to; h += step) {
    const double y = scale.y(h);
    pen.line({scale.left, y}, {scale.right, y}, {.stroke = Stroke::narrow, .ink = Ink::second});
    if (scale.bottom - y < 3 && h > scale.from) continue;
    pen.text({scale.left - 1.2, y + 1.3}, std::to_string(static_cast<long long>(h)),
             {.size = 3.4, .anchor = Anchor::end, .ink = Ink::second});
  }
  pen.text({scale.left - 1.2, scale.top - 1.4}, is.hours_words,
           {.size = 3.4, .anchor = Anchor::end, .ink = Ink::second});
}

void draw_age_bar(Pen pen, const AgeScale& scale, const BearingBar& bar, double x, double half, bool watch) {
  const std::string id = "rotor-" + std::to_string(bar.rotor);
  const double from = scale.y(bar.from_hours);
  const bool renewed = bar.from_hours > scale.from;
  const double tab = renewed ? 2.0 : 0.0;
  if (renewed) {
    pen.box({x - half - 1.2, from, 2 * half + 2.4, tab}, {.stroke = Stroke::narrow, .fill = Fill::sheet}, id);
    pen.box({x - half - 1.2, from, 2 * half + 2.4, tab}, {.stroke = Stroke::none, .fill = Fill::renew}, id);
  }
  if (!bar.to_hours) {
    const double height = std::max(0.0, scale.bottom - from - tab);
    pen.box({x - half, from + tab, 2 * half, height},
            {.stroke = Stroke::none, .fill = watch ? Fill::next : Fill::solid}, id);
    return;
  }
  const double to = std::max(from + tab, scale.y(*bar.to_hours) - 2.4);
  pen.box({x - half, from + tab, 2 * half, to - from - tab}, {.stroke = Stroke::narrow, .fill = Fill::sheet}, id);
  if (!bar.failed) return pen.circle({x, to}, 1.6, {.stroke = Stroke::wide, .fill = Fill::sheet}, id);
  const Look cross{.stroke = Stroke::wide, .ink = Ink::out};
  pen.open_path({{x - 1.7, to - 1.7}, {x + 1.7, to + 1.7}}, cross, id);
  pen.open_path({{x - 1.7, to + 1.7}, {x + 1.7, to - 1.7}}, cross, id);
}

// Lines that lie close share the height of a word: words go down from the latest, each left of the one it would touch.
void draw_job_lines(Pen& pen, const AgeScale& scale, const Ages& is) {
  double x = scale.right - 1.5;
  double before = scale.bottom;  // 'now' stands there.
  double width = kAgeLetter * static_cast<double>(is.now_words.size()) + 3;
  std::vector<JobLine> jobs = is.jobs;
  std::ranges::stable_sort(jobs, std::ranges::greater{}, &JobLine::hours);
  for (const JobLine& job : jobs)
    pen.open_path({{scale.left, scale.y(job.hours)}, {scale.right, scale.y(job.hours)}}, kWide, "job-" + job.id);
  for (const JobLine& job : jobs) {
    const double y = scale.y(job.hours);
    x = before - y < kAgeText * 1.3 ? x - width : scale.right - 1.5;
    // A line that passes behind the words stops at them.
    const double words = kAgeLetter * static_cast<double>(job.words.size());
    pen.box({x - words - 0.6, y - 0.9 * kAgeText - 1, words + 1.2, 0.9 * kAgeText},
            {.stroke = Stroke::none, .fill = Fill::sheet});
    pen.text({x, y - 1.2}, job.words, {.size = kAgeText, .bold = true, .anchor = Anchor::end}, "job-" + job.id);
    before = y;
    width = kAgeLetter * static_cast<double>(job.words.size()) + 3;
  }
}

}  // namespace

DisplayList play_scale(const PlayScale& scale, double width) {
  DisplayList list;
  list.width = width;
  list.height = kTop + kBar + kTick + kText + 2;
  Pen pen{list};
  const auto x = [&](double value) { return std::clamp(value / scale.end, 0.0, 1.0) * width; };
  const double bottom = kTop + kBar;
  if (scale.new_least && scale.new_greatest) {
    const Box band{x(*scale.new_least), kTop, x(*scale.new_greatest) - x(*scale.new_least), kBar};
    pen.box(band, {.stroke = Stroke::none, .fill = Fill::tone}, "new");
    for (const double edge : {band.x, band.x + band.width}) pen.line({edge, kTop}, {edge, bottom}, kHidden);
    pen.text({text_x(band.x + band.width / 2, scale.new_words, width), kTop + kBar / 2 + 1.4}, scale.new_words,
             {.size = kText, .bold = true, .anchor = Anchor::middle}, "new");
  }
  pen.line({0, kTop}, {width, kTop});
  pen.line({0, bottom}, {width, bottom});
  for (const ScaleTick& tick : scale.above) {
    pen.line({x(tick.at), kTop - kTick}, {x(tick.at), kTop});
    pen.text({text_x(x(tick.at), tick.words, width), kTop - kTick - 0.8}, tick.words,
             {.size = kText, .anchor = Anchor::middle});
  }
  for (const ScaleTick& tick : scale.below) {
    pen.line({x(tick.at), bottom}, {x(tick.at), bottom + kTick});
    pen.text({text_x(x(tick.at), tick.words, width), bottom + kTick + kText}, tick.words,
             {.size = kText, .anchor = Anchor::middle});
  }
  if (!scale.value) return list;
  draw_value(pen, scale, width);
  pen.text({text_x(x(*scale.value), scale.value_words, width), kTop - kTick - 0.8}, scale.value_words,
           {.size = kText, .bold = true, .anchor = Anchor::middle, .ink = Ink::next});
  return list;
}

DisplayList play_measure(const Shaft& shaft, int rotor, Length dial_radius, double width) {
  const Station& station = shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(rotor))];
  const Rotor& r = shaft.rotor(rotor);
  const double hub = hub_radius_mm(station, r);
  const double length = station.length.nominal.si() * 1e3;
  const double dial_at = dial_radius.si() * 1e3;
  const double reach = std::min(r.tip_radius.si() * 1e3, std::max(dial_at * 1.25, hub * 1.5));
  const double side = shaft.spec().profile.across_flats.si() * 500;
  DisplayList list;
  list.width = width;
  const double scale = std::min(0.42, 52.0 / (reach + hub * 1.4));
  list.height = 8 + (reach + hub * 1.4) * scale + 12;
  Measure m{Pen{list}, scale, width * 0.44, 8 + reach * scale};
  Pen& pen = m.pen;
  const double half = length / 2;
  pen.box({m.at(-2.2 * length, side).x, m.at(0, side).y, 4.4 * length * scale, 2 * side * scale},
          {.stroke = Stroke::narrow, .fill = Fill::solid, .ink = Ink::sheet});
  pen.line(m.at(-2.5 * length, 0), m.at(2.5 * length, 0), kAxis);
  // The tine, the hub, and the sling that carries them on the A side.
  const double tine = std::max(10.0, r.tine_width.si() * 500);
  pen.polygon({m.at(-0.25 * tine, hub), m.at(-0.25 * tine, reach), m.at(0.25 * tine, reach), m.at(0.25 * tine, hub)},
              {.stroke = Stroke::wide, .fill = Fill::sheet});
  pen.polygon({m.at(-kHubShare * half, -hub), m.at(-kHubShare * half, hub), m.at(kHubShare * half, hub),
               m.at(kHubShare * half, -hub)},
              {.stroke = Stroke::wide, .fill = Fill::sheet});
  const Point sling = m.at(-half * 1.25, -hub * 1.05);
  pen.box({sling.x - 0.9, m.at(0, reach).y, 1.8, sling.y - m.at(0, reach).y}, kBlack);
  draw_dial(m, tine, dial_at, side, -2.0 * length);
  const double low = m.at(0, -hub * 1.25).y;
  pen.line({m.x0 - 14, low}, {m.x0 + 14, low}, {.stroke = Stroke::wide, .ink = Ink::next});
  arrow_head(pen, {m.x0 + 17, low}, 1);
  arrow_head(pen, {m.x0 - 17, low}, -1);
  hand(pen, {sling.x - 5.5, m.at(0, reach).y + 3.6}, "1");
  hand(pen, {m.at(0.25 * tine, dial_at).x + 24, m.at(0, dial_at).y}, "2");
  hand(pen, {m.x0 - 22.5, low}, "3");
  return list;
}

AgesDrawing ages(const Shaft& shaft, const Ages& is, double width, double height) {
  AgesDrawing out;
  std::vector<StationState> states(shaft.stations().size());
  for (const int rotor : is.watch)
    if (rotor >= 1 && rotor <= shaft.rotor_count())
      states[static_cast<std::size_t>(shaft.station_of_rotor(rotor))].chosen = true;
  out.strip = shaft_strip(shaft, states, {}, {.width = width, .greatest_height = 22, .numbers = false});
  append(out.list, out.strip.list, {0, 0});
  Pen pen{out.list};
  const double top = out.strip.list.height + 5;
  const AgeScale scale{top, top + height, is.from_hours, std::max(is.now_hours, is.from_hours + 1), 13, width - 2};
  draw_age_grid(pen, scale, is);
  draw_job_lines(pen, scale, is);
  for (const BearingBar& bar : is.bars) {
    if (bar.rotor < 1 || bar.rotor > shaft.rotor_count()) continue;
    const StationExtent extent = out.strip.stations[static_cast<std::size_t>(shaft.station_of_rotor(bar.rotor))];
    const bool watch = std::ranges::find(is.watch, bar.rotor) != is.watch.end();
    draw_age_bar(pen, scale, bar, (extent.from + extent.to) / 2, std::clamp((extent.to - extent.from) / 2.4, 1.0, 3.2),
                 watch);
  }
  pen.line({scale.left - 2, scale.bottom}, {scale.right, scale.bottom}, {.stroke = Stroke::axis, .ink = Ink::next});
  pen.text({scale.right - 1.5, scale.bottom - 1.2}, is.now_words,
           {.size = 3.6, .bold = true, .anchor = Anchor::end, .ink = Ink::next});
  out.list.width = width;
  out.list.height = scale.bottom + 1.5;
  return out;
}

}  // namespace flatwise::drawing
