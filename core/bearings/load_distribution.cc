#include "core/bearings/load_distribution.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <numbers>

#include "core/bearings/balance_search.h"
#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

constexpr int kMostSteps = 40;
constexpr double kSteepest = 0.7071067811865476;  ///< Cosine of kMostContactAngle.
constexpr double kMostPreload = 0.1;              ///< Of A: how far balls may be pressed together.
constexpr double kCarries = 0.05;                 ///< Of the hardest pressed ball's load.
constexpr double kRounding = 1e-13;               ///< Of the greatest ball load.
constexpr double kGoodMisfit = 3e-10;             ///< Where the quick steps ran out: near enough not to search.
constexpr double kLeastLoad =
    1e-11;  ///< Of c A^1.5, about a micronewton: below it places cannot be told apart in a double.
constexpr double kStopMisfit = 1e-10;  ///< Newton's last step from here on lands at the rounding.

Problem refused(Code code, std::string_view field, Args args) {
  return {code, std::string{field}, {}, std::move(args), std::nullopt};
}

/// In the kernel's measure: forces over `unit`, couples over `unit` and the circle; tilt as lift by sine and cosine, over A.
struct Scaled {
  double load[5];
  double size;
};
Scaled scaled(const LoadedBearing& b, const RingLoad& l) {
  const double force = 1 / b.unit, couple = force / b.circle;
  Scaled s{{l.x.si() * force, l.y.si() * force, l.z.si() * force, l.about_x.si() * couple, -l.about_y.si() * couple},
           0};
  for (const double part : s.load) s.size = std::max(s.size, std::abs(part));
  return s;
}
void set_shift(const LoadedBearing& b, const RingShift& shift, double* at) {
  const double lift = b.circle / b.reach;
  at[0] = shift.x.si() / b.reach;
  at[1] = shift.y.si() / b.reach;
  at[2] = shift.z.si() / b.reach;
  at[3] = shift.about_x.radians() * lift;
  at[4] = -shift.about_y.radians() * lift;
}
RingShift shift_of(const LoadedBearing& b, const double* at) {
  const double lift = b.circle / b.reach;
  return {metres(at[0] * b.reach), metres(at[1] * b.reach), metres(at[2] * b.reach), radians(at[3] / lift),
          radians(-at[4] / lift)};
}

/// Cube root to a twentieth, by a third of the exponent: enough for a start, and no call.
double rough_cube_root(double x) {
  return std::bit_cast<double>(std::bit_cast<std::uint64_t>(x) / 3 + 0x2A9F7893782DA1CEULL);
}
double length_of(double a, double b) { return std::sqrt(a * a + b * b); }

/// Lift along the axis at which a ball, its grooves one over the other, pushes along with p: d^1.5 sin a = p, by its two limits.
double lift_for(double p, double gap) {
  const double root = std::sqrt(p);
  if (gap < 0) return std::min(p / (-gap * std::sqrt(-gap)), 1.2 * root);
  const double wide = 0.84 * root;  // d² sqrt 2 = p
  const double cube = gap > 0 ? rough_cube_root(p * p / (2 * gap)) : wide;
  const double squeeze = std::min(wide, cube);
  return std::sqrt(2 * (gap + squeeze));
}

/// Squeeze of the hardest pressed ball as without play (Stribeck).
double radial_squeeze(double across, int balls) {
  const double share = 4.37 * across / balls;
  return rough_cube_root(share * share);
}

/// Free to tilt: each part of the load as if it stood alone. More balls carry so than will in the end, and Newton's steps come down from
/// there without overshooting.
void start_free(const Scaled& s, double gap, int balls, double* at) {
  const double across = length_of(s.load[0], s.load[1]), couple = length_of(s.load[3], s.load[4]);
  if (across > 0) {
    const double shift = (radial_squeeze(across, balls) + gap) / across;
    at[0] = shift * s.load[0];
    at[1] = shift * s.load[1];
  }
  if (s.load[2] != 0) at[2] = std::copysign(lift_for(std::abs(s.load[2]) / balls, gap), s.load[2]);
  if (couple > 0) {
    const double lift = lift_for(2.5 * couple / balls, gap) / couple;
    at[3] = lift * s.load[3];
    at[4] = lift * s.load[4];
  }
}

