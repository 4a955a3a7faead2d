#include "drawing/shaft_strip.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/pen.h"
#include "drawing/station_shapes.h"

namespace flatwise::drawing {
namespace {

constexpr double kEndRoom = 8.0;  // For the letter of an end.
constexpr double kLetterSide = 5.2;
constexpr double kFlagSize = 3.2;
constexpr double kGap = 1.6;
constexpr double kSeamScale = 0.07;

double mm(Length length) { return length.si() * 1e3; }

/// Everything about one strip that its parts are drawn from.
struct Board {
  const Shaft& shaft;
  const StripOptions& options;
  std::vector<Shape> shapes;
  double stub_a = 0, stub_b = 0;  // Thread beyond the nuts, mm of shaft.
  double tip = 0, body = 0;       // Greatest reach from the axis, of tines and of everything else.
  double scale = 0, cut = 0;      // cut: tines are broken off at this distance from the axis.
  double left = 0, axis_y = 0;    // Page.

  [[nodiscard]] double x(double along) const {
    const double total = mm(shaft.total_length());
    const double from_left = options.from_behind ? total + stub_b - along : along + stub_a;
    return left + from_left * scale;
  }
  [[nodiscard]] Point page(int station, Point p) const {
    return {x(mm(shaft.start_of(station)) + p.x), axis_y + p.y * scale};
  }
  [[nodiscard]] std::vector<Point> page(int station, const std::vector<Point>& points) const {
    std::vector<Point> out;
    out.reserve(points.size());
    for (const Point p : points) out.push_back(page(station, p));
    return out;
  }
};

Axis lean_of(const Rotor& rotor, const RotorMarks& marks) {
  if (marks.a) return {rotor.lean.radians(), marks.a->radians()};
  if (marks.b) return {rotor.lean.radians(), marks.b->radians() + std::numbers::pi};
  return {};  // Nothing read: no lean is known, so none is drawn.
}

double stub_mm(const Shaft& shaft, int station) {
  const Station& s = shaft.stations()[static_cast<std::size_t>(station)];
  if (s.kind != StationKind::nut || s.nut < 0) return 0;
  return 3 * mm(shaft.spec().nuts[static_cast<std::size_t>(s.nut)].thread.pitch);
}

void shape_all(Board& board, std::span<const RotorMarks> marks) {
  const auto& stations = board.shaft.stations();
  double hanger = 0;
  for (const Rotor& r : board.shaft.spec().rotors) board.tip = std::max(board.tip, mm(r.tip_radius));
  for (const Station& s : stations)
    if (s.kind == StationKind::hanger) hanger = std::max(hanger, radius_mm(s, board.shaft));
  const double arm = std::max(0.82 * board.tip, 1.6 * hanger);
  for (const Station& s : stations) {
    if (s.kind == StationKind::rotor) {
      const auto index = static_cast<std::size_t>(s.rotor);
      const Rotor& rotor = board.shaft.spec().rotors[index];
      board.shapes.push_back(rotor_shape(s, rotor, lean_of(rotor, index < marks.size() ? marks[index] : RotorMarks{})));
    } else {
      board.shapes.push_back(station_shape(s, board.shaft, arm));
    }
    for (const Piece& piece : board.shapes.back().pieces)
      for (const Point p : piece.outline)
        (piece.tine ? board.tip : board.body) = std::max(piece.tine ? board.tip : board.body, std::abs(p.y));
  }
}

// One scale for everything: the width decides, unless even broken tines would stand too high.
void choose_scale(Board& board) {
  const StripOptions& o = board.options;
  const double total = mm(board.shaft.total_length()) + board.stub_a + board.stub_b;
  board.scale = (o.width - 2 * kEndRoom) / total;
  board.cut = std::max(board.tip, board.body);
  if (o.greatest_height > 0) {
    const double least = std::max(board.body * 1.12, o.least_tine_share * board.tip);
    board.scale = std::min(board.scale, o.greatest_height / 2 / least);
    board.cut = std::min(board.cut, o.greatest_height / 2 / board.scale);
  }
  board.left = (o.width - total * board.scale) / 2;
}

// One wave line over everything that is broken off at this height.
void paint_break(Pen pen, const std::vector<std::vector<Point>>& outlines, double height) {
  double least = 1e9;
  double greatest = -1e9;
  for (const auto& outline : outlines) {
    for (const Point p : outline) {
      if (std::abs(p.y - height) > 1e-6) continue;
      least = std::min(least, p.x);
      greatest = std::max(greatest, p.x);
    }
  }
  if (!(greatest > least)) return;
  const double width = greatest - least + 0.5;
  pen.box({least - 0.25, height - 0.3, width, 0.6}, kGround);
  pen.wave({(least + greatest) / 2, height}, width + 1.2);
}

struct Paint {
  const Board& board;
  Pen pen;
  int station = 0;
  StationState state;

