// random.h: numbers that look random and are the same for the same seed, on any machine.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <vector>

namespace rebuilds {

/// xoshiro256** (Blackman and Vigna 2018), its state filled by splitmix64 from the seed.
class Random {
 public:
  explicit Random(std::uint64_t seed) {
    for (std::uint64_t& s : state_) {
      seed += 0x9e3779b97f4a7c15U;
      std::uint64_t z = seed;
      z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
      z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
      s = z ^ (z >> 31);
    }
  }

  std::uint64_t next() {
    const std::uint64_t result = turned(state_[1] * 5, 7) * 9, t = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= t;
    state_[3] = turned(state_[3], 45);
    return result;
  }

  /// 0 <= x < 1.
  double uniform() { return static_cast<double>(next() >> 11) * 0x1p-53; }
  double between(double least, double greatest) { return least + (greatest - least) * uniform(); }
  /// least .. greatest, both may come.
  int whole(int least, int greatest) { return least + static_cast<int>(uniform() * (greatest - least + 1)); }
  bool chance(double p) { return uniform() < p; }
  /// Mean 0, standard deviation 1 (Box and Muller).
  double normal() {
    const double radius = std::sqrt(-2 * std::log(1 - uniform()));
    return radius * std::cos(2 * std::numbers::pi * uniform());
  }
  template <class T>
  const T& pick(const std::vector<T>& from) {
    return from[static_cast<std::size_t>(uniform() * static_cast<double>(from.size()))];
  }

 private:
  static std::uint64_t turned(std::uint64_t x, int by) { return (x << by) | (x >> (64 - by)); }
  std::uint64_t state_[4];
};

}  // namespace rebuilds