/// Tilt given in at[3] and at[4]: the hardest pressed ball as above, its contact angle from the loads, and not steeper than the axial load
/// alone would press it. The numbers are those with which the fewest steps follow; any start gets there.
void start_tilted(const Scaled& s, double gap, int balls, double* at) {
  const double across = length_of(s.load[0], s.load[1]), along = std::abs(s.load[2]);
  const double most = along > 0 ? lift_for(1.5 * along / balls, gap) : 0;
  if (!(across > 0)) {
    at[2] = std::copysign(most, s.load[2]);
    return;
  }
  const double cosine = s.load[0] / across, sine = s.load[1] / across, slope = along / across;
  const double lift = most > 0 ? most * slope / length_of(most, slope) : 0;
  at[2] = std::copysign(lift, s.load[2]) - 0.5 * (at[3] * sine + at[4] * cosine);
  const double squeeze = radial_squeeze(across, balls);
  const double shift = std::max(squeeze + gap - 0.5 * lift * lift, 0.2 * squeeze);
  at[0] = shift * cosine;
  at[1] = shift * sine;
}

std::optional<Problem> cannot_load(const RingLoad& l, double size) {
  const std::pair<std::string_view, AnyQuantity> parts[] = {
      {"x", any(l.x)}, {"y", any(l.y)}, {"z", any(l.z)}, {"about_x", any(l.about_x)}, {"about_y", any(l.about_y)}};
  for (const auto& [field, value] : parts)
    if (!std::isfinite(value.si)) return refused(Code{"input.not_finite"}, field, {});
  if (size > 0 && size < kLeastLoad) return refused(Code{"bearings.no_load"}, "x", {});
  return std::nullopt;
}

/// Degrees, among the balls that carry a share of what the hardest pressed one does: one that barely touches high up harms nothing.
double steepest_angle(const LoadedBearing& b, const double* at, double greatest) {
  double most = 0;
  const double counts = kCarries * b.unit * greatest * std::sqrt(greatest);
  for (const BallLoad& ball : ball_loads(b, shift_of(b, at)))
    if (ball.load.si() > counts) most = std::max(most, std::abs(ball.contact.degrees()));
  return most;
}

std::optional<Problem> beyond_model(const LoadedBearing& b, const Balance& r) {
  if (!(r.greatest > 0)) return refused(Code{"bearings.no_load"}, "x", {});
  const double angle = r.steepest_cosine < kSteepest ? steepest_angle(b, r.at, r.greatest) : 0;
  if (angle > kMostContactAngle)
    return refused(Code{"bearings.ball_climbs_out"}, "z",
                   {{"angle", any(degrees(angle))}, {"most", any(degrees(kMostContactAngle))}});
  if (r.greatest <= b.stress_limit) return std::nullopt;
  const Force load = newtons(b.unit * r.greatest * std::sqrt(r.greatest));
  return refused(Code{"bearings.beyond_elastic"}, "x",
                 {{"stress", any(contact_stress(b.contacts.inner, load))}, {"most", any(pascals(kMostStress))}});
}

Rest rest_of(const LoadedBearing& b, const Balance& r, double size) {
  const double balls = b.at.bearing.balls;
  const double cubed = b.unit * b.unit * b.unit;
  const double couple = b.unit * b.circle;
  return {.shift = shift_of(b, r.at),
          .held = {newtons(r.held[0] * b.unit), newtons(r.held[1] * b.unit), newtons(r.held[2] * b.unit),
                   newton_metres(r.held[3] * couple), newton_metres(-r.held[4] * couple)},
          .greatest = newtons(b.unit * r.greatest * std::sqrt(r.greatest)),
          .inner_cubes = cubed * r.inner_sum / balls,
          .outer_powers = cubed * b.unit_root * r.outer_sum / balls,
          .misfit = size > 0 ? r.misfit / size : 0,
          .steps = r.steps};
}

/// Misfit that counts as none. Preload and a given tilt press the balls against each other: what rounding leaves of that stands however
/// small the load is.
double none_of(const Balance& r, double size, double share) {
  return std::max(share * size, kRounding * r.greatest * std::sqrt(r.greatest));
}

Result<Rest> settled(const LoadedBearing& b, const Scaled& s, int unknowns, Balance& r) {
  BalanceTask task{b.gap, {}, kStopMisfit * s.size, kMostSteps};
  std::copy(std::begin(s.load), std::end(s.load), task.load);
  const Balance start = r;
  const auto width = lanes::widest();
  (unknowns == 3 ? FLATWISE_PICK(width, balance_three) : FLATWISE_PICK(width, balance_five))(b.ring, task, r);
  if (!(r.misfit <= none_of(r, s.size, kGoodMisfit))) {
    r = start;
    if (!search_rest(b.ring, task, unknowns, r) && !(r.misfit <= none_of(r, s.size, kMostMisfit)))
      return tl::unexpected(refused(Code{"bearings.did_not_settle"}, "x", {{"misfit", any_ratio(r.misfit / s.size)}}));
  }
  if (auto bad = beyond_model(b, r)) return tl::unexpected(*std::move(bad));
  return rest_of(b, r, s.size);
}

