// press_curve.h: force over the ring's travel as it is pressed home, as a band; and what a curve that was read says.
//
//   const auto band = press_curve({.pressing = pressing, .lead = millimetres(2)}, travels);
//   const auto said = read_curve(points, {...});
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/fits/press.h"
#include "core/fits/yielding.h"

namespace flatwise::fits {

/// A ring on its way in. Travel counts from where the ring's edge meets the edge of the seat.
struct PressPath {
  Pressing pressing;  ///< Width: of the contact when the ring is home.
  Length lead;        ///< Lead of hub and ring together: over this travel the ring has no grip, after it the full fit.
  /// How much smaller the bore is at its far end than at its mouth, on diameter; < 0: bigger. Interference: in the middle.
  Length bore_taper{};
  bool hub_may_yield = true;  ///< False for a metal that cracks instead: plain Lame to the end.
};

struct CurvePoint {
  Length travel;
  Force least, greatest;
};

/// Force over travel, as a band.
///
/// Model      Every slice of the seat presses by its own interference (Lame, or partly plastic by Tresca where the hub
///            yields); the force is the friction of what is engaged: F(x) = mu pi d times the integral of p over the
///            engaged length x - lead, the width at most. Least: least friction and interference; greatest likewise.
/// Inputs     Travels >= 0; lead >= 0; |bore_taper| up to 1 mm.
/// Returns    One point a travel. With no taper and no yield the last is press_force()'s.
/// Refuses    What press_force() refuses; lead or travel negative; taper outside +-1 mm.
/// Accuracy   1e-6 of the greatest force (the integral). Slices do not help each other: near the ends real rings differ.
/// Source     Lame per slice; friction by definition; worked in docs/worked/W33-press-curve.md.
[[nodiscard]] Result<std::vector<CurvePoint>> press_curve(const PressPath& path, std::span<const Length> travels);

/// Work of pressing home against the greatest force.
[[nodiscard]] Result<Torque> press_work(const PressPath& path);

struct ReadPoint {
  Length travel;
  Force force;
};
struct CurveReading {
  std::vector<ReadPoint> points;  ///< Travels rising.
  Force expanded;                 ///< U of each force, k = 2.
};

enum class CurveSaid {
  inside,       ///< Every point in the band, no kink.
  below,        ///< Some point under the band by more than U.
  above,        ///< Over it.
  sudden_drop,  ///< The force let go: a crack, a slip, a ring that jumped straight.
  bends_down,   ///< It rises ever more slowly: the hub yields, or the bore gets bigger inside.
  bends_up,     ///< Ever faster: galling, a ring going askew, a bore that gets smaller.
  not_home,     ///< It ends before the whole width is in, and no stop was felt.
};
struct CurveRead {
  std::vector<CurveSaid> said;  ///< The worst first; `inside` alone where there is nothing else.
  Answer answer = Answer::in;
  std::optional<Length> first_outside;  ///< Travel of the first point beyond the band.
  bool stop_felt = false;               ///< The last step rose so steeply that the ring stands against its shoulder.
  Force home;                           ///< Force with the whole width in, before the stop.
  Length interference, expanded;  ///< Behind it, full (before flattening), on diameter, with the friction's range.
  double bend = 1.0;              ///< Slope of the later half over that of the earlier.
};
/// What a curve says: each point against the band, then its shape.
///
/// Model      Below or above: F +- U beyond the band. Shape, common practice: a drop of more than U and a tenth of the
///            greatest force between neighbours; a bend where the later half's slope is over 1.5 times the earlier's
///            or under 1/1.5 of it (slopes by least squares between lead and home); a stop where the last step is over
///            three times as steep as the curve. Interference: from the force at home, least to greatest friction: its
///            middle, and half its range with U as expanded.
/// Inputs     Four points or more after the lead; travels rising; forces >= 0.
/// Refuses    fits.curve_points, fits.curve_order (with the point's number), input.negative.
/// Source     [ISO14253-1] for the band; shape rules are common practice.
[[nodiscard]] Result<CurveRead> read_curve(const CurveReading& reading, const PressPath& path);

}  // namespace flatwise::fits
