// preload.h: from torque at the nut to the force that clamps the stack, and back.
//
//   auto band = preload_from_torque({.torque = foot_pounds(900), .diameter = inches(1.5), .factor = {0.15, 0.20}});
#pragma once

#include <span>
#include <string_view>

#include "core/shaft/shaft.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fasteners {

/// Nut factor K of T = K F d, as a range: the width is friction, not carelessness.
struct NutFactor {
  double least = 0.0, greatest = 0.0;
};
struct PublishedNutFactor {
  NutFactor range;
  std::string_view source;  ///< Key of docs/sources.md.
};
/// Published range for a lubrication.
///
/// Source     [NutFactors]: dry 0.18-0.27, machine oil 0.10-0.26, zinc plated 0.17-0.35; greased is lubricated 0.15 with
///            its stated scatter of ±30 %: 0.105-0.195; molybdenum disulphide paste 0.10-0.18, from memory.
[[nodiscard]] PublishedNutFactor nut_factor(Lubrication lubrication);

struct ForceBand {
  Force least, greatest;
};
struct TorqueBand {
  Torque least, greatest;
};

struct TorqueOnThread {
  Torque torque;
  Torque torque_u;  ///< Expanded uncertainty of the torque; nought when it stands for a target.
  Length diameter;  ///< Basic major diameter d.
  NutFactor factor;
};
/// Preload F = T / (K d), least with the greatest K and the least torque.
///
/// Refuses    Torque, diameter or K not above nought; K least over K greatest; torque_u negative or not under torque.
/// Accuracy   4 eps against the formula; the formula itself is as wide as the K range (±30 % is usual).
/// Source     [Shigley] eq. 8-27; [NutFactors].
[[nodiscard]] Result<ForceBand> preload_from_torque(const TorqueOnThread& on);

struct WantedPreload {
  Force preload;
  Length diameter;
  NutFactor factor;
};
/// Torque that a preload needs, over the K range.
[[nodiscard]] Result<TorqueBand> torque_for_preload(const WantedPreload& wanted);

struct TorqueParts {
  Force preload;
  Length pitch;             ///< P.
  Length pitch_diameter;    ///< d2.
  Length bearing_diameter;  ///< Dk: mean diameter of the face the nut turns on.
  double thread_friction = 0.0;
  double bearing_friction = 0.0;
};
/// Full form: F (P / 2pi + mu_t d2 / (2 cos 30°) + mu_b Dk / 2). First the part that stretches, then thread, then face.
struct FullTorque {
  Torque torque, stretching, thread, face;
};
/// Refuses    Lengths or force not above nought, frictions outside 0 to 1.
/// Source     [VDI2230] without its rounding; [Shigley] eq. 8-26 with the collar.
[[nodiscard]] Result<FullTorque> torque_full(const TorqueParts& parts);

/// One piece of the clamped stack, as a tube: bore of a polygon as its across-flats circle.
struct Sleeve {
  Length length, outside, bore;
};
/// Shortening of sleeves in line under a force: sum of F L / (E A).
///
/// Refuses    No sleeve; force, lengths or modulus not above nought; a bore negative or not under its outside.
/// Source     Hooke; tube in even compression. Faces' own give (roughness) comes on top and is not counted.
[[nodiscard]] Result<Length> stack_compression(Force force, Pressure youngs_modulus, std::span<const Sleeve> sleeves);

}  // namespace flatwise::fasteners
