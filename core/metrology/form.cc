#include "core/metrology/form.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/metrology/check.h"
#include "core/units/guards.h"

namespace flatwise::metrology {
namespace {

constexpr double kTail = 0.025;           ///< Each side of 95 %.
constexpr double kRoundLooksOval = 0.02;  ///< Chance allowed for a round bore; a little under the tail.
constexpr double kDisagree = 1e-3;        ///< Chance of one alarm in a plane whose readings are sound.

/// Readings of one direction. Kept about the first reading so that micrometres keep their digits.
struct Group {
  double leader = 0;  ///< Direction of the first reading, degrees, 0 to 180.
  int count = 0;
  double sum = 0, squares = 0;
  [[nodiscard]] double mean() const { return sum / count; }
  [[nodiscard]] double about_mean() const { return std::max(0.0, squares - sum * sum / count); }
};
constexpr std::size_t kMostGroups = 72;  // 180° / 2.5°: leaders are never nearer than that.

double half_turn(Angle direction) {
  const double d = std::fmod(direction.degrees(), 180.0);
  return d < 0 ? d + 180 : d;
}
double between(double a, double b) {
  const double d = std::abs(a - b);
  return std::min(d, 180 - d);
}

struct Groups {
  std::array<Group, kMostGroups> list;
  std::size_t count = 0;

