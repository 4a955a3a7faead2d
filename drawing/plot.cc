#include "drawing/plot.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drawing/pen.h"
#include "drawing/plot_labels.h"

namespace flatwise::drawing {
namespace {

constexpr double kTitle = 4.6, kText = 3.6, kFigures = 3.6;
constexpr double kDot = 1.4, kCross = 1.5, kTick = 1.4;
constexpr Look kGrid{.stroke = Stroke::narrow, .ink = Ink::second};
constexpr Look kHatch{.stroke = Stroke::none, .fill = Fill::cut};
constexpr Look kHere{.stroke = Stroke::axis, .ink = Ink::next};

/// The scale in millimetres.
struct Frame {
  Steps x, y;
  Box at;
  [[nodiscard]] double px(double v) const { return at.x + (v - x.from) / (x.to - x.from) * at.width; }
  [[nodiscard]] double py(double v) const { return at.y + at.height - (v - y.from) / (y.to - y.from) * at.height; }
  [[nodiscard]] Point point(Point p) const { return {px(p.x), py(p.y)}; }
};

/// Of a figure in B612: its digits are 0.65 em, what stands between them is narrower.
double figure_width(const std::string& figure) {
  const auto digits = static_cast<double>(std::ranges::count_if(figure, [](char c) { return c >= '0' && c <= '9'; }));
  const double others = words_width(figure, 1) / words_width("0", 1) - digits;
  return kFigures * (0.65 * digits + 0.4 * others);
}

Frame frame_of(const Plot& plot, const PlotSize& size) {
  Frame frame{.x = even_steps(plot.x.from, plot.x.to), .y = even_steps(plot.y.from, plot.y.to), .at = {}};
  double figures = 0;
  for (int i = 0; i <= frame.y.count(); ++i)
    figures = std::max(figures, figure_width(scale_figure(frame.y.from + i * frame.y.step, frame.y.decimals)));
  const double head = (plot.title.empty() ? 0 : kTitle + 1.6) + (plot.question.empty() ? 0 : kText + 1.8) + 2.4;
  const double foot = kTick + 2 * kFigures + 3.4;
  const double left = figures + 2.2;
  // The last figure of x stands half beyond the scale.
  const double right = 0.5 * figure_width(scale_figure(frame.x.to, frame.x.decimals)) + 0.6;
  frame.at = {left, head, size.width - left - right, size.height - head - foot};
  return frame;
}

/// Set smaller where it would run over the edge.
double fitting(const std::string& words, double size, double room) {
  constexpr double kSentence = 0.88;  // Of words_width(): sentences are narrower than figures and capitals.
  return size * std::min(1.0, room / std::max(1e-9, kSentence * words_width(words, size)));
}

void draw_head(Pen pen, const Plot& plot, double room) {
  double y = kTitle;
  if (!plot.title.empty()) {
    pen.text({0, y}, plot.title, {.size = fitting(plot.title, kTitle, room), .bold = true});
    y += kText + 1.6;
  }
  if (plot.question.empty()) return;
  pen.text({0, y}, plot.question, {.size = fitting(plot.question, kText, room), .ink = Ink::second});
}

void draw_scales(Pen pen, const Plot& plot, const Frame& f) {
  const double bottom = f.at.y + f.at.height, right = f.at.x + f.at.width;
  for (int i = 0; i <= f.y.count(); ++i) {
    const double value = f.y.from + i * f.y.step, y = f.py(value);
    if (i > 0) pen.line({f.at.x, y}, {right, y}, kGrid);
    pen.text({f.at.x - 1.6, y + 0.36 * kFigures}, scale_figure(value, f.y.decimals),
             {.size = kFigures, .anchor = Anchor::end}, "figure-y");
  }
  for (int i = 0; i <= f.x.count(); ++i) {
    const double value = f.x.from + i * f.x.step, x = f.px(value);
    pen.line({x, bottom}, {x, bottom + kTick}, kWide);
    pen.text({x, bottom + kTick + kFigures}, scale_figure(value, f.x.decimals),
             {.size = kFigures, .anchor = Anchor::middle}, "figure-x");
  }
  pen.open_path({{f.at.x, f.at.y}, {f.at.x, bottom}}, kNarrow, "axis-y");
  pen.open_path({{f.at.x, bottom}, {right, bottom}}, kWide, "axis-x");
  const double names = bottom + kTick + 2 * kFigures + 2.2;
  pen.text({0, names}, plot.y.words, {.size = kText, .ink = Ink::second}, "words-y");
  pen.text({right, names}, plot.x.words, {.size = kText, .anchor = Anchor::end, .ink = Ink::second}, "words-x");
}

/// One straight piece cut to the scale; nothing where it lies wholly beyond it (Liang and Barsky's way).
std::optional<std::pair<Point, Point>> cut(Point a, Point b, const Box& area) {
  double from = 0, to = 1;
  const double dx = b.x - a.x, dy = b.y - a.y;
  const double p[] = {-dx, dx, -dy, dy};
  const double q[] = {a.x - area.x, area.x + area.width - a.x, a.y - area.y, area.y + area.height - a.y};
  for (int i = 0; i < 4; ++i) {
    if (p[i] == 0 && q[i] < 0) return std::nullopt;
    if (p[i] < 0) from = std::max(from, q[i] / p[i]);
    if (p[i] > 0) to = std::min(to, q[i] / p[i]);
  }
  if (from > to) return std::nullopt;
  return std::pair{Point{a.x + from * dx, a.y + from * dy}, Point{a.x + to * dx, a.y + to * dy}};
}

/// A curve as the pieces of it that lie on the scale.
std::vector<std::vector<Point>> on_scale(const std::vector<Point>& points, const Frame& f) {
  std::vector<std::vector<Point>> pieces;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const auto piece = cut(f.point(points[i - 1]), f.point(points[i]), f.at);
    if (!piece) continue;
    const auto& [from, to] = *piece;
    const bool goes_on = !pieces.empty() && pieces.back().back().x == from.x && pieces.back().back().y == from.y;
    if (!goes_on) pieces.push_back({from});
    pieces.back().push_back(to);
  }
  return pieces;
}

void draw_band(Pen pen, const PlotBand& band, const Frame& f) {
  std::vector<Point> low, high;
  const auto bounded = [&](double x, double y) {
    return Point{std::clamp(f.px(x), f.at.x, f.at.x + f.at.width), std::clamp(f.py(y), f.at.y, f.at.y + f.at.height)};
  };
  for (std::size_t i = 0; i < band.x.size(); ++i) {
    low.push_back(bounded(band.x[i], band.low[i]));
    high.push_back(bounded(band.x[i], band.high[i]));
  }
  std::vector<Point> around = high;
  around.insert(around.end(), low.rbegin(), low.rend());
  pen.polygon(std::move(around), {.stroke = Stroke::none, .fill = Fill::tone}, "band-" + band.id);
  // A bound that leaves the scale ends at its edge and does not run along it.
  for (const std::vector<double>* bound : {&band.low, &band.high}) {
    std::vector<Point> points;
    for (std::size_t i = 0; i < band.x.size(); ++i) points.push_back({band.x[i], (*bound)[i]});
    for (std::vector<Point>& piece : on_scale(points, f)) pen.open_path(std::move(piece), kHidden);
  }
}

void draw_keep_out(Pen pen, const KeepOut& range, const Frame& f) {
  const double from = std::max(f.at.x, f.px(range.from)), to = std::min(f.at.x + f.at.width, f.px(range.to));
  if (!(to > from)) return;
  pen.box({from, f.at.y, to - from, f.at.height}, kHatch);
  double y = f.at.y + f.at.height - 1.4 - (kText + 0.8) * (static_cast<double>(range.words.size()) - 1);
  bool first = true;
  for (const std::string& line : range.words) {
    const double wide = words_width(line, kText);
    const double right = std::min(to, f.at.x + f.at.width) - 0.8;
    const bool narrow = right - wide < f.at.x + 0.8;  // Then it stands at the scale's own left edge.
    const double left = narrow ? f.at.x + 1.4 : right - wide;
    pen.box({left - 0.6, y - kText, wide + 1.2, kText + 1.2}, kGround);
    pen.text({narrow ? left : right, y}, line,
             {.size = kText, .bold = first, .anchor = narrow ? Anchor::start : Anchor::end});
    first = false;
    y += kText + 0.8;
  }
}

/// Points every millimetre or so: what names must keep away from.
void add_points(std::vector<Point>& to, const std::vector<Point>& piece) {
  for (std::size_t i = 1; i < piece.size(); ++i) {
    const Point a = piece[i - 1], b = piece[i];
    const int parts = std::max(1, static_cast<int>(std::hypot(b.x - a.x, b.y - a.y)));
    for (int k = 0; k <= parts; ++k) to.push_back({a.x + (b.x - a.x) * k / parts, a.y + (b.y - a.y) * k / parts});
  }
}

/// Bounds of a band are drawn too: a name across one would hide where it runs.
void add_bounds(std::vector<Point>& to, const PlotBand& band, const Frame& f) {
  for (const std::vector<double>* bound : {&band.low, &band.high}) {
    std::vector<Point> points;
    for (std::size_t i = 0; i < band.x.size(); ++i) points.push_back({band.x[i], (*bound)[i]});
    for (const std::vector<Point>& piece : on_scale(points, f)) add_points(to, piece);
  }
}

/// Where the name of a curve stands, and how large.
struct Name {
  Box at;
  double letters = 0;
  bool own = true;
  std::vector<std::string> lines{};
};

/// In one line, or broken behind its colon.
std::vector<std::vector<std::string>> ways_to_set(const std::string& name) {
  std::vector<std::vector<std::string>> ways{{name}};
  if (const std::size_t colon = name.find(": "); colon != std::string::npos)
    ways.push_back({name.substr(0, colon + 1), name.substr(colon + 2)});
  return ways;
}

constexpr double kLeading = 1.2;  ///< From line to line, in letters.

Box room_for(const std::vector<std::string>& lines, double letters) {
  Box box{0, 0, 0, letters * (1 + kLeading * static_cast<double>(lines.size() - 1))};
  for (const std::string& line : lines) box.width = std::max(box.width, words_width(line, letters));
  return box;
}

/// Words stand on the ground: a line of the scale behind them ends beside them.
void clear_ground(Pen pen, const Box& at) {
  pen.box({at.x - 0.5, at.y - 0.3, at.width + 1.0, at.height + 0.7}, kGround);
}

Name place_of_name(const Curve& curve, const std::vector<Point>& along, const Frame& f, const Crowd& crowd) {
  if (curve.name.empty() || along.empty()) return {};
  // Where there is no place at its own curve, two lines or smaller letters may find one; else any free place will do.
  std::optional<Name> free;
  Name name;
  for (const double share : {1.0, 0.85, 0.7}) {
    const double letters = share * fitting(curve.name, kText, 0.8 * f.at.width);
    for (const std::vector<std::string>& lines : ways_to_set(curve.name)) {
      const NamePlace place = place_beside(along, room_for(lines, letters), f.at, crowd);
      name = {place.at, letters, place.own, lines};
      if (place.own) return name;
      if (place.free && !free) free = name;
    }
  }
  return free.value_or(name);
}

/// A thin line from a name that stands nearer to something else to the curve it belongs to.
void lead(Pen pen, const Name& name, const std::vector<Point>& along) {
  const auto on_box = [&](Point p) {
    return Point{std::clamp(p.x, name.at.x, name.at.x + name.at.width),
                 std::clamp(p.y, name.at.y, name.at.y + name.at.height)};
  };
  const auto away = [&](Point p) { return std::hypot(p.x - on_box(p).x, p.y - on_box(p).y); };
  const Point nearest = *std::ranges::min_element(along, {}, away);
  pen.line(on_box(nearest), nearest, kNarrow);
}

void draw_curves(Pen pen, const Plot& plot, const Frame& f, Crowd& crowd) {
  std::vector<std::vector<std::vector<Point>>> pieces;
  std::vector<std::vector<Point>> along;
  for (const Curve& curve : plot.curves) {
    along.emplace_back();
    for (const std::vector<Point>& piece : pieces.emplace_back(on_scale(curve.points, f)))
      add_points(along.back(), piece);
  }
  std::vector<Name> names;
  for (std::size_t i = 0; i < plot.curves.size(); ++i) {
    Crowd others = crowd;
    for (std::size_t k = 0; k < along.size(); ++k)
      if (k != i) others.points.insert(others.points.end(), along[k].begin(), along[k].end());
    const Name& name = names.emplace_back(place_of_name(plot.curves[i], along[i], f, others));
    if (!(name.letters > 0)) continue;
    crowd.boxes.push_back(name.at);
    clear_ground(pen, name.at);
  }
  for (std::size_t i = 0; i < plot.curves.size(); ++i) {
    const Curve& curve = plot.curves[i];
    for (std::vector<Point>& piece : pieces[i])
      pen.open_path(std::move(piece), curve.chosen ? kHeavy : kWide, "curve-" + curve.id);
    if (names[i].letters > 0 && !names[i].own) lead(pen, names[i], along[i]);
    double y = names[i].at.y + 0.86 * names[i].letters;
    for (const std::string& line : names[i].lines) {
      pen.text({names[i].at.x, y}, line, {.size = names[i].letters, .bold = curve.chosen}, "curve-" + curve.id);
      y += kLeading * names[i].letters;
    }
  }
  for (const std::vector<Point>& points : along) crowd.points.insert(crowd.points.end(), points.begin(), points.end());
}

void draw_here(Pen pen, const PlotPlace& here, const Frame& f, Crowd& crowd) {
  const double x = f.px(here.x);
  if (!(x >= f.at.x && x <= f.at.x + f.at.width)) return;
  pen.open_path({{x, f.at.y}, {x, f.at.y + f.at.height}}, kHere, "here");
  add_points(crowd.points, {{x, f.at.y}, {x, f.at.y + f.at.height}});
  const bool left = x > f.at.x + f.at.width / 2;
  double y = f.at.y + kText + 0.4;
  for (const std::string& line : here.words) {
    const double wide = words_width(line, kText);
    clear_ground(pen, {left ? x - 1.6 - wide : x + 1.6, y - 0.86 * kText, wide, kText});
    pen.text({left ? x - 1.6 : x + 1.6, y}, line,
             {.size = kText, .bold = true, .anchor = left ? Anchor::end : Anchor::start, .ink = Ink::next}, "here");
    crowd.boxes.push_back({left ? x - 1.6 - wide : x + 1.6, y - kText, wide, kText + 1});
    y += kText + 1;
  }
  if (here.y && *here.y >= f.y.from && *here.y <= f.y.to)
    pen.circle({x, f.py(*here.y)}, kDot, {.stroke = Stroke::none, .fill = Fill::ink, .ink = Ink::next}, "here");
}

void draw_mark(Pen pen, const PlotMark& mark, const Frame& f, Crowd& crowd) {
  const Point p = f.point(mark.at);
  const std::string id = "mark-" + mark.id;
  crowd.points.push_back(p);
  if (mark.form == MarkForm::circle) {
    pen.circle(p, kDot, {.stroke = Stroke::narrow, .fill = Fill::sheet}, id);
  } else {
    const Look look{.stroke = Stroke::wide, .ink = mark.form == MarkForm::read ? Ink::next : Ink::out};
    pen.open_path({{p.x - kCross, p.y - kCross}, {p.x + kCross, p.y + kCross}}, look, id);
    pen.open_path({{p.x - kCross, p.y + kCross}, {p.x + kCross, p.y - kCross}}, look, id);
  }
  if (mark.words.empty()) return;
  const double letters = fitting(mark.words, kText, 0.8 * f.at.width);
  // On a curve the curve is always nearer than its point: some slack, and a line where that does not do.
  constexpr double kSlack = 3;
  Crowd near = crowd;
  near.slack = kSlack;
  const NamePlace place = place_beside({p}, {0, 0, words_width(mark.words, letters), letters}, f.at, near);
  const Box at = place.at;
  clear_ground(pen, at);
  if (!place.own) lead(pen, {at, letters, false}, {p});
  pen.text({at.x, at.y + 0.86 * letters}, mark.words, {.size = letters, .bold = true});
  crowd.boxes.push_back(at);
}

}  // namespace

