// field_lists.h: the four lists that fields.cc hands out, and the parts that the shaft's is joined from. Not for other
// folders.
#pragma once

#include "definition/fields.h"

namespace flatwise::definition {

[[nodiscard]] std::span<const Field> shaft_fields();
[[nodiscard]] std::span<const Field> readings_fields();
[[nodiscard]] std::span<const Field> workshop_fields();
[[nodiscard]] std::span<const Field> study_fields();

[[nodiscard]] std::span<const Field> rotor_fields();
[[nodiscard]] std::span<const Field> stack_fields();
[[nodiscard]] std::span<const Field> nut_fields();
[[nodiscard]] std::span<const Field> policy_fields();
[[nodiscard]] std::span<const Field> run_fields();

}  // namespace flatwise::definition
