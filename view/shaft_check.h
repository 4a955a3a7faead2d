// shaft_check.h: a definition as it is typed: what is wrong with it and where, how it is drawn, and which of the five lines are
// still to be changed (schemas/api/openapi.json, ShaftCheck).
#pragma once

#include <string_view>

#include "wire/json.h"

namespace flatwise::view {

/// `copied`: the text it was copied from; a line of the five that still says the same is 'as_copied'. Empty: nothing is known of
/// that, and a line without a problem is done. The strip is there only when the text makes a shaft.
[[nodiscard]] wire::Json shaft_check(std::string_view toml, std::string_view copied, const Voice& voice);

}  // namespace flatwise::view
