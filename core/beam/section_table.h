// section_table.h: what of a regular polygon has no closed form. Not for other folders.
#pragma once

namespace flatwise::beam {

struct PolygonRow {
  double torsion_constant;  ///< K / b^4, b across flats.
  double torsion_modulus;   ///< T / greatest stress / b^3.
  double shear_p, shear_q;  ///< Cowper's factor is (1 + v)/(p + q v).
};
/// Flats 3 to 24. Written by tests/data/beam_sections.py, which solves both problems on the polygon itself.
[[nodiscard]] const PolygonRow& polygon_row(int flats);

}  // namespace flatwise::beam
