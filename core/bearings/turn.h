// turn.h: the bearing of a wobbling rotor through one turn of the shaft: what pushes it at each angle, the hardest pressed ball, and
// the life that the loads leave, each ring with the load as it moves past it.
//
//   const Turn turn = *one_turn({.at = {bearing, micrometres(15)}, .contacts = contacts, .rotor = rotor, .ground = ground});
//   const double million_turns = reference_life(ball_ratings(bearing, c), turn.wear);
#pragma once

#include <vector>

#include "core/bearings/life.h"

namespace flatwise::bearings {

/// The rotor that hangs on the outer ring, as core/dynamics has it.
struct WobblingRotor {
  Angle lean = {};  ///< Of the bore: the bearing's axis to the shaft's.
  Mass mass = {};
  Length mass_offset = {};  ///< Centroid from the bearing's middle along its axis, positive towards B.
  Force force = {};         ///< Rotating, out at the azimuth of the tilt (dynamics::rotating_force).
  Torque couple = {};       ///< Rotating, in that plane (dynamics::rotating_couple).
  Length tip_radius = {};
};
/// What the ground does to the tines, fixed in space, at the tips below the bearing.
struct GroundLoad {
  Force up = {};     ///< Towards the shaft.
  Force drag = {};   ///< Across the shaft, along the ground.
  Force along = {};  ///< Along the shaft, positive towards B.
};
/// How the outer ring, and the rotor with it, turns about the bearing's axis.
enum class OuterRing {
  held,   ///< Not at all: one place of it is always over the ground.
  turns,  ///< Slowly, rolling: each place comes over the ground as often as any other.
};

struct TurnTask {
  BearingAtWork at;
  PointContacts contacts;
  WobblingRotor rotor;
  GroundLoad ground;
  OuterRing outer = OuterRing::turns;
  int angles = 72;
};

inline constexpr int kFewestAngles = 72, kMostAngles = 3600;

struct AtAngle {
  Angle shaft;    ///< Azimuth of the tilt from the ground.
  RingLoad load;  ///< On the inner ring; x in the plane of the tilt, z along the bearing's axis.
  RingShift shift;
  Angle cage;
  Force greatest;
  Pressure stress;  ///< Greatest, at the inner ring.
};
struct Turn {
  std::vector<AtAngle> angles;
  int hardest = 0;      ///< Which angle has the greatest ball load.
  RingWear wear;        ///< inner_cubes as a mean over the ring's places, to 10/9 and back: see Model.
  Force radial, axial;  ///< Greatest parts of the load across and along the bearing's axis.
};

/// Model      At each shaft angle: the ground's load and the weight, turned into the leaning bearing, the rotating force and couple,
///            which stand still in it; rest_under() with the cage somewhere else each time (golden section of the ball's pitch: no
///            angle meets the same balls). Wear of a ring: at each place the mean of load³ over the turn, since a place adds up what
///            passes it; over the places the mean to 10/9, since the weakest place fails first (Weibull slope 10/9, as ISO 281). A ring
///            that turns under a steady load so gets the mean of load³, one that stands the mean of load^(10/3): ISO 16281's two cases.
/// Inputs     lean 0 to 45°; tip_radius over half the pitch; forces any; angles 72 to 3600.
/// Refuses    As loaded_bearing() and rest_under(); bearings.tips_inside, field "tip_radius"; fields "lean", "angles". No load at
///            some angle: bearings.no_load.
/// Accuracy   0.5 % of the life against 720 angles.
/// Source     Statics; [Lundberg-Palmgren] for the exponents, from memory.
[[nodiscard]] Result<Turn> one_turn(const TurnTask& task);

/// Speed of one ring against the other about the bearing's axis: W cos a - s; held exactly W.
[[nodiscard]] AngularSpeed relative_speed(AngularSpeed shaft, Angle lean, AngularSpeed spin);

}  // namespace flatwise::bearings
