// field_lists.h: the four lists that fields.cc hands out. Not for other folders.
#pragma once

#include "definition/fields.h"

namespace flatwise::definition {

[[nodiscard]] std::span<const Field> shaft_fields();
[[nodiscard]] std::span<const Field> readings_fields();
[[nodiscard]] std::span<const Field> workshop_fields();
[[nodiscard]] std::span<const Field> study_fields();

}  // namespace flatwise::definition
