// transforms.h: random words to uniform and normal numbers, by plain arithmetic: no table, no branch, and no function of
// the system's library but the square root, so that every machine gives the same bits.
//
// A file that is built for several processors may use these: sums and products must not be contracted there
// (-ffp-contract=off), or the last bit differs.
#pragma once

#include <bit>
#include <cmath>
#include <cstdint>

namespace flatwise::draws {

/// A number strictly between 0 and 1 from 52 of 64 random bits: (k + 1/2) / 2^52, exact and symmetric about a half.
[[nodiscard]] constexpr double uniform_of(std::uint64_t word) {
  constexpr std::uint64_t kOne = 0x3FF0000000000000;
  constexpr double kOneLessHalfStep = 1.0 - 0x1p-53;
  return std::bit_cast<double>((word >> 12U) | kOne) - kOneLessHalfStep;
}

/// -ln u for 2^-53 <= u <= 1.
///
/// Accuracy   1e-15 relative (test, against the library's logarithm in long double).
/// Source     [fdlibm] e_log.c: u = 2^e (1 + f), s = f / (2 + f), its polynomial in s^2.
[[nodiscard]] constexpr double minus_log(double u) {
  constexpr std::uint64_t kRootHalf = 0x3FE6A09E667F3BCD, kTop = 0xFFF0000000000000;
  // The exponent becomes a double by bits: few processors turn a 64-bit integer into one.
  constexpr std::uint64_t kTwo52 = 0x4330000000000000;
  constexpr double kBias = 0x1p52 + 1023.0;
  const auto bits = std::bit_cast<std::uint64_t>(u);
  const std::uint64_t above = bits - kRootHalf + 0x3FF0000000000000;  // Its exponent field is e + 1023.
  const double e = std::bit_cast<double>((above >> 52U) | kTwo52) - kBias;
  const double f = std::bit_cast<double>(bits - (above & kTop) + 0x3FF0000000000000) - 1.0;
  const double s = f / (2.0 + f), z = s * s, w = z * z;
  const double even = w * (3.999999999940941908e-01 + w * (2.222219843214978396e-01 + w * 1.531383769920937332e-01));
  const double odd =
      z * (6.666666666666735130e-01 +
           w * (2.857142874366239149e-01 + w * (1.818357216161805012e-01 + w * 1.479819860511658591e-01)));
  const double half = 0.5 * f * f;
  constexpr double kLn2High = 6.93147180369123816490e-01, kLn2Low = 1.90821492927058770002e-10;
  return ((half - (s * (half + (even + odd)) + e * kLn2Low)) - f) - e * kLn2High;
}

struct OnCircle {
  double cosine, sine;
};
/// A direction: cosine and sine of an angle, 52 bits of the word as a fraction of the turn.
///
/// Model      Two bits choose the quarter (by the signs), the rest stands about the quarter's middle, so polynomials
///            on +-45 degrees do.
/// Accuracy   4e-16 absolute (test). Source [fdlibm] k_sin.c, k_cos.c for the polynomials.
[[nodiscard]] constexpr OnCircle direction_of(std::uint64_t word) {
  constexpr double kHalfTurn = 3.14159265358979323846, kRootHalf = 0.70710678118654752440;
  constexpr std::uint64_t kSign = 0x8000000000000000;
  const double t = (0.5 * kHalfTurn) * (uniform_of(word << 2U) - 0.5);
  const double z = t * t;
  const double sine = t + t * z *
                              (-1.66666666666666324348e-01 +
                               z * (8.33333333332248946124e-03 +
                                    z * (-1.98412698298579493134e-04 +
                                         z * (2.75573137070700676789e-06 +
                                              z * (-2.50507602534068634195e-08 + z * 1.58969099521155010221e-10)))));
  const double cosine =
      1.0 - (0.5 * z - z * z *
                           (4.16666666666666019037e-02 +
                            z * (-1.38888888888741095749e-03 +
                                 z * (2.48015872894767294178e-05 +
                                      z * (-2.75573143513906633035e-07 +
                                           z * (2.08757232129817482790e-09 + z * -1.13596475577881948265e-11))))));
  const double along = kRootHalf * (cosine - sine), across = kRootHalf * (cosine + sine);  // About 45 degrees.
  return {std::bit_cast<double>(std::bit_cast<std::uint64_t>(along) ^ (word & kSign)),
          std::bit_cast<double>(std::bit_cast<std::uint64_t>(across) ^ ((word << 1U) & kSign))};
}

struct TwoNormals {
  double first, second;
};
/// Two independent normal numbers (mean 0, deviation 1) from two words.
///
/// Source     [BoxMuller]; the greatest value is sqrt(2 * 53 ln 2) = 8.57.
[[nodiscard]] inline TwoNormals normals_of(std::uint64_t radius, std::uint64_t angle) {
  const double r = std::sqrt(2.0 * minus_log(uniform_of(radius)));
  const OnCircle on = direction_of(angle);
  return {r * on.cosine, r * on.sine};
}

}  // namespace flatwise::draws
