#include "core/fasteners/clamped.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/units/guards.h"

namespace flatwise::fasteners {
namespace {

constexpr double kFullTurn = 2 * std::numbers::pi;
constexpr int kLeastFlats = 3, kMostFlats = 24;

bool alike(const ClampedPart& a, const ClampedPart& b) {
  return a.outside == b.outside && a.bore == b.bore && a.youngs_modulus == b.youngs_modulus;
}

void add_part(const Shaft& shaft, int index, std::vector<ClampedPart>& to) {
  const Clamped& rest = shaft.spec().clamped;
  const Station& station = shaft.stations()[static_cast<std::size_t>(index)];
  const Tube& own = station.clamped;
  const ClampedPart part{
      station.length.nominal, own.outside ? *own.outside : *rest.tube.outside, own.bore ? own.bore : rest.tube.bore,
      own.youngs_modulus ? *own.youngs_modulus : rest.tube.youngs_modulus.value_or(kSteelModulus), index};
  const auto like = std::ranges::find_if(to, [&](const ClampedPart& p) { return alike(p, part); });
  if (like == to.end()) return to.push_back(part);
  like->length = like->length + part.length;
}

Area polygon_area(int flats, Length across) {
  return flats / 4.0 * std::tan(std::numbers::pi / flats) * (across * across);
}

std::optional<Problem> wrong(const TurnAsked& a) {
  if (auto p = not_above_nought("torque", any(a.torque))) return p;
  if (auto p = not_above_nought("snug", any(a.snug))) return p;
  if (auto p = outside("snug", any(a.snug), 0, std::nextafter(a.torque.si(), 0))) return p;
  if (auto p = outside("torque-u", any(a.torque_u), 0, std::nextafter(a.torque.si(), 0))) return p;
  if (auto p = outside("snug-u", any_ratio(a.snug_u), 0, 1)) return p;
  if (auto p = not_above_nought("diameter", any(a.diameter))) return p;
  if (auto p = not_above_nought("pitch", any(a.pitch))) return p;
  if (auto p = not_above_nought("nut-factor-least", any_ratio(a.factor.least))) return p;
  if (auto p = outside("nut-factor-greatest", any_ratio(a.factor.greatest), a.factor.least, 1e6)) return p;
  if (auto p = negative("before-least", any(a.before.least))) return p;
  if (auto p = outside("before-greatest", any(a.before.greatest), a.before.least.si(), 1e12)) return p;
  if (auto p = not_above_nought("shaft-stiffness", any(a.springs.shaft))) return p;
  if (auto p = not_above_nought("stack-stiffness", any(a.springs.stack))) return p;
  return outside("stiffness-u", any_ratio(a.stiffness_u), 0, 0.5);
}

/// One set of values out of the ranges.
struct OneCase {
  Torque torque, snug;
  double factor = 1;
  Force before;
  double stiffness_share = 1;
};
Angle turn_of(const TurnAsked& a, const OneCase& c) {
  const Force reached = c.torque / (c.factor * a.diameter), start = c.snug / (c.factor * a.diameter);
  const Force added = reached - std::max(start, c.before);
  if (!(added > Force{})) return {};
  const double give = 1 / a.springs.shaft.si() + 1 / a.springs.stack.si();
  return radians(kFullTurn * added.si() * give / c.stiffness_share / a.pitch.si());
}

}  // namespace

ClampedRun clamped_by(const Shaft& shaft, const Nut& nut) {
  const auto& stations = shaft.stations();
  const auto at = std::ranges::find_if(stations, [&](const Station& s) {
    return s.nut >= 0 && shaft.spec().nuts[static_cast<std::size_t>(s.nut)].end == nut.end;
  });
  CORE_CHECK(at != stations.end());
  const Clamped& rest = shaft.spec().clamped;
  ClampedRun run;
  const int step = nut.end == End::a ? 1 : -1, count = static_cast<int>(stations.size());
  int faces = 0, i = static_cast<int>(at - stations.begin()) + step;
  for (; i >= 0 && i < count; i += step) {
    const Station& station = stations[static_cast<std::size_t>(i)];
    if (station.obstacle || station.kind == StationKind::nut) break;
    faces += station.kind == StationKind::rotor ? 2 : 1;
    if (!station.clamped.outside && !rest.tube.outside)
      run.untold.push_back(i);
    else
      add_part(shaft, i, run.parts);
  }
  if (i >= 0 && i < count && stations[static_cast<std::size_t>(i)].kind == StationKind::nut) {
    run.other = &shaft.spec().nuts[static_cast<std::size_t>(stations[static_cast<std::size_t>(i)].nut)];
    run.nut_faces = run.threads = 2;
  }
  // The last part meets a nut, whose face is counted by itself, or what stays on the shaft.
  run.joints = std::max(0, run.other != nullptr ? faces - 1 : faces);
  if (!run.untold.empty()) run.parts.clear();
  return run;
}

Result<ClampedSprings> clamped_springs(const PolygonBar& bar, std::span<const ClampedPart> parts) {
  if (auto p = outside("flats", any_count(bar.flats), kLeastFlats, kMostFlats)) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("across", any(bar.across_flats))) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("youngs-modulus", any(bar.youngs_modulus))) return tl::unexpected(*std::move(p));
  if (parts.empty()) return tl::unexpected(Problem{Code{"fasteners.no_sleeve"}, "length", {}, {}, std::nullopt});
  const Area inside = polygon_area(bar.flats, bar.across_flats);
  Length length;
  double give = 0;
  for (const ClampedPart& part : parts) {
    if (auto p = not_above_nought("length", any(part.length))) return tl::unexpected(*std::move(p));
    if (auto p = not_above_nought("part-modulus", any(part.youngs_modulus))) return tl::unexpected(*std::move(p));
    const Area hole = part.bore ? std::numbers::pi / 4 * (*part.bore * *part.bore) : inside;
    const Area wall = std::numbers::pi / 4 * (part.outside * part.outside) - hole;
    const Length bore = part.bore.value_or(bar.across_flats);
    if (!(wall > Area{}) || !(bore >= bar.across_flats))
      return tl::unexpected(Problem{Code{"fasteners.sleeve_bore"},
                                    "outside",
                                    {},
                                    {{"bore", any(bore)}, {"outside", any(part.outside)}},
                                    std::nullopt});
    length = length + part.length;
    give += part.length.si() / (part.youngs_modulus.si() * wall.si());
  }
  return ClampedSprings{Stiffness::from_si(bar.youngs_modulus.si() * inside.si() / length.si()),
                        Stiffness::from_si(1 / give)};
}

