// tine_gap.h: do the tines of neighbours meet? The least axial gap over a turn, at the same angle over the ground.
#pragma once

#include <span>
#include <vector>

#include "core/dynamics/wobble.h"
#include "core/shaft/shaft.h"

namespace flatwise::dynamics {

/// One rotor as its neighbour's tines see it.
struct TineRow {
  Length tip_radius;
  Length tine_width;
  Angle lean;
  Angle azimuth;
};
struct TineGap {
  Length gap;      ///< pitch - closing - half the sum of both widths. Negative: the tines strike.
  Length closing;  ///< Greatest closing of the two over a turn.
  Angle at;        ///< Angle over the ground where that is, from azimuth nought.
};
/// Least gap of the row on the A side to the one on the B side.
///
/// Model      Tip circles of rigid rotors; both tips at the same angle over the ground, tines there on both (worst case).
///            The true maximum of z_A(psi) - z_B(psi), not the difference of two phasors, which is 0.29 % of itself too small at
///            5° and 1.15 % at 10° for a step of one flat of six. Facing closes by 2 R sin a exactly.
/// Refuses    Pitch or tip radius not above nought, widths negative, lean outside 0 to 45°.
/// Accuracy   1e-12 of the tip radius: found on a grid of 64, then by bisection of the derivative.
/// Source     Geometry; docs/worked/W29-tines.md.
[[nodiscard]] Result<TineGap> tine_gap(Length pitch, const TineRow& a, const TineRow& b);

struct NeighbourGap {
  int rotor = 0;  ///< Between this rotor and the next.
  TineGap gap;
};
/// One a pair of neighbours, from end A, for rotors with these tilt azimuths.
[[nodiscard]] std::vector<NeighbourGap> tine_gaps(const Shaft& shaft, std::span<const Angle> tilt);

}  // namespace flatwise::dynamics
