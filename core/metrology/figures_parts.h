// figures_parts.h: inputs that several figures of this folder share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/metrology/decide.h"
#include "core/metrology/temperature.h"
#include "core/working/figure.h"

namespace flatwise::metrology {

inline constexpr std::string_view kPractice = "common practice";
inline constexpr double kMostLength = 100;  // m: keeps every result finite.
inline constexpr double kMostU = 0.1;       // m
inline constexpr std::string_view kRules[] = {"guard_u", "one_sided"};
inline constexpr std::string_view kYesNo[] = {"yes", "no"};
inline constexpr std::string_view kPlanes[] = {"A", "B", "C"};
inline constexpr std::string_view kStandings[] = {"in_date", "overdue", "accepted"};

/// A length over nought; a length of nought or more; the same, left out at will.
[[nodiscard]] InputSpec size_input(std::string_view name, std::string_view symbol);
[[nodiscard]] InputSpec u_input(std::string_view name, std::string_view symbol);
[[nodiscard]] InputSpec may_be_given(InputSpec spec);
[[nodiscard]] InputSpec repeated(InputSpec spec);
[[nodiscard]] InputSpec assumed_value(std::string_view name, std::string_view symbol, Value value, double least_si,
                                      double greatest_si, std::string_view why);
[[nodiscard]] InputSpec assumed_word(std::string_view name, std::string_view word,
                                     std::span<const std::string_view> choices, std::string_view why);
[[nodiscard]] InputSpec rule_input();
[[nodiscard]] Rule rule_from(const Given& in);
[[nodiscard]] std::optional<Length> length_if_given(const Given& in, std::string_view name);

/// part-temperature, gauge-temperature, thermometer, room-temperature, room-half-width, together, apart, part-expansion,
/// gauge-expansion, expansion-half-width.
[[nodiscard]] std::vector<InputSpec> thermal_inputs();
[[nodiscard]] ThermalState thermal_from(const Given& in);
[[nodiscard]] std::vector<InputSpec> all_of(std::initializer_list<std::vector<InputSpec>> lists);

/// bore-at-plane and bore-taper.
[[nodiscard]] std::vector<FigureSpec> bore_figures();

}  // namespace flatwise::metrology
