// yielding.h: a hub that yields under the ring: how far the yielded zone reaches, the pressure that is left, and by how much
// the bore stays bigger when the ring is out again.
//
//   const auto state = press_into_yielding({.joint = joint, .hub_yield = megapascals(120)}, micrometres(180));
#pragma once

#include "core/fits/lame.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

enum class HubZone {
  elastic,
  partly_plastic,  ///< Yielded from the bore to the border.
  fully_plastic,   ///< Yielded right through: the pressure rises no more, the hub just grows.
};

struct YieldingJoint {
  PressedJoint joint;
  Pressure hub_yield;
};

struct HubState {
  HubZone zone = HubZone::elastic;
  Pressure pressure;
  Length border;  ///< Diameter up to which the hub yielded; the joint's where it did not, hub_outside right through.
  Pressure hub_hoop;   ///< Greatest hoop stress: at the bore, or at the border once the bore yielded.
  Length bore_growth;  ///< On diameter, with the ring in.
  Length left_over;    ///< On diameter, when the ring is out again: the bore has grown for good.
  Length ring_shrink;  ///< On diameter; the ring stays elastic.
};

/// Pressures at which the hub begins to yield, and at which it has yielded right through.
struct YieldPressures {
  Pressure onset, full;
};
/// Source     Onset Y/2 (1 - d^2/D^2), full Y ln(D/d), and never over Y itself: [Hill] ch. V, thin ring by [GamerLance].
[[nodiscard]] Result<YieldPressures> yield_pressures(const YieldingJoint& joint);

/// Hub under an interference (after flattening, on diameter).
///
/// Model      Ring elastic; hub elastic and perfectly plastic by Tresca, plane stress, small strains: in the yielded zone
///            hoop less radial stress is Y, so p = Y ln(c/d) + Y/2 (1 - c^2/D^2) with c the border's diameter, and the
///            bore grows by d (Y/E (c/d)^2 - (1 - nu) p/E). Taken out, the hub springs back elastically.
/// Inputs     interference >= 0; hub_yield > 0, of a metal that yields: grey iron cracks instead (cracks()).
/// Refuses    What check_joint() refuses; negative or NaN interference or yield.
/// Accuracy   1e-10 relative against the closed form. No hardening: real hubs hold a little more pressure. Spring-back
///            without yielding again, which holds up to twice the onset.
/// Source     [Hearn] eqs. 3.29 to 3.32; [Hill] ch. V; [GamerLance]; worked in docs/worked/W30-hub-that-yields.md.
[[nodiscard]] Result<HubState> press_into_yielding(const YieldingJoint& joint, Length interference);

/// The other way round: interference that a pressure means, yielded or not. pressure up to YieldPressures::full; over it
/// fits.pressure_over_full.
[[nodiscard]] Result<Length> interference_behind_yield(const YieldingJoint& joint, Pressure pressure);

/// Hoop stress at the bore against the tensile strength of a metal that does not yield: the share that is used up.
///
/// Model      Elastic to the end; a crack starts where hoop stress reaches the tensile strength.
/// Source     [Shigley9] eq. 7-45; maximum normal stress for brittle metals, eq. 5-28 from memory.
[[nodiscard]] Result<double> share_to_crack(const PressedJoint& joint, Pressure pressure, Pressure tensile);

}  // namespace flatwise::fits
