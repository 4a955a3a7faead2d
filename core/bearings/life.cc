#include "core/bearings/life.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

double cubed(double x) { return x * x * x; }
double to_ten_thirds(double x) { return cubed(x) * std::cbrt(x); }

/// Constants of a_ISO by band of kappa.
struct Film {
  double from, c2, c3;
};
constexpr Film kFilms[] = {{1.0, 1.9987, 0.071739}, {0.4, 1.9987, 0.19087}, {0.1, 2.2649, 0.054381}};
constexpr double kMostFactor = 50;

}  // namespace

double basic_life(Force dynamic_rating, Force load) {
  CORE_CHECK(dynamic_rating > Force{} && load > Force{});
  return cubed(dynamic_rating / load);
}

double reliability_factor(double reliability) {
  CORE_CHECK(reliability >= 0.9 && reliability <= 0.9995);
  return 0.05 + 0.95 * std::pow(std::log(1 / reliability) / std::log(1 / 0.9), 1 / 1.5);
}

double reference_viscosity(AngularSpeed speed, Length pitch) {
  const double rpm = speed.radians_per_second() * 30 / std::numbers::pi, pitch_mm = pitch.si() * 1e3;
  CORE_CHECK(rpm > 0 && pitch_mm > 0);
  if (rpm < 1000) return 45000 * std::pow(rpm, -0.83) / std::sqrt(pitch_mm);
  return 4500 / std::sqrt(rpm * pitch_mm);
}

double life_factor(double viscosity_ratio, double load) {
  CORE_CHECK(viscosity_ratio >= 0.1 && viscosity_ratio <= 4 && load >= 0);
  const Film& film = *std::ranges::find_if(kFilms, [&](const Film& f) { return viscosity_ratio >= f.from; });
  const double base = 2.5671 - film.c2 / std::pow(viscosity_ratio, film.c3);
  const double left = 1 - std::pow(std::max(0.0, base), 0.83) * std::cbrt(load);
  if (!(left > 0)) return kMostFactor;  // A load under the fatigue limit: the formula has no end there.
  return std::min(kMostFactor, 0.1 * std::pow(left, -9.3));
}

Result<double> viscosity_ratio(const Lubrication& oil, AngularSpeed relative, Length pitch) {
  if (!oil.viscosity) {
    const double ratio = oil.viscosity_ratio;
    if (auto bad = outside("viscosity_ratio", any_ratio(ratio), kLeastViscosity, 100))
      return tl::unexpected(*std::move(bad));
    return ratio;
  }
  const double needed = 1e-6 * reference_viscosity(radians_per_second(std::abs(relative.radians_per_second())), pitch);
  if (auto bad = outside("viscosity", any(*oil.viscosity), kLeastViscosity * needed, 1))
    return tl::unexpected(*std::move(bad));
  return oil.viscosity->si() / needed;
}

Contamination contamination(Cleanliness cleanliness, Length pitch) {
  const bool big = pitch >= millimetres(100);
  switch (cleanliness) {
    case Cleanliness::high:
      return big ? Contamination{0.8, 0.9} : Contamination{0.6, 0.8};
    case Cleanliness::normal:
      return big ? Contamination{0.6, 0.8} : Contamination{0.5, 0.6};
    case Cleanliness::slight:
      return big ? Contamination{0.4, 0.6} : Contamination{0.3, 0.5};
    case Cleanliness::typical:
      return big ? Contamination{0.2, 0.4} : Contamination{0.1, 0.3};
    case Cleanliness::severe:
      return {0.0, 0.1};
  }
  CORE_CHECK(false);
}

BallRatings ball_ratings(const BallBearing& b, Force dynamic_rating) {
  const double g = b.ball / b.pitch;
  const double sides =
      b.inner_groove / b.outer_groove * ((2 * b.outer_groove - b.ball) / (2 * b.inner_groove - b.ball));
  const double ratio = to_ten_thirds(1.044 * std::pow((1 - g) / (1 + g), 1.72) * std::pow(sides, 0.41));
  return {dynamic_rating / (0.407 * b.balls) * std::pow(1 + ratio, 0.3),
          dynamic_rating / (0.389 * b.balls) * std::pow(1 + 1 / ratio, 0.3)};
}

double reference_life(const BallRatings& q, const RingWear& wear) {
  // ((mean of cubes)^(1/3) / Q_c) to 10/3 is (mean / Q_c³) to 10/9: two cube roots instead of a power.
  const double share = wear.inner_cubes / cubed(q.inner.si());
  const double inner = share * std::cbrt(std::cbrt(share));
  const double outer = wear.outer_powers / to_ten_thirds(q.outer.si());
  return std::pow(inner + outer, -0.9);
}

Force reference_load(Force dynamic_rating, double million_turns) { return dynamic_rating / std::cbrt(million_turns); }

Time running_time(double million_turns, AngularSpeed relative_speed) {
  const double radians_per_second = std::abs(relative_speed.radians_per_second());
  CORE_CHECK(radians_per_second > 0);
  return seconds(million_turns * 1e6 * 2 * std::numbers::pi / radians_per_second);
}

Mass grease_quantity(Length outside, Length width) {
  return kilograms(0.005e-3 * (outside.si() * 1e3) * (width.si() * 1e3));
}

Result<double> free_space(const BearingRoom& r) {
  if (auto bad = not_above_nought("bore", any(r.bore))) return tl::unexpected(*std::move(bad));
  if (auto bad = not_above_nought("width", any(r.width))) return tl::unexpected(*std::move(bad));
  if (auto bad = not_above_nought("mass", any(r.mass))) return tl::unexpected(*std::move(bad));
  if (!(r.outside > r.bore) || !std::isfinite(r.outside.si()))
    return tl::unexpected(Problem{Code{"bearings.no_such_ring"},
                                  "outside",
                                  {},
                                  {{"bore", any(r.bore)}, {"outside", any(r.outside)}},
                                  std::nullopt});
  constexpr double kSteel = 7850;  // kg/m³
  const double room = std::numbers::pi / 4 * (r.outside * r.outside - r.bore * r.bore).si() * r.width.si();
  const double left = room - r.mass.si() / kSteel;
  if (left > 0) return left;
  return tl::unexpected(Problem{Code{"bearings.too_heavy"},
                                "mass",
                                {},
                                {{"mass", any(r.mass)}, {"most", any(kilograms(room * kSteel))}},
                                std::nullopt});
}

}  // namespace flatwise::bearings
