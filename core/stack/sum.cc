#include "core/stack/sum.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <string>
#include <utility>

#include "core/units/guards.h"

namespace flatwise::stack {
namespace {

constexpr double kPi = std::numbers::pi;
constexpr int kMostTerms = 1 << 19;
constexpr double kNarrow = 1e-3;      // Of the widest: carried as normal.
constexpr double kNegligible = 1e-4;  // Of the widest: left out.
constexpr double kNormalReach = 8.6;  // Standard deviations; 1e-17 outside.
constexpr double kStudentOutside = 1e-6;
constexpr double kNormalFrom = 2000;  // Degrees of freedom.

std::optional<Problem> wrong_part(const StackPart& part, std::size_t i) {
  const std::string field = "part[" + std::to_string(i + 1) + "]";
  const auto refuse = [&](Code code, Length value) {
    return Problem{code, field, {}, {{"value", any(value)}, {"part", static_cast<std::int64_t>(i + 1)}}, std::nullopt};
  };
  if (auto p = not_above_nought(field, any(part.nominal))) return p;
  for (const Length limit : {part.above, part.below, part.standard_uncertainty})
    if (!(limit.si() >= 0 && std::isfinite(limit.si()))) return refuse(Code{"stack.negative"}, limit);
  if (!(part.below < part.nominal)) return refuse(Code{"stack.limit_too_wide"}, part.below);
  if (part.degrees_of_freedom && !(*part.degrees_of_freedom >= 2))
    return Problem{Code{"stack.few_readings"}, field, {}, {{"part", static_cast<std::int64_t>(i + 1)}}, std::nullopt};
  return std::nullopt;
}

/// r e^(i angle) for any r: std::polar is not defined where r is negative, and some libraries answer with no number.
std::complex<double> turned(double r, double angle) { return {r * std::cos(angle), r * std::sin(angle)}; }

double sinc(double x) { return std::abs(x) < 1e-4 ? 1 - x * x / 6 : std::sin(x) / x; }

/// For x over nought, by POSIX. Not std::lgamma, which writes the sign of Gamma to a variable that all threads share.
double log_gamma(double x) {
  int sign = 0;
  return ::lgamma_r(x, &sign);
}

/// Characteristic function of Student's t with n degrees of freedom: (sqrt n t)^a K_a(sqrt n t) / (Gamma(a) 2^(a-1)),
/// a = n/2, by K_a(z) = integral of exp(-z cosh s) cosh(a s) over s >= 0: trapezia converge faster than any power.
double student_characteristic(double t, double n) {
  const double a = n / 2, z = std::sqrt(n) * t;
  if (z < 1e-9) return 1;
  const double scale = a * std::log(z) - log_gamma(a) - (a - 1) * std::numbers::ln2;
  const double step = std::min(0.1, 0.3 / std::sqrt(a));
  double sum = 0;
  const double peak = std::asinh(a / z);
  for (int i = 0;; ++i) {
    const double s = i * step;
    const double up = std::exp(scale + a * s - z * std::cosh(s)), down = std::exp(scale - a * s - z * std::cosh(s));
    const double term = 0.5 * (up + down);
    sum += i == 0 ? 0.5 * term : term;
    if (s > peak && term < 1e-18 * sum) break;
    if (s > peak + 40) break;
  }
  return std::min(1.0, sum * step);
}

/// Where Student's two tails together fall under kStudentOutside, from their leading term.
double student_reach(double n) {
  const double log_front = std::log(2.0) + log_gamma((n + 1) / 2) - log_gamma(n / 2) - 0.5 * std::log(n * kPi) +
                           0.5 * (n + 1) * std::log(n) - std::log(n);
  return std::max(kNormalReach, std::exp((log_front - std::log(kStudentOutside)) / n));
}

/// Sum of c_k sin(k x), k = 1..: Clenshaw.
double sine_series(const std::vector<double>& c, double x) {
  const double twice = 2 * std::cos(x);
  double next = 0, after = 0;
  for (std::size_t k = c.size(); k > 0; --k) {
    const double here = c[k - 1] + twice * next - after;
    after = next;
    next = here;
  }
  return next * std::sin(x);
}

}  // namespace

std::optional<Problem> StackLength::checked(std::span<const StackPart> parts) {
  if (parts.empty() || parts.size() > 100'000)
    return Problem{
        Code{"stack.part_count"}, "length", {}, {{"count", static_cast<std::int64_t>(parts.size())}}, std::nullopt};
  for (std::size_t i = 0; i < parts.size(); ++i)
    if (auto p = wrong_part(parts[i], i)) return p;
  return std::nullopt;
}

Result<StackLength> StackLength::of(std::span<const StackPart> parts) {
  if (auto p = checked(parts)) return tl::unexpected(*std::move(p));
  StackLength out;
  std::vector<double> halves_m;
  double variance = 0, squares = 0;
  for (const StackPart& part : parts) {
    const Length u = part.standard_uncertainty;
    const double half_m = 0.5 * (part.above + part.below).si();
    out.nominal_ = out.nominal_ + part.nominal;
    out.centre_ = out.centre_ + part.nominal + 0.5 * (part.above - part.below);
    out.worst_.least = out.worst_.least + part.nominal - part.below - 2 * u;
    out.worst_.greatest = out.worst_.greatest + part.nominal + part.above + 2 * u;
    squares += half_m * half_m + 4 * u.si() * u.si();
    if (half_m > 0) halves_m.push_back(half_m);
    if (part.degrees_of_freedom && *part.degrees_of_freedom < kNormalFrom && u.si() > 0)
      out.students_.push_back({u.si(), *part.degrees_of_freedom});
    else
      variance += u.si() * u.si();
  }
  out.root_sum_of_squares_ = Length::from_si(std::sqrt(squares));
  out.sigma_m_ = std::sqrt(variance);
  std::ranges::sort(halves_m, std::greater{});
  for (const double half_m : halves_m) {
    if (out.widths_.empty() || out.widths_.back().half_m != half_m) out.widths_.push_back({half_m, 0});
    ++out.widths_.back().times;
  }
  out.carry_narrow_parts();
  if (!out.closed_form()) out.make_series();
  return out;
}

void StackLength::carry_narrow_parts() {
  if (widths_.empty()) return;
  const double widest = widths_.front().half_m;
  double variance = sigma_m_ * sigma_m_;
  std::erase_if(widths_, [&](const Width& w) {
    if (w.half_m >= kNarrow * widest) return false;
    variance += w.times * w.half_m * w.half_m / 3;
    return true;
  });
  std::erase_if(students_, [&](const Student& s) {
    if (s.scale_m >= kNarrow * widest) return false;
    // Its variance; near two degrees of freedom, where that is endless, what its 95 % limits ask of a normal.
    variance += s.scale_m * s.scale_m * (s.degrees > 2.5 ? s.degrees / (s.degrees - 2) : 5);
    return true;
  });
  sigma_m_ = std::sqrt(variance);
  // A smoothing so much narrower than the widest part moves no quantile we use, and would need millions of terms.
  if (sigma_m_ < kNegligible * widest) sigma_m_ = 0;
}

bool StackLength::closed_form() const {
  if (sigma_m_ > 0 || !students_.empty()) return false;
  int count = 0;
  for (const Width& w : widths_) count += w.times;
  return count <= 2;
}

double StackLength::characteristic(double t, double extra_sigma_m) const {
  double value = std::exp(-0.5 * t * t * (sigma_m_ * sigma_m_ + extra_sigma_m * extra_sigma_m));
  for (const Width& w : widths_) value *= std::pow(sinc(w.half_m * t), w.times);
  for (const Student& s : students_) {
    if (std::abs(value) < 1e-18) return 0;
    value *= student_characteristic(s.scale_m * t, s.degrees);
  }
  return value;
}

double StackLength::envelope(double t, double extra_sigma_m) const {
  double value = std::exp(-0.5 * t * t * (sigma_m_ * sigma_m_ + extra_sigma_m * extra_sigma_m));
  for (const Width& w : widths_) value *= std::pow(std::min(1.0, 1 / (w.half_m * t)), w.times);
  for (const Student& s : students_) {
    if (value < 1e-18) return 0;
    value *= student_characteristic(s.scale_m * t, s.degrees);
  }
  return value;
}

double StackLength::reach_m(double extra_sigma_m) const {
  double reach = kNormalReach * std::hypot(sigma_m_, extra_sigma_m);
  for (const Width& w : widths_) reach += w.times * w.half_m;
  for (const Student& s : students_) reach += s.scale_m * student_reach(s.degrees);
  return reach;
}

void StackLength::make_series() {
  half_period_m_ = reach_m(0);
  for (int k = 1; k <= kMostTerms; ++k) {
    const double t = k * kPi / half_period_m_;
    if (envelope(t, 0) / k < 1e-15) break;
    series_.push_back(characteristic(t, 0) / (k * kPi));
  }
}

double StackLength::cumulative_about_centre(double x_m) const {
  if (!series_.empty()) {
    if (std::abs(x_m) >= half_period_m_) return x_m > 0 ? 1 : 0;
    const double value = 0.5 + 0.5 * x_m / half_period_m_ + sine_series(series_, kPi * x_m / half_period_m_);
    return std::clamp(value, 0.0, 1.0);
  }
  if (widths_.empty()) return x_m < 0 ? 0 : 1;
  // One rectangle is a trapezium with the narrower side nought; F by symmetry from the lower half.
  const double wide = widths_.front().half_m, narrow = widths_.size() == 2          ? widths_.back().half_m
                                                       : widths_.front().times == 2 ? wide
                                                                                    : 0;
  const double below = -std::abs(x_m) + wide + narrow;  // Above the foot.
  double tail = 0;
  if (below > 0) tail = below < 2 * narrow ? below * below / (8 * wide * narrow) : (below - narrow) / (2 * wide);
  return x_m > 0 ? 1 - tail : tail;
}

double StackLength::cumulative(Length length) const { return cumulative_about_centre((length - centre_).si()); }

Band StackLength::band(double coverage) const {
  CORE_CHECK(coverage > 0 && coverage < 1);
  const double wanted = 0.5 + 0.5 * coverage;
  double low = 0, high = reach_m(0);
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    if (middle == low || middle == high) break;
    (cumulative_about_centre(middle) < wanted ? low : high) = middle;
  }
  return {centre_ - Length::from_si(high), centre_ + Length::from_si(high)};
}

namespace {

/// Characteristic function of one gap, and of the gap weighed by itself and by its square: E e^(itg), E g e^(itg) ...
struct OneGap {
  std::complex<double> plain, first, second;
};
OneGap one_gap(const StackLength::Gaps& gaps, double t) {
  const double step = gaps.step.si(), half = 0.5 * (gaps.step - gaps.least).si(), middle = step - half;
  const double whole = 1 - gaps.partly, part = gaps.partly, x = half * t;
  const double s = sinc(x);
  const double rise = std::abs(x) < 1e-4 ? -x / 3 : (std::cos(x) - s) / x;  // Its derivative,
  const double bend = std::abs(x) < 1e-4 ? -1.0 / 3 : -s - 2 * rise / x;    // and the second.
  const auto full = turned(1.0, t * step), centre = turned(1.0, t * middle);
  const std::complex<double> by_gap{middle * s, -half * rise};
  const std::complex<double> by_square{middle * middle * s - half * half * bend, -2 * middle * half * rise};
  return {whole * full + part * s * centre, whole * step * full + part * by_gap * centre,
          whole * step * step * full + part * by_square * centre};
}

}  // namespace

std::vector<StackLength::Measured> StackLength::measured(Length measured, Length standard_uncertainty,
                                                         const Gaps& gaps) const {
  const double u_m = standard_uncertainty.si(), step_m = gaps.step.si();
  CORE_CHECK(u_m > 0 && gaps.most_open >= 0 && gaps.least <= gaps.step);
  const double half_period_m = reach_m(u_m) + gaps.most_open * step_m;
  const double x_m = (measured - centre_).si();
  std::vector<Measured> sums(static_cast<std::size_t>(gaps.most_open) + 1);
  if (std::abs(x_m) >= half_period_m) return sums;
  const OneGap at_nought = one_gap(gaps, 0);
  for (std::size_t k = 0; k < sums.size(); ++k)
    sums[k] = k == 0 ? Measured{0.5, 0, 0} : Measured{0.5, 0.5 * at_nought.first.real(), 0.5 * at_nought.second.real()};
  for (int k = 1; k <= kMostTerms; ++k) {
    const double t = k * kPi / half_period_m;
    if (envelope(t, u_m) < 1e-16) break;
    const OneGap gap = one_gap(gaps, t);
    std::complex<double> term = turned(characteristic(t, u_m), -t * x_m);
    sums[0].density_per_m += term.real();
    for (std::size_t open = 1; open < sums.size(); ++open) {
      sums[open].gap += (term * gap.first).real();
      sums[open].square_m += (term * gap.second).real();
      term *= gap.plain;
      sums[open].density_per_m += term.real();
    }
  }
  // A sum of terms of size one is good to about 1e-13: less is rounding, and no evidence.
  for (Measured& sum : sums) {
    const double scale = sum.density_per_m < 1e-12 ? 0.0 : 1 / half_period_m;
    sum = {sum.density_per_m * scale, sum.gap * scale, sum.square_m * scale};
  }
  return sums;
}

}  // namespace flatwise::stack
