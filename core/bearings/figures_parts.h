// figures_parts.h: inputs that both figures of the play share. Not for other folders.
#pragma once

#include <string_view>
#include <vector>

#include "core/bearings/life.h"
#include "core/working/input_specs.h"

namespace flatwise::bearings {

/// What is known of the inside, with its doubt, and how the rotor is held.
struct Rocked {
  BallBearing bearing;
  TiltFactor factor;
  double reach_doubt = 0;  ///< Relative half width of A, from the grooves and the ball, rectangular.
  Length radius;
  Hub hub = Hub::centred;
  std::optional<Hanging> hanging;  ///< None: carried.
};
/// balls, balls-from, ball-diameter, ball-doubt, pitch-diameter, inner-groove, outer-groove, groove-doubt, radius, hub, held, push,
/// weight.
[[nodiscard]] std::vector<InputSpec> rocked_inputs();
[[nodiscard]] Result<Rocked> rocked_from(const Given& in);
/// Share of the carried rotor's tilt: 1, or less where the rotor hangs.
[[nodiscard]] double share_at(const Rocked& rocked, Length clearance, Angle carried);
/// Whole swing of the dial at a clearance.
[[nodiscard]] Result<Length> swing_at(const Rocked& rocked, Length clearance, double factor);
/// The same bearing with A bigger or smaller by a share of itself.
[[nodiscard]] Rocked with_reach(Rocked rocked, double share);

/// balls, ball-diameter, pitch-diameter, inner-groove, outer-groove.
[[nodiscard]] std::vector<InputSpec> inside_inputs();
[[nodiscard]] Result<BallBearing> inside_from(const Given& in);
/// A kernel's problem with the figure's name of the field.
[[nodiscard]] tl::unexpected<Problem> as_input(Problem problem);
/// dynamic-rating, static-rating: optional; where they are left out, by ISO 281 and ISO 76 from the inside, with a note that says so.
[[nodiscard]] std::vector<InputSpec> rating_inputs();
[[nodiscard]] Result<Ratings> ratings_from(const Given& in, const BallBearing& bearing, std::vector<Finding>& findings);
/// viscosity or viscosity-ratio, cleanliness, reliability.
[[nodiscard]] std::vector<InputSpec> lubrication_inputs();
[[nodiscard]] Lubrication lubrication_from(const Given& in);
void say_viscosity_capped(double ratio, std::vector<Finding>& findings);
[[nodiscard]] InputSpec season_input();  ///< season-hours.

inline constexpr double kMostForce = 1e7;   ///< N; no deep groove bearing here carries more.
inline constexpr double kMostCouple = 1e6;  ///< N m.

[[nodiscard]] FigureSpec geometry_figure();
[[nodiscard]] FigureSpec bearing_ratings_figure();
[[nodiscard]] FigureSpec ball_contact_figure();
[[nodiscard]] FigureSpec load_distribution_figure();
[[nodiscard]] FigureSpec static_safety_figure();
[[nodiscard]] FigureSpec bearing_life_figure();
[[nodiscard]] FigureSpec bearing_turn_figure();
[[nodiscard]] FigureSpec bearing_grease_figure();
[[nodiscard]] FigureSpec defect_rates_figure();
[[nodiscard]] FigureSpec fitted_clearance_figure();
[[nodiscard]] FigureSpec rim_play_figure();
[[nodiscard]] FigureSpec clearance_from_play_figure();

}  // namespace flatwise::bearings
