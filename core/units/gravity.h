// gravity.h: what turns a mass into a weight.
#pragma once

namespace flatwise {

/// Standard gravity, m/s²: 3rd CGPM, 1901, as in NIST SP 811 (2008), appendix B. Where a workshop stands it differs by 0.3 % at most.
inline constexpr double kGravity = 9.80665;

}  // namespace flatwise
