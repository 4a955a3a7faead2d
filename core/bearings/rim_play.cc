#include "core/bearings/rim_play.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace flatwise::bearings {
namespace {

// Least, mean and greatest over the cage's position, 6 to 20 balls: the greatest theta for which some shift of the ring along the
// shaft (d) and across it (u) keeps (d + theta s_j)^2 + u . n_j <= 1 at every ball. Clearance and size drop out of it.
constexpr std::array<TiltFactor, kMostBalls - kFewestBalls + 1> kFactors{{{1.0000, 1.0492, 1.1547},
                                                                          {1.0535, 1.0615, 1.0775},
                                                                          {1.0000, 1.0268, 1.0824},
                                                                          {1.0316, 1.0365, 1.0465},
                                                                          {1.0000, 1.0169, 1.0515},
                                                                          {1.0209, 1.0242, 1.0309},
                                                                          {1.0000, 1.0116, 1.0353},
                                                                          {1.0149, 1.0173, 1.0221},
                                                                          {1.0000, 1.0085, 1.0257},
                                                                          {1.0111, 1.0129, 1.0166},
                                                                          {1.0000, 1.0065, 1.0196},
                                                                          {1.0086, 1.0100, 1.0129},
                                                                          {1.0000, 1.0051, 1.0154},
                                                                          {1.0069, 1.0080, 1.0103},
                                                                          {1.0000, 1.0041, 1.0125}}};

Problem refused(Code code, std::string_view field, Args args) {
  return {code, std::string{field}, {}, std::move(args), std::nullopt};
}

/// cos a0 of the free contact angle.
double cosine(const BallBearing& b, Length radial) { return 1.0 - radial.si() / (2.0 * groove_reach(b).si()); }

int balls_that_fill(const BallBearing& b) {
  const double half_arc = std::asin(std::clamp(b.ball / b.pitch, 0.0, 1.0));
  if (!(half_arc > 0)) return 0;
  const double balls = 1.0 + kFillingDegrees * std::numbers::pi / 180.0 / (2.0 * half_arc);
  return static_cast<int>(std::lround(std::min(balls, 1e6)));
}

std::optional<Problem> balls_reach_out(const BallBearing& b, Length bore, Length outside) {
  if (b.pitch - b.ball > bore && b.pitch + b.ball < outside) return std::nullopt;
  return refused(Code{"bearings.balls_reach_out"}, "ball",
                 {{"ball", any(b.ball)}, {"pitch", any(b.pitch)}, {"bore", any(bore)}, {"outside", any(outside)}});
}

double tilt_of(const BallBearing& b, double radial, double factor) {
  const double reach = groove_reach(b).si();
  const double c = 1.0 - radial / (2.0 * reach);
  const double circle = b.pitch.si() / 2 + (b.inner_groove.si() - b.ball.si() / 2) * c;
  return reach * std::sqrt(std::max(0.0, 1.0 - c * c)) / circle * (1.0 + reach * c / (2.0 * circle)) * factor;
}

/// The clearance at which a tilt that grows with it up to 2 A, where the grooves let go of the balls, is the one looked for.
template <class TiltAt>
Result<Length> clearance_where(const BallBearing& b, Angle tilt, TiltAt tilt_at) {
  double low = 0, high = 2.0 * groove_reach(b).si();
  const double most = tilt_at(high);
  if (!(tilt.radians() >= 0) || !(tilt.radians() < most))
    return tl::unexpected(
        refused(Code{"bearings.tilt_impossible"}, "swing", {{"tilt", any(tilt)}, {"most", any(radians(most))}}));
  while (high - low > 1e-12) {
    const double middle = 0.5 * (low + high);
    (tilt_at(middle) < tilt.radians() ? low : high) = middle;
  }
  return metres(0.5 * (low + high));
}

}  // namespace

std::optional<Problem> problem_with(const BallBearing& b) {
  if (b.balls < kFewestBalls || b.balls > kMostBalls)
    return refused(Code{"bearings.balls_out_of_range"}, "balls",
                   {{"count", b.balls}, {"fewest", kFewestBalls}, {"most", kMostBalls}});
  const auto inside = [](Length v, double least, double greatest) { return v.si() > least && v.si() < greatest; };
  if (!inside(b.ball, 0, 1)) return refused(Code{"bearings.no_such_size"}, "ball", {{"value", any(b.ball)}});
  if (!inside(b.pitch, 2 * b.ball.si(), 10))
    return refused(Code{"bearings.no_such_size"}, "pitch", {{"value", any(b.pitch)}});
  for (const auto& [groove, field] :
       {std::pair{b.inner_groove, "inner_groove"}, std::pair{b.outer_groove, "outer_groove"}})
    if (!inside(groove, b.ball.si() / 2, b.ball.si()))
      return refused(Code{"bearings.groove_does_not_hold"}, field, {{"value", any(groove)}, {"ball", any(b.ball)}});
  return std::nullopt;
}

