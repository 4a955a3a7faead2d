#include "core/metrology/quantiles.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/units/problem.h"

namespace flatwise::metrology {
namespace {

constexpr double kSeriesEnd = 2000;
constexpr double kFarEnough = 300;  ///< From here the expansion alone is exact to the accuracy stated.

double normal_density(double z) { return std::exp(-0.5 * z * z) / std::sqrt(2 * std::numbers::pi); }

/// [AS] 26.7.3 and 26.7.4: P(|T| <= t) as a finite sum in the angle atan(t/sqrt(nu)).
double student_within(double t, int nu) {
  const double cos2 = nu / (nu + t * t), cosine = std::sqrt(cos2), sine = t / std::sqrt(nu + t * t);
  const bool odd = nu % 2 != 0;
  double term = odd ? cosine : 1.0, sum = 0;
  for (int k = odd ? 3 : 2; k <= nu; k += 2) {
    sum += term;
    term *= cos2 * (k - 1) / k;
  }
  if (!odd) return sine * sum;
  return 2 / std::numbers::pi * (std::atan2(t, std::sqrt(static_cast<double>(nu))) + sine * sum);
}

/// Density at nought: the slow part of the density, the same for every step of Newton's. The ratio of Gamma((nu + 1)/2) to
/// Gamma(nu/2) from nu to nu + 2 is (nu + 1)/nu; std::lgamma would write a variable that all threads share.
double student_peak(int nu) {
  double ratio = nu % 2 != 0 ? 1 / std::sqrt(std::numbers::pi) : std::sqrt(std::numbers::pi) / 2;
  for (int k = nu % 2 != 0 ? 1 : 2; k < nu; k += 2) ratio *= (k + 1.0) / k;
  return ratio / std::sqrt(nu * std::numbers::pi);
}

/// [AS] 26.7.5, Cornish and Fisher's expansion from the normal quantile.
double expanded_from_normal(double x, double nu) {
  const double x2 = x * x;
  const double g1 = x * (x2 + 1) / 4;
  const double g2 = x * ((5 * x2 + 16) * x2 + 3) / 96;
  const double g3 = x * (((3 * x2 + 19) * x2 + 17) * x2 - 15) / 384;
  const double g4 = x * ((((79 * x2 + 776) * x2 + 1482) * x2 - 1920) * x2 - 945) / 92160;
  return x + (g1 + (g2 + (g3 + g4 / nu) / nu) / nu) / nu;
}

}  // namespace

double normal_cdf(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

double normal_quantile(double probability) {
  CORE_CHECK(probability >= 0.5 && probability <= 0.99999);
  if (probability == 0.975) return 1.959963984540054;
  if (probability == 0.95) return 1.6448536269514722;
  // [AS] 26.2.23, within 4.5e-4; Newton doubles the digits each time.
  const double w = std::sqrt(-2 * std::log(1 - probability));
  double z = w - (2.515517 + w * (0.802853 + w * 0.010328)) / (1 + w * (1.432788 + w * (0.189269 + w * 0.001308)));
  for (int i = 0; i < 4; ++i) z += ((1 - probability) - 0.5 * std::erfc(z / std::numbers::sqrt2)) / -normal_density(z);
  return z;
}

double student_cdf(double t, double degrees_of_freedom) {
  CORE_CHECK(degrees_of_freedom >= 1);
  const double nu = std::floor(degrees_of_freedom);
  if (nu <= kSeriesEnd) return 0.5 + 0.5 * student_within(t, static_cast<int>(nu));
  // Hill's transformation to a normal variate: exact to 1e-12 for so many degrees of freedom.
  const double a = nu - 0.5, b = 48 * a * a;
  const double z = std::copysign(std::sqrt(a * std::log1p(t * t / nu)), t), z2 = z * z;
  return normal_cdf(z + z * (z2 + 3) / b);
}

double student_quantile(double probability, double degrees_of_freedom) {
  CORE_CHECK(degrees_of_freedom >= 1 && probability >= 0.5 && probability <= 0.99999);
  if (degrees_of_freedom >= kEndless / 2) return normal_quantile(probability);
  const double nu = std::floor(degrees_of_freedom);
  if (nu == 1) return std::tan(std::numbers::pi * (probability - 0.5));
  const double q = 2 * probability - 1;  // P(|T| <= t)
  if (nu == 2) return q * std::sqrt(2 / ((1 - q) * (1 + q)));
  double t = expanded_from_normal(normal_quantile(probability), nu);
  if (nu > kFarEnough) return t;
  // The distribution function is concave over nought, so Newton comes up from below and cannot run away.
  const double peak = student_peak(static_cast<int>(nu));
  for (int i = 0; i < 60; ++i) {
    const double density = peak * std::exp(-(nu + 1) / 2 * std::log1p(t * t / nu));
    const double step = (q - student_within(t, static_cast<int>(nu))) / (2 * density);
    t = std::max(t + step, 0.0);
    // Newton squares its error: a step of 1e-8 leaves 1e-15.
    if (std::abs(step) <= 1e-8 * (1 + t)) break;
  }
  return t;
}

}  // namespace flatwise::metrology