  Group& at(double direction) {
    for (std::size_t i = 0; i < count; ++i)
      if (between(list[i].leader, direction) < kSameDirection) return list[i];
    CORE_CHECK(count < kMostGroups);
    list[count] = Group{.leader = direction};
    return list[count++];
  }
  [[nodiscard]] std::span<const Group> all() const { return {list.data(), count}; }
};

/// Normal matrix and right side of (1, cos 2θ, sin 2θ).
struct Normal {
  double a00 = 0, a01 = 0, a02 = 0, a11 = 0, a12 = 0, a22 = 0, b0 = 0, b1 = 0, b2 = 0;
  void add(double c, double s, double y) {
    a00 += 1, a01 += c, a02 += s, a11 += c * c, a12 += c * s, a22 += s * s;
    b0 += y, b1 += c * y, b2 += s * y;
  }
};

/// Inverse of the symmetric normal matrix by cofactors; false where it is singular to rounding.
bool invert(const Normal& n, Form& f) {
  const double c00 = n.a11 * n.a22 - n.a12 * n.a12, c01 = n.a02 * n.a12 - n.a01 * n.a22;
  const double c02 = n.a01 * n.a12 - n.a02 * n.a11, det = n.a00 * c00 + n.a01 * c01 + n.a02 * c02;
  if (!(det > 1e-9 * n.a00 * n.a00 * n.a00)) return false;
  f.v00 = c00 / det, f.v01 = c01 / det, f.v02 = c02 / det;
  f.v11 = (n.a00 * n.a22 - n.a02 * n.a02) / det;
  f.v12 = (n.a01 * n.a02 - n.a00 * n.a12) / det;
  f.v22 = (n.a00 * n.a11 - n.a01 * n.a01) / det;
  return true;
}

double variance_at(const Form& f, double c, double s) {
  return f.v00 + 2 * (f.v01 * c + f.v02 * s) + f.v11 * c * c + 2 * f.v12 * c * s + f.v22 * s * s;
}

/// Largest variance of the form over all directions, readings counted as one a direction. Sampled every 7.5° of
/// direction: it only tells a good spread of directions from a poor one.
bool opens_the_form(std::span<const Group> groups) {
  Normal n;
  Form f;
  for (const Group& g : groups) {
    const double angle = g.leader * std::numbers::pi / 90;
    n.add(std::cos(angle), std::sin(angle), 0);
  }
  if (!invert(n, f)) return false;
  // Turned by 15° each time instead of 24 sines.
  constexpr double ct = 0.96592582628906829, st = 0.25881904510252076;
  double c = 1, s = 0, worst = 0;
  for (int i = 0; i < 24; ++i) {
    worst = std::max(worst, variance_at(f, c, s));
    const double turned = c * ct - s * st;
    s = s * ct + c * st;
    c = turned;
  }
  return worst <= kWorstLeverage;
}

void take_groups(std::span<const Group> groups, double origin, Form& f) {
  double sum = 0, inverse = 0, squares = 0, freedom = 0;
  f.all_repeated = true;
  for (const Group& g : groups) {
    const bool first = &g == groups.data();
    sum += g.mean();
    inverse += 1.0 / g.count;
    if (first || g.mean() < f.least_direction_m) f.least_direction_m = g.mean(), f.least_repeats = g.count;
    if (first || g.mean() > f.greatest_direction_m) f.greatest_direction_m = g.mean(), f.greatest_repeats = g.count;
    f.all_repeated = f.all_repeated && g.count >= 2;
    if (g.count >= 3) squares += g.about_mean(), freedom += g.count - 1;
  }
  const double m = static_cast<double>(groups.size());
  f.mean_m = origin + sum / m;
  f.v00 = inverse / (m * m);
  f.least_direction_m += origin;
  f.greatest_direction_m += origin;
  if (freedom >= 2) f.repeats = {Scatter::From::repeats, std::sqrt(squares / freedom), freedom};
}

void take_residuals(std::span<const Reading> readings, Form& f) {
  double squares = 0;
  for (const Reading& r : readings) {
    const double c = std::cos(2 * r.direction.radians()), s = std::sin(2 * r.direction.radians());
    const double residual = (r.diameter.si() - f.mean_m) - f.cos_m * c - f.sin_m * s;
    squares += residual * residual;
  }
  const double freedom = f.readings - 3;
  if (freedom >= 2 && f.directions >= 4) f.residual = {Scatter::From::residual, std::sqrt(squares / freedom), freedom};
}

/// Distances of the directions' means from the form, over their own scatter: Var(mean − form) = σ² (1/n − h).
void take_discord(std::span<const Group> groups, double origin, Form& f) {
  for (const Group& g : groups) {
    const double angle = g.leader * std::numbers::pi / 90, c = std::cos(angle), s = std::sin(angle);
    const double to_spare = 1.0 / g.count - variance_at(f, c, s);
    // A direction that the form goes through whatever it says has nothing to judge.
    if (!(to_spare > 0.02 / g.count)) continue;
    const double off = std::abs(origin + g.mean() - f.mean_m - f.cos_m * c - f.sin_m * s);
    f.form_residual = std::max(f.form_residual, off / std::sqrt(to_spare));
  }
}

void solve(std::span<const Reading> readings, double origin, Form& f) {
  Normal n;
  for (const Reading& r : readings)
    n.add(std::cos(2 * r.direction.radians()), std::sin(2 * r.direction.radians()), r.diameter.si() - origin);
  if (!invert(n, f)) return;
  f.fitted = true;
  f.mean_m = origin + f.v00 * n.b0 + f.v01 * n.b1 + f.v02 * n.b2;
  f.cos_m = f.v01 * n.b0 + f.v11 * n.b1 + f.v12 * n.b2;
  f.sin_m = f.v02 * n.b0 + f.v12 * n.b1 + f.v22 * n.b2;
  take_residuals(readings, f);
}

std::optional<Problem> check_readings(std::span<const Reading> readings) {
  if (auto p = count_outside("reading", readings.size(), 1, kMostReadings)) return p;
  for (const Reading& r : readings) {
    if (auto p = not_above_nought("reading", any(r.diameter))) return p;
    if (auto p = not_finite("direction", any(r.direction))) return p;
  }
  return std::nullopt;
}

/// w of √(R² − w): from the F distribution with (2, ν) degrees of freedom, whose tail is (1 + 2F/ν)^(−ν/2), such that
/// R exceeds √w + k u in 2 % of round bores. For ν without end −2 ln 0.02 − k² = 3.98.
double lower_share(double dof, double k) {
  const double tail = dof > 1e6 ? -2 * std::log(kRoundLooksOval) : dof * (std::pow(kRoundLooksOval, -2 / dof) - 1);
  return std::max(1.0, tail - k * k);
}

FormEstimates of_directions(const Form& f, const Scatter& s) {
  // The extreme of two is chosen because it is extreme: half the tail for each of them.
  const double k = student_quantile(1 - kTail, s.dof);
  const double k_chosen = f.directions > 1 ? student_quantile(1 - kTail / f.directions, s.dof) : k;
  const auto one = [&](double value, int repeats) {
    const double u = s.s_m / std::sqrt(static_cast<double>(repeats));
    return Estimate{value, u, s.dof, (k_chosen - k) * u};
  };
  return {.mean = {f.mean_m, s.s_m * std::sqrt(f.v00), s.dof, 0},
          .least = one(f.least_direction_m, f.least_repeats),
          .greatest = one(f.greatest_direction_m, f.greatest_repeats),
          .ovality = std::nullopt};
}

}  // namespace

double Form::amplitude_m() const { return std::hypot(cos_m, sin_m); }

Angle Form::greatest_at() const {
  const double turned = 0.5 * std::atan2(sin_m, cos_m);
  // Rounding must not make 180° of 0°.
  return radians(turned < -1e-9 ? turned + std::numbers::pi : std::max(turned, 0.0));
}

Result<Form> fit_form(std::span<const Reading> readings) {
  if (auto problem = check_readings(readings)) return tl::unexpected(*std::move(problem));
  const double origin = readings.front().diameter.si();
  Groups groups;
  for (const Reading& r : readings) {
    Group& g = groups.at(half_turn(r.direction));
    const double y = r.diameter.si() - origin;
    ++g.count, g.sum += y, g.squares += y * y;
  }
  Form form;
  form.readings = static_cast<int>(readings.size());
  form.directions = static_cast<int>(groups.count);
  take_groups(groups.all(), origin, form);
  for (const Reading& r : readings) {
    const Group& g = groups.at(half_turn(r.direction));
    if (g.count < 2) continue;
    const double off = std::abs(r.diameter.si() - origin - g.mean());
    form.repeat_residual = std::max(form.repeat_residual, off / std::sqrt(1 - 1.0 / g.count));
  }
  if (groups.count >= 3 && opens_the_form(groups.all())) solve(readings, origin, form);
  if (form.fitted) take_discord(groups.all(), origin, form);
  return form;
}

Scatter scatter_of(const Form& form, std::optional<Scatter> study) {
  if (study) return *study;
  return form.repeats.from != Scatter::From::none ? form.repeats : form.residual;
}

FormEstimates estimates_of(const Form& f, const Scatter& s) {
  if (!f.fitted) return of_directions(f, s);
  const double raw = f.amplitude_m(), k = student_quantile(1 - kTail, s.dof), s2 = s.s_m * s.s_m;
  const double c = raw > 0 ? f.cos_m / raw : 1, sn = raw > 0 ? f.sin_m / raw : 0;
  const double along = s2 * (f.v11 * c * c + 2 * f.v12 * c * sn + f.v22 * sn * sn);
  const double with_mean = s2 * (f.v01 * c + f.v02 * sn), mean2 = s2 * f.v00;
  const double noise2 = s2 * (f.v11 + f.v22);  // What R² is too great by.
  const auto less = [&](double taken) { return std::sqrt(std::max(0.0, raw * raw - taken)); };
  const double half = less(noise2), low = less(lower_share(s.dof, k) * noise2 / 2);
  const double allowance = std::max(raw - half, half - low);
  const double u_greatest = std::sqrt(std::max(0.0, mean2 + along + 2 * with_mean));
  const double u_least = std::sqrt(std::max(0.0, mean2 + along - 2 * with_mean));
  return {.mean = {f.mean_m, std::sqrt(mean2), s.dof, 0},
          .least = {f.mean_m - half, u_least, s.dof, allowance},
          .greatest = {f.mean_m + half, u_greatest, s.dof, allowance},
          .ovality = Estimate{2 * half, 2 * std::sqrt(along), s.dof, 2 * allowance},
          .direction_known = raw > k * std::sqrt(along) && raw > std::sqrt(2 * noise2)};
}

Discord discord_of(const Form& form, const Scatter& scatter) {
  if (!(scatter.s_m > 0)) return {};
  const double k = student_quantile(1 - std::max(kDisagree / (4 * form.readings), 1e-5), scatter.dof);
  // Residuals cannot disagree with a scatter that was read off them.
  return {.repeats = scatter.from == Scatter::From::study && form.repeat_residual > k * scatter.s_m,
          .form = scatter.from != Scatter::From::residual && form.form_residual > k * scatter.s_m};
}

}  // namespace flatwise::metrology
