// figures_parts.h: inputs that several figures of this folder share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/fits/press.h"
#include "core/working/input_specs.h"

namespace flatwise::fits {

inline constexpr double kMostForce = 1e9;  // N; ranges that no shop press leaves, they keep every result finite.
inline constexpr std::string_view kFrictionFrom[] = {"books", "shop"};
inline constexpr std::string_view kHubFails[] = {"yields", "cracks"};  ///< Grey iron cracks.

/// joint-diameter, ring-inside or bearing-bore, hub-outside, the materials and hub-yield.
[[nodiscard]] std::vector<InputSpec> joint_inputs();
[[nodiscard]] std::vector<InputSpec> friction_inputs();  ///< friction-least, friction-greatest, friction-from.

/// The joint as given; where ring-inside is not, from bearing-bore, with a finding that says so. Refuses neither given.
[[nodiscard]] Result<PressedJoint> joint_from(const Given& in, std::vector<Finding>& findings);
[[nodiscard]] Elastic ring_from(const Given& in);
[[nodiscard]] Elastic hub_from(const Given& in);
[[nodiscard]] FrictionRange friction_from(const Given& in);

/// That the band says little about a ring that is too small, and what would help: measuring the ring where it starts at
/// nought, the shop's own presses where it is only wide.
[[nodiscard]] Finding band_hides(bool from_nought);

/// A kernel's problem with the figure's name of the field ("ring_inside" to "ring-inside").
[[nodiscard]] tl::unexpected<Problem> as_input(Problem problem);

/// fit-limits, ring-outside, clearance-group, interference.
[[nodiscard]] std::vector<FigureSpec> table_figures();
/// press-pressure, press-force, shop-friction.
[[nodiscard]] std::vector<FigureSpec> press_figures();
/// press-readback, heating, ring-creep.
[[nodiscard]] std::vector<FigureSpec> after_figures();
/// hub-yielding, ring-on-half, metal, creep-load.
[[nodiscard]] std::vector<FigureSpec> depth_figures();
/// press-curve, press-curve-read.
[[nodiscard]] std::vector<FigureSpec> curve_figures();

}  // namespace flatwise::fits
