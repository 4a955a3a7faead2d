// sample_parts.h: the hot loop of sample.h as plain numbers: built for every width of register. Not for other folders.
#pragma once

#include <cstdint>

#include "core/lanes/lanes.h"

namespace flatwise::stack {

inline constexpr int kSamplesAtOnce = 16;  ///< A step of the kernel, whatever the width.
/// Last word of a counter: upper half of the counters, which core/draws leaves to those who place their own.
inline constexpr std::uint32_t kSamplePlace = 0x80000000, kStudentPlace = 0x80000001;

/// A stack as the kernel takes it: single precision, about its middle, in units that the caller chose.
struct SampleJob {
  std::uint64_t seed = 0;
  std::uint64_t first = 0;  ///< Number of the first sample, a multiple of kSamplesAtOnce.
  int steps = 0;            ///< Of kSamplesAtOnce samples each.
  /// A block of random words serves four normals (their deviations) and two rectangular parts (their half widths).
  const float* normals = nullptr;  ///< 4 * mixed_blocks, filled up with noughts.
  const float* evens = nullptr;    ///< 2 * mixed_blocks, then 8 for each further block; likewise.
  int mixed_blocks = 0;
  int even_blocks = 0;  ///< Blocks that serve eight rectangular parts.
};

/// Deviations of kSamplesAtOnce * steps samples.
///
/// Model      Sample i takes the Philox4x32-7 blocks at counter (i, block, kSamplePlace) under the seed's key: a sample is
///            the same whoever draws it, and no two samples share a block. Two normals take a word for
///            their radius and half a word for their direction (Box-Muller); a rectangular part takes half a word.
/// Shape      out: kSamplesAtOnce * steps floats.
/// Accuracy   Rectangular parts in 65,536 even steps, symmetric; directions in as many, which every moment of a normal
///            under that order takes for exact; normals to 6.6 deviations and 2e-6 (test). Every build gives the same bits.
FLATWISE_KERNEL(void sample_deviations(const SampleJob& job, float* out))

/// What a run of samples adds up to. Sums by place in the step, so that every build adds in the same order.
struct SampleSums {
  double sum[kSamplesAtOnce] = {}, square[kSamplesAtOnce] = {};
};
/// Adds up 16 * steps samples and tells each its cell: the whole number under x * scale + middle, kept in 0 .. cells - 1.
FLATWISE_KERNEL(void sample_cells(const float* x, int steps, float scale, float middle, int cells, SampleSums& sums,
                                  std::int32_t* cell))

}  // namespace flatwise::stack
