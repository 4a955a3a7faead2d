// thread.h: what is written on a thread ("1 1/2-6 UNC", "3/4-16", "M36x3", "M30") to its geometry and stress area.
//
//   auto thread = read_thread("M36x3", "thread");
//   Area area = stress_area(*thread);  // 864.9 mm2
#pragma once

#include <string>
#include <string_view>

#include "core/units/problem.h"
#include "core/units/quantity.h"

namespace flatwise::fasteners {

enum class ThreadSystem { inch, metric };

/// A 60° thread of ASME B1.1 or ISO 68-1 basic profile.
struct ThreadForm {
  std::string designation;  ///< As written, blanks trimmed.
  ThreadSystem system = ThreadSystem::metric;
  bool left_hand = false;         ///< "LH" was written: it tightens the other way.
  Length major;                   ///< Basic major diameter d.
  Length pitch;                   ///< P; for inch threads exactly 1 in / n.
  double threads_per_inch = 0.0;  ///< n; nought for metric threads.
};

/// Reads a thread designation.
///
/// Accepts    Inch: size (fraction, mixed fraction with a blank or a dash, or decimal), a dash, threads per inch, then
///            optionally a series (UNC, UNF, UN, UNS, UNEF, with or without R), a class (-2A) and LH. Metric: M, size,
///            optionally x (or ×) and pitch, a tolerance class (-6g) and LH; without pitch the coarse one of ISO 261.
/// Refuses    What it cannot read; an inch thread without its threads per inch; UNC or UNF with threads per inch that
///            series does not have at that size; a metric size without a coarse pitch in ISO 261; sizes outside
///            1/4 to 6 in and M3 to M150; a pitch over a quarter of the diameter.
/// Source     [B1.1] for the series, [ISO261] for coarse pitches.
[[nodiscard]] Result<ThreadForm> read_thread(std::string_view text, std::string_view field);

/// Tensile stress area.
///
/// Model      Circle over a mean of pitch and root diameters. Inch: pi/4 (D - 0.9743/n)^2. Metric: pi/4 ((d2 + d3)/2)^2
///            with d2, d1 of ISO 724 and d3 = d1 - H/6. External thread at its basic size.
/// Returns    Area > 0.
/// Accuracy   4 eps against the formula; printed tables agree to their last digit (tests/data/fasteners_areas.csv).
/// Source     [B1.1] tensile stress area; [ISO898-1] clause 9; [ISO724].
[[nodiscard]] Area stress_area(const ThreadForm& thread);

/// Basic pitch diameter d2 = d - 0.649519 P, both systems ([ISO724], [B1.1]).
[[nodiscard]] Length pitch_diameter(const ThreadForm& thread);

}  // namespace flatwise::fasteners
