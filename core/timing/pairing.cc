#include "core/timing/pairing.h"

#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <utility>

#include "core/shaft/shaft.h"

namespace flatwise::timing {
namespace {

constexpr int kLeastFlats = 4, kMostFlats = 24;  // Shaft::make's own range; odd ones have no opposite flat.

std::optional<Problem> bad_flats(int flats) {
  if (flats % 2 != 0 && flats > 0)
    return Problem{Code{"timing.odd_flats"}, "flats", std::to_string(flats), {{"flats", flats}}, std::nullopt};
  if (flats < kLeastFlats || flats > kMostFlats)
    return Problem{Code{"timing.flats_range"},
                   "flats",
                   std::to_string(flats),
                   {{"least", kLeastFlats}, {"greatest", kMostFlats}},
                   std::nullopt};
  return std::nullopt;
}

Problem bad_flat(const char* field, int flat, int flats) {
  return {Code{"timing.flat_range"}, field, std::to_string(flat), {{"least", 1}, {"greatest", flats}}, std::nullopt};
}

}  // namespace

Result<int> pairing_error(MarkPair marks, int flats) {
  if (auto problem = bad_flats(flats)) return tl::unexpected(std::move(*problem));
  if (marks.flat_a < 1 || marks.flat_a > flats) return tl::unexpected(bad_flat("flat-a", marks.flat_a, flats));
  if (marks.flat_b < 1 || marks.flat_b > flats) return tl::unexpected(bad_flat("flat-b", marks.flat_b, flats));
  return flats_out(marks.flat_b, turned_flat(marks.flat_a, flats / 2, flats), flats);
}

Result<Kink> kink(const PairLean& pair) {
  if (auto problem = bad_flats(pair.flats)) return tl::unexpected(std::move(*problem));
  const double lean = pair.lean.radians();
  if (!(lean >= 0 && lean < std::numbers::pi / 2))
    return tl::unexpected(Problem{Code{"timing.lean_range"}, "lean", {}, {}, std::nullopt});
  if (!(pair.permissible.radians() > 0 && std::isfinite(pair.permissible.radians())))
    return tl::unexpected(Problem{Code{"timing.permissible"}, "misalignment", {}, {}, std::nullopt});
  // Whole turns are taken off first: then any whole number of turns gives exactly nought.
  const int flats_away = pair.flats_out % pair.flats;
  const double half_delta = std::numbers::pi * flats_away / pair.flats;
  const double angle = 2 * std::asin(std::sin(lean) * std::abs(std::sin(half_delta)));
  return Kink{.angle = radians(angle), .times = angle / pair.permissible.radians()};
}

}  // namespace flatwise::timing
