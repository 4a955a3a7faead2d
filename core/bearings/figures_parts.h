// figures_parts.h: inputs that both figures of the play share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/bearings/rim_play.h"
#include "core/working/input_specs.h"

namespace flatwise::bearings {

/// What is known of the inside, with its doubt, and how the rotor is held.
struct Rocked {
  BallBearing bearing;
  TiltFactor factor;
  double reach_doubt = 0;  ///< Relative half width of A, from the grooves and the ball, rectangular.
  Length radius;
  Hub hub = Hub::centred;
};
/// balls, balls-from, ball-diameter, ball-doubt, pitch-diameter, inner-groove, outer-groove, groove-doubt, radius, hub.
[[nodiscard]] std::vector<InputSpec> rocked_inputs();
[[nodiscard]] Result<Rocked> rocked_from(const Given& in);
/// Whole swing of the dial at a clearance.
[[nodiscard]] Result<Length> swing_at(const Rocked& rocked, Length clearance, double factor);
/// The same bearing with A bigger or smaller by a share of itself.
[[nodiscard]] Rocked with_reach(Rocked rocked, double share);

[[nodiscard]] FigureSpec geometry_figure();
[[nodiscard]] FigureSpec fitted_clearance_figure();
[[nodiscard]] FigureSpec rim_play_figure();
[[nodiscard]] FigureSpec clearance_from_play_figure();

}  // namespace flatwise::bearings