  [[nodiscard]] std::string id() const { return "station-" + std::to_string(station); }
  [[nodiscard]] const Shape& shape() const { return board.shapes[static_cast<std::size_t>(station)]; }
  [[nodiscard]] Ink ink() const { return state.chosen ? Ink::next : Ink::ink; }
  [[nodiscard]] std::vector<Point> outline(const Piece& piece) const {
    const double edge = board.cut;
    return board.page(station, piece.tine ? between(piece.outline, -edge, edge) : piece.outline);
  }
  void lines(Ink with) {
    for (const auto& line : shape().lines)
      pen.open_path(board.page(station, line), {.stroke = Stroke::narrow, .ink = with});
  }
  void breaks() {
    // A tine that ends just there is whole.
    if (board.cut >= std::max(board.tip, board.body) * (1 - 1e-9)) return;
    std::vector<std::vector<Point>> broken;
    for (const Piece& piece : shape().pieces)
      if (piece.tine) broken.push_back(outline(piece));
    paint_break(pen, broken, board.axis_y - board.cut * board.scale);
    paint_break(pen, broken, board.axis_y + board.cut * board.scale);
  }
  void solid() {
    const Fill fill = state.chosen ? Fill::next : Fill::solid;
    for (const Piece& piece : shape().pieces) {
      // At a small scale a seam would eat the tine it is to set off.
      const bool seam = !piece.tine || board.scale > kSeamScale;
      pen.polygon(outline(piece), {.stroke = seam ? Stroke::narrow : Stroke::none, .fill = fill, .ink = Ink::sheet},
                  id());
    }
    lines(Ink::sheet);
    breaks();
  }
  // Outline of the whole part first, its inside after it: pieces of one part run into each other.
  void open() {
    const bool rotor = std::any_of(shape().pieces.begin(), shape().pieces.end(), [](const Piece& p) { return p.hub; });
    for (const Piece& piece : shape().pieces) pen.polygon(outline(piece), {.stroke = Stroke::wide, .ink = ink()}, id());
    for (const Piece& piece : shape().pieces) {
      const bool hatched = state.renew && (piece.hub || !rotor);
      pen.polygon(outline(piece),
                  {.stroke = piece.hub || hatched ? Stroke::narrow : Stroke::none, .fill = Fill::sheet, .ink = ink()},
                  id());
      if (hatched) pen.polygon(outline(piece), {.stroke = Stroke::none, .fill = Fill::renew, .ink = ink()}, id());
    }
    lines(ink());
    breaks();
  }
};

void paint_thread(const Board& board, Pen pen, int station, double from, double to) {
  const Station& s = board.shaft.stations()[static_cast<std::size_t>(station)];
  if (s.kind != StationKind::nut || s.nut < 0) return;
  const Thread& thread = board.shaft.spec().nuts[static_cast<std::size_t>(s.nut)].thread;
  const double radius = mm(thread.major) / 2 * board.scale;
  const double x0 = std::min(board.x(from), board.x(to));
  const double width = std::abs(board.x(to) - board.x(from));
  if (!(width > 0) || !(radius > 0)) return;
  pen.box({x0, board.axis_y - radius, width, 2 * radius}, {.stroke = Stroke::narrow, .fill = Fill::sheet});
  const double pitch = std::max(0.7, mm(thread.pitch) * board.scale);
  for (double x = x0 + pitch / 2; x < x0 + width; x += pitch)
    pen.line({x, board.axis_y - 0.8 * radius}, {x, board.axis_y + 0.8 * radius});
}

void paint_shaft(const Board& board, Pen pen) {
  const Profile& profile = board.shaft.spec().profile;
  const double total = mm(board.shaft.total_length());
  const int last = static_cast<int>(board.shaft.stations().size()) - 1;
  const double corner = mm(profile.across_flats) / 2 / std::cos(std::numbers::pi / profile.flats) * board.scale;
  double top = 0;
  double bottom = 0;
  std::vector<double> edges;
  for (int i = 0; i < profile.flats; ++i) {
    const double turn = (i + 0.5) * 2 * std::numbers::pi / profile.flats;
    const double y = -corner * std::cos(turn);
    top = std::min(top, y);
    bottom = std::max(bottom, y);
    if ((std::sin(turn) > 1e-9) != board.options.from_behind) edges.push_back(y);
  }
  const double x0 = std::min(board.x(0), board.x(total));
  const double width = total * board.scale;
  pen.box({x0, board.axis_y + top, width, bottom - top}, {.stroke = Stroke::narrow, .fill = Fill::sheet});
  for (const double y : edges)
    if (y > top + 1e-6 && y < bottom - 1e-6) pen.line({x0, board.axis_y + y}, {x0 + width, board.axis_y + y});
  paint_thread(board, pen, 0, -board.stub_a, board.stub_a > 0 ? mm(board.shaft.stations().front().length.nominal) : 0);
  paint_thread(board, pen, last, total - (board.stub_b > 0 ? mm(board.shaft.stations().back().length.nominal) : 0),
               total + board.stub_b);
}

/// A mark stands at the outer face of its half, at its own azimuth; on the far side of the shaft it is hollow.
void paint_mark(const Board& board, Pen pen, int station, Half half, double azimuth) {
  const Station& s = board.shaft.stations()[static_cast<std::size_t>(station)];
  const double size = std::clamp(20 * board.scale, 0.8, 2.2);
  const double length = mm(s.length.nominal);
  const double hub = hub_radius_mm(s, board.shaft.rotor(s.rotor + 1));
  const double outward = (half == Half::a ? -1.0 : 1.0) * (board.options.from_behind ? -1.0 : 1.0);
  const double along = half == Half::a ? 0.5 * (1 - kHubShare) * length : 0.5 * (1 + kHubShare) * length;
  const Point at = board.page(station, {along, -0.82 * hub * std::cos(azimuth)});
  const Point centre{at.x + outward * (size * 0.62 + 0.25), at.y};
  const bool far = (std::sin(azimuth) < -1e-9) != board.options.from_behind && std::abs(std::sin(azimuth)) > 1e-9;
  const double w = size / 2;
  const double h = size * 0.62;
  std::vector<Point> points;
  if (std::abs(std::cos(azimuth)) > 0.3) {
    const double down = std::cos(azimuth) > 0 ? 1.0 : -1.0;
    points = {
        {centre.x - w, centre.y - down * h}, {centre.x + w, centre.y - down * h}, {centre.x, centre.y + down * h}};
  } else {
    points = {{centre.x + outward * h, centre.y - w},
              {centre.x + outward * h, centre.y + w},
              {centre.x - outward * h, centre.y}};
  }
  const std::string id = "half-" + std::to_string(s.number) + (half == Half::a ? "-a" : "-b");
  if (far) {
    pen.polygon(points, {.stroke = Stroke::narrow, .fill = Fill::sheet}, id);
  } else {
    pen.polygon(points, {.stroke = Stroke::narrow, .fill = Fill::ink, .ink = Ink::sheet}, id);
  }
}

void paint_ends(const Board& board, Pen pen) {
  const StripOptions& o = board.options;
  const std::string left = o.from_behind ? "B" : "A";
  const std::string right = o.from_behind ? "A" : "B";
  const double x0 = board.left - kEndRoom + kLetterSide / 2;
  const double x1 = o.width - board.left + kEndRoom - kLetterSide / 2;
  pen.letter_square({x0, board.axis_y}, kLetterSide, left, "end-" + left);
  pen.letter_square({x1, board.axis_y}, kLetterSide, right, "end-" + right);
}

void paint_numbers(const Board& board, Pen pen, double below) {
  double least = 1e9;
  double before = -1e9;
  std::vector<std::pair<double, int>> at;
  for (int n = 1; n <= board.shaft.rotor_count(); ++n) at.emplace_back(board.x(mm(board.shaft.rotor_position(n))), n);
  std::sort(at.begin(), at.end());
  for (const auto& [x, n] : at) {
    least = std::min(least, x - before);
    before = x;
  }
  const double size = std::min(4.2, least / 1.7);
  for (const auto& [x, n] : at)
    pen.text({x, below + 2.0 + size * 0.72}, std::to_string(n), {.size = size, .bold = true, .anchor = Anchor::middle},
             "rotor-" + std::to_string(n));
}

void paint_stops(const Board& board, Pen pen, double top, double bottom) {
  bool said = board.options.stop_words.empty();
  for (const int before : board.options.stop_before) {
    const bool end = before >= static_cast<int>(board.shaft.stations().size());
    const double x = board.x(end ? mm(board.shaft.total_length()) : mm(board.shaft.start_of(before)));
    pen.box({x - 0.85, top, 1.7, bottom - top}, {.stroke = Stroke::narrow, .fill = Fill::ink, .ink = Ink::sheet},
            "stop");
    if (said) continue;
    const bool to_right = x < board.options.width / 2;
    pen.text({x + (to_right ? 2.2 : -2.2), top + 2.8}, board.options.stop_words,
             {.size = 3.4, .bold = true, .anchor = to_right ? Anchor::start : Anchor::end});
    said = true;
  }
}

void paint_all(const Board& board, Pen pen, std::span<const StationState> states, std::span<const RotorMarks> marks) {
  const int count = static_cast<int>(board.shaft.stations().size());
  const auto state_of = [&](int i) {
    return static_cast<std::size_t>(i) < states.size() ? states[static_cast<std::size_t>(i)] : StationState{};
  };
  for (int i = 0; i < count; ++i)
    if (state_of(i).body == Body::off && !state_of(i).renew) Paint{board, pen, i, state_of(i)}.open();
  paint_shaft(board, pen);
  for (int i = 0; i < count; ++i) {
    if (state_of(i).renew)
      Paint{board, pen, i, state_of(i)}.open();
    else if (state_of(i).body == Body::on)
      Paint{board, pen, i, state_of(i)}.solid();
  }
  for (int i = 0; i < count; ++i) {
    const Station& s = board.shaft.stations()[static_cast<std::size_t>(i)];
    if (!board.options.draw_marks || s.kind != StationKind::rotor) continue;
    if (static_cast<std::size_t>(s.rotor) >= marks.size()) continue;
    const RotorMarks& m = marks[static_cast<std::size_t>(s.rotor)];
    if (m.a) paint_mark(board, pen, i, Half::a, m.a->radians());
    if (m.b) paint_mark(board, pen, i, Half::b, m.b->radians());
  }
  for (int i = 0; i < count; ++i) {
    if (state_of(i).flag == Flag::none) continue;
    const double top = std::max(board.shapes[static_cast<std::size_t>(i)].top, -board.cut);
    const double middle = board.x(mm(board.shaft.middle_of(i)));
    draw_flag(pen.list(), state_of(i).flag, {middle, board.axis_y + top * board.scale - kGap}, kFlagSize);
  }
}

}  // namespace

void draw_flag(DisplayList& list, Flag flag, Point foot, double size) {
  Pen pen{list};
  const double s = size;
  switch (flag) {
    case Flag::none:
      return;
    case Flag::done:
      pen.open_path(
          {{foot.x - 0.5 * s, foot.y - 0.4 * s}, {foot.x - 0.12 * s, foot.y}, {foot.x + 0.55 * s, foot.y - 0.85 * s}},
          {.stroke = Stroke::wide, .ink = Ink::in});
      return;
    case Flag::stopped:
      pen.box({foot.x - 0.7 * s, foot.y - 0.4 * s, 1.4 * s, 0.4 * s},
              {.stroke = Stroke::none, .fill = Fill::ink, .ink = Ink::out});
      return;
    case Flag::waits:
      pen.box({foot.x - 0.7 * s, foot.y - 0.4 * s, 1.4 * s, 0.4 * s}, kNarrow);
      return;
    case Flag::unknown:
      pen.text(foot, "?", {.size = 1.25 * s, .bold = true, .anchor = Anchor::middle});
      return;
  }
}

StripDrawing shaft_strip(const Shaft& shaft, std::span<const StationState> states, std::span<const RotorMarks> marks,
                         const StripOptions& options) {
  Board board{.shaft = shaft, .options = options, .shapes = {}};
  const int count = static_cast<int>(shaft.stations().size());
  board.stub_a = stub_mm(shaft, 0);
  board.stub_b = stub_mm(shaft, count - 1);
  shape_all(board, marks);
  choose_scale(board);
  const bool flags =
      std::any_of(states.begin(), states.end(), [](const StationState& s) { return s.flag != Flag::none; });
  const double above = std::max(flags ? kFlagSize + 2 * kGap : 1.0, options.stop_before.empty() ? 0.0 : 5.0);
  const double half = board.cut * board.scale;
  board.axis_y = above + half;

  StripDrawing out;
  Pen pen{out.list};
  pen.line({board.left - kEndRoom + kLetterSide, board.axis_y},
           {options.width - board.left + kEndRoom - kLetterSide, board.axis_y}, kAxis);
  paint_all(board, pen, states, marks);
  paint_ends(board, pen);
  const double bottom = board.axis_y + half;
  if (options.numbers) paint_numbers(board, pen, bottom);
  const double height = bottom + (options.numbers ? 6.4 : 1.0);
  paint_stops(board, pen, 0, bottom + 1);
  out.list.width = options.width;
  out.list.height = height;
  out.scale = board.scale;
  out.axis_y = board.axis_y;
  for (int i = 0; i < count; ++i) {
    const double a = board.x(mm(shaft.start_of(i)));
    const double b = board.x(mm(shaft.start_of(i)) + mm(shaft.stations()[static_cast<std::size_t>(i)].length.nominal));
    out.stations.push_back({std::min(a, b), std::max(a, b)});
  }
  return out;
}

}  // namespace flatwise::drawing
