// The tray of one rotor: every piece at one scale, told apart by hatch, outline and dash-dots.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/bench_pictures.h"
#include "drawing/pen.h"
#include "drawing/station_shapes.h"

namespace flatwise::drawing {
namespace {

constexpr double kGapShare = 0.18;  // Of a bearing's diameter, between pieces.
constexpr double kName = 3.6;
constexpr int kBalls = 10;

double mm(Length length) { return length.si() * 1e3; }

/// Diameters in mm of the part.
struct Sizes {
  double hub = 0, bore = 0, outside = 0, seat = 0, rim = 0, flats = 0;
  int sides = 6;
};

Sizes sizes_of(const Shaft& shaft, int number) {
  const Rotor& rotor = shaft.rotor(number);
  const auto& station = shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(number))];
  const double d = mm(rotor.bearing.bore), outside = mm(rotor.bearing.outside);
  return {.hub = 2 * hub_radius_mm(station, rotor),
          .bore = outside,
          .outside = outside,
          .seat = d,
          .rim = d + 0.25 * (outside - d),
          .flats = mm(shaft.spec().profile.across_flats),
          .sides = shaft.flats()};
}

double diameter_of(TrayPart part, const Sizes& s) {
  switch (part) {
    case TrayPart::hub:
      return s.hub;
    case TrayPart::half:
      return s.rim;
    case TrayPart::ring:
      return s.outside * 1.02;
    case TrayPart::seal:
    case TrayPart::bearing:
      break;
  }
  return s.outside;
}

struct Place {
  Point centre;
  double scale = 1;
};

Look outer_look(TrayState state) {
  if (state == TrayState::wanted) return {.stroke = Stroke::wanted, .fill = Fill::sheet, .ink = Ink::next};
  return {.stroke = Stroke::wide, .fill = state == TrayState::fresh ? Fill::renew : Fill::sheet};
}
Look inner_look(TrayState state) {
  if (state == TrayState::wanted) return {.stroke = Stroke::wanted, .fill = Fill::sheet, .ink = Ink::next};
  return {.stroke = Stroke::wide, .fill = Fill::sheet};
}

/// Two circles: a disc with a hole.
void draw_annulus(Pen pen, const Place& at, double outside, double inside, const TrayPiece& piece) {
  pen.circle(at.centre, outside / 2 * at.scale, outer_look(piece.state), piece.id);
  pen.circle(at.centre, inside / 2 * at.scale, inner_look(piece.state));
}

void draw_half(Pen pen, const Place& at, const Sizes& s, const TrayPiece& piece) {
  pen.circle(at.centre, s.rim / 2 * at.scale, outer_look(piece.state), piece.id);
  std::vector<Point> corners;
  const double corner = s.flats / 2 / std::cos(std::numbers::pi / s.sides) * at.scale;
  for (int i = 0; i < s.sides; ++i) {
    const double turn = 2 * std::numbers::pi * (i + 0.5) / s.sides;
    corners.push_back({at.centre.x + corner * std::sin(turn), at.centre.y - corner * std::cos(turn)});
  }
  pen.polygon(std::move(corners), inner_look(piece.state));
}

void draw_bearing(Pen pen, const Place& at, const Sizes& s, const TrayPiece& piece) {
  const double wall = 0.15 * (s.outside - s.seat);
  draw_annulus(pen, at, s.outside, s.outside - 2 * wall, piece);
  const double pitch = (s.outside + s.seat) / 4 * at.scale;
  for (int i = 0; i < kBalls; ++i) {
    const double turn = 2 * std::numbers::pi * i / kBalls;
    pen.circle({at.centre.x + pitch * std::sin(turn), at.centre.y - pitch * std::cos(turn)},
               0.15 * (s.outside - s.seat) * at.scale, inner_look(piece.state));
  }
  draw_annulus(pen, at, s.seat + 2 * wall, s.seat, {piece.part, piece.state, {}, {}});
}

/// Open at the foot, with an eye at each end.
void draw_ring(Pen pen, const Place& at, const Sizes& s, const TrayPiece& piece) {
  const double outer = s.outside * 0.51 * at.scale, inner = outer * 0.9;
  const bool wanted = piece.state == TrayState::wanted;
  const Look line = wanted ? Look{.stroke = Stroke::wanted, .ink = Ink::next} : kWide;
  const Look fill = piece.state == TrayState::fresh ? Look{.stroke = Stroke::none, .fill = Fill::renew} : kGround;
  pen.circle(at.centre, outer, fill, piece.id);
  pen.circle(at.centre, inner, kGround);
  pen.box({at.centre.x - 0.13 * outer, at.centre.y + 0.8 * outer, 0.26 * outer, 0.3 * outer}, kGround);
  for (const double radius : {outer, inner}) pen.list().items.emplace_back(Arc{at.centre, radius, -170, 170, line, {}});
  for (const double side : {-1.0, 1.0})
    pen.circle({at.centre.x + side * 0.2 * outer, at.centre.y + 0.9 * outer}, 0.09 * outer,
               {.stroke = line.stroke, .fill = Fill::sheet, .ink = line.ink});
}

void draw_piece(Pen pen, const Place& at, const Sizes& s, const TrayPiece& piece) {
  switch (piece.part) {
    case TrayPart::hub:
      return draw_annulus(pen, at, s.hub, s.bore, piece);
    case TrayPart::half:
      return draw_half(pen, at, s, piece);
    case TrayPart::seal:
      return draw_annulus(pen, at, s.outside, 0.62 * s.outside, piece);
    case TrayPart::ring:
      return draw_ring(pen, at, s, piece);
    case TrayPart::bearing:
      return draw_bearing(pen, at, s, piece);
  }
}

}  // namespace

TrayDrawing tray(const Shaft& shaft, int rotor, const std::vector<TrayPiece>& pieces, double width) {
  const Sizes s = sizes_of(shaft, rotor);
  const double gap = kGapShare * s.outside;
  double total = gap;
  double tallest = 0;
  for (const TrayPiece& piece : pieces) {
    total += diameter_of(piece.part, s) + gap;
    tallest = std::max(tallest, diameter_of(piece.part, s));
  }
  TrayDrawing out;
  out.scale = width / total;
  const double height = (tallest + 2 * gap) * out.scale;
  out.list.width = width;
  out.list.height = height + kName + 2;
  Pen pen{out.list};
  pen.box({0, 0, width, height}, kNarrow, "tray");
  double x = gap;
  for (const TrayPiece& piece : pieces) {
    const double size = diameter_of(piece.part, s);
    const Place at{{(x + size / 2) * out.scale, height / 2}, out.scale};
    draw_piece(pen, at, s, piece);
    const Ink ink = piece.state == TrayState::wanted ? Ink::next : Ink::ink;
    pen.text({at.centre.x, height + kName + 0.6}, piece.name,
             {.size = kName, .bold = true, .anchor = Anchor::middle, .ink = ink});
    x += size + gap;
  }
  return out;
}

}  // namespace flatwise::drawing
