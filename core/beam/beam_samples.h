// beam_samples.h: beams for tests, invented or of a text book. Header only; not part of the library.
#pragma once

#include <cmath>

#include "core/beam/bending.h"
#include "core/beam/critical.h"

namespace flatwise::beam {

inline const Elastic kSteel{gigapascals(207), 0.3, Density::from_si(7850)};

/// A bar of one section on hangers; Timoshenko's shear made so stiff that it is a plain (Euler-Bernoulli) beam where asked.
inline Beam bar(Length length, Section section, std::vector<Hanger> hangers) {
  return {{{length, section}}, kSteel, std::move(hangers), {}, {}, {}};
}
inline Section without_shear(Section s) {
  s.shear_p = 1e-9;
  s.shear_q = 0;
  return s;
}
/// A slender hexagon: shear and rotary inertia are under 1e-5 of its lowest modes.
inline Section slender() { return polygon_section(6, millimetres(50)).value(); }

inline std::vector<double> rad_s(const CriticalSpeeds& c) {
  std::vector<double> v;
  for (const AngularSpeed s : c.speeds) v.push_back(s.radians_per_second());
  return v;
}

/// Ninety-six elements, twenty-four rotors, three hangers that give: the shape of the speed test. Invented.
inline Beam long_twenty_four() {
  Beam b = bar(metres(4.8), tube_section({millimetres(60), Length{}}).value(),
               {{metres(0.1), Stiffness::from_si(2e7)},
                {metres(2.4), Stiffness::from_si(2e7)},
                {metres(4.7), Stiffness::from_si(2e7)}});
  b.longest_element = millimetres(50);
  for (int i = 0; i < 24; ++i)
    b.bodies.push_back({metres(0.15 + 0.2 * i - (i > 11 ? 0.1 : 0)), kilograms(8), millimetres(3),
                        kilogram_square_metres(0.06), kilogram_square_metres(0.1), -0.004, radians_per_second(7)});
  return b;
}

}  // namespace flatwise::beam
