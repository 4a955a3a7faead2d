// interference.h: how much bigger the ring is than its bore: least, mean, greatest; and what pressing flattens of it.
//
//   const Mating mating{.hole = around(bore_mean, bore_expanded), .shaft = ring_limits};
//   const Result<InterferenceRange> range = interference(mating);    // negative: clearance
#pragma once

#include "core/shaft/shaft.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

/// Two parts that fit one in the other, each as a range of its mean diameter at 20 °C: limits of a drawing or a table,
/// or a measured value with its expanded uncertainty either side. "Hole" and "shaft" are the words of ISO 286: for a
/// bearing in a hub the shaft is the outer ring.
struct Mating {
  Limits hole;
  Limits shaft;
};

/// On diameter. Positive: the shaft is bigger. Negative: clearance.
struct InterferenceRange {
  Length least, mean, greatest;
};

/// Value with its expanded uncertainty as a range.
[[nodiscard]] constexpr Limits around(Length value, Length expanded) {
  return {.least = value - expanded, .greatest = value + expanded};
}

/// Least, mean and greatest interference of two ranges.
///
/// Model      Worst case: smallest shaft in biggest hole to biggest in smallest; the mean of the middles.
/// Inputs     Diameters > 0, least <= greatest.
/// Refuses    NaN, non-positive or reversed limits: fits.limits_reversed, field "hole" or "shaft".
/// Accuracy   Two roundings of a double, below a nanometre.
/// Source     [ISO286-1], definition of interference and clearance.
[[nodiscard]] Result<InterferenceRange> interference(const Mating& mating);

/// Interference that is left to press on after the peaks of the surfaces are flattened. Clearance is unchanged; an
/// interference smaller than the loss leaves exactly none. Heating flattens nothing: use the full interference there.
[[nodiscard]] Length after_flattening(Length interference, Length loss);

/// Peak-to-valley heights Rz of two surfaces that are pressed together.
struct Roughness {
  Length hole;
  Length shaft;
};
/// Loss of interference on diameter by flattening.
///
/// Model      0.8 times the sum of both Rz (0.4 Rz a side, twice for the diameter).
/// Inputs     Rz >= 0.
/// Refuses    Negative or NaN heights: input.negative, field "roughness.hole" or "roughness.shaft".
/// Source     [DIN7190-1], from memory.
[[nodiscard]] Result<Length> flattening_loss(const Roughness& roughness);

}  // namespace flatwise::fits
