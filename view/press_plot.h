// press_plot.h: the press curve of a rotor on its sheet.
#pragma once

#include <optional>

#include "view/blocks.h"

namespace flatwise::view {

struct PressPlotted {
  int rotor = 1;
  bool invented = false;             ///< The shaft is a demo's.
  const Working& band;               ///< press-force: what is to be expected when the ring is home.
  std::optional<AnyQuantity> force;  ///< What was read there.
};
/// The band over the way in and the force that was read in it. Null where the path cannot be pressed at all.
[[nodiscard]] Json press_plot(const Screen& screen, const PressPlotted& plotted);

}  // namespace flatwise::view
