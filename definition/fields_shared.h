// fields_shared.h: units, ranges and words that the lists of keys share. Not for other folders.
#pragma once

#include <array>
#include <numbers>
#include <string_view>

#include "definition/fields.h"

namespace flatwise::definition {

inline constexpr double kMm = 1e-3, kMicro = 1e-6, kMinute = 60, kHour = 3600, kDegree = std::numbers::pi / 180;
inline constexpr double kTurnsPerMinute = std::numbers::pi / 30;

inline constexpr std::array<std::string_view, 2> kEnds{"A", "B"};
inline constexpr std::array<std::string_view, 1> kFacing{"facing"};

inline constexpr Range kFlat{1, 24};
inline constexpr Range kPartLength{0.1 * kMm, 2}, kPartDiameter{1 * kMm, 2};
inline constexpr Range kDeviation{0, 20 * kMm};
inline constexpr Range kMinutes{0, 24 * 60 * kMinute};
inline constexpr Range kPrice{0, 1e6};

inline constexpr std::string_view kIso2768 = "ISO 2768-1 medium, by the length; from memory";
inline constexpr std::string_view kByKind = "common practice, by the kind of part";

}  // namespace flatwise::definition
