// measure_better.h: what makes a result uncertain, and that it is to be measured better: one sentence, wherever ± is shown.
#pragma once

#include <optional>
#include <string>

#include "core/working/working.h"

namespace flatwise {

/// The input that carries the greatest part of a result's doubt.
struct GreatestDoubt {
  Word input;                                        ///< What it is called.
  std::string field = {};                            ///< Where it stands in a file; empty: in none.
  double part = 0;                                   ///< Of the result's variance, 0 to 1.
  std::optional<AnyQuantity> now = std::nullopt;     ///< Expanded uncertainty of the result.
  std::optional<AnyQuantity> halved = std::nullopt;  ///< The same if the input were known half as loosely.
};

/// The sentence; none where no input carries a quarter: halving it would take less than a tenth off the doubt.
[[nodiscard]] std::optional<Message> measure_better(const GreatestDoubt& greatest);

/// The same as a finding: a note about the whole shaft.
[[nodiscard]] std::optional<Finding> measure_better_finding(const GreatestDoubt& greatest);

}  // namespace flatwise
