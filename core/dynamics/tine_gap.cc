#include "core/dynamics/tine_gap.h"

#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "core/dynamics/check.h"
#include "core/units/guards.h"

namespace flatwise::dynamics {
namespace {

/// z over the ground of one tip circle, and its derivative by the angle, metres.
struct Swing {
  double radius_m, slope, azimuth_rad;

  [[nodiscard]] double place(double angle_rad) const {
    const double s = slope * std::cos(angle_rad - azimuth_rad);
    return -radius_m * s / std::sqrt(1 + s * s);
  }
  [[nodiscard]] double rate(double angle_rad) const {
    const double s = slope * std::cos(angle_rad - azimuth_rad), root = std::sqrt(1 + s * s);
    return radius_m * slope * std::sin(angle_rad - azimuth_rad) / (root * root * root);
  }
};

std::optional<Problem> wrong_row(const TineRow& row, bool first) {
  if (auto p = not_above_nought(first ? "tip-radius" : "other-tip-radius", any(row.tip_radius))) return p;
  if (auto p = negative(first ? "tine-width" : "other-tine-width", any(row.tine_width))) return p;
  if (auto p = wrong_lean(row.lean, first ? "lean" : "other-lean")) return p;
  return not_finite("between", any(row.azimuth));
}

/// Greatest closing: local maxima of a smooth periodic function, each refined where the derivative changes sign.
std::pair<double, double> greatest_closing(const Swing& a, const Swing& b) {
  constexpr int kGrid = 64;
  const auto closing = [&](double angle) { return a.place(angle) - b.place(angle); };
  const auto rate = [&](double angle) { return a.rate(angle) - b.rate(angle); };
  const auto angle_of = [](int i) { return 2 * std::numbers::pi * i / kGrid; };
  double best = closing(0), best_at = 0;
  double rate_before = rate(0);
  for (int i = 1; i <= kGrid; ++i) {
    const double rate_here = rate(angle_of(i));
    if (rate_before > 0 && rate_here <= 0) {
      double low = angle_of(i - 1), high = angle_of(i);
      for (int halving = 0; halving < 26; ++halving) {
        const double middle = 0.5 * (low + high);
        (rate(middle) > 0 ? low : high) = middle;
      }
      const double here = closing(0.5 * (low + high));
      if (here > best) {
        best = here;
        best_at = 0.5 * (low + high);
      }
    }
    rate_before = rate_here;
  }
  return {best, best_at};
}

}  // namespace

Result<TineGap> tine_gap(Length pitch, const TineRow& a, const TineRow& b) {
  if (auto p = not_above_nought("pitch", any(pitch))) return tl::unexpected(*std::move(p));
  if (auto p = wrong_row(a, true)) return tl::unexpected(*std::move(p));
  if (auto p = wrong_row(b, false)) return tl::unexpected(*std::move(p));
  const auto swing = [](const TineRow& row) {
    return Swing{row.tip_radius.si(), std::tan(row.lean.radians()), row.azimuth.radians()};
  };
  const auto [closing_m, at_rad] = greatest_closing(swing(a), swing(b));
  const Length closing = metres(closing_m);
  return TineGap{pitch - closing - 0.5 * (a.tine_width + b.tine_width), closing, radians(at_rad)};
}

std::vector<NeighbourGap> tine_gaps(const Shaft& shaft, std::span<const Angle> tilt) {
  CORE_CHECK(static_cast<int>(tilt.size()) == shaft.rotor_count());
  std::vector<NeighbourGap> gaps;
  const auto row = [&](int number) {
    const Rotor& rotor = shaft.rotor(number);
    return TineRow{rotor.tip_radius, rotor.tine_width, rotor.lean, tilt[static_cast<std::size_t>(number - 1)]};
  };
  for (int number = 1; number < shaft.rotor_count(); ++number) {
    const auto gap =
        tine_gap(shaft.rotor_position(number + 1) - shaft.rotor_position(number), row(number), row(number + 1));
    CORE_CHECK(gap.has_value());  // A Shaft's rotors were checked when it was made.
    gaps.push_back({number, *gap});
  }
  return gaps;
}

}  // namespace flatwise::dynamics
