#include "core/bearings/turn_life.h"

#include <algorithm>
#include <cmath>

#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

constexpr double kMostViscosity = 4;
constexpr double kStill = 1e-6;  ///< Of the shaft's speed: slower than that the rings do not turn against each other.

std::optional<Problem> cannot_live(const TurnLifeTask& t) {
  if (auto bad = not_above_nought("dynamic_rating", any(t.ratings.dynamic))) return bad;
  if (auto bad = not_above_nought("fatigue_limit", any(t.ratings.fatigue))) return bad;
  if (auto bad = outside("viscosity_ratio", any_ratio(t.lubrication.viscosity_ratio), 0.1, 100)) return bad;
  const double shaft = std::abs(t.shaft.radians_per_second());
  const double relative = std::abs(relative_speed(t.shaft, t.turn.rotor.lean, t.spin).radians_per_second());
  if (std::isfinite(relative) && relative > kStill * shaft && relative > 0) return std::nullopt;
  return Problem{Code{"bearings.rings_stand"}, "spin", {}, {{"spin", any(t.spin)}}, std::nullopt};
}

double factor_at(const TurnLifeTask& t, double contamination, Force reference) {
  const double kappa = std::min(t.lubrication.viscosity_ratio, kMostViscosity);
  return life_factor(kappa, contamination * (t.ratings.fatigue / reference));
}

TurnLifeTask faster(TurnLifeTask t) {
  t.shaft = radians_per_second(1.1 * t.shaft.radians_per_second());
  t.spin = radians_per_second(1.1 * t.spin.radians_per_second());
  t.turn.rotor.force = 1.21 * t.turn.rotor.force;
  t.turn.rotor.couple = 1.21 * t.turn.rotor.couple;
  return t;
}
TurnLifeTask more_leaning(TurnLifeTask t) {
  const double before = t.turn.rotor.lean.radians(), after = before + degrees(1).radians();
  t.turn.rotor.lean = radians(after);
  if (!(before > 0)) return t;
  t.turn.rotor.force = std::sin(after) / std::sin(before) * t.turn.rotor.force;
  t.turn.rotor.couple = std::sin(2 * after) / std::sin(2 * before) * t.turn.rotor.couple;
  return t;
}

TurnLifeTask changed(TurnLifeTask t, Influenced what) {
  switch (what) {
    case Influenced::speed:
      return faster(t);
    case Influenced::lean:
      return more_leaning(t);
    case Influenced::clearance:
      t.turn.at.clearance = t.turn.at.clearance + micrometres(10);
      return t;
    case Influenced::ground:
      t.turn.ground = {1.1 * t.turn.ground.up, 1.1 * t.turn.ground.drag, 1.1 * t.turn.ground.along};
      return t;
    case Influenced::viscosity:
      t.lubrication.viscosity_ratio = std::max(0.1, 0.5 * t.lubrication.viscosity_ratio);
      return t;
    case Influenced::cleanliness:
      t.lubrication.cleanliness = static_cast<Cleanliness>(
          std::min(static_cast<int>(t.lubrication.cleanliness) + 1, static_cast<int>(Cleanliness::severe)));
      return t;
  }
  return t;
}

double hours_in_the_middle(const TurnLifeTask& t, const TurnLife& life) {
  const double middle = 0.5 * (life.contamination.least + life.contamination.greatest);
  return life.basic.si() * factor_at(t, middle, life.reference);
}

TurnLife life_of(const TurnLifeTask& t, Turn turn) {
  TurnLife life;
  life.turn = std::move(turn);
  life.relative = relative_speed(t.shaft, t.turn.rotor.lean, t.spin);
  life.million_turns = reference_life(ball_ratings(t.turn.at.bearing, t.ratings.dynamic), life.turn.wear);
  life.reference = reference_load(t.ratings.dynamic, life.million_turns);
  life.basic = running_time(life.million_turns, life.relative);
  life.contamination = contamination(t.lubrication.cleanliness, t.turn.at.bearing.pitch);
  life.least_factor = factor_at(t, life.contamination.least, life.reference);
  life.greatest_factor = factor_at(t, life.contamination.greatest, life.reference);
  life.least = life.least_factor * life.basic;
  life.greatest = life.greatest_factor * life.basic;
  return life;
}

/// Oil and dirt press no ball, and there is no more of a load that there is none of: the turn stays as it was.
bool same_turn(const TurnLifeTask& t, Influenced what) {
  const GroundLoad& ground = t.turn.ground;
  const bool no_ground = ground.up == Force{} && ground.drag == Force{} && ground.along == Force{};
  return what == Influenced::viscosity || what == Influenced::cleanliness || (what == Influenced::ground && no_ground);
}

}  // namespace

Result<TurnLife> turn_life(const TurnLifeTask& t) {
  if (auto bad = cannot_live(t)) return tl::unexpected(*std::move(bad));
  auto turn = one_turn(t.turn);
  if (!turn) return tl::unexpected(turn.error());
  return life_of(t, *std::move(turn));
}

std::vector<Influence> influences(const TurnLifeTask& t, const TurnLife& as_given) {
  const double hours = hours_in_the_middle(t, as_given);
  std::vector<Influence> all;
  for (const auto what : {Influenced::speed, Influenced::lean, Influenced::clearance, Influenced::ground,
                          Influenced::viscosity, Influenced::cleanliness}) {
    const TurnLifeTask other = changed(t, what);
    const auto life = same_turn(t, what) ? Result<TurnLife>{life_of(other, as_given.turn)} : turn_life(other);
    if (life) all.push_back({what, hours_in_the_middle(other, *life) / hours});
  }
  std::ranges::stable_sort(all, std::greater{}, [](const Influence& i) { return std::abs(std::log(i.factor)); });
  return all;
}

}  // namespace flatwise::bearings
