#include "core/bearings/ratings.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/units/guards.h"

namespace flatwise::bearings {
namespace {

constexpr double kStep = 0.01;
constexpr std::array kDynamic{29.1, 35.8, 40.3, 43.8, 46.7, 49.1, 51.1, 52.8, 54.3, 55.5, 56.6, 57.5, 58.2, 58.8,
                              59.3, 59.6, 59.8, 59.9, 60.0, 59.9, 59.8, 59.6, 59.3, 59.0, 58.6, 58.2, 57.7, 57.1,
                              56.6, 56.0, 55.3, 54.6, 53.9, 53.2, 52.4, 51.7, 50.9, 50.0, 49.2, 48.4};  // From 0.01.
constexpr std::array kStatic{14.7, 14.9, 15.1, 15.3, 15.5, 15.7, 15.9, 16.1, 16.3, 16.5, 16.4, 16.1, 15.9, 15.6,
                             15.4, 15.2, 14.9, 14.7, 14.4, 14.2, 14.0, 13.7, 13.5, 13.2, 13.0, 12.8, 12.5, 12.3,
                             12.1, 11.8, 11.6, 11.4, 11.2, 10.9, 10.7, 10.5, 10.3, 10.0, 9.8,  9.6,  9.4};  // From 0.

template <std::size_t N>
double along_table(const std::array<double, N>& table, double place) {
  if (!(place >= 0) || !(place <= static_cast<double>(N - 1))) return 0;
  const auto row = std::min(static_cast<std::size_t>(place), N - 2);
  return std::lerp(table[row], table[row + 1], place - static_cast<double>(row));
}

struct AxialRow {
  double share, limit, axial;
};
struct AxialTable {
  double radial;  ///< X
  std::array<AxialRow, 9> rows;
};
constexpr AxialTable kNormal{0.56,
                             {{{0.172, 0.19, 2.30},
                               {0.345, 0.22, 1.99},
                               {0.689, 0.26, 1.71},
                               {1.03, 0.28, 1.55},
                               {1.38, 0.30, 1.45},
                               {2.07, 0.34, 1.31},
                               {3.45, 0.38, 1.15},
                               {5.17, 0.42, 1.04},
                               {6.89, 0.44, 1.00}}}};
constexpr AxialTable kC3{0.46,
                         {{{0.172, 0.29, 1.88},
                           {0.345, 0.32, 1.71},
                           {0.689, 0.36, 1.52},
                           {1.03, 0.38, 1.41},
                           {1.38, 0.40, 1.34},
                           {2.07, 0.44, 1.23},
                           {3.45, 0.49, 1.10},
                           {5.17, 0.54, 1.01},
                           {6.89, 0.54, 1.00}}}};

Problem refused(Code code, std::string_view field, Args args) {
  return {code, std::string{field}, {}, std::move(args), std::nullopt};
}

std::optional<Problem> cannot_combine(const Combined& load) {
  if (auto bad = negative("radial", any(load.radial))) return bad;
  if (auto bad = negative("axial", any(load.axial))) return bad;
  if (load.radial > Force{} || load.axial > Force{}) return std::nullopt;
  return refused(Code{"bearings.no_load"}, "radial", {});
}

/// What wider grooves than the table's leave of the rating.
double left_by_grooves(double share, double inner, double outer) {
  const double table = dynamic_factor_formula(share, 0.52, 0.53);
  return dynamic_factor_formula(share, std::max(inner, 0.52), std::max(outer, 0.53)) / table;
}

/// Ball load at the stress that defines C0, at the ring that dents first.
double denting_load(BallBearing b, double inner, double outer) {
  b.inner_groove = inner * b.ball;
  b.outer_groove = outer * b.ball;
  const auto contacts = point_contacts(b, kBearingSteel);
  CORE_CHECK(contacts);
  const Pressure dents = megapascals(4200);
  return std::min(load_at_stress(contacts->inner, dents), load_at_stress(contacts->outer, dents)).si();
}
double static_left_by_grooves(const BallBearing& b) {
  const double inner = b.inner_groove / b.ball, outer = b.outer_groove / b.ball;
  if (inner <= 0.52 && outer <= 0.53) return 1;
  return denting_load(b, std::max(inner, 0.52), std::max(outer, 0.53)) / denting_load(b, 0.52, 0.53);
}

}  // namespace

double dynamic_factor(double share) { return along_table(kDynamic, share / kStep - 1); }
double static_factor(double share) { return along_table(kStatic, share / kStep); }

double dynamic_factor_formula(double g, double inner, double outer) {
  const double sides = inner / outer * (2 * outer - 1) / (2 * inner - 1);
  const double ratio = 1.04 * std::pow((1 - g) / (1 + g), 1.72) * std::pow(sides, 0.41);
  return 0.41 * 0.95 * 98.0665 * std::pow(1 + std::pow(ratio, 10.0 / 3.0), -0.3) * std::pow(g, 0.3) *
         std::pow(1 - g, 1.39) / std::cbrt(1 + g) * std::pow(2 * inner / (2 * inner - 1), 0.41);
}

Result<Ratings> ratings_of(const BallBearing& b) {
  if (auto bad = problem_with(b)) return tl::unexpected(*std::move(bad));
  if (auto bad = balls_overlap(b)) return tl::unexpected(*std::move(bad));
  const double share = b.ball / b.pitch, ball_mm = b.ball.si() * 1e3;
  const double f_c = dynamic_factor(share), f_0 = static_factor(share);
  if (!(f_c > 0) || !(f_0 > 0))
    return tl::unexpected(refused(Code{"bearings.no_published_factor"}, "ball", {{"share", any_ratio(share)}}));
  const double size = ball_mm <= 25.4 ? std::pow(ball_mm, 1.8) : 3.647 * std::pow(ball_mm, 1.4);
  const double grooves = left_by_grooves(share, b.inner_groove / b.ball, b.outer_groove / b.ball);
  Ratings r;
  r.dynamic = newtons(kGrooveFactor * f_c * grooves * std::pow(b.balls, 2.0 / 3.0) * size);
  r.static_load = newtons(static_left_by_grooves(b) * f_0 * b.balls * ball_mm * ball_mm);
  r.fatigue = fatigue_limit(r.static_load, b.pitch);
  return r;
}

Force fatigue_limit(Force static_load, Length pitch) {
  return static_load / 22.0 * (pitch > millimetres(100) ? std::sqrt(millimetres(100) / pitch) : 1.0);
}

Result<Ratings> ratings_of(const BallBearing& b, std::optional<Force> dynamic, std::optional<Force> static_load) {
  if (dynamic && static_load) return Ratings{*dynamic, *static_load, fatigue_limit(*static_load, b.pitch)};
  Result<Ratings> r = ratings_of(b);
  if (!r) return r;
  if (dynamic) r->dynamic = *dynamic;
  if (static_load) *r = {r->dynamic, *static_load, fatigue_limit(*static_load, b.pitch)};
  return r;
}

Result<Equivalent> equivalent_load(const Combined& load, double static_factor, Force static_rating,
                                   AxialColumn column) {
  if (auto bad = cannot_combine(load)) return tl::unexpected(*std::move(bad));
  if (auto bad = not_above_nought("static_factor", any_ratio(static_factor))) return tl::unexpected(*std::move(bad));
  if (auto bad = not_above_nought("static_rating", any(static_rating))) return tl::unexpected(*std::move(bad));
  const AxialTable& table = column == AxialColumn::c3 ? kC3 : kNormal;
  Equivalent p{.load = load.radial, .share = static_factor * (load.axial / static_rating)};
  if (p.share > table.rows.back().share * (1 + 1e-12))
    return tl::unexpected(
        refused(Code{"bearings.axial_beyond_table"}, "axial",
                {{"value", any(load.axial)}, {"most", any(table.rows.back().share / static_factor * static_rating)}}));
  const double last = std::min(p.share, table.rows.back().share);
  const auto above = std::ranges::find_if(table.rows, [&](const AxialRow& row) { return row.share >= last; });
  const AxialRow& high = *above;
  const AxialRow& low = above == table.rows.begin() ? *above : *std::prev(above);
  const double part = &high == &low ? 0 : (last - low.share) / (high.share - low.share);
  p.limit = std::lerp(low.limit, high.limit, part);
  if (load.axial > p.limit * load.radial) {
    p.radial = table.radial;
    p.axial = std::lerp(low.axial, high.axial, part);
    p.load = p.radial * load.radial + p.axial * load.axial;
  }
  return p;
}

Result<Force> equivalent_static_load(const Combined& load) {
  if (auto bad = cannot_combine(load)) return tl::unexpected(*std::move(bad));
  return newtons(std::max(load.radial.si(), 0.6 * load.radial.si() + 0.5 * load.axial.si()));
}

}  // namespace flatwise::bearings
