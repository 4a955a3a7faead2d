// compound.h: rings one over the other, with interference or clearance in each joint: a bearing's inner ring on a hollow
// adapter half on its shaft.
//
//   const auto joints = compound(tubes, fits);   // from the inside out; one fit fewer than tubes
#pragma once

#include <span>
#include <vector>

#include "core/fits/lame.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

/// A tube; inside 0: solid. A polygon's bore or shaft stands as a round of the same across-flats diameter: say so.
struct Tube {
  Length inside, outside;
  Elastic metal;
};

struct Compound {
  std::vector<Pressure> pressure;      ///< One a joint, from the inside out; nought where it stands open.
  std::vector<Length> inside_change;   ///< One a tube, on diameter: < 0 closes.
  std::vector<Length> outside_change;  ///< One a tube, on diameter.
  std::vector<Length> clearance;       ///< One a joint: what stays open; nought where it is pressed.
};

inline constexpr int kMostTubes = 8;

/// Pressures in all joints at once.
///
/// Model      Lame for every tube, plane stress, equal lengths, elastic; a joint with clearance takes no part until the
///            parts around it have closed it. Fits on diameter: > 0 interference, < 0 clearance; after flattening.
/// Inputs     2 to kMostTubes tubes, each inside under outside; neighbours' diameters equal within 1 %.
/// Refuses    Wrong counts (fits.tube_count), tubes that do not fit (fits.tubes_apart), fits not finite or over 1 % of
///            the diameter, moduli and Poisson's ratios as check_joint(). Fields "tubes[2].inside", "fits[1]".
/// Accuracy   1e-12 relative; two tubes give contact_pressure().
/// Source     [Shigley9] eqs. 7-39 to 7-45 (Lame) for each tube; worked in docs/worked/W31-ring-on-half.md.
[[nodiscard]] Result<Compound> compound(std::span<const Tube> tubes, std::span<const Length> fits);

}  // namespace flatwise::fits
