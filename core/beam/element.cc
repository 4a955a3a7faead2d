#include "core/beam/mesh.h"

namespace flatwise::beam {
namespace {

/// 12 E I/(k G A l²): how much softer shear makes it.
double shear_share(const Element& e) { return 12 * e.bending_n_m2 / (e.shear_n * e.length_m * e.length_m); }

/// From the upper triangle of a beam element that is the same seen from either end.
ElementMatrix mirrored(double uu, double us, double uu2, double us2, double ss, double ss2) {
  return {{{uu, us, uu2, -us2}, {us, ss, us2, ss2}, {uu2, us2, uu, -us}, {-us2, ss2, -us, ss}}};
}

}  // namespace

ElementMatrix stiffness_of(const Element& e) {
  const double phi = shear_share(e), l = e.length_m, s = e.bending_n_m2 / (l * l * l * (1 + phi));
  // Out at A against slope at B is + 6 l, out at B against slope at A - 6 l.
  return mirrored(12 * s, 6 * l * s, -12 * s, -6 * l * s, (4 + phi) * l * l * s, (2 - phi) * l * l * s);
}

ElementMatrix mass_of(const Element& e, double rotary) {
  const double p = shear_share(e), p2 = p * p, l = e.length_m, shrink = 1 / ((1 + p) * (1 + p));
  const double m = e.mass_kg_m * l * shrink, r = rotary * e.rotary_kg_m / l * shrink;
  const double uu = m * (13.0 / 35 + 7 * p / 10 + p2 / 3) + r * 1.2;
  const double us = m * l * (11.0 / 210 + 11 * p / 120 + p2 / 24) + r * l * (0.1 - p / 2);
  const double uu2 = m * (9.0 / 70 + 3 * p / 10 + p2 / 6) - r * 1.2;
  const double us2 = m * l * (13.0 / 420 + 3 * p / 40 + p2 / 24) - r * l * (0.1 - p / 2);
  const double ss = m * l * l * (1.0 / 105 + p / 60 + p2 / 120) + r * l * l * (2.0 / 15 + p / 6 + p2 / 3);
  const double ss2 = -m * l * l * (1.0 / 140 + p / 60 + p2 / 120) - r * l * l * (1.0 / 30 + p / 6 - p2 / 6);
  return mirrored(uu, us, uu2, us2, ss, ss2);
}

}  // namespace flatwise::beam
