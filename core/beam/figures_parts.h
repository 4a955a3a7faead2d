// figures_parts.h: what the figures of this folder share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/beam/bending.h"
#include "core/beam/critical.h"
#include "core/working/input_specs.h"

namespace flatwise::beam {

inline constexpr double kMostLength = 100;  // m
inline constexpr double kMostSpeed = 1e4;   // rad/s
inline constexpr double kMostForce = 1e9;   // N

/// The bar, its hangers and the bodies on it; what every figure of a bent shaft takes.
[[nodiscard]] std::vector<InputSpec> shaft_inputs();
/// Loads at rest beside the own weight.
[[nodiscard]] std::vector<InputSpec> load_inputs();
/// Where each body leans to.
[[nodiscard]] std::vector<InputSpec> lean_inputs();
[[nodiscard]] InputSpec speed_input();

/// The typed inputs as a beam with all that acts on it.
struct Setup {
  Beam beam;
  std::vector<Load> loads;
  std::vector<Turning> turning;
};
/// Refuses lists of uneven length, a bar that is neither a polygon nor round or both, and what a body may not be.
[[nodiscard]] Result<Setup> setup_from(const Given& in);

/// Findings for the critical speeds that are near the running one, or where it is above the first of them. `whirl`: "whirl.forward" or "whirl.backward".
void add_near(const std::vector<AngularSpeed>& criticals, AngularSpeed running, Word whirl, std::vector<Finding>& to);
/// A finding where more stress stands in the bar than the weakest, or than any, of the usual steels bears.
void add_stressed(Pressure greatest, std::vector<Finding>& to);

[[nodiscard]] const FigureSpec& section_figure();
[[nodiscard]] const FigureSpec& deflection_figure();
[[nodiscard]] const FigureSpec& reactions_figure();
[[nodiscard]] const FigureSpec& critical_figure();

}  // namespace flatwise::beam
