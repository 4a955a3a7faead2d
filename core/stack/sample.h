// sample.h: how long a stack is, by drawing many stacks: the second opinion on sum.h.
//
//   auto half = SampledLength::of(parts, {.seed = 1, .first = 0, .count = 50'000'000});           // one thread,
//   half->add(*SampledLength::of(parts, {.seed = 1, .first = 50'000'000, .count = 50'000'000}));  // another
//   Length longest = half->quantile(0.975);
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "core/lanes/lanes.h"
#include "core/stack/sample_parts.h"
#include "core/stack/sum.h"
#include "core/units/problem.h"

namespace flatwise::stack {

/// Samples first to first + count - 1 of a seed. Sample i is the same whoever draws it: ranges that do not overlap may be
/// drawn by different threads and added.
struct SampleRange {
  std::uint64_t seed = 1;
  std::uint64_t first = 0;  ///< A multiple of 16.
  std::uint64_t count = 0;
};

/// Drawn lengths of a stack whose joints are all home.
///
/// Model      The parts of StackPart, drawn one by one (core/draws' generator by sample number; sample_parts.h) and added;
///            a part measured with few degrees of freedom as Bailey's t. Kept as sums and as a histogram of cells of a
///            400th of a standard deviation.
/// Refuses    What StackLength::of() refuses; no sample or over 1e12; a first sample that is no multiple of 16.
/// Accuracy   Drawn in single precision: 1e-6 of the standard deviation, far under the sampling error, which
///            standard_error() tells. Same sums and cells whatever the width of the processor.
/// Source     [Philox], [BoxMuller], [Bailey]; second opinion: sum.h, exact.
class SampledLength {
 public:
  [[nodiscard]] static Result<SampledLength> of(std::span<const StackPart> parts, const SampleRange& range,
                                                lanes::Width width = lanes::widest());
  /// Adds samples of the same parts from another range.
  void add(const SampledLength& other);

  [[nodiscard]] std::uint64_t count() const { return count_; }
  [[nodiscard]] Length mean() const;
  [[nodiscard]] Length deviation() const;  ///< Standard deviation.
  [[nodiscard]] Length quantile(double part) const;
  /// Standard error of that quantile: half the distance between the quantiles a binomial deviation either side.
  [[nodiscard]] Length standard_error(double part) const;

 private:
  static constexpr int kCells = 8192;
  SampledLength() = default;
  void tally(std::span<const float> x, std::uint64_t samples, lanes::Width width);

  Length centre_;
  double unit_m_ = 1.0;  ///< What the drawn deviations count in: the standard deviation.
  std::uint64_t count_ = 0;
  double sum_ = 0.0, square_ = 0.0;
  std::vector<std::uint64_t> cells_;
};

}  // namespace flatwise::stack
