// strength.h: proof, yield and tensile strength of a class or grade, inside the sizes its standard covers.
#pragma once

#include <string>
#include <string_view>

#include "core/fasteners/thread.h"
#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fasteners {

struct Strength {
  std::string name;  ///< "grade 8", "10.9".
  Pressure proof, yield, tensile;
  std::string_view source;  ///< Key of docs/sources.md.
};

/// Strength of a class for a thread of this size.
///
/// Accepts    "grade 2", "grade 5", "grade 8" (inch threads); "8.8", "10.9", "12.9", also "class 8.8" (metric threads).
/// Refuses    Another class; a grade on a metric thread or a class on an inch one; sizes outside the standard (grades
///            1/4 to 1 1/2 in, classes to M39): give the proof strength of the shaft's material instead.
/// Source     [J429] table 1, full-size proof load as stress; grade 2 over 3/4 in, and over 6 in long, is grade 1.
///            [ISO898-1] table 3: Sp, yield (0.2 %), Rm min; class 8.8 changes at 16 mm.
[[nodiscard]] Result<Strength> strength_of(std::string_view strength_class, const ThreadForm& thread,
                                           std::string_view field);

/// Proof load of a thread: proof strength times stress area.
[[nodiscard]] Force proof_load(Pressure proof_strength, Area stress_area);

}  // namespace flatwise::fasteners
