// pull.h: what to pull on a bar, what to set a wrench to, and what torque a reading means at the nut.
//
//   auto pull = bar_pull({.torque = foot_pounds(1000), .lever = {.length = inches(60)}});  // 200 lbf
#pragma once

#include <span>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/units/angle.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fasteners {

/// A bar or a wrench, with or without an extension (crow's foot) between nut and drive.
struct Lever {
  Length length;                   ///< L: nut or drive to the middle of the grip.
  Length extension = {};           ///< E: nut to drive.
  Angle extension_angle = {};      ///< Nought straight on (longer), 180° folded back.
  Angle pull_angle = degrees(90);  ///< Beta: between pull and bar at the grip.
};
/// A geared multiplier: torque out over torque in.
struct Multiplier {
  double ratio = 1.0;
  double relative_u = 0.0;  ///< Expanded uncertainty (k = 2) of the ratio, relative: its efficiency range.
};

/// Torque at the drive (or the multiplier's output) that one newton of pull makes, in metres: the true lever arm.
///
/// Model      Plane statics; pull square to the axis of the nut. Arm = (L + E cos e) sin b - E sin e cos b.
/// Refuses    Length not above nought, extension negative, pull angle outside 0 to 180°, and a grip that is not beyond
///            the nut on the wrench's side: L + E cos e <= 0.
[[nodiscard]] Result<Length> lever_arm(const Lever& lever);

struct BarPull {
  Torque torque;
  Lever lever;
  Multiplier multiplier = {};
};
struct PullBand {
  Force pull, greatest;  ///< At the ratio, and at its least efficiency.
};
/// Pull on a bar: T / (m L sin b).
///
/// Refuses    As lever_arm; torque or ratio not above nought; relative_u outside 0 to 0.5.
[[nodiscard]] Result<PullBand> bar_pull(const BarPull& bar);

/// What one person would need instead: how long a bar, or how strong a multiplier.
struct BetterWay {
  Length length;       ///< Straight bar pulled at the same angle, same multiplier.
  double ratio = 1.0;  ///< Multiplier on the bar at hand.
};
[[nodiscard]] Result<BetterWay> for_one_person(const BarPull& bar, Force limit);

/// Torque that the foot of a multiplier holds back: T (1 - 1/m).
[[nodiscard]] Torque multiplier_reaction(Torque torque, double ratio);
/// Torque ratio of a multiplier from its gear ratio and the range of its efficiency.
[[nodiscard]] Result<Multiplier> multiplier_ratio(double gear_ratio, double efficiency_least,
                                                  double efficiency_greatest);

/// Setting of a torque wrench with an extension: T_w = T L / (m (L + E cos e)).
///
/// Model      Pull square to the wrench (pull_angle is not used): 10° off is 2.2 % at e = 45°, E = L/5.
/// Refuses    As lever_arm.
[[nodiscard]] Result<Torque> wrench_setting(Torque torque, const Lever& lever, const Multiplier& multiplier = {});

enum class PulledWith { wrench, bar };
struct Pulled {
  PulledWith with = PulledWith::wrench;
  Torque reading = {};  ///< Wrench: what it showed or was set to.
  Force pull = {};      ///< Bar: what the scale at its grip showed.
  Lever lever;
  Multiplier multiplier = {};
  double calibration_u = 0.0;                 ///< Expanded uncertainty (k = 2) of wrench or scale, relative.
  double resolution_si = 0.0;                 ///< Of wrench (N m) or scale (N): smallest step read.
  Angle pull_angle_half_width = degrees(10);  ///< How far from the stated pull angle a hand may be.
};
struct TorqueReached {
  Torque torque;
  Torque standard;  ///< Combined standard uncertainty.
  Torque expanded;  ///< k = 2.
};
/// Torque at the nut from a reading, with its uncertainty.
///
/// Model      Wrench: m T_w arm / (L sin b). Bar: m F arm. Uncertainty by the GUM: calibration (k = 2), resolution
///            (rectangular), multiplier (k = 2), pull angle rectangular about the stated one: its root mean square
///            effect, mean shift included and not corrected (a pull that is off square only ever loses on a bar).
/// Refuses    As lever_arm; reading or pull not above nought; uncertainties outside 0 to 0.5; angle width over 30°.
/// Source     [GUM] 5.1.2, F.2.4.5.
[[nodiscard]] Result<TorqueReached> torque_reached(const Pulled& pulled);

enum class TorqueState { below, inside, above, cannot_tell };
struct TorqueTarget {
  Torque torque;
  double tolerance = 0.10;  ///< Either side, relative.
};
struct TorqueJudged {
  TorqueState state = TorqueState::cannot_tell;
  Torque least, greatest;      ///< The band of the target.
  bool tool_can_tell = false;  ///< A reading at the target itself would be inside by this tool.
  Torque expanded_wanted;      ///< Expanded uncertainty that would decide this reading.
};
/// Decision with guard band U on both limits (ISO 14253-1): inside needs T - U >= least and T + U <= greatest.
///
/// Refuses    Target not above nought, tolerance not above nought or over 0.5.
[[nodiscard]] Result<TorqueJudged> judge_torque(const TorqueReached& reached, const TorqueTarget& target);

/// Indices of the nuts in the order they are pulled. Refuses two nuts with the same place in the order.
[[nodiscard]] Result<std::vector<int>> torque_order(std::span<const Nut> nuts);

}  // namespace flatwise::fasteners
