// plausible.h: which readings no part of this definition can give. Internal to check_entry().
#pragma once

#include <optional>

#include "job/job_state.h"

namespace flatwise::job::check_detail {

/// Both ends belong to it.
struct ReadingRange {
  AnyQuantity least, greatest;
  [[nodiscard]] bool holds(AnyQuantity value) const { return value.si >= least.si && value.si <= greatest.si; }
};
/// Field of a body that has a reading, and the range outside which it is a slip of the hand, not a worn or wrong part.
struct Reading {
  std::string_view field;
  AnyQuantity value;
  ReadingRange range;
};

/// Model      A reading of a size lies between half and double the size its definition gives: a worn part, the part of another
///            size and a part that is not home stay far inside; a decimal point or a unit out of place does not. A pull on a nut
///            gives at most five times the torque wanted, a press at most what would shear the joint; both may be as small as
///            they like, since a hand may have stopped. Temperatures, vibration and minutes: what a bench and a field have.
/// Inputs     A definition that was checked, and a body about a part that is there.
/// Returns    Each reading of the body with its range; nothing for a body without one, or of a part that has no size.
/// Accuracy   The ranges are wide on purpose. They do not judge; the rules of the stage do.
/// Source     Common practice; job/README.md lists the ranges.
[[nodiscard]] std::vector<Reading> readings_of(const Shaft& shaft, const EntryBody& body);

}  // namespace flatwise::job::check_detail
