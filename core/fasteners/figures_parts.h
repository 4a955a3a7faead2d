// figures_parts.h: inputs that several figures of this folder share. Not for other folders.
#pragma once

#include <string_view>

#include "core/fasteners/preload.h"
#include "core/fasteners/pull.h"
#include "core/working/figure.h"

namespace flatwise::fasteners {

// Ranges that any shaft nut lies in; they keep every result finite.
inline constexpr double kMostTorque = 1e6;  // N m
inline constexpr double kMostLength = 100;  // m
inline constexpr double kMostForce = 1e9;   // N
inline constexpr double kMostDiameter = 1;  // m
inline constexpr std::string_view kPractice = "common practice";

inline constexpr std::string_view kLubricationChoices[] = {"dry", "oiled", "greased", "moly", "zinc"};

[[nodiscard]] InputSpec above_nought(std::string_view name, std::string_view symbol, Kind kind, double greatest_si);
[[nodiscard]] InputSpec assumed_value(std::string_view name, std::string_view symbol, Value value, double least_si,
                                      double greatest_si, std::string_view why);
[[nodiscard]] InputSpec may_be_given(InputSpec spec);

/// K from nut-factor-least and -greatest where both are given, else from the lubrication. Refuses one alone, or none.
[[nodiscard]] Result<NutFactor> factor_from(const Given& in);
[[nodiscard]] Multiplier multiplier_from(const Given& in);

/// The bench's half: bar-pull, wrench-setting, multiplier-ratio, torque-reached.
[[nodiscard]] std::vector<FigureSpec> pull_figures();

}  // namespace flatwise::fasteners
