// turn.h: preload by the angle a nut is turned after it is snug, what settling takes of it, what a second pull after the run
// says, and the shop's own nut factor.
//
//   const auto band = preload_from_turn({.pitch = millimetres(3), .turned = degrees(60), .snug = snug, .shaft = ks,
//                                        .stack = kp});
#pragma once

#include <span>

#include "core/fasteners/preload.h"
#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"
#include "core/working/working.h"

namespace flatwise::fasteners {

/// Stiffness of sleeves in line: force over shortening of stack_compression(). Refuses what that refuses.
[[nodiscard]] Result<Stiffness> stiffness_of(Pressure youngs_modulus, std::span<const Sleeve> sleeves);

struct Turned {
  Length pitch;
  Angle turned;                 ///< After snug.
  Angle turned_u = degrees(5);  ///< How well it was read; assumed.
  ForceBand snug;               ///< Preload at snug, from its torque.
  Stiffness shaft;              ///< What is stretched.
  Stiffness stack;              ///< What is clamped.
  double stiffness_u = 0.15;    ///< Of both, relative: faces, threads and polygon give more than tubes; assumed.
};
struct TurnedPreload {
  Force preload, least, greatest;
  Length advance;              ///< Of the nut along the thread.
  double share_of_snug = 0.0;  ///< Preload at snug over the whole: what friction still decides.
};
/// Preload after a turn: F = F_snug + P (angle / 360 deg) / (1/k_s + 1/k_p).
///
/// Model      Two springs in line, elastic. Snug is where all faces touch: a joint that is not home swallows the turn.
///            Least: least snug, angle and stiffness; greatest likewise.
/// Refuses    Pitch or stiffness not above nought; turn not above nought, over five turns, or not over its uncertainty;
///            stiffness_u outside 0 to 0.5; snug negative or reversed.
/// Accuracy   4 eps. Worked in docs/worked/W34-turn-and-settling.md.
/// Source     [VDI2230] elastic resiliences in line; [Shigley] section 8-5 (spring rates), from memory.
[[nodiscard]] Result<TurnedPreload> preload_from_turn(const Turned& turned);

struct Settling {
  Faces faces = Faces::turned;
  int joints = 0;     ///< Faces that meet between the nuts, without those under the nuts.
  int nut_faces = 1;  ///< Faces under nuts.
  int threads = 1;    ///< Nuts on the stretched length.
  Length pitch;
  Force preload;  ///< Before the run.
  Stiffness shaft, stack;
};
struct Settled {
  Length amount;      ///< f_Z: what faces and thread flatten in the run.
  Force loss;         ///< What it takes of the preload.
  double left = 0.0;  ///< Share of the preload that is left; nought where all is lost.
  Angle turn;         ///< That brings the preload back.
};
/// What settling takes off a preload.
///
/// Model      Loss = amount / (1/k_s + 1/k_p). Amounts of [VDI2230] table 5, a thread, each face under a nut, each joint, in
///            um: 3, 2.5, 1.5 smooth; 3, 3, 2 turned; 3, 4, 3 rough. They are guide values for steel.
/// Refuses    Joints or nut faces negative or over 2000 or both nought; threads other than 1 or 2; pitch, preload or stiffness not above nought.
/// Source     [VDI2230] table 5 for load along the bolt, from memory.
[[nodiscard]] Result<Settled> settling(const Settling& settling);

enum class RepulledState {
  held,  ///< The nut did not turn further than settling explains.
  cannot_tell,
  lost,  ///< It did: a joint closed, a face gave way, the thread stretched.
};
struct Repulled {
  Angle turned;         ///< How far the nut went till the torque was reached again.
  Angle turned_u;       ///< Expanded uncertainty of that.
  Angle expected;       ///< By settling.
  double spread = 0.5;  ///< How far settling itself may go over that, relative; assumed.
};
struct RepulledJudged {
  RepulledState state = RepulledState::cannot_tell;
  Angle greatest;  ///< expected (1 + spread): the most that settling explains.
  Answer answer = Answer::cannot_tell;
};
/// What the second pull after the run says: held where turned + U <= greatest, lost where turned - U > greatest.
///
/// Refuses    Angles negative or not finite, spread outside 0 to 5.
/// Source     [ISO14253-1] for the guard band; the limit is a rule of this program.
[[nodiscard]] Result<RepulledJudged> judge_repulled(const Repulled& repulled);

/// One pull whose torque and preload are both known (by stretch, by turn, by a load washer).
struct KnownPull {
  Torque torque;
  Force preload;
};
inline constexpr int kPullsToNarrow = 5;
struct OwnNutFactor {
  NutFactor range;  ///< For the next nut; where there are too few pulls, as given.
  double mean = 0.0, deviation = 0.0;
  int pulls = 0;
  bool narrowed = false;
};
/// The shop's own nut factor: K_i = T_i / (F_i d); range of the next: mean -+ t(0.975, n-1) s sqrt(1 + 1/n).
///
/// Refuses    Torques, preloads or diameter not above nought. Under kPullsToNarrow pulls, or an interval down to nought, the
///            published range stands.
/// Source     [PredictionInterval]; [Shigley] eq. 8-27.
[[nodiscard]] Result<OwnNutFactor> own_nut_factor(std::span<const KnownPull> pulls, Length diameter,
                                                  NutFactor published);

}  // namespace flatwise::fasteners
