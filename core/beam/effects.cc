#include "core/beam/effects.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace flatwise::beam {
namespace {

using Phasors = std::vector<Phasor>;

Phasors phasors_of(const Bent& bent) {
  Phasors out;
  for (const Reaction& r : bent.reactions) out.push_back(std::polar(r.size.si(), r.direction.radians()));
  return out;
}

/// What a mistake makes of a rotor's share.
Phasor changed(Mistake mistake, int flats_out, int flats) {
  const double angle = 2 * std::numbers::pi * flats_out / flats;
  if (mistake == Mistake::rotor_out) return std::polar(1.0, angle);
  return std::cos(angle / 2) * std::polar(1.0, angle / 2);
}

TimingEffect effect_of(const Phasors& whole, const Phasors& share, Phasor change) {
  TimingEffect effect;
  double greatest = -1, rise = -std::numeric_limits<double>::infinity();
  for (std::size_t h = 0; h < whole.size(); ++h) {
    const double with = std::abs(whole[h] + (change - 1.0) * share[h]);
    rise = std::max(rise, with - std::abs(whole[h]));
    if (with <= greatest) continue;
    greatest = with;
    effect.hanger = static_cast<int>(h);
  }
  effect.greatest = Force::from_si(greatest);
  effect.rise = Force::from_si(rise);
  return effect;
}

void add_mistakes(const Phasors& whole, const Phasors& share, int rotor, int flats, std::vector<TimingEffect>& to) {
  for (const Mistake mistake : {Mistake::half_out, Mistake::rotor_out})
    for (int k = 1 - (flats + 1) / 2; k <= flats / 2; ++k) {
      if (k == 0) continue;
      TimingEffect effect = effect_of(whole, share, changed(mistake, k, flats));
      effect.rotor = rotor;
      effect.mistake = mistake;
      effect.flats_out = k;
      to.push_back(effect);
    }
}

}  // namespace

Result<Effects> effects_of(const Mesh& mesh, std::span<const Turning> turning, AngularSpeed speed,
                           const Indexed& indexed) {
  CORE_CHECK(indexed.rotors >= 0 && static_cast<std::size_t>(indexed.rotors) <= turning.size() && indexed.flats >= 2);
  const Result<Bent> all = bent_turning(mesh, turning, speed);
  if (!all) return tl::unexpected(all.error());
  Effects out;
  for (const Reaction& r : all->reactions) out.as_built.push_back(r.size);
  const Phasors whole = phasors_of(*all);
  for (std::size_t i = 0; i < turning.size(); ++i) {
    const Result<Bent> alone = bent_turning(mesh, turning.subspan(i, 1), speed);
    if (!alone) return tl::unexpected(alone.error());
    std::vector<Share> shares;
    for (std::size_t h = 0; h < alone->reactions.size(); ++h)
      shares.push_back({static_cast<int>(h), alone->reactions[h].size, alone->reactions[h].direction});
    out.shares.push_back(std::move(shares));
    if (static_cast<int>(i) < indexed.rotors)
      add_mistakes(whole, phasors_of(*alone), static_cast<int>(i) + 1, indexed.flats, out.mistakes);
  }
  std::ranges::stable_sort(out.mistakes, std::greater<>{}, &TimingEffect::rise);
  return out;
}

}  // namespace flatwise::beam
