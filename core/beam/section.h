// section.h: cross-sections of a shaft: regular polygon, round bar, tube.
//
//   auto hexagon = polygon_section(6, millimetres(38.1));
//   Pressure bending = moment / hexagon->corner_modulus;
#pragma once

#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::beam {

inline constexpr int kMostFlats = 24;

/// What a beam needs to know of its section. Every axis through the centre is alike: I is the same about all of them.
struct Section {
  Area area;
  SecondMoment second_moment;
  SectionModulus corner_modulus;   ///< Bending stress where the moment's plane holds a corner: the greatest there is.
  SectionModulus flat_modulus;     ///< The same at the middle of a flat. Round: equal to the corner's.
  SecondMoment torsion_constant;   ///< K: twist per length is T/(G K).
  SectionModulus torsion_modulus;  ///< Greatest torsional stress is T over this; polygon: at the middle of a flat.
  double shear_p = 7.0 / 6;        ///< Shear factor is (1 + v)/(p + q v), v Poisson's ratio.
  double shear_q = 1.0;
  Length corner_radius;  ///< Centre to corner; half the outside diameter of round ones.

  [[nodiscard]] double shear_factor(double poisson) const { return (1 + poisson) / (shear_p + shear_q * poisson); }
};

/// A bar of `flats` equal flats, 3 to 24.
///
/// Model      Sharp corners, no keyway. Across flats is twice the distance from centre to flat, for odd numbers too.
/// Refuses    Flats outside 3 to 24, length not above nought.
/// Accuracy   Area, I and moduli 8 eps; K and torsion modulus 1e-9; shear factor 1e-3.
/// Source     [Polygon-torsion], [Cowper]; tests/data/beam_sections.py.
[[nodiscard]] Result<Section> polygon_section(int flats, Length across_flats);

struct TubeOf {
  Length outside;  ///< Diameter.
  Length inside;   ///< Diameter; nought is a solid bar.
};
/// Round bar or tube.
///
/// Refuses    Outside not above nought, inside negative or not under the outside.
/// Accuracy   8 eps of the closed form.
/// Source     [Cowper] for the shear factor, of any wall thickness.
[[nodiscard]] Result<Section> tube_section(const TubeOf& tube);

}  // namespace flatwise::beam
