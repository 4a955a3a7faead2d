// materials.h: the metals of hubs, adapter halves and rings: stiffness, strength, expansion, as published.
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/fits/lame.h"
#include "core/units/quantity.h"

namespace flatwise::fits {

struct Metal {
  std::string_view name;         ///< "steel", "grey iron": as asked for.
  std::string_view designation;  ///< "S355J2, EN 10025-2, 16 to 40 mm".
  Elastic elastic;
  std::optional<Pressure> yield;  ///< None: it does not yield, it cracks.
  Pressure tensile;
  double expansion_per_k;
  std::string_view source;  ///< Key of docs/sources.md.
};

/// steel, bearing steel, grey iron, ductile iron, aluminium: least strengths of a common grade of each. A part's own
/// grade, where it is known, goes first.
[[nodiscard]] std::span<const Metal> metals();
[[nodiscard]] const Metal* find_metal(std::string_view name);  ///< None: nullptr.

}  // namespace flatwise::fits
