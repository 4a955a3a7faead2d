// input_specs.h: short ways to write the inputs of a figure's spec, the same in every folder.
//
//   .inputs = joined({{above_nought("force", "F", Kind::force, kMostForce),
//                      optional(from_nought("torque-u", "U", Kind::torque, kMostTorque)),
//                      repeated(above_nought("length", "l", Kind::length, kMostLength)),
//                      assumed(from_nought("poisson", "ν", Kind::ratio, 0.5), any_ratio(0.3), kCommonPractice)},
//                     friction_inputs()})
//
// A quantity is made by its range; optional, repeated and assumed are put round it. A greatest value keeps the sums
// finite: where there is none (infinity), the figure must see to that itself.
#pragma once

#include <initializer_list>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "core/working/figure.h"

namespace flatwise {

// Where a default comes from, when no standard and no book has it.
inline constexpr std::string_view kCommonPractice = "common practice";
inline constexpr std::string_view kOwnRule = "rule of this program";

/// A quantity, least <= x <= greatest.
[[nodiscard]] InputSpec between(std::string_view name, std::string_view symbol, Kind kind, double least_si,
                                double greatest_si);
/// A quantity, 0 < x <= greatest.
[[nodiscard]] InputSpec above_nought(std::string_view name, std::string_view symbol, Kind kind, double greatest_si);
/// A quantity, 0 <= x <= greatest.
[[nodiscard]] InputSpec from_nought(std::string_view name, std::string_view symbol, Kind kind, double greatest_si);
/// One word out of these. The list must live as long as the spec: a constant.
[[nodiscard]] InputSpec one_of(std::string_view name, std::string_view symbol,
                               std::span<const std::string_view> choices);
/// Free text: a thread, a fit, a name.
[[nodiscard]] InputSpec free_text(std::string_view name, std::string_view symbol);

/// The same input, which may be left out: the figure then does without.
[[nodiscard]] InputSpec optional(InputSpec spec);
/// The same input, which may be given many times.
[[nodiscard]] InputSpec repeated(InputSpec spec);
/// The same input with the value that is used, and marked assumed, where it is left out. `from`: why this value.
[[nodiscard]] InputSpec assumed(InputSpec spec, Value value, std::string_view from);
/// The same input, which says what `other` says in another way: only one of both may be given, and with `other` nothing is assumed.
[[nodiscard]] InputSpec instead_of(InputSpec spec, std::string_view other);

/// Lists of inputs one after the other.
[[nodiscard]] std::vector<InputSpec> joined(std::initializer_list<std::vector<InputSpec>> lists);

/// A length that was given.
[[nodiscard]] Length length_of(const Given& in, std::string_view name);
/// The length where it was given; none where it was left out.
[[nodiscard]] std::optional<Length> length_if_given(const Given& in, std::string_view name);
/// One value for each of `count` things: as many as were given, or one for all. None where neither fits; `missing`,
/// where there is one, stands for a list that was left out.
[[nodiscard]] std::optional<std::vector<double>> one_each(const Given& in, std::string_view name, std::size_t count,
                                                          std::optional<double> missing = std::nullopt);

}  // namespace flatwise
