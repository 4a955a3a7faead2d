// figures_parts.h: inputs that several figures of this folder share. Not for other folders.
#pragma once

#include <numbers>
#include <string_view>
#include <vector>

#include "core/fasteners/preload.h"
#include "core/fasteners/pull.h"
#include "core/working/input_specs.h"

namespace flatwise::fasteners {

// Ranges that any shaft nut lies in; they keep every result finite.
inline constexpr double kMostTorque = 1e6;                    // N m
inline constexpr double kMostLength = 100;                    // m
inline constexpr double kMostForce = 1e9;                     // N
inline constexpr double kMostDiameter = 1;                    // m
inline constexpr double kMostStiffness = 1e13;                // N/m
inline constexpr double kMostTurned = 10 * std::numbers::pi;  // rad: five turns

inline constexpr std::string_view kLubricationChoices[] = {"dry", "oiled", "greased", "moly", "zinc"};

/// K from nut-factor-least and -greatest where both are given, else from the lubrication. Refuses one alone, or none.
[[nodiscard]] Result<NutFactor> factor_from(const Given& in);
[[nodiscard]] Multiplier multiplier_from(const Given& in);

/// lubrication, nut-factor-least and -greatest.
[[nodiscard]] std::vector<InputSpec> factor_inputs();
/// length, outside and bore of each sleeve, youngs-modulus.
[[nodiscard]] std::vector<InputSpec> sleeve_inputs();
[[nodiscard]] Result<std::vector<Sleeve>> sleeves_from(const Given& in);

/// The bench's half: bar-pull, wrench-setting, multiplier-ratio, torque-reached.
[[nodiscard]] std::vector<FigureSpec> pull_figures();
/// sleeve-stiffness, angle-turn, settling, second-pull, own-nut-factor.
[[nodiscard]] std::vector<FigureSpec> turn_figures();
/// clamped-stiffness, turn-expected.
[[nodiscard]] std::vector<FigureSpec> clamped_figures();

/// shaft-stiffness and stack-stiffness.
[[nodiscard]] std::vector<InputSpec> stiffness_inputs();
[[nodiscard]] InputSpec pitch_input();

}  // namespace flatwise::fasteners
