#include <cstdint>
#if defined(__SSE2__)
#include <immintrin.h>
#endif

#include "core/stack/sample_parts.h"

// Vectors of the compiler (gcc, clang), as wide as this build's registers. Where it has no word for an instruction (the
// product of 32 bits by 32, the square root) the instruction stands in `#if`; all are exact, so every build gives the
// same bits. The file is compiled without contraction of sums and products for the same reason.

namespace flatwise::stack::FLATWISE_LANES {
namespace {

#if defined(__AVX512F__)
constexpr int kLanes = 16;
#elif defined(__AVX2__)
constexpr int kLanes = 8;
#else
constexpr int kLanes = 4;
#endif
constexpr int kVectors = kSamplesAtOnce / kLanes;
typedef float Floats __attribute__((vector_size(4 * kLanes)));
typedef std::int32_t Ints __attribute__((vector_size(4 * kLanes)));
typedef std::uint32_t Words __attribute__((vector_size(4 * kLanes)));
typedef std::uint64_t Longs __attribute__((vector_size(4 * kLanes)));  ///< Each lane one word, its upper half rubbish.

#define FLATWISE_INLINE inline __attribute__((always_inline))

FLATWISE_INLINE Longs product(Longs a, Longs b) {
#if defined(__AVX512F__)
  return (Longs)_mm512_mul_epu32((__m512i)a, (__m512i)b);
#elif defined(__AVX2__)
  return (Longs)_mm256_mul_epu32((__m256i)a, (__m256i)b);
#elif defined(__SSE2__)
  return (Longs)_mm_mul_epu32((__m128i)a, (__m128i)b);
#else
  return (a & 0xFFFFFFFFU) * (b & 0xFFFFFFFFU);
#endif
}

FLATWISE_INLINE Floats root(Floats x) {
#if defined(__AVX512F__)
  return (Floats)_mm512_sqrt_ps((__m512)x);
#elif defined(__AVX2__)
  return (Floats)_mm256_sqrt_ps((__m256)x);
#elif defined(__SSE2__)
  return (Floats)_mm_sqrt_ps((__m128)x);
#else
  for (int i = 0; i < kLanes; ++i) x[i] = __builtin_sqrtf(x[i]);
  return x;
#endif
}

FLATWISE_INLINE Longs every(std::uint64_t x) { return Longs{} + x; }
FLATWISE_INLINE Floats every(float x) { return Floats{} + x; }

constexpr std::uint64_t kFirst = 0xD2511F53, kSecond = 0xCD9E8D57;
constexpr std::uint32_t kFirstKeyStep = 0x9E3779B9, kSecondKeyStep = 0xBB67AE85;
constexpr int kRounds = 7;  // kFewestRounds of core/draws.

struct Keys {
  std::uint32_t first[kRounds], second[kRounds];
};
FLATWISE_INLINE std::uint64_t both(std::uint32_t key) { return key | std::uint64_t{key} << 32U; }

/// What the first two rounds of Philox leave that does not depend on the block: the counter is (i, i', block, place), so most
/// of those rounds are the same for all blocks of a sample, or for all samples of a block.
struct Begun {
  Longs high;   ///< Upper word of the second product of round 2.
  Longs low;    ///< Its lower word.
  Longs third;  ///< Lower word of the first product of round 1.
};
FLATWISE_INLINE Begun begin(Longs index, const Keys& keys) {
  const Longs p0 = product(every(kFirst), index);
  const Longs c2 = (p0 >> 32U) ^ every(both(kSamplePlace ^ keys.second[0]));
  const Longs p1 = product(every(kSecond), c2);
  return {p1 >> 32U, p1, p0};
}

struct Block {
  Longs word[4];
};
/// The block's four words, seven rounds in all.
FLATWISE_INLINE Block finish(const Begun& begun, std::uint32_t index_high, std::uint32_t block, const Keys& keys) {
  const std::uint64_t p1 = kSecond * block;
  const std::uint32_t c0_after = static_cast<std::uint32_t>(p1 >> 32U) ^ index_high ^ keys.first[0];
  const auto c1_after = static_cast<std::uint32_t>(p1);
  const std::uint64_t p0 = kFirst * c0_after;
  Longs c0 = begun.high ^ every(both(c1_after ^ keys.first[1])), c1 = begun.low;
  Longs c2 = begun.third ^ every(both(static_cast<std::uint32_t>(p0 >> 32U) ^ keys.second[1]));
  Longs c3 = every(both(static_cast<std::uint32_t>(p0)));
#pragma GCC unroll 5
  for (int round = 2; round < kRounds; ++round) {
    const Longs q0 = product(every(kFirst), c0), q1 = product(every(kSecond), c2);
    c0 = (q1 >> 32U) ^ c1 ^ every(both(keys.first[round]));
    c2 = (q0 >> 32U) ^ c3 ^ every(both(keys.second[round]));
    c1 = q1;
    c3 = q0;
  }
  return {{c0, c1, c2, c3}};
}

/// Words of even samples and of odd ones, side by side.
FLATWISE_INLINE Words merged(Longs even, Longs odd) { return (Words)((even & 0xFFFFFFFFU) | (odd << 32U)); }

FLATWISE_INLINE Floats as_floats(Ints x) { return __builtin_convertvector(x, Floats); }

/// sqrt(-ln u), u = (2 k + 1) / 2^31: the radius of two normals less the factor that their direction carries.
FLATWISE_INLINE Floats radius(Words word) {
  constexpr std::int32_t kRootHalf = 0x3F3504F3, kExponent = -0x800000, kThirtyOne = 31 << 23;
  const Ints bits = (Ints)as_floats((Ints)((word & 0x7FFFFFFFU) | 1U));
  const Ints exponent = (bits - kRootHalf) & kExponent;  // Of the power of two, where the bits of a float have it.
  const Floats f = (Floats)(bits - exponent) - 1.0F;
  const Floats q =
      1.00000323F +
      f * (-0.500019621F +
           f * (0.333033812F + f * (-0.248814362F + f * (0.206038534F + f * (-0.18901168F + f * 0.118290295F)))));
  return root(as_floats(kThirtyOne - exponent) * (0.69314718F * 0x1p-23F) - f * q);
}

struct Two {
  Floats first, second;
};
/// sqrt 2 times cosine and sine of an angle: the signs give its quarter, the place (14 bits of the fraction of a number from
/// 1 to 2) where in it.
FLATWISE_INLINE Two direction(Words place, Words first_sign, Words second_sign) {
  const Floats y = (Floats)((place & 0x7FFE00U) | 0x3F800100U) - 1.5F;
  const Floats z = y * y;
  const Floats cosine = 0.999999972F + z * (-1.23369701F + z * (0.253598644F + z * -0.0204083525F));
  const Floats sine = y * (1.57079632F + z * (-0.645963479F + z * (0.0796802281F + z * -0.00460217699F)));
  return {(Floats)((Words)(cosine - sine) ^ (first_sign & 0x80000000U)),
          (Floats)((Words)(cosine + sine) ^ (second_sign & 0x80000000U))};
}
/// From the upper half of a word: two bits the quarter, fourteen the place.
FLATWISE_INLINE Two direction_of_upper(Words word) { return direction(word >> 7U, word, word << 1U); }
FLATWISE_INLINE Two direction_of_lower(Words word) { return direction(word << 9U, word << 16U, word << 17U); }

FLATWISE_INLINE Floats two_normals(Words distance, const Two& on, const float* sigma) {
  return radius(distance) * (on.first * every(sigma[0]) + on.second * every(sigma[1]));
}

/// Between -half and half, from the upper 16 bits.
FLATWISE_INLINE Floats even_one(Words word, float half) {
  return as_floats((Ints)((word & 0xFFFF0000U) | 0x8000U)) * every(half * 0x1p-31F);
}
FLATWISE_INLINE Floats two_evens(Words word, const float* half) {
  return even_one(word, half[0]) + even_one(word << 16U, half[1]);
}

FLATWISE_INLINE Floats deviations(const SampleJob& job, std::uint64_t first, const Keys& keys) {
  Longs even{}, odd{};
  for (int i = 0; i < kLanes / 2; ++i) {
    even[i] = first + 2 * static_cast<std::uint64_t>(i);
    odd[i] = even[i] + 1;
  }
  const auto index_high = static_cast<std::uint32_t>(first >> 32U);
  const Begun begun_even = begin(even, keys), begun_odd = begin(odd, keys);
  Floats sum = every(0.0F);
  const auto block_words = [&](int block, Words(&word)[4]) {
    const Block e = finish(begun_even, index_high, static_cast<std::uint32_t>(block), keys);
    const Block o = finish(begun_odd, index_high, static_cast<std::uint32_t>(block), keys);
    for (int i = 0; i < 4; ++i) word[i] = merged(e.word[i], o.word[i]);
  };
  const auto use = [&](int block, const Words(&word)[4]) __attribute__((always_inline)) {
    if (block < job.mixed_blocks) {
      const float* sigma = job.normals + 4 * block;
      sum += two_normals(word[0], direction_of_upper(word[2]), sigma) +
             two_normals(word[1], direction_of_lower(word[2]), sigma + 2);
      sum += two_evens(word[3], job.evens + 2 * block);
      return;
    }
    const float* half = job.evens + 2 * job.mixed_blocks + 8 * (block - job.mixed_blocks);
    sum += (two_evens(word[0], half) + two_evens(word[1], half + 2)) +
           (two_evens(word[2], half + 4) + two_evens(word[3], half + 6));
  };
  // The next block's words are made beside this block's numbers: neither waits for the other.
  const int blocks = job.mixed_blocks + job.even_blocks;
  Words word[4], next[4];
  if (blocks > 0) block_words(0, next);
  for (int b = 0; b + 1 < blocks; ++b) {
    for (int i = 0; i < 4; ++i) word[i] = next[i];
    block_words(b + 1, next);
    use(b, word);
  }
  if (blocks > 0) use(blocks - 1, next);
  return sum;
}

}  // namespace

void sample_deviations(const SampleJob& job, float* out) {
  Keys keys;
  for (std::uint32_t round = 0; round < kRounds; ++round) {
    keys.first[round] = static_cast<std::uint32_t>(job.seed) + round * kFirstKeyStep;
    keys.second[round] = static_cast<std::uint32_t>(job.seed >> 32U) + round * kSecondKeyStep;
  }
  for (int step = 0; step < job.steps; ++step)
    for (int v = 0; v < kVectors; ++v) {
      const std::uint64_t first = job.first + static_cast<std::uint64_t>(kSamplesAtOnce * step + kLanes * v);
      const Floats sums = deviations(job, first, keys);
      __builtin_memcpy(out + kSamplesAtOnce * step + kLanes * v, &sums, sizeof sums);
    }
}

void sample_cells(const float* x, int steps, float scale, float middle, int cells, SampleSums& sums,
                  std::int32_t* cell) {
  double sum[kSamplesAtOnce], square[kSamplesAtOnce];
  for (int i = 0; i < kSamplesAtOnce; ++i) {
    sum[i] = sums.sum[i];
    square[i] = sums.square[i];
  }
  const auto last = static_cast<float>(cells - 1);
  for (int step = 0; step < steps; ++step, x += kSamplesAtOnce, cell += kSamplesAtOnce)
    for (int i = 0; i < kSamplesAtOnce; ++i) {
      const double value = x[i];
      sum[i] += value;
      square[i] += value * value;
      const float at = x[i] * scale + middle, floor = at > 0.0F ? at : 0.0F;
      cell[i] = static_cast<std::int32_t>(floor < last ? floor : last);
    }
  for (int i = 0; i < kSamplesAtOnce; ++i) {
    sums.sum[i] = sum[i];
    sums.square[i] = square[i];
  }
}

}  // namespace flatwise::stack::FLATWISE_LANES
