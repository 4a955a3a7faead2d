#include "core/fasteners/turn.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/metrology/quantiles.h"
#include "core/units/guards.h"

namespace flatwise::fasteners {
namespace {

constexpr double kFullTurn = 2 * std::numbers::pi;
constexpr int kMostFaces = 2000;
constexpr double kMostTurns = 5;  // A shaft of three metres, soft and slippery, takes two.

Stiffness in_line(Stiffness a, Stiffness b) { return Stiffness::from_si(1 / (1 / a.si() + 1 / b.si())); }

std::optional<Problem> wrong(const Turned& t) {
  if (auto p = not_above_nought("pitch", any(t.pitch))) return p;
  if (auto p = not_above_nought("shaft-stiffness", any(t.shaft))) return p;
  if (auto p = not_above_nought("stack-stiffness", any(t.stack))) return p;
  if (auto p = outside("stiffness-u", any_ratio(t.stiffness_u), 0, 0.5)) return p;
  if (auto p = negative("turned-u", any(t.turned_u))) return p;
  if (auto p = outside("turned", any(t.turned), t.turned_u.radians(), kMostTurns * kFullTurn)) return p;
  if (auto p = not_above_nought("turned", any(t.turned))) return p;
  if (auto p = negative("snug-least", any(t.snug.least))) return p;
  return outside("snug-greatest", any(t.snug.greatest), t.snug.least.si(), 1e12);
}

struct Amounts {
  double thread_um, nut_um, joint_um;
};
Amounts amounts(Faces faces) {
  constexpr Amounts kTable[] = {{3, 2.5, 1.5}, {3, 3, 2}, {3, 4, 3}};
  return kTable[static_cast<int>(faces)];
}

std::optional<Problem> wrong(const Settling& s) {
  if (auto p = outside("joints", any_count(s.joints), 0, kMostFaces)) return p;
  if (auto p = outside("nut-faces", any_count(s.nut_faces), s.joints == 0 ? 1 : 0, kMostFaces)) return p;
  if (auto p = outside("threads", any_count(s.threads), 1, 2)) return p;
  if (auto p = not_above_nought("pitch", any(s.pitch))) return p;
  if (auto p = not_above_nought("preload", any(s.preload))) return p;
  if (auto p = not_above_nought("shaft-stiffness", any(s.shaft))) return p;
  return not_above_nought("stack-stiffness", any(s.stack));
}

}  // namespace

Result<Stiffness> stiffness_of(Pressure youngs_modulus, std::span<const Sleeve> sleeves) {
  const Force unit = newtons(1);
  const auto give = stack_compression(unit, youngs_modulus, sleeves);
  if (!give) return tl::unexpected(give.error());
  return unit / *give;
}

Result<TurnedPreload> preload_from_turn(const Turned& t) {
  if (auto p = wrong(t)) return tl::unexpected(*std::move(p));
  const Stiffness both = in_line(t.shaft, t.stack);
  const auto added = [&](Angle angle, double share) {
    return share * (both * (angle.radians() / kFullTurn * t.pitch));
  };
  TurnedPreload out;
  out.advance = t.turned.radians() / kFullTurn * t.pitch;
  out.preload = 0.5 * (t.snug.least + t.snug.greatest) + added(t.turned, 1);
  out.least = t.snug.least + added(t.turned - t.turned_u, 1 - t.stiffness_u);
  out.greatest = t.snug.greatest + added(t.turned + t.turned_u, 1 + t.stiffness_u);
  out.share_of_snug = 0.5 * (t.snug.least + t.snug.greatest) / out.preload;
  return out;
}

Result<Settled> settling(const Settling& s) {
  if (auto p = wrong(s)) return tl::unexpected(*std::move(p));
  const Amounts um = amounts(s.faces);
  Settled out;
  out.amount = micrometres(um.thread_um * s.threads + um.nut_um * s.nut_faces + um.joint_um * s.joints);
  out.loss = std::min(in_line(s.shaft, s.stack) * out.amount, s.preload);
  out.left = 1 - out.loss / s.preload;
  out.turn = radians(kFullTurn * (out.amount / s.pitch));
  return out;
}

Result<RepulledJudged> judge_repulled(const Repulled& r) {
  if (auto p = negative("turned", any(r.turned))) return tl::unexpected(*std::move(p));
  if (auto p = negative("turned-u", any(r.turned_u))) return tl::unexpected(*std::move(p));
  if (auto p = negative("expected", any(r.expected))) return tl::unexpected(*std::move(p));
  if (auto p = outside("spread", any_ratio(r.spread), 0, 5)) return tl::unexpected(*std::move(p));
  RepulledJudged out;
  out.greatest = (1 + r.spread) * r.expected;
  if (r.turned + r.turned_u <= out.greatest) {
    out.state = RepulledState::held;
    out.answer = Answer::in;
  } else if (r.turned - r.turned_u > out.greatest) {
    out.state = RepulledState::lost;
    out.answer = Answer::out;
  }
  return out;
}

Result<OwnNutFactor> own_nut_factor(std::span<const KnownPull> pulls, Length diameter, NutFactor published) {
  if (auto p = not_above_nought("diameter", any(diameter))) return tl::unexpected(*std::move(p));
  OwnNutFactor out{.range = published};
  out.pulls = static_cast<int>(pulls.size());
  const double n = out.pulls;
  double sum = 0, squares = 0;
  for (const KnownPull& pull : pulls) {
    if (auto p = not_above_nought("torque", any(pull.torque))) return tl::unexpected(*std::move(p));
    if (auto p = not_above_nought("preload", any(pull.preload))) return tl::unexpected(*std::move(p));
    sum += pull.torque / (pull.preload * diameter);
  }
  if (out.pulls == 0) return out;
  out.mean = sum / n;
  for (const KnownPull& pull : pulls) {
    const double off = pull.torque / (pull.preload * diameter) - out.mean;
    squares += off * off;
  }
  if (out.pulls > 1) out.deviation = std::sqrt(squares / (n - 1));
  if (out.pulls < kPullsToNarrow) return out;
  const double half = metrology::student_quantile(0.975, n - 1) * out.deviation * std::sqrt(1 + 1 / n);
  if (!(out.mean - half > 0)) return out;
  out.narrowed = true;
  out.range = {out.mean - half, out.mean + half};
  return out;
}

}  // namespace flatwise::fasteners
