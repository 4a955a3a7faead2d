// philox.h: Philox4x32-10, a counter-based generator: the same counter and key always give the same four words.
//
//   const Words words = philox({.counter = {0, 0, 7, 0}, .key = {1, 0}});
//
// There is no state that could be shared by mistake: who owns a range of counters owns its words. Streams: draws.h.
#pragma once

#include <array>
#include <cstdint>

namespace flatwise::draws {

using Words = std::array<std::uint32_t, 4>;

/// Where in all random words a block stands.
struct Place {
  Words counter{};
  std::array<std::uint32_t, 2> key{};
  friend bool operator==(const Place&, const Place&) = default;
};

inline constexpr int kPhiloxRounds = 10;  ///< Its authors' own choice.
inline constexpr int kFewestRounds = 7;   ///< The fewest that pass every test its authors put it to: for hot loops.

/// The four words at a place.
///
/// Model      Rounds of two 32 x 32 bit products, as published. With one key it is a bijection of the counter: different
///            counters never give the same four words.
/// Accuracy   Exact; the published known answers are its test.
/// Source     [Philox].
template <int kRounds = kPhiloxRounds>
[[nodiscard]] constexpr Words philox(const Place& place) {
  constexpr std::uint64_t kFirst = 0xD2511F53, kSecond = 0xCD9E8D57;
  constexpr std::uint32_t kFirstKeyStep = 0x9E3779B9, kSecondKeyStep = 0xBB67AE85;
  auto [c0, c1, c2, c3] = place.counter;
  auto [k0, k1] = place.key;
  for (int round = 0; round < kRounds; ++round) {
    const std::uint64_t p0 = kFirst * c0, p1 = kSecond * c2;
    c0 = static_cast<std::uint32_t>(p1 >> 32U) ^ c1 ^ k0;
    c1 = static_cast<std::uint32_t>(p1);
    c2 = static_cast<std::uint32_t>(p0 >> 32U) ^ c3 ^ k1;
    c3 = static_cast<std::uint32_t>(p0);
    k0 += kFirstKeyStep;
    k1 += kSecondKeyStep;
  }
  return {c0, c1, c2, c3};
}

}  // namespace flatwise::draws
