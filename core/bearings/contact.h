// contact.h: a ball squeezed in its groove (Hertz point contact): how stiff, how big the ellipse, how great the stress.
//
//   const PointContacts c = *point_contacts(bearing, steel);
//   const Pressure most = contact_stress(c.inner, newtons(1500));
#pragma once

#include "core/bearings/rim_play.h"
#include "core/fits/lame.h"

namespace flatwise::bearings {

using ContactStiffness = double;  ///< N/m^1.5: load over deflection^1.5. No quantity of ours has this unit.

/// Curvatures at a contact. Source: ISO/TS 16281 eqs. for rho and F(rho), [ISO16281-code].
struct Curvatures {
  double sum = 0;         ///< 1/m, of all four; hollow ones count as minus.
  double difference = 0;  ///< F(rho) = |difference of the relative curvatures| / sum, 0 (round) to 1 (a line).
};

/// One ball in one groove.
struct PointContact {
  Curvatures curvatures;
  double axis_ratio = 1;  ///< Long over short half axis of the ellipse.
  double long_axis = 0;   ///< m/N^(1/3): long half axis over the cube root of the load.
  double stress = 0;      ///< Pa/N^(1/3): greatest stress over the cube root of the load.
  ContactStiffness stiffness = 0;
};

/// Both contacts of each ball and what they make in a row: Q = c (delta_i + delta_e)^1.5.
struct PointContacts {
  PointContact inner, outer;
  ContactStiffness together = 0;
};

/// Contact from its four curvatures.
///
/// Model      Hertz: elastic, smooth, no friction, contact small beside the bodies; both bodies alike. Complete elliptic integrals;
///            the axis ratio k from 1 - 2/(k²-1) (K/E - 1) = F.
/// Inputs     sum > 0, 0 <= difference < 1; Young's modulus > 0, Poisson's ratio over -1 and at most 0.5.
/// Refuses    Other curvatures: bearings.no_such_contact. Materials: as fits::check_joint(), fields "youngs_modulus", "poisson".
/// Accuracy   1e-12 relative against scipy's elliptic integrals (tests/data/bearings_contact.csv). Real contacts are less stiff by
///            what the rings bend.
/// Source     [Hertz], formulas as in [Harris5] ch. 6; checked against ISO 76's f0, which is this stress at 4200 MPa.
[[nodiscard]] Result<PointContact> point_contact(const Curvatures& curvatures, const fits::Elastic& material);

/// Both contacts of a ball at no contact angle. Refuses what problem_with() refuses.
[[nodiscard]] Result<PointContacts> point_contacts(const BallBearing& bearing, const fits::Elastic& material);

/// Curvatures where a ball of this bearing meets its rings. The bearing must be sound (problem_with).
[[nodiscard]] Curvatures inner_curvatures(const BallBearing& bearing);
[[nodiscard]] Curvatures outer_curvatures(const BallBearing& bearing);

/// Half axes of the ellipse, along the shaft and along the rolling.
struct Ellipse {
  Length across, along;
};
[[nodiscard]] Ellipse contact_ellipse(const PointContact& contact, Force load);
[[nodiscard]] Pressure contact_stress(const PointContact& contact, Force load);  ///< In the middle; load >= 0.
[[nodiscard]] Force load_at_stress(const PointContact& contact, Pressure stress);
[[nodiscard]] Length contact_deflection(const PointContact& contact, Force load);

/// Bearing steel: 207 GPa, 0.3. The modulus with which ISO 76's f0 come out to the printed digit.
inline constexpr fits::Elastic kBearingSteel{pascals(207e9), 0.3};

}  // namespace flatwise::bearings
