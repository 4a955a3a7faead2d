// draws.h: random numbers that are the same on every machine and can be split among threads without overlap.
//
//   Stream stream{seed, 3};       // the fourth stream of this seed
//   const double x = stream.normal();
//   fill_uniforms(stream, values);
#pragma once

#include <cstdint>
#include <span>

#include "core/draws/philox.h"

namespace flatwise::draws {

/// One sequence of random numbers out of those that a seed has.
///
/// Model      The seed is Philox's key. The counter's upper half is the stream, its lower half counts blocks of four
///            words, so two streams of one seed have no counter in common within 2^64 blocks each, and one key never
///            gives the same block twice. Two seeds are two keys: independent by the generator's design, not by proof.
/// Inputs     Any seed; any stream, those under 2^63 where the seed is also used by a kernel that places its own counters
///            (core/stack): such counters stand in the upper half.
/// Accuracy   Words exact; uniform() 52 bits; normal() to 1e-15 of the exact transform. Same bits on every machine.
/// Source     [Philox].
class Stream {
 public:
  explicit constexpr Stream(std::uint64_t seed, std::uint64_t stream)
      : place_{.counter = {0, 0, low(stream), high(stream)}, .key = {low(seed), high(seed)}} {}

  [[nodiscard]] std::uint64_t next();
  [[nodiscard]] double uniform();  ///< Strictly between 0 and 1.
  [[nodiscard]] double normal();   ///< Mean 0, deviation 1.

  /// Where the next fresh block stands: what was drawn so far used every place before it, from block 0 of this stream.
  [[nodiscard]] const Place& place() const { return place_; }

 private:
  static constexpr std::uint32_t low(std::uint64_t x) { return static_cast<std::uint32_t>(x); }
  static constexpr std::uint32_t high(std::uint64_t x) { return static_cast<std::uint32_t>(x >> 32U); }

  Place place_;
  std::uint64_t spare_word_ = 0;
  double spare_normal_ = 0.0;
  bool has_word_ = false, has_normal_ = false;
};

/// Fills with what uniform(), normal() called so often would give.
void fill_uniforms(Stream& stream, std::span<double> values);
void fill_normals(Stream& stream, std::span<double> values);

}  // namespace flatwise::draws
