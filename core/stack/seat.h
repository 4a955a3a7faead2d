// seat.h: is the stack home? What a measured length says, and what would settle it.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/stack/sum.h"
#include "core/units/problem.h"

namespace flatwise::stack {

enum class Seat { contradiction, not_seated, seated, cannot_tell };

struct SeatReading {
  Length measured;
  Length expanded;   ///< U of the measurement, 95 %.
  Band seated;       ///< The 95 % band [a, b] of the seated stack.
  Length least_gap;  ///< g: least opening of a joint that matters.
};
struct SeatJudged {
  Seat seat = Seat::cannot_tell;
  /// Expanded uncertainty under which this very reading would decide. None: no gauge settles it, because the parts'
  /// own tolerances hide a gap of g at this length; measure the parts.
  std::optional<Length> expanded_wanted;
};
/// Decision in this order: contradiction y + U < a; not seated y - U > b; seated y + U < a + g; else cannot tell.
///
/// Refuses    Measured or least gap not above nought, U negative, least over greatest of the band, not finite.
/// Source     Rule of this project; guard band as in [ISO14253-1].
[[nodiscard]] Result<SeatJudged> judge_seat(const SeatReading& reading);

/// One part too few, one too many, or another in its place.
enum class SlipKind { missing, doubled, exchanged };
struct Slip {
  SlipKind kind = SlipKind::missing;
  std::vector<int> parts;    ///< Indices of the parts of this length: any one of them.
  std::vector<int> instead;  ///< Exchanged: the parts whose length stands in its place.
  Length change;             ///< What it does to the stack.
  Length off;                ///< Difference minus change: what stays unexplained.
};
/// Which single slip accounts for a difference within +- `within`, the nearest first; parts of one nominal length are
/// one story. Exchanged means a second part of that length stands in the place, as labels as put back would show;
/// two parts of one stack that changed places do not change its length and cannot be seen here.
///
/// Refuses    No part, more than 100,000, a difference not finite, `within` negative.
[[nodiscard]] Result<std::vector<Slip>> explain(Length difference, Length within, std::span<const StackPart> parts);

}  // namespace flatwise::stack
