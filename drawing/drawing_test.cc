// The geometry of the pictures. What a drawing shows is checked against the frames of core/shaft and plain
// trigonometry, not against itself.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "core/shaft/shaft_samples.h"
#include "drawing/end_view.h"
#include "drawing/list_samples.h"
#include "drawing/outline.h"
#include "drawing/pen.h"
#include "drawing/section.h"
#include "drawing/shaft_strip.h"
#include "drawing/signs.h"

namespace flatwise::drawing {
namespace {

Shaft nine() { return *Shaft::make(sample_shaft()); }

std::vector<RotorMarks> marks_at(int rotors, double step_degrees) {
  std::vector<RotorMarks> marks;
  for (int i = 0; i < rotors; ++i) marks.push_back({degrees(step_degrees * i), degrees(step_degrees * i + 180)});
  return marks;
}

Arc arc(const DisplayList& list, const std::string& id) {
  for (const Item& item : list.items)
    if (const auto* a = std::get_if<Arc>(&item); a != nullptr && a->id == id) return *a;
  ADD_FAILURE() << "no " << id;
  return {};
}
Point text_at(const DisplayList& list, const std::string& id) {
  for (const Item& item : list.items)
    if (const auto* t = std::get_if<Text>(&item); t != nullptr && t->id == id) return t->at;
  ADD_FAILURE() << "no " << id;
  return {};
}
Point middle_of(const Path& path) {
  Point sum;
  for (const Point p : path.points) sum = {sum.x + p.x, sum.y + p.y};
  const auto n = static_cast<double>(path.points.size());
  return {sum.x / n, sum.y / n};
}
struct Extent {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
};
Extent extent(const std::vector<Point>& points) {
  Extent e;
  for (const Point p : points) {
    e.left = std::min(e.left, p.x);
    e.right = std::max(e.right, p.x);
    e.top = std::min(e.top, p.y);
    e.bottom = std::max(e.bottom, p.y);
  }
  return e;
}

// Clockwise turn on the page from straight up, 0 to 360.
double turn_of(Point p, Point centre) {
  const double turn = std::atan2(p.x - centre.x, centre.y - p.y) * 180 / std::numbers::pi;
  return turn < -1e-9 ? turn + 360 : turn;
}

// Source: closed form: the outline of an upright cylinder of radius R is a rectangle 2R high.
// Tolerance: kTight.
TEST(Silhouette, OfAnUprightBodyIsARectangle) {
  const Extent e = extent(silhouette({.radius = 75, .from = -28, .to = 28}, {}));
  EXPECT_NEAR(e.left, -28, kTight);
  EXPECT_NEAR(e.right, 28, kTight);
  EXPECT_NEAR(e.top, -75, kTight);
  EXPECT_NEAR(e.bottom, 75, kTight);
}

// Source: closed form: a body leaning by a in the plane of the page is R cos a + w sin a high, w cos a + R sin a wide.
// Tolerance: kTight; the corners of the outline that count are corners of the polygon.
TEST(Silhouette, LeansInThePlaneOfThePage) {
  const double a = 5 * std::numbers::pi / 180;
  const auto outline = silhouette({.radius = 75, .from = -28, .to = 28}, {.lean_rad = a, .azimuth_rad = 0});
  const Extent e = extent(outline);
  EXPECT_NEAR(e.bottom, 75 * std::cos(a) + 28 * std::sin(a), kTight);
  EXPECT_NEAR(e.right, 28 * std::cos(a) + 75 * std::sin(a), kTight);
  // Leaning to flat 1 (up) its axis rises towards B, so its rim's top lies towards A.
  const Point top = *std::min_element(outline.begin(), outline.end(), [](Point p, Point q) { return p.y < q.y; });
  EXPECT_LT(std::abs(top.x - (28 * std::cos(a) - 75 * std::sin(a))), kTight);
}

// Source: closed form: a circle whose axis leans by a towards the eye is an ellipse with half-axis R sin a; no tilt.
// Tolerance: 0.3 % of R sin a: the ellipse is a polygon of 48 corners.
TEST(Silhouette, LeansTowardsTheEye) {
  const double a = 5 * std::numbers::pi / 180;
  const auto outline =
      silhouette({.radius = 75, .from = -28, .to = 28}, {.lean_rad = a, .azimuth_rad = std::numbers::pi / 2});
  const Extent e = extent(outline);
  EXPECT_NEAR(e.right, 28 * std::cos(a) + 75 * std::sin(a), 0.003 * 75 * std::sin(a));
  EXPECT_NEAR(e.right + e.left, 0, kTight);
  EXPECT_NEAR(e.top + e.bottom, 0, kTight);
}

// Source: projection: the axis is seen under atan(tan a cos phi).
// Tolerance: kTight.
TEST(Silhouette, ShowsTheProjectedTilt) {
  const double a = 5 * std::numbers::pi / 180;
  for (const double phi : {0.0, 1.0, 2.0, 3.0, 5.5}) {
    const Point p = seen({.along = 100}, {.lean_rad = a, .azimuth_rad = phi});
    EXPECT_NEAR(-p.y / p.x, std::tan(a) * std::cos(phi), kTight);
  }
}

TEST(Between, CutsAtBothHeights) {
  const auto cut = between({{0, -10}, {4, -10}, {4, 10}, {0, 10}}, -3, 5);
  const Extent e = extent(cut);
  EXPECT_EQ(e.top, -3);
  EXPECT_EQ(e.bottom, 5);
  EXPECT_TRUE(between({{0, 0}, {1, 0}, {1, 1}}, 4, 5).empty());
}

// Source: closed form: drawn size = the definition's size times one scale.
// Tolerance: kTight.
TEST(ShaftStrip, DrawsEveryStationAtOneScale) {
  const Shaft shaft = nine();
  const auto strip = shaft_strip(shaft, {}, marks_at(9, 180), {.width = 186, .greatest_height = 31});
  ASSERT_EQ(strip.stations.size(), shaft.stations().size());
  for (std::size_t i = 0; i < strip.stations.size(); ++i) {
    const Station& s = shaft.stations()[i];
    const double length = s.length.nominal.si() * 1e3;
    EXPECT_NEAR(strip.stations[i].to - strip.stations[i].from, length * strip.scale, kTight) << i;
    if (s.kind != StationKind::spacer) continue;
    // Its shape too, not only its place: length and diameter at the same scale.
    const auto shapes = paths(strip.list, "station-" + std::to_string(i));
    ASSERT_EQ(shapes.size(), 1U);
    const Extent e = extent(shapes[0].points);
    EXPECT_NEAR(e.right - e.left, length * strip.scale, kTight);
    EXPECT_NEAR(e.bottom - e.top, s.outside.si() * 1e3 * strip.scale, kTight);
  }
}

// Source: closed form: drawn size = the definition's size times one scale.
// Tolerance: kTight.
TEST(ShaftStrip, KeepsItsScaleTrueWhenTinesAreBrokenOff) {
  const Shaft shaft = nine();
  const auto full = shaft_strip(shaft, {}, {}, {.width = 186});
  const auto low = shaft_strip(shaft, {}, {}, {.width = 186, .greatest_height = 31});
  EXPECT_EQ(full.scale, low.scale);
  EXPECT_GT(full.list.height, low.list.height + 5);
  // So low that even broken tines stand too high: the whole is smaller, not only the rotors.
  const auto lower = shaft_strip(shaft, {}, {}, {.width = 186, .greatest_height = 12});
  EXPECT_LT(lower.scale, low.scale);
  const Station& last = shaft.stations().back();
  EXPECT_NEAR(lower.stations.back().to - lower.stations.back().from, last.length.nominal.si() * 1e3 * lower.scale,
              kTight);
}

TEST(ShaftStrip, StaysInsideItsBox) {
  for (const int rotors : {1, 3, 9, 24}) {
    for (const double height : {0.0, 20.0, 31.0}) {
      const Shaft shaft = *Shaft::make(sample_shaft({.rotors = rotors}));
      const auto marks = marks_at(rotors, 60);
      const auto strip = shaft_strip(shaft, {}, marks, {.width = 186, .greatest_height = height, .stop_before = {3}});
      for (const Item& item : strip.list.items) {
        const auto* path = std::get_if<Path>(&item);
        if (path == nullptr) continue;
        const Extent e = extent(path->points);
        EXPECT_GE(e.left, -kTight);
        EXPECT_LE(e.right, 186 + kTight);
        EXPECT_GE(e.top, -kTight) << rotors << ' ' << height;
        EXPECT_LE(e.bottom, strip.list.height + kTight);
      }
    }
  }
}

// Source: closed form: mirroring in a strip of width w takes x to w - x and leaves y.
// Tolerance: kTight.
TEST(ShaftStrip, IsMirroredFromBehind) {
  const Shaft shaft = nine();
  const auto front = shaft_strip(shaft, {}, marks_at(9, 180), {.width = 186});
  const auto behind = shaft_strip(shaft, {}, marks_at(9, 180), {.width = 186, .from_behind = true});
  ASSERT_EQ(front.stations.size(), behind.stations.size());
  for (std::size_t i = 0; i < front.stations.size(); ++i)
    EXPECT_NEAR(front.stations[i].from, 186 - behind.stations[i].to, kTight);
  const auto a = paths(front.list, "half-4-a");
  const auto b = paths(behind.list, "half-4-a");
  ASSERT_EQ(a.size(), 1U);
  ASSERT_EQ(b.size(), 1U);
  EXPECT_NEAR(middle_of(a[0]).x, 186 - middle_of(b[0]).x, kTight);
  EXPECT_NEAR(middle_of(a[0]).y, middle_of(b[0]).y, kTight);
}

TEST(ShaftStrip, PutsMarksAtTheirAzimuthAndHollowOnTheFarSide) {
  const Shaft shaft = nine();
  std::vector<RotorMarks> marks{{degrees(60), degrees(240)}};
  const auto strip = shaft_strip(shaft, {}, marks, {.width = 186});
  const Path a = paths(strip.list, "half-1-a").at(0);  // Azimuth 60°: up, and on the side of the eye.
  const Path b = paths(strip.list, "half-1-b").at(0);
  EXPECT_LT(middle_of(a).y, strip.axis_y);
  EXPECT_GT(middle_of(b).y, strip.axis_y);
  EXPECT_EQ(a.look.fill, Fill::ink);
  EXPECT_EQ(b.look.fill, Fill::sheet);
  EXPECT_LT(middle_of(a).x, middle_of(b).x);  // Half A on the A side.
  const auto behind = shaft_strip(shaft, {}, marks, {.width = 186, .from_behind = true});
  EXPECT_EQ(paths(behind.list, "half-1-a").at(0).look.fill, Fill::sheet);
}

TEST(ShaftStrip, TellsStatesByShape) {
  const Shaft shaft = nine();
  std::vector<StationState> states(shaft.stations().size());
  states[3].body = Body::off;
  states[5].renew = true;
  states[7].chosen = true;
  const auto strip = shaft_strip(shaft, states, {}, {.width = 186});
  const auto has = [&](int station, Fill fill) {
    const auto all = paths(strip.list, "station-" + std::to_string(station));
    return std::any_of(all.begin(), all.end(), [&](const Path& p) { return p.look.fill == fill; });
  };
  EXPECT_TRUE(has(9, Fill::solid));
  EXPECT_FALSE(has(3, Fill::solid));
  EXPECT_TRUE(has(3, Fill::sheet));
  EXPECT_TRUE(has(5, Fill::renew));
  EXPECT_TRUE(has(7, Fill::next));
}

class EndViewOnFlats : public testing::TestWithParam<int> {};

PairSize pair_with(int flats) {
  return {.flats = flats,
          .across_flats = millimetres(38.1),
          .half_length = millimetres(34),
          .rim_diameter = millimetres(66),
          .lean = degrees(5)};
}

// Source: engineering frames: flats count clockwise seen from end A, flat 1 up; azimuth 360/n a flat.
// Tolerance: 0.5°: figures stand on a base line, a little off their place.
TEST_P(EndViewOnFlats, CountClockwiseFromAAndTheOtherWayFromB) {
  const int n = GetParam();
  const PairSize pair = pair_with(n);
  const PairMarks marks{.flat_a = 1, .flat_b = 1 + n / 2};
  for (const End end : {End::a, End::b}) {
    const auto view = end_view(pair, marks, {.seen_from = end, .size = 400, .number_size = 3, .id = "r"});
    for (int flat = 1; flat <= n; ++flat) {
      Point p = text_at(view, "r-flat-" + std::to_string(flat));
      p.y -= 0.36 * 3;
      const double wanted = std::fmod(360.0 / n * (end == End::a ? flat - 1 : n + 1 - flat), 360.0);
      EXPECT_NEAR(turn_of(p, {200, 200}), wanted, 0.5) << flat;
    }
  }
}
INSTANTIATE_TEST_SUITE_P(Profiles, EndViewOnFlats, testing::Values(3, 4, 5, 6, 8, 12, 24));

// Source: closed form: mirroring in a view of width w takes x to w - x and leaves y.
// Tolerance: kTight.
// Every point of the view from B is the mirror image of a point of the view from A: near and far change places.
TEST(EndView, FromBMirrorsFromA) {
  const PairSize pair = pair_with(6);
  const PairMarks marks{.flat_a = 3, .flat_b = 5};
  const auto a = end_view(pair, marks, {.seen_from = End::a, .size = 40, .id = "r"});
  const auto b = end_view(pair, marks, {.seen_from = End::b, .size = 40, .id = "r"});
  for (const char* id : {"r-half-a", "r-half-b"}) {
    EXPECT_NEAR(arc(a, id).centre.x, 40 - arc(b, id).centre.x, kTight) << id;
    EXPECT_NEAR(arc(a, id).centre.y, arc(b, id).centre.y, kTight) << id;
    EXPECT_NE(arc(a, id).look.stroke, arc(b, id).look.stroke) << id;
  }
  for (const char* id : {"r-mark-a", "r-mark-b"}) {
    EXPECT_NEAR(middle_of(paths(a, id).back()).x, 40 - middle_of(paths(b, id).back()).x, kTight);
    EXPECT_NEAR(middle_of(paths(a, id).back()).y, middle_of(paths(b, id).back()).y, kTight);
  }
  EXPECT_EQ(paths(a, "r-mark-a").back().look.fill, Fill::ink);         // Near: filled.
  EXPECT_EQ(paths(b, "r-mark-a").back().look.stroke, Stroke::hidden);  // Far: dashed.
}

// Source: closed form: at the end of a half L long a seat leaning by a stands L tan a off the axis: 34 tan 5° = 2.9746 mm.
// Tolerance: last digit written; on the page kTight, at the scale of the rim.
TEST(EndView, SetsTheRimsOffCentreAwayFromTheirMarks) {
  const PairSize pair = pair_with(6);
  EXPECT_NEAR(rim_offset(pair).si() * 1e3, 2.9746, 5e-5);
  const auto view = end_view(pair, {.flat_a = 1, .flat_b = 4}, {.seen_from = End::a, .size = 40, .id = "r"});
  const Arc a = arc(view, "r-half-a");
  const Arc b = arc(view, "r-half-b");
  const double scale = a.radius / 33;
  EXPECT_NEAR(a.centre.y - 20, 34 * std::tan(5 * std::numbers::pi / 180) * scale, kTight);  // Mark up, rim down.
  EXPECT_NEAR(b.centre.y - 20, -34 * std::tan(5 * std::numbers::pi / 180) * scale, kTight);
  EXPECT_NEAR(a.centre.x, 20, kTight);
}

// Source: closed form: equal offsets half a turn apart cancel; two flats of six apart they leave half an offset.
// Tolerance: kTight for the good pair; the wrong one must be off by more than 0.3 mm, a line's width.
// A good pair shows its two rims along one line through both marks; a wrong one a twist: never both centres opposite.
TEST(EndView, ShowsAWrongPairAsATwist) {
  const PairSize pair = pair_with(6);
  const auto good = end_view(pair, {.flat_a = 2, .flat_b = 5}, {.size = 40, .id = "r"});
  const auto wrong = end_view(pair, {.flat_a = 2, .flat_b = 4}, {.size = 40, .id = "r"});
  const auto off = [](const DisplayList& v) {
    const Point a = arc(v, "r-half-a").centre;
    const Point b = arc(v, "r-half-b").centre;
    return std::hypot((a.x + b.x) / 2 - 20, (a.y + b.y) / 2 - 20);
  };
  EXPECT_NEAR(off(good), 0, kTight);
  EXPECT_GT(off(wrong), 0.3);
}

// Source: closed form: mirroring turns an arc from a to b into one from -b to -a.
// Tolerance: kTight.
TEST(EndView, PointsTheShorterWayToTheWantedFlat) {
  const PairSize pair = pair_with(6);
  const auto arrow = [&](int from, int to, End end) {
    const auto view =
        end_view(pair, {.flat_a = 4, .flat_b = from, .wanted_a = 4, .wanted_b = to}, {.seen_from = end, .size = 40});
    for (const Item& item : view.items)
      if (const auto* a = std::get_if<Arc>(&item); a != nullptr && a->look.ink == Ink::next) return *a;
    return Arc{};
  };
  const Arc back = arrow(2, 1, End::a);  // From flat 2 (60°) back to flat 1.
  EXPECT_GT(back.from, 0);
  EXPECT_LT(back.to, 60);
  const Arc over = arrow(6, 1, End::a);  // From 300° on over the top: never the long way.
  EXPECT_LT(over.to - over.from, 60);
  const Arc from_b = arrow(2, 1, End::b);
  EXPECT_NEAR(from_b.from, -back.to, kTight);
  EXPECT_NEAR(from_b.to, -back.from, kTight);
}

TEST(EndView, DrawsNoArrowWhereNothingIsWrong) {
  const auto view = end_view(pair_with(6), {.flat_a = 4, .flat_b = 1, .wanted_a = 4, .wanted_b = 1}, {.size = 40});
  for (const Item& item : view.items) {
    const auto* a = std::get_if<Arc>(&item);
    EXPECT_FALSE(a != nullptr && a->look.ink == Ink::next);
  }
}

// Source: the sample's own sizes: bearing 55 x 100 x 21, hub 150 outside.
// Tolerance: kTight.
TEST(HubSection, DrawsBearingAndHubAtOneScale) {
  const Shaft shaft = nine();
  const Station& station = shaft.stations()[static_cast<std::size_t>(shaft.station_of_rotor(1))];
  const auto section = hub_section(station, shaft.rotor(1), 50);
  const Extent bearing = extent(paths(section, "bearing").at(0).points);
  const double scale = (bearing.right - bearing.left) / 21;
  EXPECT_NEAR(bearing.bottom - bearing.top, 22.5 * scale, kTight);
  const std::vector<Point> hub = paths(section, "hub").at(0).points;
  const double axis = bearing.bottom + 27.5 * scale;
  const bool outside =
      std::any_of(hub.begin(), hub.end(), [&](Point p) { return std::abs(axis - p.y - 75 * scale) < kTight; });
  EXPECT_TRUE(outside);
  // The planes stand inside the bearing's width, near its edges.
  for (const char* plane : {"plane-A", "plane-B"}) {
    const double x = arc(section, plane).centre.x;
    const double from_edge = std::min(x - bearing.left, bearing.right - x) / scale;
    EXPECT_GT(from_edge, 0.5);
    EXPECT_LT(from_edge, 3);
  }
}

// Source: closed form: the middle of the limits stands in the middle of the bar.
// Tolerance: kTight.
TEST(GaugeBar, StandsToScaleAndShowsWhatLiesBeyondAtTheEdge) {
  DisplayList in;
  draw_gauge_bar(in, {.least = 10, .greatest = 20, .value = 15, .expanded = 1}, {0, 0, 100, 5});
  const auto dot =
      std::find_if(in.items.begin(), in.items.end(), [](const Item& i) { return std::holds_alternative<Arc>(i); });
  ASSERT_NE(dot, in.items.end());
  EXPECT_NEAR(std::get<Arc>(*dot).centre.x, 50, kTight);
  DisplayList out;
  draw_gauge_bar(out, {.least = 10, .greatest = 20, .value = 40, .expanded = 1}, {0, 0, 100, 5});
  EXPECT_TRUE(
      std::none_of(out.items.begin(), out.items.end(), [](const Item& i) { return std::holds_alternative<Arc>(i); }));
}

// Source: the sign's meaning: in lies between the stops, cannot tell on one, out beyond it.
// Tolerance: kTight.
TEST(Answers, AreThreeDifferentShapes) {
  std::map<Answer, double> dot;
  for (const Answer answer : {Answer::in, Answer::out, Answer::cannot_tell}) {
    DisplayList list;
    draw_answer(list, answer, {0, 0}, 10);
    for (const Item& item : list.items)
      if (const auto* a = std::get_if<Arc>(&item)) dot[answer] = a->centre.x;
  }
  constexpr double kStop = 8.8;  // Right stop of the sign.
  EXPECT_LT(dot[Answer::in], kStop);
  EXPECT_NEAR(dot[Answer::cannot_tell], kStop, kTight);
  EXPECT_GT(dot[Answer::out], kStop);
}

TEST(Append, MovesAndScalesEverything) {
  DisplayList part{10, 10, {}};
  Pen pen{part};
  pen.line({1, 2}, {3, 4});
  pen.circle({5, 5}, 2, kNarrow);
  pen.text({1, 1}, "x", {.size = 3});
  part.items.emplace_back(Code{{1, 1}, 18, "t"});
  DisplayList page{100, 100, {}};
  append(page, part, {10, 20}, 2);
  EXPECT_EQ(std::get<Path>(page.items[0]).points[1].x, 16);
  EXPECT_EQ(std::get<Arc>(page.items[1]).radius, 4);
  EXPECT_EQ(std::get<Text>(page.items[2]).size, 6);
  EXPECT_EQ(std::get<Code>(page.items[3]).at.y, 22);
}

}  // namespace
}  // namespace flatwise::drawing
