// papers.h: the papers of a stage: what is pinned above the bench or stuck on a tray while the hands are at it.
#pragma once

#include <span>
#include <string_view>

#include "view/bench_view.h"

namespace flatwise::view {

/// Sheets of a stage by their names at the printer ("timing-map"), most wanted first.
[[nodiscard]] std::span<const std::string_view> papers_of(job::Stage stage);
/// Keys that open them; null where the stage has none, or none yet: most want to know first which rotors are opened.
[[nodiscard]] Json papers_block(const Subject& subject, const Screen& screen, job::Stage stage);

}  // namespace flatwise::view