Result<TurnExpected> turn_expected(const TurnAsked& a) {
  if (auto p = wrong(a)) return tl::unexpected(*std::move(p));
  const double middle = 0.5 * (a.factor.least + a.factor.greatest);
  TurnExpected out;
  out.expected = turn_of(a, {a.torque, a.snug, middle, 0.5 * (a.before.least + a.before.greatest), 1});
  out.least = turn_of(
      a, {a.torque - a.torque_u, (1 + a.snug_u) * a.snug, a.factor.greatest, a.before.greatest, 1 + a.stiffness_u});
  out.greatest =
      turn_of(a, {a.torque + a.torque_u, (1 - a.snug_u) * a.snug, a.factor.least, a.before.least, 1 - a.stiffness_u});
  return out;
}

Result<TurnJudged> judge_turned(const TurnExpected& band, Angle turned, Angle expanded) {
  if (auto p = negative("turned", any(turned))) return tl::unexpected(*std::move(p));
  if (auto p = negative("turned-u", any(expanded))) return tl::unexpected(*std::move(p));
  if (auto p = negative("least", any(band.least))) return tl::unexpected(*std::move(p));
  if (auto p = outside("greatest", any(band.greatest), band.least.radians(), 1e9)) return tl::unexpected(*std::move(p));
  if (turned - expanded > band.greatest) return TurnJudged{TurnedState::too_much, Answer::out};
  if (turned + expanded < band.least) return TurnJudged{TurnedState::too_little, Answer::out};
  if (turned - expanded >= band.least && turned + expanded <= band.greatest)
    return TurnJudged{TurnedState::explained, Answer::in};
  return TurnJudged{};
}

}  // namespace flatwise::fasteners
