#include "core/beam/section.h"

#include <cmath>
#include <numbers>

#include "core/beam/section_table.h"
#include "core/units/guards.h"

namespace flatwise::beam {

Result<Section> polygon_section(int flats, Length across_flats) {
  if (auto p = outside("flats", any_count(flats), 3, kMostFlats)) return tl::unexpected(*std::move(p));
  if (auto p = not_above_nought("across", any(across_flats))) return tl::unexpected(*std::move(p));
  const double b_m = across_flats.si(), half_turn = std::numbers::pi / flats;
  const double side_m = b_m * std::tan(half_turn), corner_m = 0.5 * b_m / std::cos(half_turn);
  const double area_m2 = flats * side_m * b_m / 4;
  const double i_m4 = area_m2 / 24 * (6 * corner_m * corner_m - side_m * side_m);
  const PolygonRow& row = polygon_row(flats);
  Section s;
  s.area = Area::from_si(area_m2);
  s.second_moment = SecondMoment::from_si(i_m4);
  s.corner_modulus = SectionModulus::from_si(i_m4 / corner_m);
  s.flat_modulus = SectionModulus::from_si(2 * i_m4 / b_m);
  s.torsion_constant = SecondMoment::from_si(row.torsion_constant * b_m * b_m * b_m * b_m);
  s.torsion_modulus = SectionModulus::from_si(row.torsion_modulus * b_m * b_m * b_m);
  s.shear_p = row.shear_p;
  s.shear_q = row.shear_q;
  s.corner_radius = metres(corner_m);
  return s;
}

Result<Section> tube_section(const TubeOf& tube) {
  if (auto p = not_above_nought("outside", any(tube.outside))) return tl::unexpected(*std::move(p));
  if (auto p = negative("inside", any(tube.inside))) return tl::unexpected(*std::move(p));
  if (!(tube.inside < tube.outside))
    return tl::unexpected(Problem{Code{"beam.no_wall"},
                                  "inside",
                                  {},
                                  {{"inside", any(tube.inside)}, {"outside", any(tube.outside)}},
                                  std::nullopt});
  const double pi = std::numbers::pi, d_m = tube.outside.si(), m = tube.inside / tube.outside, m2 = m * m;
  const double i_m4 = pi / 64 * d_m * d_m * d_m * d_m * (1 - m2 * m2);
  Section s;
  s.area = Area::from_si(pi / 4 * d_m * d_m * (1 - m2));
  s.second_moment = SecondMoment::from_si(i_m4);
  s.corner_modulus = s.flat_modulus = SectionModulus::from_si(2 * i_m4 / d_m);
  s.torsion_constant = SecondMoment::from_si(2 * i_m4);
  s.torsion_modulus = SectionModulus::from_si(4 * i_m4 / d_m);
  // Cowper's 6 (1 + v)(1 + m²)² / [(7 + 6 v)(1 + m²)² + (20 + 12 v) m²].
  const double square = (1 + m2) * (1 + m2);
  s.shear_p = (7 * square + 20 * m2) / (6 * square);
  s.shear_q = (6 * square + 12 * m2) / (6 * square);
  s.corner_radius = metres(0.5 * d_m);
  return s;
}

}  // namespace flatwise::beam
