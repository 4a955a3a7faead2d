#include "core/bearings/turn_life.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

constexpr double kStill = 1e-6;  ///< Of the shaft's speed: slower than that the rings do not turn against each other.

/// Speed times pitch diameter up to which deep groove bearings are run at all: a million r/min times mm. Common practice.
constexpr double kMostSpeedTimesPitch = 1e6 * 1e-3 * 2 * std::numbers::pi / 60;  // rad/s m

std::optional<Problem> too_fast(const TurnLifeTask& t, double relative) {
  const double most = kMostSpeedTimesPitch / t.turn.at.bearing.pitch.si();
  if (!(relative > most)) return std::nullopt;
  return Problem{Code{"bearings.beyond_speed"},
                 "shaft",
                 {},
                 {{"value", any(radians_per_second(relative))}, {"greatest", any(radians_per_second(most))}},
                 std::nullopt};
}

std::optional<Problem> cannot_live(const TurnLifeTask& t) {
  if (auto bad = not_above_nought("dynamic_rating", any(t.ratings.dynamic))) return bad;
  if (auto bad = not_above_nought("fatigue_limit", any(t.ratings.fatigue))) return bad;
  const double shaft = std::abs(t.shaft.radians_per_second());
  const double relative = std::abs(relative_speed(t.shaft, t.turn.rotor.lean, t.spin).radians_per_second());
  if (std::isfinite(relative) && relative > kStill * shaft && relative > 0) return too_fast(t, relative);
  return Problem{Code{"bearings.rings_stand"}, "spin", {}, {{"spin", any(t.spin)}}, std::nullopt};
}

double factor_at(const TurnLifeTask& t, const TurnLife& life, double contamination) {
  const double kappa = std::min(life.viscosity_ratio, kMostViscosity);
  return life_factor(kappa, contamination * (t.ratings.fatigue / life.reference));
}

/// Half the viscosity; where a_ISO ends before that, what is still in it.
Lubrication thinner(Lubrication oil, double ratio) {
  const double share = std::max(0.5, kLeastViscosity / ratio * (1 + 1e-12));  // Not under the end by a rounding.
  oil.viscosity_ratio = share * oil.viscosity_ratio;
  if (oil.viscosity) oil.viscosity = share * *oil.viscosity;
  return oil;
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

TurnLifeTask changed(TurnLifeTask t, const TurnLife& as_given, Influenced what) {
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
      t.lubrication = thinner(t.lubrication, as_given.viscosity_ratio);
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
  return life.basic.si() * factor_at(t, life, middle);
}

Result<TurnLife> life_of(const TurnLifeTask& t, Turn turn) {
  TurnLife life;
  life.turn = std::move(turn);
  life.relative = relative_speed(t.shaft, t.turn.rotor.lean, t.spin);
  const auto kappa = viscosity_ratio(t.lubrication, life.relative, t.turn.at.bearing.pitch);
  if (!kappa) return tl::unexpected(kappa.error());
  life.viscosity_ratio = *kappa;
  life.reliability_factor = reliability_factor(t.reliability);
  life.million_turns = reference_life(ball_ratings(t.turn.at.bearing, t.ratings.dynamic), life.turn.wear);
  life.reference = reference_load(t.ratings.dynamic, life.million_turns);
  life.basic = running_time(life.million_turns, life.relative);
  life.contamination = contamination(t.lubrication.cleanliness, t.turn.at.bearing.pitch);
  life.least_factor = factor_at(t, life, life.contamination.least);
  life.greatest_factor = factor_at(t, life, life.contamination.greatest);
  life.least = life.reliability_factor * life.least_factor * life.basic;
  life.greatest = life.reliability_factor * life.greatest_factor * life.basic;
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
    const TurnLifeTask other = changed(t, as_given, what);
    const auto life = same_turn(t, what) ? life_of(other, as_given.turn) : turn_life(other);
    if (life) all.push_back({what, hours_in_the_middle(other, *life) / hours});
  }
  std::ranges::stable_sort(all, std::greater{}, [](const Influence& i) { return std::abs(std::log(i.factor)); });
  return all;
}

}  // namespace flatwise::bearings
