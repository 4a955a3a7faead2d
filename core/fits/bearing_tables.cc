#include "core/fits/bearing_tables.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace flatwise::fits {
namespace {

struct RingRow {
  int to_mm;                 // "up to and including"
  std::array<int, 3> below;  // Normal, 6, 5: lower limit of the mean diameter below nominal, um; the upper is 0.
  std::array<int, 3> runout;
};

// ISO 492: outer rings. Columns: mean outside diameter, K_ea.
constexpr std::array<RingRow, 12> kOuter{{
    {6, {8, 7, 5}, {15, 8, 5}},
    {18, {8, 7, 5}, {15, 8, 5}},
    {30, {9, 8, 6}, {15, 9, 6}},
    {50, {11, 9, 7}, {20, 10, 7}},
    {80, {13, 11, 9}, {25, 13, 8}},
    {120, {15, 13, 10}, {35, 18, 10}},
    {150, {18, 15, 11}, {40, 20, 11}},
    {180, {25, 18, 13}, {45, 23, 13}},
    {250, {30, 20, 15}, {50, 25, 15}},
    {315, {35, 25, 18}, {60, 30, 18}},
    {400, {40, 28, 20}, {70, 35, 20}},
    {500, {45, 33, 23}, {80, 40, 23}},
}};

struct BoreRow {
  int to_mm;
  std::array<int, 3> below;
};
// ISO 492: inner rings, mean bore.
constexpr std::array<BoreRow, 11> kBore{{
    {10, {8, 7, 5}},
    {18, {8, 7, 5}},
    {30, {10, 8, 6}},
    {50, {12, 10, 8}},
    {80, {15, 12, 9}},
    {120, {20, 15, 10}},
    {180, {25, 18, 13}},
    {250, {30, 22, 15}},
    {315, {35, 25, 18}},
    {400, {40, 30, 23}},
    {500, {45, 35, 28}},
}};

struct Pair {
  int least, greatest;
};
constexpr Pair kNone{-1, -1};
struct ClearanceRow {
  int to_mm;
  std::array<Pair, 5> groups;  // C2, CN, C3, C4, C5
};
// ISO 5753-1: deep groove ball bearings, cylindrical bore, um.
constexpr std::array<ClearanceRow, 15> kClearance{{
    {6, {{{0, 7}, {2, 13}, {8, 23}, kNone, kNone}}},
    {10, {{{0, 7}, {2, 13}, {8, 23}, {14, 29}, {20, 37}}}},
    {18, {{{0, 9}, {3, 18}, {11, 25}, {18, 33}, {25, 45}}}},
    {24, {{{0, 10}, {5, 20}, {13, 28}, {20, 36}, {28, 48}}}},
    {30, {{{1, 11}, {5, 20}, {13, 28}, {23, 41}, {30, 53}}}},
    {40, {{{1, 11}, {6, 20}, {15, 33}, {28, 46}, {40, 64}}}},
    {50, {{{1, 11}, {6, 23}, {18, 36}, {30, 51}, {45, 73}}}},
    {65, {{{1, 15}, {8, 28}, {23, 43}, {38, 61}, {55, 90}}}},
    {80, {{{1, 15}, {10, 30}, {25, 51}, {46, 71}, {65, 105}}}},
    {100, {{{1, 18}, {12, 36}, {30, 58}, {53, 84}, {75, 120}}}},
    {120, {{{2, 20}, {15, 41}, {36, 66}, {61, 97}, {90, 140}}}},
    {140, {{{2, 23}, {18, 48}, {41, 81}, {71, 114}, {105, 160}}}},
    {160, {{{2, 23}, {18, 53}, {46, 91}, {81, 130}, {120, 180}}}},
    {180, {{{2, 25}, {20, 61}, {53, 102}, {91, 147}, {135, 200}}}},
    {200, {{{2, 30}, {25, 71}, {63, 117}, {107, 163}, {150, 230}}}},
}};
constexpr int kGreatestClearanceBoreMm = 200;
constexpr int kGreatestRingMm = 500;

std::int64_t to_nm(Length v) { return std::llround(v.si() * 1e9); }

std::optional<Problem> size_problem(std::string_view field, Length size, int greatest_mm) {
  const Length greatest = millimetres(greatest_mm);
  if (size.si() > 0 && size.si() < 1 && to_nm(size) >= 3'000'000 && to_nm(size) <= to_nm(greatest)) return std::nullopt;
  return Problem{Code{"fits.size_out_of_range"},
                 std::string{field},
                 {},
                 {{"nominal", any(size)}, {"least", any(millimetres(3))}, {"greatest", any(greatest)}},
                 std::nullopt};
}

template <class Rows>
const auto& row_of(const Rows& rows, Length size) {
  const auto nm = to_nm(size);
  const auto it =
      std::ranges::find_if(rows, [nm](const auto& row) { return nm <= std::int64_t{row.to_mm} * 1'000'000; });
  CORE_CHECK(it != rows.end());
  return *it;
}

std::size_t column(ToleranceClass tolerance) {
  switch (tolerance) {
    case ToleranceClass::normal:
      return 0;
    case ToleranceClass::p6:
      return 1;
    case ToleranceClass::p5:
      return 2;
  }
  CORE_CHECK(false);
  return 0;
}

std::size_t column(ClearanceGroup group) {
  const auto at = static_cast<std::size_t>(group);
  CORE_CHECK(at < 5);
  return at;
}

Limits below_nominal(Length nominal, int below_um) {
  const auto nm = to_nm(nominal);
  return {.least = nanometres(nm - std::int64_t{below_um} * 1000), .greatest = nanometres(nm)};
}

}  // namespace

Result<Limits> ring_outside_limits(Length outside, ToleranceClass tolerance) {
  if (auto bad = size_problem("outside", outside, kGreatestRingMm)) return tl::unexpected(*bad);
  return below_nominal(outside, row_of(kOuter, outside).below[column(tolerance)]);
}

Result<Limits> ring_bore_limits(Length bore, ToleranceClass tolerance) {
  if (auto bad = size_problem("bore", bore, kGreatestRingMm)) return tl::unexpected(*bad);
  return below_nominal(bore, row_of(kBore, bore).below[column(tolerance)]);
}

Result<Length> outer_ring_runout(Length outside, ToleranceClass tolerance) {
  if (auto bad = size_problem("outside", outside, kGreatestRingMm)) return tl::unexpected(*bad);
  return micrometres(row_of(kOuter, outside).runout[column(tolerance)]);
}

Result<Limits> radial_clearance(Length bore, ClearanceGroup group) {
  if (auto bad = size_problem("bore", bore, kGreatestClearanceBoreMm)) return tl::unexpected(*bad);
  const Pair found = row_of(kClearance, bore).groups[column(group)];
  if (found.least < 0)
    return tl::unexpected(Problem{Code{"fits.no_group_at_bore"}, "group", {}, {{"bore", any(bore)}}, std::nullopt});
  return Limits{.least = micrometres(found.least), .greatest = micrometres(found.greatest)};
}

}  // namespace flatwise::fits