DisplayList plot(const Plot& plot, const PlotSize& size) {
  DisplayList list;
  list.width = size.width;
  list.height = size.height;
  Pen pen{list};
  const Frame f = frame_of(plot, size);
  Crowd crowd;
  draw_head(pen, plot, size.width);
  for (const PlotBand& band : plot.bands) draw_band(pen, band, f);
  for (const KeepOut& range : plot.keep_out) draw_keep_out(pen, range, f);
  draw_scales(pen, plot, f);
  add_points(crowd.points, {{f.at.x, f.at.y + f.at.height}, {f.at.x + f.at.width, f.at.y + f.at.height}});
  if (plot.here) draw_here(pen, *plot.here, f, crowd);
  for (const PlotBand& band : plot.bands) add_bounds(crowd.points, band, f);
  for (const PlotMark& mark : plot.marks) crowd.points.push_back(f.point(mark.at));
  draw_curves(pen, plot, f, crowd);
  for (const PlotMark& mark : plot.marks) draw_mark(pen, mark, f, crowd);
  return list;
}

std::vector<Curve> merged(std::vector<Curve> curves, const PlotAxis& y, double share) {
  const double near = share * (y.to - y.from);
  const auto same = [&](const Curve& a, const Curve& b) {
    return std::ranges::equal(
        a.points, b.points, [&](const Point& p, const Point& q) { return p.x == q.x && std::abs(p.y - q.y) <= near; });
  };
  std::vector<Curve> kept;
  for (Curve& curve : curves) {
    const auto twin = std::ranges::find_if(kept, [&](const Curve& k) { return same(k, curve); });
    if (twin == kept.end()) {
      kept.push_back(std::move(curve));
      continue;
    }
    twin->name += ", " + curve.name;
    twin->chosen = twin->chosen || curve.chosen;
  }
  return kept;
}

}  // namespace flatwise::drawing
