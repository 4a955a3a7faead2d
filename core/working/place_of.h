// place_of.h: the line that an origin names, for who says what is wrong with what stands there.
#pragma once

#include <optional>

#include "core/working/working.h"

namespace flatwise {

/// "shaft.toml:31" as a place; none where it was not given in a line of a file.
[[nodiscard]] std::optional<Place> place_of(const Origin& origin);

}  // namespace flatwise
