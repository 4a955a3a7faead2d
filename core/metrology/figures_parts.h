// figures_parts.h: inputs that several figures of this folder share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/metrology/decide.h"
#include "core/metrology/temperature.h"
#include "core/working/input_specs.h"

namespace flatwise::metrology {

inline constexpr double kMostLength = 100;  // m: keeps every result finite.
inline constexpr double kMostU = 0.1;       // m
inline constexpr std::string_view kRules[] = {"guard_u", "one_sided"};
inline constexpr std::string_view kYesNo[] = {"yes", "no"};
inline constexpr std::string_view kPlanes[] = {"A", "B", "C"};
inline constexpr std::string_view kStandings[] = {"in_date", "overdue", "accepted"};

/// A length over nought; an uncertainty of nought or more.
[[nodiscard]] InputSpec size_input(std::string_view name, std::string_view symbol);
[[nodiscard]] InputSpec u_input(std::string_view name, std::string_view symbol);
[[nodiscard]] InputSpec dof_input(std::string_view name);
[[nodiscard]] InputSpec assumed_word(std::string_view name, std::string_view word,
                                     std::span<const std::string_view> choices, std::string_view why);
[[nodiscard]] InputSpec rule_input();
[[nodiscard]] Rule rule_from(const Given& in);

/// part-temperature, gauge-temperature, thermometer, room-temperature, room-half-width, together, apart, part-expansion,
/// gauge-expansion, expansion-half-width.
[[nodiscard]] std::vector<InputSpec> thermal_inputs();
[[nodiscard]] ThermalState thermal_from(const Given& in);

/// bore-at-plane and bore-taper.
[[nodiscard]] std::vector<FigureSpec> bore_figures();
/// run-rise and run-vibration.
[[nodiscard]] std::vector<FigureSpec> run_figures();

}  // namespace flatwise::metrology
