// picture_json.h: a display list as the page renders it (schemas/api/openapi.json, DisplayList).
#pragma once

#include "drawing/display_list.h"
#include "wire/json.h"

namespace flatwise::view {

/// Millimetres rounded to 0.01 mm, which no eye and no screen tells apart. Written already (wire/written.h): nothing looks into it.
[[nodiscard]] wire::Json picture_json(const drawing::DisplayList& list);

}  // namespace flatwise::view
