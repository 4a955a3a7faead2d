// joints.h: which joint is open? Joint chances from where parts were changed, feeler readings and the measured length.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/stack/sum.h"
#include "core/units/problem.h"

namespace flatwise::stack {

enum class Feeler { not_tried, went_in, did_not };

struct Joint {
  double prior_open = 0.01;  ///< Before any reading; 1 in 100, beside a new or changed part 3 in 100: assumed.
  Feeler feeler = Feeler::not_tried;
};

/// How joints and feelers behave: all assumed until the shop knows better.
struct JointHabits {
  Length step;                     ///< What a joint adds that is not home at all.
  Length least_gap;                ///< A joint open less than this does not matter and counts as home.
  double partly = 0.5;             ///< Of open joints, the share open by less than the step (even between the two).
  double feeler_misses = 0.1;      ///< A feeler does not go into an open joint one time in ten.
  double feeler_misleads = 0.001;  ///< It goes in where a joint is home (a chamfer, a burr).
};

struct MeasuredStack {
  Length length;
  Length standard_uncertainty;
};

/// How far a joint stands open, if it is open: mean and standard deviation of what it adds to the length.
struct JointGap {
  Length mean, deviation;
};
struct JointChances {
  std::vector<double> open;   ///< One a joint, in the order given.
  std::vector<JointGap> gap;  ///< Likewise; nought where a joint cannot be open.
  double all_home = 0.0;
  bool explained = true;  ///< False: the length fits no story (too short, or longer than so many joints can add).
};

/// Chance of each joint to be open, and that all are home.
///
/// Model      Joints open independently beforehand; every open one adds the same kind of gap, so the length speaks only
///            through how many are open: exact by elementary symmetric sums, no sampling. Up to eight open joints more
///            than feelers found are carried. Without a measured length only priors and feelers speak. How far a joint
///            is open follows from the same sums, with its gap weighed by itself.
/// Refuses    No joint or over 2,000; chances outside 0 to 1; step not above nought; least gap outside 0 to step;
///            measured uncertainty not above nought.
/// Accuracy   1e-9 against the sum over all subsets (tests, 12 joints); the answer is as good as the assumed chances.
/// Source     Bayes; rule and defaults of this project.
[[nodiscard]] Result<JointChances> joint_chances(std::span<const Joint> joints, const JointHabits& habits,
                                                 const StackLength& seated, std::optional<MeasuredStack> measured);

}  // namespace flatwise::stack
