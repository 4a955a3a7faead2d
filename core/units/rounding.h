// rounding.h: figures for sentences, where the working shows the rest.
#pragma once

namespace flatwise {

/// To two significant figures, halves away from nought: nobody knows a life or a bearing's limit better. Nought, infinite and NaN stay.
[[nodiscard]] double to_two_figures(double value);

}  // namespace flatwise
