// shaft_follows.h: what follows from a definition as it is typed: the figures, rotor 1 seen from end A, what nobody gave.
#pragma once

#include <vector>

#include "core/shaft/shaft.h"
#include "drawing/shaft_strip.h"
#include "wire/json.h"

namespace flatwise::view {

[[nodiscard]] Length stack_length(const Shaft& shaft);
/// How the rotors lean where every mark stands as the pattern wants it; upright where it cannot be timed.
[[nodiscard]] std::vector<drawing::RotorMarks> marks_by_pattern(const Shaft& shaft);
/// Facts of schemas/api/openapi.json, with what the rotors leave, how near their tines come and what turns at a hanger.
[[nodiscard]] wire::Json shaft_facts(const Shaft& shaft, const Voice& voice);
/// Rotor 1 from end A as the pattern wants its marks: a display list, and what is read aloud for it.
[[nodiscard]] wire::Json shaft_end_view(const Shaft& shaft, const Voice& voice);
/// What was assumed, in words: the field's meaning, the value taken, and why this one.
[[nodiscard]] wire::Json shaft_assumed(const Shaft& shaft, const Voice& voice);

}  // namespace flatwise::view
