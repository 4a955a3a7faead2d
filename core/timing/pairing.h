// pairing.h: how far the two marks of one rotor are from opposite, and what that does inside the bearing.
#pragma once

#include "core/units/angle.h"
#include "core/units/problem.h"

namespace flatwise::timing {

struct MarkPair {
  int flat_a = 0, flat_b = 0;  ///< 1..flats, counted from end A.
};

/// Whole flats by which half B lies clockwise (seen from end A) of opposite to half A, the shorter way: -n/2 + 1 ..
/// n/2.
///
/// Model      delta = mu_B - mu_A - pi = 2 pi k / n.
/// Refuses    An odd or small number of flats (no opposite flat exists); a flat outside 1..n.
/// Source     common practice: the marks of a pair are half a turn apart.
[[nodiscard]] Result<int> pairing_error(MarkPair marks, int flats);

struct PairLean {
  Angle lean;         ///< Inclination of each half's bore to its seat.
  int flats_out = 0;  ///< Pairing error k; any whole number.
  int flats = 6;
  Angle permissible;  ///< Misalignment the bearing bears.
};
struct Kink {
  Angle angle;       ///< Between the two bores, 0 .. 2 lean.
  double times = 0;  ///< Multiple of what the bearing allows.
};

/// Angle between the bores of a wrongly paired rotor.
///
/// Model      Two axes of equal inclination with azimuths delta apart: sin(gamma/2) = sin(lean) |sin(delta/2)|. Rigid
/// parts;
///            the bearing in between takes it all.
/// Inputs     0 <= lean < 90 deg; flats even, 4 or more; permissible > 0.
/// Accuracy   4 eps relative in sin(gamma/2).
/// Source     [Spherical-cosines]: cos gamma = cos^2 lean + sin^2 lean cos delta.
[[nodiscard]] Result<Kink> kink(const PairLean& pair);

}  // namespace flatwise::timing
