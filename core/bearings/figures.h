// figures.h: what this folder can be asked: the inside of a bearing and its ratings, its clearance once fitted, the play at the rim, the
// balls under load, life and grease.
#pragma once

#include <span>
#include <string>

#include "core/working/figure.h"

namespace flatwise::bearings {

/// Source keys: section "bearings" of docs/sources.md.
[[nodiscard]] std::span<const FigureSpec> figures();

/// Input of the figure bearing-turn behind a field that turn_life() or one_turn() names: the ring's load is made of these.
[[nodiscard]] std::string turn_input_behind(std::string field);

}  // namespace flatwise::bearings
