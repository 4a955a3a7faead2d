// quantiles.h: the normal and Student's distributions, as far as uncertainty needs them. Plain numbers, no allocation.
//
//   const double k = student_quantile(0.975, 16);   // 2.119905
#pragma once

namespace flatwise::metrology {

/// Degrees of freedom of something known without end; from half of it on the normal distribution is used.
inline constexpr double kEndless = 1e9;

/// Normal distribution function.
///
/// Accuracy   As std::erfc: a few eps relative, in both tails.
[[nodiscard]] double normal_cdf(double z);

/// Student's distribution function for whole degrees of freedom.
///
/// Inputs     degrees_of_freedom >= 1, truncated to an integer; over 2000 the normal with Hill's correction.
/// Returns    P(T <= t).
/// Accuracy   1e-13 absolute to 2000, 1e-12 beyond.
/// Source     [AS] 26.7.3, 26.7.4; beyond 2000 26.7.8 with one more term.
[[nodiscard]] double student_cdf(double t, double degrees_of_freedom);

/// Quantile of Student's distribution for whole degrees of freedom.
///
/// Inputs     probability 0.5 to 0.99999 (a bug otherwise: it is never an input of a person); degrees_of_freedom >= 1,
///            truncated to an integer as the GUM does (G.4.1).
/// Accuracy   1e-12 relative at 0.975, 1e-10 at 0.99999.
/// Source     [AS] 26.7.5 for the start, then Newton on 26.7.3 and 26.7.4. Own, because the WebAssembly build has no
///            Boost; the test compares it with Boost.Math and with a table of another library.
[[nodiscard]] double student_quantile(double probability, double degrees_of_freedom);

/// Quantile of the normal distribution, 0.5 to 0.99999.
[[nodiscard]] double normal_quantile(double probability);

}  // namespace flatwise::metrology
