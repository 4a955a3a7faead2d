// shaft_pattern.h: the quietest arrangements of a shaft as they are asked for by people and told to programs. One function behind the
// shell's `pattern --json` and the API's /api/shafts/{id}/pattern.
#pragma once

#include <string>
#include <vector>

#include "job/arrange.h"
#include "wire/json.h"

namespace flatwise::view {

/// As typed; empty: the default.
struct PatternAsked {
  std::string judged = "larger-plane";  ///< Or "both-planes", "couple".
  std::string least_gap, error_share, error_azimuth;
  std::vector<std::string> stays;  ///< "ROTOR=FLAT".
  bool by_hangers = false;         ///< Among those under the floor the hangers choose.
};

/// "3=4,4=1" in its parts.
[[nodiscard]] std::vector<std::string> stays_in(std::string_view typed);

/// Refuses    What cannot be read, all of it at once, named least-gap, error-share, error-azimuth, stay; then as job::arrange().
[[nodiscard]] Results<job::Arranged> arranged_as_asked(const Shaft& shaft, const PatternAsked& asked);

/// A value in what the arrangement is judged by: a force, or a couple.
[[nodiscard]] AnyQuantity judged_by(const PatternAsked& asked, double si);

/// schemas/output/pattern.schema.json.
[[nodiscard]] wire::Json pattern_json(const Shaft& shaft, const PatternAsked& asked, const job::Arranged& arranged,
                                      const Voice& voice);

}  // namespace flatwise::view
