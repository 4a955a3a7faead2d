// figures_parts.h: what the figures of this folder share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/dynamics/check.h"
#include "core/working/input_specs.h"

namespace flatwise::dynamics {

// Ranges that any such shaft lies in; they keep every result finite.
inline constexpr double kMostSpeed = 1e4;   // rad/s
inline constexpr double kMostLength = 100;  // m
inline constexpr double kMostForce = 1e9;   // N
inline constexpr double kMostCouple = 1e9;  // N m
inline constexpr double kMostTurn = 1e3;    // rad

inline constexpr std::string_view kSpinningChoices[] = {"rolling", "held", "with-shaft"};

[[nodiscard]] InputSpec lean_input(std::string_view name = "lean", std::string_view symbol = "α");
[[nodiscard]] InputSpec speed_input();

[[nodiscard]] const FigureSpec& rotating_couple_figure();
[[nodiscard]] const FigureSpec& couple_resultant_figure();
[[nodiscard]] const FigureSpec& tine_gap_figure();
[[nodiscard]] const FigureSpec& least_couple_figure();
[[nodiscard]] const FigureSpec& least_force_figure();

}  // namespace flatwise::dynamics
