// schema.h: whether what the program says as JSON is what schemas/output/ promises.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace flatwise::end_to_end {

/// Empty when `json` is as schemas/output/NAME.schema.json says; else why not, one line a fault.
[[nodiscard]] std::string faults_against(const std::string& schema, const nlohmann::json& json);

/// The text as JSON; throws with the text where it is none.
[[nodiscard]] nlohmann::json parsed(const std::string& text);

}  // namespace flatwise::end_to_end
