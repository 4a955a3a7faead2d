// critical.h: the speeds at which a bent shaft would keep on bending: lateral critical speeds, none missed.
#pragma once

#include <vector>

#include "core/beam/mesh.h"
#include "core/lanes/lanes.h"

namespace flatwise::beam {

inline constexpr int kMostCriticals = 64;

struct CriticalSpeeds {
  std::vector<AngularSpeed> speeds;  ///< From the lowest.
  /// Fewer than were asked for: no more below this one, where the elements become too long to tell.
  std::optional<AngularSpeed> none_up_to = std::nullopt;
};

/// The lowest `count` speeds at which K - w² M + w G is singular.
///
/// Model      Synchronous whirl, no damping. The number of them under a speed is the number of negative pivots there
///            (Sylvester's law; exact because K is positive definite, whatever the sign of the effective inertias, so that none
///            is missed or counted twice); eight speeds at once, then eight between, until they are found.
/// Returns    Each as often as it occurs. A thin disk that turns with the shaft stiffens it: forward there may be fewer.
/// Refuses    Count outside 1 to 64.
/// Accuracy   1e-11 of itself in the search; rounding of a fine mesh leaves about 1e-9 (1e-7 at worst, where a part of the
///            shaft by itself is critical at the same speed); the elements' own error is under 0.1 % up to Mesh::fastest().
/// Source     [Sylvester], [Wittrick-Williams] for the count; closed forms in the tests.
[[nodiscard]] Result<CriticalSpeeds> critical_speeds(const Mesh& mesh, Whirl whirl, int count,
                                                     lanes::Width width = lanes::widest());

/// A critical speed within a quarter of the running speed either side: common practice keeps further off.
struct NearSpeed {
  AngularSpeed speed;
  double apart;  ///< (critical - running)/running.
};
inline constexpr double kKeepOff = 0.25;
[[nodiscard]] std::vector<NearSpeed> within_keep_off(const std::vector<AngularSpeed>& criticals, AngularSpeed running);

/// A problem where the elements are too long for this speed.
[[nodiscard]] std::optional<Problem> too_coarse(const Mesh& mesh, AngularSpeed speed);

}  // namespace flatwise::beam
