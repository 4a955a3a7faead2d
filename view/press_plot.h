// press_plot.h: the press curve of a rotor on its sheet.
#pragma once

#include "view/blocks.h"

namespace flatwise::view {

/// The band over the way in and what was read in it. `band`: press-force, what is to be expected when the ring is home. Null where
/// the path cannot be pressed at all.
[[nodiscard]] Json press_plot(const Subject& subject, const Screen& screen, int rotor, const Working& band);

}  // namespace flatwise::view
