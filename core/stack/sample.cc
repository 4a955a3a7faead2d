#include "core/stack/sample.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/draws/philox.h"
#include "core/draws/transforms.h"
#include "core/units/guards.h"

namespace flatwise::stack {
namespace {

constexpr int kStepsAtOnce = 256;  // A batch of samples stays in the nearest cache.
constexpr std::size_t kBatch = std::size_t{kStepsAtOnce} * kSamplesAtOnce;
constexpr double kReach = 10;  // Standard deviations either side that have cells; all beyond is in the last ones.
constexpr double kMostSamples = 1e12;
constexpr double kNormalFrom = 2000;  // Degrees of freedom, as in sum.cc.

/// The parts in units of the whole's standard deviation, as the kernel takes them.
struct Drawn {
  std::vector<float> normals, evens;
  struct Student {
    double scale, degrees;
  };
  std::vector<Student> students;
  double unit_m = 1.0;
  std::size_t mixed_blocks = 0, even_blocks = 0;
};

std::size_t whole(std::size_t count, std::size_t step) { return (count + step - 1) / step; }

/// Noughts for the places of the blocks that no part takes.
void fill_up(Drawn& parts) {
  parts.mixed_blocks = whole(parts.normals.size(), 4);
  parts.normals.resize(4 * parts.mixed_blocks, 0.0F);
  const std::size_t beside = 2 * parts.mixed_blocks;
  if (parts.evens.size() > beside) parts.even_blocks = whole(parts.evens.size() - beside, 8);
  parts.evens.resize(beside + 8 * parts.even_blocks, 0.0F);
}

Drawn drawn(std::span<const StackPart> parts) {
  Drawn out;
  double variance = 0;
  for (const StackPart& part : parts) {
    const double half_m = 0.5 * (part.above + part.below).si(), u_m = part.standard_uncertainty.si();
    const double degrees = part.degrees_of_freedom.value_or(kNormalFrom);
    // Of a t with two degrees or fewer the variance is endless: it counts as the normal of its scale for the unit.
    variance += half_m * half_m / 3 + u_m * u_m * (degrees > 2.5 ? degrees / (degrees - 2) : 1);
  }
  if (variance > 0) out.unit_m = std::sqrt(variance);
  for (const StackPart& part : parts) {
    const double half = 0.5 * (part.above + part.below).si() / out.unit_m;
    const double u = part.standard_uncertainty.si() / out.unit_m;
    if (half > 0) out.evens.push_back(static_cast<float>(half));
    if (!(u > 0)) continue;
    if (part.degrees_of_freedom && *part.degrees_of_freedom < kNormalFrom)
      out.students.push_back({u, *part.degrees_of_freedom});
    else
      out.normals.push_back(static_cast<float>(u));
  }
  fill_up(out);
  return out;
}

std::uint32_t low(std::uint64_t x) { return static_cast<std::uint32_t>(x); }
std::uint32_t high(std::uint64_t x) { return static_cast<std::uint32_t>(x >> 32U); }

/// Bailey's polar form of Student's t, from blocks that the kernel does not use.
double student(const Drawn::Student& part, std::uint64_t seed, std::uint64_t sample, std::uint32_t number) {
  const draws::Words w =
      draws::philox({.counter = {low(sample), high(sample), number, kStudentPlace}, .key = {low(seed), high(seed)}});
  const double u = draws::uniform_of(w[0] | std::uint64_t{w[1]} << 32U);
  const double cosine = draws::direction_of(w[2] | std::uint64_t{w[3]} << 32U).cosine;
  const double n = part.degrees;
  return part.scale * std::sqrt(n * std::expm1(2 / n * draws::minus_log(u))) * cosine;
}

void add_students(const Drawn& parts, const SampleJob& job, std::span<float> x) {
  std::uint32_t number = 0;
  for (const Drawn::Student& part : parts.students) {
    for (std::size_t i = 0; i < x.size(); ++i)
      x[i] += static_cast<float>(student(part, job.seed, job.first + i, number));
    ++number;
  }
}

std::optional<Problem> wrong_range(const SampleRange& range) {
  const auto count = static_cast<double>(range.count);
  if (auto p = outside("samples", any_count(static_cast<std::int64_t>(std::min(count, 9e18))), 1, kMostSamples))
    return p;
  if (range.first % kSamplesAtOnce == 0) return std::nullopt;
  return Problem{Code{"stack.first_sample"},
                 "first",
                 {},
                 {{"count", static_cast<std::int64_t>(range.first)}, {"step", kSamplesAtOnce}},
                 std::nullopt};
}

}  // namespace

void SampledLength::tally(std::span<const float> x, std::uint64_t samples, lanes::Width width) {
  SampleSums sums;
  std::array<std::int32_t, kBatch> cell;
  const auto whole = static_cast<int>(samples / kSamplesAtOnce);
  const float scale = static_cast<float>(kCells / (2 * kReach)), middle = kCells / 2;
  FLATWISE_PICK(width, sample_cells)(x.data(), whole, scale, middle, kCells, sums, cell.data());
  std::size_t done = static_cast<std::size_t>(whole) * kSamplesAtOnce;
  for (std::size_t i = 0; i < done; ++i) ++cells_[static_cast<std::size_t>(cell[i])];
  // The rest of a last step is drawn but not counted.
  for (; done < samples; ++done) {
    sums.sum[0] += x[done];
    sums.square[0] += static_cast<double>(x[done]) * x[done];
    const auto at = static_cast<std::int32_t>(std::clamp(x[done] * scale + middle, 0.0F, kCells - 1.0F));
    ++cells_[static_cast<std::size_t>(at)];
  }
  for (const double sum : sums.sum) sum_ += sum;
  for (const double square : sums.square) square_ += square;
  count_ += samples;
}

Result<SampledLength> SampledLength::of(std::span<const StackPart> parts, const SampleRange& range,
                                        lanes::Width width) {
  if (auto p = StackLength::checked(parts)) return tl::unexpected(*std::move(p));
  if (auto p = wrong_range(range)) return tl::unexpected(*std::move(p));
  const Drawn in_units = drawn(parts);
  SampledLength out;
  for (const StackPart& part : parts) out.centre_ = out.centre_ + part.nominal + 0.5 * (part.above - part.below);
  out.unit_m_ = in_units.unit_m;
  out.cells_.assign(kCells, 0);
  SampleJob job{.seed = range.seed,
                .first = range.first,
                .normals = in_units.normals.data(),
                .evens = in_units.evens.data(),
                .mixed_blocks = static_cast<int>(in_units.mixed_blocks),
                .even_blocks = static_cast<int>(in_units.even_blocks)};
  std::vector<float> x(kBatch);
  for (std::uint64_t done = 0; done < range.count; done += kBatch) {
    const std::uint64_t samples = std::min<std::uint64_t>(kBatch, range.count - done);
    job.first = range.first + done;
    job.steps = static_cast<int>((samples + kSamplesAtOnce - 1) / kSamplesAtOnce);
    FLATWISE_PICK(width, sample_deviations)(job, x.data());
    if (!in_units.students.empty()) add_students(in_units, job, std::span{x}.first(samples));
    out.tally(x, samples, width);
  }
  return out;
}

void SampledLength::add(const SampledLength& other) {
  CORE_CHECK(centre_ == other.centre_ && unit_m_ == other.unit_m_);
  count_ += other.count_;
  sum_ += other.sum_;
  square_ += other.square_;
  for (std::size_t i = 0; i < cells_.size(); ++i) cells_[i] += other.cells_[i];
}

Length SampledLength::mean() const { return centre_ + Length::from_si(unit_m_ * sum_ / static_cast<double>(count_)); }

Length SampledLength::deviation() const {
  const auto n = static_cast<double>(count_);
  if (count_ < 2) return Length{};
  return Length::from_si(unit_m_ * std::sqrt(std::max(square_ - sum_ * sum_ / n, 0.0) / (n - 1)));
}

Length SampledLength::quantile(double part) const {
  CORE_CHECK(part >= 0 && part <= 1);
  const double wanted = part * static_cast<double>(count_);
  double before = 0;
  std::size_t cell = 0;
  while (cell + 1 < cells_.size() && before + static_cast<double>(cells_[cell]) < wanted)
    before += static_cast<double>(cells_[cell++]);
  const auto here = static_cast<double>(cells_[cell]);
  const double within = here > 0 ? std::clamp((wanted - before) / here, 0.0, 1.0) : 0.5;
  const double width = 2 * kReach / kCells;
  return centre_ + Length::from_si(unit_m_ * (width * (static_cast<double>(cell) + within) - kReach));
}

Length SampledLength::standard_error(double part) const {
  const double step = std::sqrt(part * (1 - part) / static_cast<double>(count_));
  return 0.5 * (quantile(std::min(part + step, 1.0)) - quantile(std::max(part - step, 0.0)));
}

}  // namespace flatwise::stack
