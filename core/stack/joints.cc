#include "core/stack/joints.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/units/guards.h"

namespace flatwise::stack {
namespace {

constexpr int kMoreThanFound = 8;

std::optional<Problem> not_a_chance(std::string_view field, double value) {
  if (value >= 0 && value <= 1) return std::nullopt;
  return Problem{Code{"stack.not_a_chance"}, std::string{field}, {}, {{"value", any_ratio(value)}}, std::nullopt};
}

std::optional<Problem> wrong(std::span<const Joint> joints, const JointHabits& habits) {
  if (joints.empty() || joints.size() > 2000)
    return Problem{
        Code{"stack.joint_count"}, "length", {}, {{"count", static_cast<std::int64_t>(joints.size())}}, std::nullopt};
  for (const Joint& joint : joints)
    if (auto p = not_a_chance("prior-open", joint.prior_open)) return p;
  if (auto p = not_a_chance("partly", habits.partly)) return p;
  if (auto p = not_a_chance("feeler-misses", habits.feeler_misses)) return p;
  if (auto p = not_a_chance("feeler-misleads", habits.feeler_misleads)) return p;
  if (auto p = not_above_nought("step", any(habits.step))) return p;
  if (habits.least_gap.si() >= 0 && habits.least_gap <= habits.step) return std::nullopt;
  return Problem{Code{"stack.gap_over_step"},
                 "least-gap",
                 {},
                 {{"value", any(habits.least_gap)}, {"greatest", any(habits.step)}},
                 std::nullopt};
}

struct Weights {
  double home, open;
};
Weights weights_of(const Joint& joint, const JointHabits& habits) {
  const Weights prior{1 - joint.prior_open, joint.prior_open};
  switch (joint.feeler) {
    case Feeler::not_tried:
      return prior;
    case Feeler::went_in:
      return {prior.home * habits.feeler_misleads, prior.open * (1 - habits.feeler_misses)};
    case Feeler::did_not:
      return {prior.home * (1 - habits.feeler_misleads), prior.open * habits.feeler_misses};
  }
  CORE_CHECK(false);
}

std::vector<Weights> weights_of(std::span<const Joint> joints, const JointHabits& habits) {
  std::vector<Weights> weights;
  for (const Joint& joint : joints) {
    weights.push_back(weights_of(joint, habits));
    // Many joints: keep the products away from nought. A common factor of a joint's two weights changes nothing.
    const double total = weights.back().home + weights.back().open;
    if (total > 0) weights.back() = {weights.back().home / total, weights.back().open / total};
  }
  return weights;
}

/// Weight of 0, 1, ... most joints open among all but one (left_out < 0: among all).
std::vector<double> count_weights(const std::vector<Weights>& joints, int most, int left_out) {
  std::vector<double> sums(static_cast<std::size_t>(most) + 1, 0.0);
  sums[0] = 1;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    if (static_cast<int>(j) == left_out) continue;
    for (std::size_t k = sums.size() - 1; k > 0; --k) sums[k] = sums[k] * joints[j].home + sums[k - 1] * joints[j].open;
    sums[0] *= joints[j].home;
  }
  return sums;
}

/// Every length as likely: the gaps as they are beforehand.
std::vector<StackLength::Measured> without_length(const StackLength::Gaps& gaps) {
  const double step = gaps.step.si(), least = gaps.least.si(), whole = 1 - gaps.partly;
  const double mean = whole * step + gaps.partly * 0.5 * (step + least);
  const double square = whole * step * step + gaps.partly * (step * step + step * least + least * least) / 3;
  std::vector<StackLength::Measured> out(static_cast<std::size_t>(gaps.most_open) + 1, {1.0, mean, square});
  out[0] = {1.0, 0.0, 0.0};
  return out;
}

JointGap gap_of(const StackLength::Measured& sum, const JointHabits& habits) {
  if (!(sum.density_per_m > 0)) return {};
  // Rounding of the series must not lead out of where a gap can be.
  const double mean_m = std::clamp(sum.gap / sum.density_per_m, habits.least_gap.si(), habits.step.si());
  const double variance = sum.square_m / sum.density_per_m - mean_m * mean_m;
  return {metres(mean_m), metres(std::sqrt(std::max(variance, 0.0)))};
}

}  // namespace

Result<JointChances> joint_chances(std::span<const Joint> joints, const JointHabits& habits, const StackLength& seated,
                                   std::optional<MeasuredStack> measured) {
  if (auto p = wrong(joints, habits)) return tl::unexpected(*std::move(p));
  if (measured)
    if (auto p = not_above_nought("measured-u", any(measured->standard_uncertainty)))
      return tl::unexpected(*std::move(p));
  const std::vector<Weights> weights = weights_of(joints, habits);
  const auto found = static_cast<int>(std::ranges::count(joints, Feeler::went_in, &Joint::feeler));
  const int most = std::min(static_cast<int>(joints.size()), found + kMoreThanFound);
  const StackLength::Gaps gaps{habits.least_gap, habits.step, habits.partly, most};
  const std::vector<StackLength::Measured> counted =
      measured ? seated.measured(measured->length, measured->standard_uncertainty, gaps) : without_length(gaps);
  const double scale = measured ? measured->standard_uncertainty.si() : 1;
  const auto counts = count_weights(weights, most, -1);
  double total = 0;
  for (std::size_t k = 0; k < counts.size(); ++k) total += counts[k] * counted[k].density_per_m;
  JointChances out;
  out.open.assign(joints.size(), 0.0);
  out.gap.assign(joints.size(), {});
  // The series' own rounding is 1e-15 of its peak: nothing under a millionth of a millionth of that is evidence.
  if (!(total * scale > 1e-12)) {
    out.explained = false;
    return out;
  }
  out.all_home = counts[0] * counted[0].density_per_m / total;
  for (std::size_t j = 0; j < joints.size(); ++j) {
    const auto others = count_weights(weights, most, static_cast<int>(j));
    StackLength::Measured sum;
    for (std::size_t k = 1; k < counts.size(); ++k) {
      const double weight = weights[j].open * others[k - 1];
      sum.density_per_m += weight * counted[k].density_per_m;
      sum.gap += weight * counted[k].gap;
      sum.square_m += weight * counted[k].square_m;
    }
    out.open[j] = std::min(1.0, sum.density_per_m / total);
    out.gap[j] = gap_of(sum, habits);
  }
  return out;
}

}  // namespace flatwise::stack
