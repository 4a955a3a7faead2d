// shaft_bearing.h: what the wobble does to a bearing of a shaft as defined, as it is told to programs: of the rotor whose bearing ends
// first, or of one that was named. One function behind the shell's `bearing` and the API's /api/shafts/{id}/bearing. A study works out
// the same for each of its ways.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/doubt/of_shaft.h"
#include "study/outcome.h"
#include "wire/json.h"

namespace flatwise::view {

/// The bearing that is told, and whether nobody named it.
struct ShaftBearing {
  study::BearingTold bearing;
  bool first_to_end = false;
  /// How well life (where there is one), stress, greatest ball load and static safety are known, by the doubts of the definition: keys as the
  /// outputs of the figure bearing-turn. Empty where nothing is doubted.
  std::vector<doubt::ToldDoubt> doubts = {};
};

/// Inputs     station: label of a rotor; none: the rotor whose bearing ends first.
/// Refuses    A label that no rotor has, named station, with those there are; then as study::outcome_of() or study::bearing_of().
[[nodiscard]] Results<ShaftBearing> bearing_as_asked(const Shaft& shaft, const std::optional<std::string>& station);

/// The label of a rotor's station.
[[nodiscard]] std::string rotor_label(const Shaft& shaft, int rotor);

/// In the order they follow from each other; those that could not be worked out are left out.
[[nodiscard]] std::vector<WorkingPtr> workings_of(const study::BearingTold& bearing);

/// schemas/output/bearing.schema.json.
[[nodiscard]] wire::Json bearing_json(const Shaft& shaft, const ShaftBearing& told, const Voice& voice);

}  // namespace flatwise::view
