// That streams do not overlap, looked at directly: by the places they draw from and by the words they give, never by the
// look of their statistics. Two schemes that do overlap show that the check bites.
#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "core/draws/draws.h"

namespace flatwise::draws {
namespace {

__extension__ typedef unsigned __int128 Wide;
Wide counter_of(const Place& place) {
  Wide counter = 0;
  for (int i = 3; i >= 0; --i) counter = counter << 32U | place.counter[static_cast<std::size_t>(i)];
  return counter;
}

/// The counters under one key that somebody drew from: first to before end.
struct Range {
  std::array<std::uint32_t, 2> key;
  Wide first, end;
};
bool any_overlap(std::vector<Range> ranges) {
  std::ranges::sort(ranges,
                    [](const Range& a, const Range& b) { return a.key != b.key ? a.key < b.key : a.first < b.first; });
  for (std::size_t i = 1; i < ranges.size(); ++i)
    if (ranges[i].key == ranges[i - 1].key && ranges[i].first < ranges[i - 1].end) return true;
  return false;
}
Range drawn_by(Stream stream, int numbers) {
  const Place before = stream.place();
  for (int i = 0; i < numbers; ++i) (void)stream.next();
  return {before.key, counter_of(before), counter_of(stream.place())};
}

bool any_word_twice(std::vector<std::uint64_t> words) {
  std::ranges::sort(words);
  return std::ranges::adjacent_find(words) != words.end();
}

/// A scheme that was really met elsewhere: lane l of thread k begins at block k + l, so all but one of a thread's lanes
/// are copies of its neighbour's, one block late.
Place planted(std::uint32_t thread, std::uint32_t lane, std::uint32_t block) {
  return {.counter = {thread + lane + block, 0, 0, 0}, .key = {1, 0}};
}

// Source: the model itself: a stream's counters are stream * 2^64 + block. Seeds and streams at both ends of their range
// and neighbours, also those that differ in one half of the seed only.
// Tolerance: exact.
TEST(Streams, DrawFromPlacesThatNoOtherDrawsFrom) {
  std::vector<Range> ranges;
  for (const std::uint64_t seed : {0ULL, 1ULL, 1ULL << 32U, ~0ULL})
    for (const std::uint64_t stream : {0ULL, 1ULL, 2ULL, 3ULL, 1ULL << 32U, (1ULL << 32U) + 1, ~0ULL - 1, ~0ULL})
      ranges.push_back(drawn_by(Stream{seed, stream}, 10'001));
  for (const Range& range : ranges) EXPECT_TRUE(range.end - range.first == 5001);
  EXPECT_FALSE(any_overlap(ranges));
  // Nor after the longest use: a stream ends where the next begins.
  const Wide whole = Wide{1} << 64U;
  const Range first = drawn_by(Stream{5, 1}, 2), second = drawn_by(Stream{5, 2}, 2);
  EXPECT_TRUE(first.first + whole == second.first);
}

TEST(Streams, AreToldApartFromASchemeThatOverlaps) {
  std::vector<Range> ranges;
  for (std::uint32_t thread = 0; thread < 2; ++thread)
    for (std::uint32_t lane = 0; lane < 16; ++lane) {
      const Wide first = counter_of(planted(thread, lane, 0));
      ranges.push_back({planted(thread, lane, 0).key, first, first + 1000});
    }
  EXPECT_TRUE(any_overlap(ranges));
  EXPECT_FALSE(any_overlap({{{1, 0}, 0, 10}, {{1, 0}, 10, 20}, {{2, 0}, 5, 15}}));
  EXPECT_TRUE(any_overlap({{{1, 0}, 0, 10}, {{1, 0}, 9, 20}}));
}

// Source: chance of one equal pair among 2^19 words of 64 bits: 2^38 / 2^65 = 7e-9; the seed is fixed besides.
// Tolerance: none may be equal.
TEST(Streams, GiveWordsThatNoOtherGives) {
  constexpr int kWords = 1 << 14;
  std::vector<std::uint64_t> words;
  for (std::uint64_t stream = 0; stream < 32; ++stream) {
    Stream one{20261127, stream};
    for (int i = 0; i < kWords; ++i) words.push_back(one.next());
  }
  EXPECT_FALSE(any_word_twice(words));
  words.clear();
  for (std::uint32_t thread = 0; thread < 2; ++thread)
    for (std::uint32_t lane = 0; lane < 16; ++lane)
      for (std::uint32_t block = 0; block < 100; ++block) {
        const Words w = philox(planted(thread, lane, block));
        words.push_back(w[0] | std::uint64_t{w[1]} << 32U);
      }
  EXPECT_TRUE(any_word_twice(words));
}

}  // namespace
}  // namespace flatwise::draws
