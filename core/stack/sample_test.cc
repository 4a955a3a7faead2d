#include "core/stack/sample.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "core/draws/philox.h"

namespace flatwise::stack {
namespace {

StackPart even_part(double half_mm) {
  return {.nominal = millimetres(50), .above = millimetres(half_mm), .below = millimetres(half_mm)};
}
StackPart measured_part(double u_mm) { return {.nominal = millimetres(50), .standard_uncertainty = millimetres(u_mm)}; }
std::vector<StackPart> mixed(int normals, int evens) {
  std::vector<StackPart> parts;
  for (int i = 0; i < normals; ++i) parts.push_back(measured_part(0.004 + 0.0003 * i));
  for (int i = 0; i < evens; ++i) parts.push_back(even_part(0.01 + 0.001 * i));
  return parts;
}

constexpr std::uint64_t kSeed = 0x9E3779B900000011;

draws::Words words_of(std::uint64_t sample, std::uint32_t block) {
  const auto low = [](std::uint64_t x) { return static_cast<std::uint32_t>(x); };
  return draws::philox<draws::kFewestRounds>(
      {.counter = {low(sample), low(sample >> 32U), block, kSamplePlace}, .key = {low(kSeed), low(kSeed >> 32U)}});
}
/// Half a word as a number between -1 and 1, symmetric.
double even_of(std::uint32_t half) { return (static_cast<double>(half) + 0.5) / 32768 - 1; }

double plain_sample(std::uint64_t sample, int part) {
  if (part >= 4) {
    const auto w = part < 6 ? words_of(sample, 0)[3] : words_of(sample, 1)[static_cast<std::size_t>(part - 6) / 2];
    // The kernel's halves are signed: its least is nought's opposite.
    return even_of((part % 2 == 0 ? w >> 16U : w & 0xFFFFU) ^ 0x8000U);
  }
  const auto w = words_of(sample, 0);
  const double r = std::sqrt(-2 * std::log(((w[part < 2 ? 0 : 1] & 0x7FFFFFFFU) | 1U) * 0x1p-31));
  const std::uint32_t angle = part < 2 ? w[2] >> 16U : w[2] & 0xFFFFU;
  const double place = (static_cast<double>(angle & 0x3FFFU) + 0.5) / 16384;  // In its quarter, 0 to 1.
  const double quarter = place * 1.57079632679489662;
  const bool turned = (angle >> (part % 2 == 0 ? 15U : 14U) & 1U) != 0;
  const double along = part % 2 == 0 ? std::cos(quarter) : std::sin(quarter);
  return r * (turned ? -along : along);
}

// Source: second method: each sample by the generator's plain function and the library's logarithm, sine and cosine in
// double precision; also the first sample over 2^32.
// Tolerance: 2e-6 of a part's deviation, the stated accuracy.
TEST(SampleKernel, DrawsWhatThePlainGeneratorDraws) {
  constexpr int kParts = 14;  // Four normals, two rectangular parts beside them, eight by themselves.
  for (const std::uint64_t first : {std::uint64_t{0}, std::uint64_t{48}, (std::uint64_t{7} << 32U) - 16})
    for (int part = 0; part < kParts; ++part) {
      float normals[4] = {}, evens[10] = {}, out[32];
      (part < 4 ? normals[part] : evens[part - 4]) = 1;
      const SampleJob job{.seed = kSeed,
                          .first = first,
                          .steps = 2,
                          .normals = normals,
                          .evens = evens,
                          .mixed_blocks = 1,
                          .even_blocks = 1};
      baseline::sample_deviations(job, out);
      for (std::uint64_t i = 0; i < 32; ++i)
        EXPECT_NEAR(static_cast<double>(out[i]), plain_sample(first + i, part), 2e-6) << part << ' ' << first + i;
    }
}

// Tolerance: exact, which is inside the 1e-12 that every kernel keeps.
TEST(SampleKernel, GivesTheSameInEveryBuild) {
  const auto parts = mixed(23, 13);
  const SampleRange range{.seed = 3, .first = 160, .count = 100'003};
  const auto baseline = SampledLength::of(parts, range, lanes::Width::baseline).value();
  for (const lanes::Width width : lanes::kEveryWidth) {
    if (!lanes::runs_here(width)) continue;
    const auto other = SampledLength::of(parts, range, width).value();
    EXPECT_EQ(other.mean(), baseline.mean());
    EXPECT_EQ(other.deviation(), baseline.deviation());
    for (const double part : {0.001, 0.3, 0.975}) EXPECT_EQ(other.quantile(part), baseline.quantile(part));
  }
}

// Source: the model: sample i is the same whoever draws it.
// Tolerance: quantiles exact; sums to 1e-12, another order of adding.
TEST(SampledLength, IsTheSameHoweverItIsSplit) {
  const auto parts = mixed(5, 6);
  const auto whole = SampledLength::of(parts, {.seed = 9, .first = 0, .count = 70'000}).value();
  auto split = SampledLength::of(parts, {.seed = 9, .first = 0, .count = 16'000}).value();
  split.add(SampledLength::of(parts, {.seed = 9, .first = 16'000, .count = 54'000}).value());
  EXPECT_EQ(split.count(), whole.count());
  EXPECT_NEAR(split.deviation() / whole.deviation(), 1, 1e-12);
  for (const double part : {0.025, 0.5, 0.99}) EXPECT_EQ(split.quantile(part), whole.quantile(part));
}

// Source: second method: the exact distribution of the sum (sum.h), at seven quantiles; standard deviation in closed form.
// Tolerance: four standard errors, as the samples themselves tell; the seed is fixed.
TEST(SampledLength, MeetsTheExactSum) {
  const auto parts = mixed(24, 12);
  const auto exact = StackLength::of(parts).value();
  const auto drawn = SampledLength::of(parts, {.seed = 1, .first = 0, .count = 2'000'000}).value();
  double variance = 0;
  for (const StackPart& p : parts)
    variance += p.above.si() * p.above.si() / 3 + p.standard_uncertainty.si() * p.standard_uncertainty.si();
  const double sd = std::sqrt(variance);
  EXPECT_NEAR((drawn.mean() - exact.centre()).si(), 0, 4 * sd / std::sqrt(2e6));
  EXPECT_NEAR(drawn.deviation().si(), sd, 4 * sd / std::sqrt(4e6));
  for (const double coverage : {0.2, 0.5, 0.8, 0.95, 0.99, 0.999}) {
    const double upper = 0.5 + 0.5 * coverage;
    const double error = 4 * drawn.standard_error(upper).si();
    EXPECT_NEAR(drawn.quantile(upper).si(), exact.band(coverage).greatest.si(), error) << coverage;
    EXPECT_NEAR(drawn.quantile(1 - upper).si(), exact.band(coverage).least.si(), error) << coverage;
  }
  EXPECT_NEAR(drawn.standard_error(0.5).si(), sd * std::sqrt(std::acos(-1.0) / 2 / 2e6), 0.1 * sd / std::sqrt(2e6));
}

// A planted error: one part a tenth wider than the exact sum was told. The samples must see it.
TEST(SampledLength, SeesAPartThatIsWider) {
  auto parts = mixed(4, 4);
  const auto exact = StackLength::of(parts).value();
  parts.back() = even_part(0.0143);
  const auto drawn = SampledLength::of(parts, {.seed = 1, .first = 0, .count = 2'000'000}).value();
  EXPECT_GT(std::abs((drawn.quantile(0.975) - exact.band().greatest).si()), 4 * drawn.standard_error(0.975).si());
}

// Source: second method: the exact sum with Student's t (its characteristic function), three and nine degrees of freedom.
// Tolerance: four standard errors.
TEST(SampledLength, DrawsPartsMeasuredAFewTimes) {
  auto parts = mixed(0, 3);
  for (const double degrees : {3.0, 9.0}) {
    parts.push_back(measured_part(0.02));
    parts.back().degrees_of_freedom = degrees;
  }
  const auto exact = StackLength::of(parts).value();
  const auto drawn = SampledLength::of(parts, {.seed = 4, .first = 0, .count = 400'000}).value();
  for (const double coverage : {0.5, 0.95})
    EXPECT_NEAR(drawn.quantile(0.5 + 0.5 * coverage).si(), exact.band(coverage).greatest.si(),
                4 * drawn.standard_error(0.5 + 0.5 * coverage).si());
}

TEST(SampledLength, RefusesAndNamesTheField) {
  const auto parts = mixed(1, 1);
  EXPECT_EQ(SampledLength::of(parts, {.seed = 1, .first = 0, .count = 0}).error().field, "samples");
  EXPECT_EQ(SampledLength::of(parts, {.seed = 1, .first = 8, .count = 16}).error().code.id(), "stack.first_sample");
  EXPECT_EQ(SampledLength::of({}, {.seed = 1, .first = 0, .count = 16}).error().code.id(), "stack.part_count");
}

// Source: closed form: a stack of exact parts is as long as they are.
// Tolerance: exact.
TEST(SampledLength, OfExactPartsIsAPoint) {
  const std::vector<StackPart> parts(3, even_part(0));
  const auto drawn = SampledLength::of(parts, {.seed = 1, .first = 0, .count = 100}).value();
  EXPECT_EQ(drawn.mean(), StackLength::of(parts)->centre());
  EXPECT_EQ(drawn.deviation(), Length{});
}

}  // namespace
}  // namespace flatwise::stack
