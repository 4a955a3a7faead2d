// iso286_tables.h: the published tables of ISO 286-1 for 3 mm to 500 mm, as integers in micrometres.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace flatwise::fits {

inline constexpr int kStandardSteps = 13;   ///< Diameter steps of the tolerance grades; the first ends at 3 mm.
inline constexpr int kDeviationSteps = 25;  ///< Finer steps of the fundamental deviations.
inline constexpr int kFirstGrade = 4;       ///< IT4 is kept for the delta of grade 5.
inline constexpr int kLastGrade = 11;
inline constexpr int kNoDeviation = -1;  ///< The table has a dash: the letter does not exist at this size.

/// Upper ends of the steps in mm ("up to and including").
extern const std::array<int, kStandardSteps> kStandardStepEnds;
extern const std::array<int, kDeviationSteps> kDeviationStepEnds;

/// Standard tolerance, row per grade IT4..IT11, column per standard step. Source: ISO 286-1 Table 1.
extern const std::array<std::array<int, kStandardSteps>, kLastGrade - kFirstGrade + 1> kStandardTolerance;

/// Where the fundamental deviation of a letter lies.
enum class Side : std::uint8_t {
  away,    ///< a to h, A to H: the zone lies on the side of clearance; magnitude of es (shafts), EI (holes).
  middle,  ///< js, JS: half the tolerance either side.
  listed,  ///< j, J: listed by grade.
  into,    ///< k to zc, K to ZC: the zone lies on the side of interference; ei of shafts.
};

struct Letter {
  std::string_view shaft;  ///< Lower case; the hole is the same in capitals.
  Side side;
  std::array<int, kDeviationSteps> deviation;
};
/// a, b, c, cd, d ... zc. Source: ISO 286-1 Tables 2 to 5 (shafts; holes follow by the rules of that standard).
extern const std::array<Letter, 28> kLetters;

/// Shaft j5, j6, j7, j8: ei; hole J6, J7, J8: ES; by standard step. Source: ISO 286-1 Tables 2 and 5.
extern const std::array<std::array<int, kStandardSteps>, 4> kShaftJ;
extern const std::array<std::array<int, kStandardSteps>, 3> kHoleJ;
inline constexpr int kNoJ = 1;  ///< Not a value of kShaftJ (all are negative): the class does not exist there.

}  // namespace flatwise::fits
