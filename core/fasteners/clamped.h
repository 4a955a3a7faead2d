// clamped.h: what a nut clamps, how far it should turn from snug to its torque, and what a turn that was seen says.
//
//   const ClampedRun run = clamped_by(shaft, nut);
//   const auto springs = clamped_springs({6, millimetres(38.1), gigapascals(207)}, run.parts);
#pragma once

#include <span>
#include <vector>

#include "core/fasteners/preload.h"
#include "core/shaft/shaft.h"
#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"
#include "core/working/working.h"

namespace flatwise::fasteners {

/// One piece of what is clamped, as a tube over the profile.
struct ClampedPart {
  Length length, outside;
  std::optional<Length> bore = std::nullopt;  ///< Round; none: the profile's own section is missing.
  Pressure youngs_modulus = kSteelModulus;
  int station = -1;  ///< The first station it stands for.
};
/// What a nut pulls on: everything from it to the other nut, or to what does not come off.
struct ClampedRun {
  std::vector<ClampedPart> parts;  ///< From the nut on; like parts added up.
  std::vector<int> untold;         ///< Stations of which nobody said what carries the force. Then `parts` is empty.
  int joints = 0;                  ///< Faces that meet, without those under nuts; a rotor is two halves.
  int nut_faces = 1, threads = 1;  ///< Two where both ends have a nut.
  const Nut* other = nullptr;      ///< The nut at the far end, of the shaft that was asked; none: a shoulder.
};
/// Model      The outermost parts that stay on the shaft (obstacles) take the force; what lies beyond them is not clamped.
[[nodiscard]] ClampedRun clamped_by(const Shaft& shaft, const Nut& nut);

/// The bar that is stretched.
struct PolygonBar {
  int flats = 6;
  Length across_flats;
  Pressure youngs_modulus;
};
struct ClampedSprings {
  Stiffness shaft, stack;
};
/// Stiffness of the bar and of the parts round it, over the same length.
///
/// Model      k = 1 / sum(l / (E A)); bar A = n/4 s^2 tan(pi/n), sharp corners; part A = pi/4 D^2 less its bore or the bar's
///            section. Thread ends, faces and grooves give more and are not counted.
/// Refuses    Flats outside 3 to 24; no part; lengths or moduli not above nought; a part without a wall.
/// Accuracy   8 eps.
/// Source     Hooke; [Shigley] section 8-4 and 8-5.
[[nodiscard]] Result<ClampedSprings> clamped_springs(const PolygonBar& bar, std::span<const ClampedPart> parts);

struct TurnAsked {
  Torque torque, torque_u;  ///< At the nut; U of a reading, or how far the target may be missed.
  Torque snug;              ///< From which the turn is counted.
  double snug_u = 0.3;      ///< How well snug was met, relative; assumed.
  Length diameter, pitch;
  NutFactor factor;
  ForceBand before = {};  ///< What the other nut clamps already; nought where this one is the first.
  ClampedSprings springs;
  double stiffness_u = 0.15;  ///< As Turned::stiffness_u.
};
struct TurnExpected {
  Angle expected, least, greatest;
};
/// Turn from snug to a torque: theta = 360 deg / P (T/(K d) - F_0) (1/k_s + 1/k_p), F_0 the greater of T_snug/(K d) and `before`.
///
/// Model      One K for snug and target: the same thread, minutes apart. Least: greatest K and F_0, least torque, stiff springs;
///            greatest likewise; never below nought. Expected: the middle of K, torque and `before`.
/// Refuses    Torque, snug, diameter, pitch, K or stiffness not above nought; ranges reversed; snug not under the torque; torque_u
///            negative or not under the torque; snug_u outside 0 to 1, stiffness_u outside 0 to 0.5.
/// Accuracy   8 eps. Worked in docs/worked/W44-turn-to-torque.md.
/// Source     [Shigley] eq. 8-27 and section 8-5; [VDI2230] for resiliences in line, from memory.
[[nodiscard]] Result<TurnExpected> turn_expected(const TurnAsked& asked);

enum class TurnedState {
  too_little,  ///< The torque went into something else: a thread that binds, or the wrong target.
  explained,
  too_much,  ///< The nut went further than shaft and stack give: a joint closed, or something yields.
  cannot_tell,
};
struct TurnJudged {
  TurnedState state = TurnedState::cannot_tell;
  Answer answer = Answer::cannot_tell;
};
/// Explained where turned - U >= least and turned + U <= greatest; outside where U leaves no doubt.
///
/// Refuses    Angles negative or not finite; the band reversed.
/// Source     [ISO14253-1] for the guard band; that the turn is judged by this band is a rule of this program.
[[nodiscard]] Result<TurnJudged> judge_turned(const TurnExpected& band, Angle turned, Angle expanded);

}  // namespace flatwise::fasteners
