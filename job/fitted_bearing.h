// fitted_bearing.h: what a definition says of the bearing in a rotor, as the figures that follow from it.
//
//   const RotorOf part = rotor_of(shaft, 3);
//   const auto inside = bearing_inside(part);
//   const auto fit = fit_by_limits(part);
//   const auto left = clearance_fitted(part, *inside, fit_of(*fit));
#pragma once

#include <functional>
#include <vector>

#include "core/shaft/shaft.h"
#include "core/working/figure.h"

namespace flatwise::job {

/// One rotor of a definition, and where a field of it comes from ("bearing.d", "hub.bore").
struct RotorOf {
  const Rotor& it;
  Length across_flats;  ///< Of the profile: the hole through the seat of the inner ring.
  std::function<Origin(std::string_view field)> from;

  [[nodiscard]] Input length(std::string_view name, Length value, std::string_view field) const {
    return given(name, any(value), from(field));
  }
};
/// As the definition has it. The shaft outlives what is returned.
[[nodiscard]] RotorOf rotor_of(const Shaft& shaft, int rotor);

/// Interference of the outer ring in its hub, as inputs "interference-least" and "interference-greatest".
struct FitInputs {
  Input least, greatest;
};
/// The two of a working of the figure interference.
[[nodiscard]] FitInputs fit_of(const WorkingPtr& interference);

/// Figure bearing-geometry: what the definition states of the inside, the rest estimated.
[[nodiscard]] Results<WorkingPtr> bearing_inside(const RotorOf& part);
/// balls, ball-diameter, pitch-diameter, inner-groove, outer-groove, from a working of bearing_inside().
[[nodiscard]] std::vector<Input> inside_inputs(const WorkingPtr& inside);
/// The same for a figure of the play: with how well the inside is known. What is stated counts as it stands.
[[nodiscard]] std::vector<Input> rocked_inputs(const RotorOf& part, const WorkingPtr& inside);

/// Figure ring-outside: between what the outer ring lies by its class.
[[nodiscard]] Results<WorkingPtr> ring_outside(const RotorOf& part);
/// Figure interference of a hub that nobody gauged: its bore lies anywhere within its limits.
[[nodiscard]] Results<WorkingPtr> fit_by_limits(const RotorOf& part);
/// joint-diameter, ring-inside, hub-outside, roughness-loss, hub-modulus, hub-poisson.
[[nodiscard]] std::vector<Input> joint_inputs(const RotorOf& part);

/// Figure fitted-clearance: the bearing's group less what hub, seat (where its limits are stated) and warmth take.
[[nodiscard]] Results<WorkingPtr> clearance_fitted(const RotorOf& part, const WorkingPtr& inside, FitInputs fit);

/// dynamic-rating, static-rating, viscosity, cleanliness, reliability: those that the definition states.
[[nodiscard]] std::vector<Input> care_inputs(const RotorOf& part);

}  // namespace flatwise::job
