// effort.h: about how long one run of a figure takes, so that whoever runs it many times, or for others, knows beforehand.
#pragma once

#include <span>

#include "core/working/figure.h"

namespace flatwise {

/// About how many microseconds one run takes with these inputs.
///
/// Model      Two and a half a plain run and an input, which is looking at inputs and little else; for the few figures that
///            search, draw, solve or integrate what was measured of them, by the inputs that make it more.
/// Inputs     As read; what is left out counts as assumed.
/// Accuracy   A factor of two or three on a plain machine: a guide for how often to run it, no measurement.
[[nodiscard]] double takes_us(const FigureSpec& spec, std::span<const Input> inputs);

}  // namespace flatwise