/// `at` as set_shift() leaves it.
double load_in_direction(const LoadedBearing& b, const double* at, double cosine, double sine) {
  const double u = at[0] * cosine + at[1] * sine - b.gap, v = at[2] + at[3] * sine + at[4] * cosine;
  const double excess = u * (u + 2) + v * v;
  const double squeeze = std::max(0.0, excess / (std::sqrt(1 + excess) + 1));
  return b.unit * squeeze * std::sqrt(squeeze);
}

}  // namespace

Result<LoadedBearing> loaded_bearing(const BearingAtWork& at, const PointContacts& contacts, Angle cage) {
  if (auto bad = problem_with(at.bearing)) return tl::unexpected(*std::move(bad));
  LoadedBearing b{.at = at, .contacts = contacts};
  b.reach = groove_reach(at.bearing).si();
  const double clearance = at.clearance.si();
  if (!(clearance < 2 * b.reach) || !(clearance >= -kMostPreload * b.reach))
    return tl::unexpected(refused(Code{"bearings.clearance_impossible"}, "clearance",
                                  {{"value", any(at.clearance)},
                                   {"least", any(metres(-kMostPreload * b.reach))},
                                   {"most", any(metres(2 * b.reach))}}));
  b.gap = 0.5 * clearance / b.reach;
  b.circle = groove_circle(at.bearing, at.clearance).si();
  b.unit = contacts.together * b.reach * std::sqrt(b.reach);
  b.unit_root = std::cbrt(b.unit);
  const double hardest = load_at_stress(contacts.inner, pascals(kMostStress)).si() / b.unit;
  b.stress_limit = std::cbrt(hardest * hardest);
  b.ring.blocks = (at.bearing.balls + 7) / 8;
  for (int j = 0; j < at.bearing.balls; ++j) {
    const double azimuth = cage.radians() + 2 * std::numbers::pi * j / at.bearing.balls;
    b.ring.cosine[j] = std::cos(azimuth);
    b.ring.sine[j] = std::sin(azimuth);
    b.ring.weight[j] = 1;
  }
  return b;
}

Result<Rest> rest_under(const LoadedBearing& b, const RingLoad& load) {
  const Scaled s = scaled(b, load);
  if (auto bad = cannot_load(load, s.size)) return tl::unexpected(*std::move(bad));
  Balance r{};
  start_free(s, b.gap, b.at.bearing.balls, r.at);
  return settled(b, s, 5, r);
}

Result<Rest> rest_under(const LoadedBearing& b, const RingLoad& load, const RingShift& from) {
  const Scaled s = scaled(b, load);
  if (auto bad = cannot_load(load, s.size)) return tl::unexpected(*std::move(bad));
  Balance r{};
  set_shift(b, from, r.at);
  return settled(b, s, 5, r);
}

Result<Rest> rest_tilted(const LoadedBearing& b, const RingLoad& load, const RingTilt& tilt) {
  Scaled s = scaled(b, {load.x, load.y, load.z, {}, {}});
  if (auto bad = cannot_load(load, s.size)) return tl::unexpected(*std::move(bad));
  if (!std::isfinite(tilt.about_x.radians()) || !std::isfinite(tilt.about_y.radians()))
    return tl::unexpected(refused(Code{"input.not_finite"}, "tilt", {}));
  Balance r{};
  set_shift(b, {{}, {}, {}, tilt.about_x, tilt.about_y}, r.at);
  start_tilted(s, b.gap, b.at.bearing.balls, r.at);
  return settled(b, s, 3, r);
}

Force load_at(const LoadedBearing& b, const RingShift& shift, Angle azimuth) {
  double at[5];
  set_shift(b, shift, at);
  return newtons(load_in_direction(b, at, std::cos(azimuth.radians()), std::sin(azimuth.radians())));
}

void loads_round(const LoadedBearing& b, const RingShift& shift, const Round& places, std::span<Force> loads) {
  CORE_CHECK(places.cosine.size() == loads.size() && places.sine.size() == loads.size());
  double at[5];
  set_shift(b, shift, at);
  for (std::size_t i = 0; i < loads.size(); ++i)
    loads[i] = newtons(load_in_direction(b, at, places.cosine[i], places.sine[i]));
}

std::vector<BallLoad> ball_loads(const LoadedBearing& b, const RingShift& shift) {
  double at[5];
  set_shift(b, shift, at);
  std::vector<BallLoad> all;
  for (int j = 0; j < b.at.bearing.balls; ++j) {
    const double c = b.ring.cosine[j], s = b.ring.sine[j];
    const Angle azimuth = radians(std::atan2(s, c));
    const double u = 1 + at[0] * c + at[1] * s - b.gap, v = at[2] + at[3] * s + at[4] * c;
    all.push_back({azimuth, newtons(load_in_direction(b, at, c, s)), radians(std::atan2(v, u))});
  }
  return all;
}

}  // namespace flatwise::bearings
