#include "core/dynamics/pattern_join.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <utility>

namespace flatwise::dynamics::halves {
namespace {

constexpr std::size_t kMostStrips = 4096;
/// Tests that take as long as handing over one pair, with a margin. Couples in whole steps of one unit make millions of pairs that leave nothing.
constexpr std::int64_t kHandedOver = 2000;

struct Box {
  double least_x = std::numeric_limits<double>::infinity(), most_x = -least_x, least_y = least_x, most_y = -least_x;
  double size = 0;  ///< Greatest coordinate there is, for the margin.
};
/// What single precision may hide: a few roundings of the greatest coordinate.
double with_margin(double reach, const Box& box) { return reach + 8.0e-7 * box.size; }

void stretch(Box& box, const Points& points) {
  float least_x = points.x[0], most_x = least_x, least_y = points.y[0], most_y = least_y, size = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    least_x = std::min(least_x, points.x[i]);
    most_x = std::max(most_x, points.x[i]);
    least_y = std::min(least_y, points.y[i]);
    most_y = std::max(most_y, points.y[i]);
    size = std::max({size, std::abs(points.u[i]), std::abs(points.v[i])});
  }
  size = std::max({size, std::abs(least_x), std::abs(most_x), std::abs(least_y), std::abs(most_y)});
  box = {std::min<double>(box.least_x, least_x), std::max<double>(box.most_x, most_x),
         std::min<double>(box.least_y, least_y), std::max<double>(box.most_y, most_y),
         std::max<double>(box.size, size)};
}

struct Strips {
  Box box;
  double width = 1;
  std::size_t count = 1;
  int y_bits = 32;
  double most_y_step = 0;  ///< 2^y_bits - 1.
  double y_step = 0;       ///< Points of one strip are in order of y to this.

  [[nodiscard]] std::size_t of(float x) const {
    return std::min(count - 1, static_cast<std::size_t>(std::max(0.0, (x - box.least_x) / width)));
  }
  [[nodiscard]] double edge(std::size_t strip) const { return box.least_x + width * static_cast<double>(strip); }
  [[nodiscard]] std::uint32_t key(float x, float y) const {
    const double step = y_step > 0 ? std::min(most_y_step, (y - box.least_y) / y_step) : 0;
    const auto strip = static_cast<std::uint64_t>(of(x)) << y_bits;
    return static_cast<std::uint32_t>(strip | static_cast<std::uint64_t>(step));
  }
};

Strips strips_for(const Points& left, const Points& right, double reach) {
  Strips s;
  stretch(s.box, left);
  stretch(s.box, right);
  const double wide = s.box.most_x - s.box.least_x, high = s.box.most_y - s.box.least_y;
  const double far = with_margin(reach, s.box);
  const double one_a_point = wide * high / (2 * far * static_cast<double>(right.size()) + 1e-300);
  s.width = std::max({one_a_point, 2 * far, wide / static_cast<double>(kMostStrips), 1e-300});
  s.count = wide > 0 ? std::min(kMostStrips, static_cast<std::size_t>(wide / s.width) + 1) : 1;
  s.y_bits = 32 - static_cast<int>(std::bit_width(s.count - 1));
  s.most_y_step = std::exp2(s.y_bits) - 1;
  s.y_step = high / (s.most_y_step - 1);
  return s;
}

/// Points in order of strip and y, with where each strip begins.
struct Sorted {
  std::vector<float> x, y, u, v;
  std::vector<std::uint32_t> from;  ///< Place in the list that was sorted.
  std::vector<std::size_t> begins;
};

/// By the upper half of each entry, eleven bits at a time.
void radix_sort(std::vector<std::uint64_t>& entries) {
  std::vector<std::uint64_t> other(entries.size());
  for (const int shift : {32, 43, 54}) {
    std::vector<std::size_t> begins(2049, 0);
    for (const std::uint64_t e : entries) ++begins[(e >> shift & 2047u) + 1];
    for (std::size_t i = 1; i < begins.size(); ++i) begins[i] += begins[i - 1];
    for (const std::uint64_t e : entries) other[begins[e >> shift & 2047u]++] = e;
    entries.swap(other);
  }
}

Sorted sort(const Points& points, const Strips& strips) {
  std::vector<std::uint64_t> entries(points.size());
  for (std::size_t i = 0; i < points.size(); ++i)
    entries[i] = static_cast<std::uint64_t>(strips.key(points.x[i], points.y[i])) << 32 | i;
  radix_sort(entries);
  Sorted out;
  out.begins.assign(strips.count + 1, points.size());
  for (auto* values : {&out.x, &out.y, &out.u, &out.v}) values->reserve(points.size());
  out.from.reserve(points.size());
  std::size_t strip = 0;
  for (const std::uint64_t e : entries) {
    const auto i = static_cast<std::uint32_t>(e);
    for (const std::size_t here = (e >> 32) >> strips.y_bits; strip <= here; ++strip)
      out.begins[strip] = out.from.size();
    out.x.push_back(points.x[i]);
    out.y.push_back(points.y[i]);
    out.u.push_back(points.u[i]);
    out.v.push_back(points.v[i]);
    out.from.push_back(i);
  }
  return out;
}

struct Sweep {
  const Strips& strips;
  const Sorted &left, &right;
  Joining& joining;

  /// Points of a left strip against those of a right one, its own or a neighbour.
  bool run(std::size_t strip, std::size_t other) {
    std::size_t low = right.begins[other];
    const std::size_t end = right.begins[other + 1];
    const double edge = strips.edge(std::max(strip, other));
    for (std::size_t i = left.begins[strip]; i < left.begins[strip + 1]; ++i) {
      float reach = static_cast<float>(with_margin(joining.reach, strips.box));
      if (strip != other && std::abs(left.x[i] - edge) > static_cast<double>(reach) * 1.000001) continue;
      const auto slack = static_cast<float>(2 * strips.y_step);
      const float y = left.y[i];
      while (low < end && right.y[low] < y - reach - slack) ++low;
      std::size_t j = low;
      for (; j < end && right.y[j] <= y + reach + slack; ++j) {
        const float dx = left.x[i] - right.x[j], dy = y - right.y[j];
        const float du = left.u[i] - right.u[j], dv = left.v[i] - right.v[j];
        if (dx * dx + dy * dy + du * du + dv * dv > reach * reach * 1.00001f) continue;
        joining.reach = joining.near(left.from[i], right.from[j]);
        joining.tests -= kHandedOver;
        reach = static_cast<float>(with_margin(joining.reach, strips.box));
      }
      joining.tests -= static_cast<std::int64_t>(j - low) + 1;
      if (joining.tests <= 0) return false;
    }
    return true;
  }
};

}  // namespace

bool join(const Points& left, const Points& right, Joining& joining) {
  if (left.size() == 0 || right.size() == 0) return true;
  const Strips strips = strips_for(left, right, joining.reach);
  const Sorted sorted_left = sort(left, strips), sorted_right = sort(right, strips);
  Sweep sweep{strips, sorted_left, sorted_right, joining};
  for (std::size_t strip = 0; strip < strips.count; ++strip)
    for (std::size_t other = strip == 0 ? 0 : strip - 1; other <= strip + 1 && other < strips.count; ++other)
      if (!sweep.run(strip, other)) return false;
  return true;
}

}  // namespace flatwise::dynamics::halves
