// figures.h: the computations of this folder that a person may ask for, and the same for a whole shaft.
#pragma once

#include <optional>
#include <span>

#include "core/dynamics/resultants.h"
#include "core/shaft/shaft.h"
#include "core/working/figure.h"

namespace flatwise::dynamics {

/// rotating-couple, rotating-force, couple-resultant, tine-travel, ground-per-swing, tine-gap, permissible-unbalance,
/// least-couple-pattern, least-force-pattern.
[[nodiscard]] std::span<const FigureSpec> figures();

/// couple-resultant of a shaft whose rotors have these tilt azimuths (one a rotor, from end A), with the working of each
/// rotor's couple behind it and every input's origin. Errors that somebody stated, and where; none: as assumed.
struct ErrorsGiven {
  StatedErrors errors;
  Origin share, azimuth;
};
[[nodiscard]] Result<Working> arrangement_working(const Shaft& shaft, std::span<const Angle> tilt,
                                                  const std::optional<ErrorsGiven>& errors = std::nullopt);
/// tine-gap of the two neighbours that come nearest; its findings name them. A shaft of one rotor has none: refused.
[[nodiscard]] Result<Working> least_gap_working(const Shaft& shaft, std::span<const Angle> tilt);

}  // namespace flatwise::dynamics