std::optional<Problem> balls_overlap(const BallBearing& b) {
  const double room = b.pitch.si() * std::sin(std::numbers::pi / b.balls);
  if (room > b.ball.si()) return std::nullopt;
  return refused(Code{"bearings.balls_overlap"}, "balls",
                 {{"count", b.balls}, {"ball", any(b.ball)}, {"room", any(metres(room))}});
}

Result<BallBearing> estimated_bearing(Length bore, Length outside, const BearingInside& known) {
  if (!(bore > Length{}) || !(outside > bore) || !std::isfinite(outside.si()))
    return tl::unexpected(
        refused(Code{"bearings.no_such_ring"}, "bearing_outside", {{"bore", any(bore)}, {"outside", any(outside)}}));
  BallBearing b;
  b.ball = known.ball_diameter.value_or(kBallShare * (outside - bore));
  b.pitch = known.pitch_diameter.value_or(0.5 * (bore + outside));
  b.inner_groove = known.groove_inner.value_or(kGrooveShare) * b.ball;
  b.outer_groove = known.groove_outer.value_or(kGrooveShare) * b.ball;
  b.balls = known.balls.value_or(balls_that_fill(b));
  if (auto bad = problem_with(b)) return tl::unexpected(*std::move(bad));
  if (auto bad = balls_overlap(b)) return tl::unexpected(*std::move(bad));
  if (auto bad = balls_reach_out(b, bore, outside)) return tl::unexpected(*std::move(bad));
  return b;
}

Length estimated_ring_inside(Length bore, Length outside) {
  return 0.5 * (bore + outside) + kBallShare * (outside - bore);
}

Length groove_reach(const BallBearing& b) { return b.inner_groove + b.outer_groove - b.ball; }

Length groove_circle(const BallBearing& b, Length radial) {
  return 0.5 * b.pitch + cosine(b, radial) * (b.inner_groove - 0.5 * b.ball);
}

Result<Length> axial_clearance(const BallBearing& b, Length radial) {
  const Length most = 2.0 * groove_reach(b);
  if (!(radial >= Length{}) || !(radial < most))
    return tl::unexpected(refused(Code{"bearings.clearance_impossible"}, "clearance",
                                  {{"value", any(radial)}, {"least", any(Length{})}, {"most", any(most)}}));
  const double c = cosine(b, radial);
  return most * std::sqrt(1.0 - c * c);
}

TiltFactor tilt_factor(int balls) {
  CORE_CHECK(balls >= kFewestBalls && balls <= kMostBalls);
  return kFactors[static_cast<std::size_t>(balls - kFewestBalls)];
}

TiltFactor tilt_factor_about(int balls) {
  TiltFactor about = tilt_factor(balls);
  for (int z = std::max(kFewestBalls, balls - 1); z <= std::min(kMostBalls, balls + 1); ++z) {
    about.least = std::min(about.least, tilt_factor(z).least);
    about.greatest = std::max(about.greatest, tilt_factor(z).greatest);
  }
  return about;
}

Result<Angle> free_tilt(const BallBearing& b, Length radial, double factor) {
  if (const auto axial = axial_clearance(b, radial); !axial) return tl::unexpected(axial.error());
  return radians(tilt_of(b, radial.si(), factor));
}

Result<Length> clearance_of(const BallBearing& b, Angle tilt, double factor) {
  return clearance_where(b, tilt, [&](double radial) { return tilt_of(b, radial, factor); });
}

double hanging_share(const Hanging& hanging, Length radial, Angle tilt) {
  CORE_CHECK(radial > Length{} && tilt.radians() >= 0 && hanging.push_over_weight >= 0);
  const double pushed = hanging.push_over_weight * hanging.radius.si() * tilt.radians() / radial.si();
  double low = 0, high = std::numbers::pi / 4;  // cos 2b falls and sin b grows: one root.
  for (int halving = 0; halving < 50; ++halving) {
    const double middle = 0.5 * (low + high);
    (std::cos(2 * middle) > pushed * std::sin(middle) ? low : high) = middle;
  }
  return std::cos(0.5 * (low + high));
}

// The share falls as the clearance grows, but never so fast that the tilt would fall: per cent for per cent at most a ninth of it.
Result<Length> clearance_of_hanging(const BallBearing& b, Angle tilt, double factor, const Hanging& hanging) {
  return clearance_where(b, tilt, [&](double radial) {
    const double carried = tilt_of(b, radial, factor);
    return carried * hanging_share(hanging, metres(radial), radians(carried));
  });
}

double dial_factor(Hub hub, const BallBearing& b, Length radial, Length radius) {
  if (hub == Hub::centred) return 1.0;
  const double share = groove_circle(b, radial) / radius;
  return std::sqrt(1.0 + share * share);
}

}  // namespace flatwise::bearings
