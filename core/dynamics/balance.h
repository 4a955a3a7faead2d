// balance.h: how much unbalance a rigid rotor may have by the grade of its balance quality.
#pragma once

#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::dynamics {

struct BalanceQuality {
  Speed grade;  ///< G: permissible offset of the mass times the speed (G 16 is 16 mm/s).
  Mass mass;
  AngularSpeed speed;  ///< Highest at work.
};
struct PermissibleUnbalance {
  Unbalance unbalance;  ///< Of the whole rotor: m G / W.
  Length mass_offset;   ///< G / W.
};
/// Permissible residual unbalance of a rigid rotor.
///
/// Refuses    Grade, mass or speed not above nought.
/// Accuracy   4 eps.
/// Source     [ISO21940-11] clause on permissible residual unbalance; for parts of agricultural machines G 16 is usual.
[[nodiscard]] Result<PermissibleUnbalance> permissible_unbalance(const BalanceQuality& quality);

}  // namespace flatwise::dynamics
