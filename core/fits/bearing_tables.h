// bearing_tables.h: published limits of rolling bearings by diameter: ring sizes (ISO 492), clearance (ISO 5753-1).
//
//   Result<Limits> ring = ring_outside_limits(millimetres(90), ToleranceClass::normal);   // 89.985 mm to 90.000 mm
#pragma once

#include "core/shaft/shaft.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

/// Limits of the mean outside diameter (in one plane) of a radial bearing's outer ring at 20 °C.
///
/// Inputs     outside: nominal D, 3 mm to 500 mm.
/// Refuses    A size outside the range or NaN: fits.size_out_of_range, field "outside".
/// Accuracy   Exact: whole micrometres as tabulated. A single diameter may lie further out: thin rings are not round
///            until they sit in their bore, so gauge several directions and take the mean.
/// Source     [ISO492] outer ring tables of classes Normal, 6 and 5. Not taper roller bearings.
[[nodiscard]] Result<Limits> ring_outside_limits(Length outside, ToleranceClass tolerance);

/// Limits of the mean bore of the inner ring; nominal d, 3 mm to 500 mm. Field "bore". Source [ISO492].
[[nodiscard]] Result<Limits> ring_bore_limits(Length bore, ToleranceClass tolerance);

/// Greatest radial runout K_ea of the assembled bearing's outer ring; nominal D, 3 mm to 500 mm. Source [ISO492].
[[nodiscard]] Result<Length> outer_ring_runout(Length outside, ToleranceClass tolerance);

/// Least and greatest radial internal clearance of an unmounted deep groove ball bearing.
///
/// Inputs     bore: nominal d, 3 mm to 200 mm (cylindrical bore).
/// Refuses    A size outside the range: fits.size_out_of_range; C4 to 6 mm and C5 to 6 mm, which have no values:
///            fits.no_group_at_bore.
/// Accuracy   Exact: whole micrometres as tabulated; rows over 120 mm from memory.
/// Source     [ISO5753-1] radial contact groove ball bearings.
[[nodiscard]] Result<Limits> radial_clearance(Length bore, ClearanceGroup group);

}  // namespace flatwise::fits
