// suspects_table.h: the suspects in order, with the reason for each: at the foot of booking in, and the sheet of finding.
#pragma once

#include "view/bench_view.h"

namespace flatwise::view {

/// Table of suspects; null where nothing points at a part. `keys`: with a key on each to open its rotor.
[[nodiscard]] Json suspects_table(const Subject& subject, const Screen& screen, bool keys);

}  // namespace flatwise::view
