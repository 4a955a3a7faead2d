#include "core/dynamics/pattern_mistakes.h"

#include <cmath>
#include <numbers>

#include "core/dynamics/tine_gap.h"

namespace flatwise::dynamics {
namespace {

/// How one rotor stands, mistaken or not.
struct Stand {
  Angle azimuth, lean;
};

Stand with_mistake(const Shaft& shaft, const TimingMistake& m, int place) {
  const int n = shaft.flats();
  const Angle lean = shaft.rotor(m.rotor).lean, right = azimuth_of_flat(place + 1, n);
  const Angle out = radians(2 * std::numbers::pi * m.flats / n);
  if (m.kind == TimingMistake::Kind::rotor_turned) return {right + out, lean};
  if (2 * m.flats == n) return {right, Angle{}};
  return {right + 0.5 * out, radians(std::atan(std::tan(lean.radians()) * std::cos(0.5 * out.radians())))};
}

RotatingSet set_of(const Shaft& shaft, int number, const Stand& stand) {
  const Rotor& r = shaft.rotor(number);
  const AngularSpeed speed = shaft.spec().speed;
  const auto force = rotating_force({speed, stand.lean, r.mass, r.mass_offset});
  const auto couple = rotating_couple({speed, stand.lean, r.across, r.along, spin_of(shaft, number)});
  CORE_CHECK(force && couple);  // A Shaft's rotors were checked when it was made.
  return {shaft.rotor_position(number), stand.azimuth, *force, *couple};
}

/// Gap between the mistaken rotor and one neighbour that is right.
Length gap_between(const Shaft& shaft, std::span<const int> places, int number, const Stand& stand, int neighbour) {
  const auto row = [&](int rotor) {
    const Rotor& r = shaft.rotor(rotor);
    const Stand right{azimuth_of_flat(places[static_cast<std::size_t>(rotor - 1)] + 1, shaft.flats()), r.lean};
    const Stand& as = rotor == number ? stand : right;
    return TineRow{r.tip_radius, r.tine_width, as.lean, as.azimuth};
  };
  const int a = std::min(number, neighbour), b = std::max(number, neighbour);
  const auto gap = tine_gap(shaft.rotor_position(b) - shaft.rotor_position(a), row(a), row(b));
  CORE_CHECK(gap.has_value());  // A Shaft's rotors were checked when it was made.
  return gap->gap;
}

void take_gaps(const Shaft& shaft, std::span<const int> places, const Stand& stand, TimingMistake& m) {
  for (const int neighbour : {m.rotor - 1, m.rotor + 1}) {
    if (neighbour < 1 || neighbour > shaft.rotor_count()) continue;
    const Length gap = gap_between(shaft, places, m.rotor, stand, neighbour);
    if (m.gap_to != 0 && !(gap < m.least_gap)) continue;
    m.least_gap = gap;
    m.gap_to = neighbour;
  }
  m.strikes = m.least_gap < Length{};
}

}  // namespace

std::vector<TimingMistake> timing_mistakes(const Shaft& shaft, std::span<const int> places) {
  CORE_CHECK(static_cast<int>(places.size()) == shaft.rotor_count() && shaft.rotor_count() > 1);
  const int n = shaft.flats();
  const Planes planes = planes_of(shaft);
  const std::vector<RotatingSet> right = rotating_sets(shaft, tilt_of(places, n));
  const Force before = resultants(right, planes).larger;
  std::vector<TimingMistake> out;
  for (int rotor = 1; rotor <= shaft.rotor_count(); ++rotor)
    for (const auto kind : {TimingMistake::Kind::half_out, TimingMistake::Kind::rotor_turned})
      for (int flats = -((n - 1) / 2); flats <= n / 2; ++flats) {
        if (flats == 0) continue;
        TimingMistake m{.kind = kind, .rotor = rotor, .flats = flats, .left = {}, .rise = {}, .least_gap = {}};
        const auto at = static_cast<std::size_t>(rotor - 1);
        const Stand stand = with_mistake(shaft, m, places[at]);
        std::vector<RotatingSet> sets = right;
        sets[at] = set_of(shaft, rotor, stand);
        m.left = resultants(sets, planes);
        m.rise = m.left.larger - before;
        take_gaps(shaft, places, stand, m);
        out.push_back(std::move(m));
      }
  return out;
}

}  // namespace flatwise::dynamics
