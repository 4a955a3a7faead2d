#include "core/fits/press_curve.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "core/units/guards.h"

namespace flatwise::fits {
namespace {

constexpr int kSlices = 64;
constexpr double kMostTaper = 1e-3;  // m
constexpr double kDropShare = 0.1;   // Of the greatest force.
constexpr double kBend = 1.5;
constexpr double kStop = 3.0;  // Times as steep as the curve.
constexpr std::size_t kFewestPoints = 4;
constexpr double kHome = 0.98;  // Of the width: what counts as all in.

std::optional<Problem> wrong(const PressPath& path) {
  if (auto p = negative("lead", any(path.lead))) return p;
  return outside("bore_taper", any(path.bore_taper), -kMostTaper, kMostTaper);
}

/// Pressure of a slice with this interference, full on diameter.
Pressure slice_pressure(const PressPath& path, Length interference) {
  const Pressing& pressing = path.pressing;
  const Length left = std::max(after_flattening(interference, pressing.roughness_loss), Length{});
  if (!path.hub_may_yield) return *contact_pressure(pressing.joint, left);
  return press_into_yielding({pressing.joint, pressing.hub_yield}, left)->pressure;
}

/// Newtons a unit of friction with the ring's first `engaged` of the seat's length in: the far end of the bore is met last.
double grip_n(const PressPath& path, Length interference, Length engaged) {
  if (!(engaged > Length{})) return 0;
  const double seat_m = path.pressing.width.si(), length_m = engaged.si();
  double sum = 0;
  for (int i = 0; i <= kSlices; ++i) {
    const double weight = i == 0 || i == kSlices ? 1 : i % 2 == 1 ? 4 : 2;
    const double depth = length_m * i / kSlices / seat_m;
    sum += weight * slice_pressure(path, interference + (depth - 0.5) * path.bore_taper).si();
  }
  return std::numbers::pi * path.pressing.joint.diameter.si() * sum * length_m / (3 * kSlices);
}

Length engaged_at(const PressPath& path, Length travel) {
  return std::clamp(travel - path.lead, Length{}, path.pressing.width);
}

CurvePoint point_at(const PressPath& path, Length travel) {
  const Length engaged = engaged_at(path, travel);
  const Pressing& pressing = path.pressing;
  return {travel, newtons(pressing.friction.least * grip_n(path, pressing.interference.least, engaged)),
          newtons(pressing.friction.greatest * grip_n(path, pressing.interference.greatest, engaged))};
}

}  // namespace

Result<std::vector<CurvePoint>> press_curve(const PressPath& path, std::span<const Length> travels) {
  if (const auto force = press_force(path.pressing); !force) return tl::unexpected(force.error());
  if (auto p = wrong(path)) return tl::unexpected(*std::move(p));
  std::vector<CurvePoint> out;
  for (const Length travel : travels) {
    if (auto p = negative("travel", any(travel))) return tl::unexpected(*std::move(p));
    out.push_back(point_at(path, travel));
  }
  return out;
}

Result<Torque> press_work(const PressPath& path) {
  if (const auto force = press_force(path.pressing); !force) return tl::unexpected(force.error());
  if (auto p = wrong(path)) return tl::unexpected(*std::move(p));
  double sum = 0;
  for (int i = 0; i <= kSlices; ++i) {
    const double weight = i == 0 || i == kSlices ? 1 : i % 2 == 1 ? 4 : 2;
    const Length travel = path.lead + (static_cast<double>(i) / kSlices) * path.pressing.width;
    sum += weight * point_at(path, travel).greatest.si();
  }
  return newton_metres(sum * path.pressing.width.si() / (3 * kSlices));
}

namespace {

std::optional<Problem> wrong_points(const CurveReading& reading, const PressPath& path) {
  if (auto p = negative("force_uncertainty", any(reading.expanded))) return p;
  std::size_t after_lead = 0;
  for (std::size_t i = 0; i < reading.points.size(); ++i) {
    const ReadPoint& point = reading.points[i];
    if (auto p = negative("travel", any(point.travel))) return p;
    if (auto p = negative("force", any(point.force))) return p;
    if (i > 0 && !(point.travel > reading.points[i - 1].travel))
      return Problem{Code{"fits.curve_order"},
                     "travel",
                     {},
                     {{"point", static_cast<std::int64_t>(i + 1)}, {"travel", any(point.travel)}},
                     std::nullopt};
    after_lead += point.travel > path.lead ? 1 : 0;
  }
  if (after_lead >= kFewestPoints) return std::nullopt;
  return Problem{
      Code{"fits.curve_points"},
      "travel",
      {},
      {{"points", static_cast<std::int64_t>(after_lead)}, {"least", static_cast<std::int64_t>(kFewestPoints)}},
      std::nullopt};
}

/// Least-squares slope, N/m; none for points that do not spread.
std::optional<double> slope_of(std::span<const ReadPoint> points) {
  if (points.size() < 2) return std::nullopt;
  double x = 0, y = 0;
  for (const ReadPoint& p : points) x += p.travel.si(), y += p.force.si();
  const auto n = static_cast<double>(points.size());
  double across = 0, along = 0;
  for (const ReadPoint& p : points) {
    const double dx = p.travel.si() - x / n;
    across += dx * (p.force.si() - y / n);
    along += dx * dx;
  }
  if (!(along > 0)) return std::nullopt;
  return across / along;
}

/// Points between lead and the whole width, without a last one that stands against the shoulder.
std::vector<ReadPoint> on_the_way(const CurveReading& reading, const PressPath& path, bool stop_felt) {
  std::vector<ReadPoint> out;
  const Length home = path.lead + path.pressing.width;
  const std::size_t end = reading.points.size() - (stop_felt ? 1 : 0);
  for (std::size_t i = 0; i < end; ++i)
    if (reading.points[i].travel >= path.lead && reading.points[i].travel <= home) out.push_back(reading.points[i]);
  return out;
}

bool stops(const std::vector<ReadPoint>& points) {
  const auto n = points.size();
  const auto before = slope_of(std::span{points}.first(n - 1));
  const double last =
      (points[n - 1].force - points[n - 2].force).si() / (points[n - 1].travel - points[n - 2].travel).si();
  return before && *before > 0 && last > kStop * *before;
}

bool drops(const CurveReading& reading) {
  Force greatest;
  for (const ReadPoint& p : reading.points) greatest = std::max(greatest, p.force);
  for (std::size_t i = 1; i < reading.points.size(); ++i) {
    const Force fall = reading.points[i - 1].force - reading.points[i].force;
    if (fall > reading.expanded && fall > kDropShare * greatest) return true;
  }
  return false;
}

void judge_shape(CurveRead& read, const std::vector<ReadPoint>& way, Force expanded) {
  const std::size_t half = way.size() / 2;
  if (way.size() < kFewestPoints) return;
  const auto early = slope_of(std::span{way}.first(half + 1)), late = slope_of(std::span{way}.subspan(half));
  if (!early || !late || !(*early > 0)) return;
  read.bend = *late / *early;
  // A bend that the gauge's own uncertainty could draw is none.
  const double sure = std::abs(*late - *early) * (way.back().travel - way.front().travel).si() / 2;
  if (!(sure > 2 * expanded.si())) return;
  if (read.bend > kBend) read.said.push_back(CurveSaid::bends_up);
  if (read.bend < 1 / kBend) read.said.push_back(CurveSaid::bends_down);
}

void judge_band(CurveRead& read, const CurveReading& reading, const PressPath& path, std::size_t end) {
  bool below = false, above = false, near = false;
  for (std::size_t i = 0; i < end; ++i) {
    const ReadPoint& p = reading.points[i];
    const CurvePoint band = point_at(path, p.travel);
    const bool under = p.force + reading.expanded<band.least, over = p.force - reading.expanded> band.greatest;
    near = near || p.force - reading.expanded < band.least || p.force + reading.expanded > band.greatest;
    if ((under || over) && !read.first_outside) read.first_outside = p.travel;
    below = below || under;
    above = above || over;
  }
  if (above) read.said.push_back(CurveSaid::above);
  if (below) read.said.push_back(CurveSaid::below);
  if (near) read.answer = Answer::cannot_tell;
}

/// Interference that gives this force with this friction, by the slices' own relation: bisection, since they may yield.
Length interference_behind(const PressPath& path, Force force, double friction, Length engaged) {
  if (!(force > Force{}) || !(engaged > Length{})) return Length{};
  double low = 0, high = 0.02 * path.pressing.joint.diameter.si();
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (low + high);
    (friction * grip_n(path, metres(middle), engaged) < force.si() ? low : high) = middle;
  }
  return metres(0.5 * (low + high));
}

void tell_interference(CurveRead& read, const CurveReading& reading, const PressPath& path, const ReadPoint& last) {
  const FrictionRange& mu = path.pressing.friction;
  const Length engaged = engaged_at(path, last.travel);
  const Length least = interference_behind(path, last.force - reading.expanded, mu.greatest, engaged);
  const Length greatest = interference_behind(path, last.force + reading.expanded, mu.least, engaged);
  read.home = last.force;
  read.interference = 0.5 * (least + greatest);
  read.expanded = 0.5 * (greatest - least);
}

}  // namespace

Result<CurveRead> read_curve(const CurveReading& reading, const PressPath& path) {
  if (const auto force = press_force(path.pressing); !force) return tl::unexpected(force.error());
  if (auto p = wrong(path)) return tl::unexpected(*std::move(p));
  if (auto p = wrong_points(reading, path)) return tl::unexpected(*std::move(p));
  CurveRead read;
  read.stop_felt = stops(reading.points);
  const std::vector<ReadPoint> way = on_the_way(reading, path, read.stop_felt);
  if (drops(reading)) read.said.push_back(CurveSaid::sudden_drop);
  judge_band(read, reading, path, reading.points.size() - (read.stop_felt ? 1 : 0));
  judge_shape(read, way, reading.expanded);
  const bool all_in = engaged_at(path, reading.points.back().travel) >= kHome * path.pressing.width;
  if (!all_in && !read.stop_felt) read.said.push_back(CurveSaid::not_home);
  if (!way.empty()) tell_interference(read, reading, path, way.back());
  if (!read.said.empty()) read.answer = Answer::out;
  if (read.said.empty()) read.said.push_back(CurveSaid::inside);
  return read;
}

}  // namespace flatwise::fits
