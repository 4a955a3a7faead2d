// uncertainty.h: standard uncertainties put together as the GUM does, and the expanded uncertainty at 95 %.
//
//   const Component parts[] = {{.u = 25e-9, .dof = 18}, {.u = 9.7e-9, .dof = 25.6}};
//   Uncertainty u = expand(combine(parts));
#pragma once

#include <cmath>
#include <numbers>
#include <span>

#include "core/metrology/quantiles.h"
#include "core/working/working.h"

namespace flatwise::metrology {

/// One influence: standard uncertainty in its own SI unit, what the result moves by for one of it, degrees of freedom.
struct Component {
  double u = 0;
  double sensitivity = 1;
  double dof = kEndless;
};

/// Standard uncertainty with its effective degrees of freedom, not truncated.
struct Combined {
  double u = 0;
  double dof = kEndless;
};

/// Half width of a rectangular distribution to a standard uncertainty (GUM 4.3.7).
[[nodiscard]] inline double rectangular(double half_width) { return half_width / std::numbers::sqrt3; }
/// Resolution of a display: rectangular over one step (GUM F.2.2.1).
[[nodiscard]] inline double from_resolution(double step) { return rectangular(step / 2); }
/// Expanded uncertainty of a certificate, k = 2, to a standard uncertainty.
[[nodiscard]] inline double from_k2(double expanded) { return expanded / 2; }
/// Bounds of a cyclic (arcsine) variation to a standard uncertainty (GUM H.1.3.4).
[[nodiscard]] inline double arcsine(double half_width) { return half_width / std::numbers::sqrt2; }

/// Root sum of squares, and degrees of freedom by Welch and Satterthwaite.
///
/// Model      Uncorrelated influences, first order: u² = Σ (c u)², ν = u⁴ / Σ (c u)⁴/ν (GUM 10 and G.2b). What is
///            correlated is put together before it comes here (bore.h).
/// Inputs     u >= 0, dof >= 1.
/// Returns    kEndless degrees of freedom where nothing limits them; all nought gives nought.
/// Source     [GUM] 5.1.2, G.4.1.
[[nodiscard]] Combined combine(std::span<const Component> parts);

/// The two-sided 95 % factor (or one of another two-sided share), with degrees of freedom truncated to an integer.
///
/// Inputs     share 0.5 to 0.9999.
/// Source     [GUM] G.3, G.4.1 note 1.
[[nodiscard]] double coverage_factor(double dof, double share = 0.95);

/// Expanded uncertainty at 95 % two-sided. `degrees_of_freedom` is empty where they are without end.
[[nodiscard]] Uncertainty expand(const Combined& combined);

/// Standard uncertainty of a product x y about its point where both are uncertain: the second-order term u(x) u(y) that
/// the first-order sum leaves out, as an influence of its own for combine().
///
/// Source     [GUM] 5.1.2 note, H.1.7.
[[nodiscard]] Component second_order(double scale, double u_x, double u_y);

}  // namespace flatwise::metrology
