// starter.h: a shaft file to begin with: commented, with the five lines to change marked.
#pragma once

#include <string>

#include "core/units/problem.h"
#include "definition/describe.h"

namespace flatwise::definition {

/// As a person types them; an empty one is the starter's own.
struct StarterOptions {
  std::string name = {};
  std::string flats = {};    ///< "6"
  std::string across = {};   ///< "1 1/2 in"
  std::string speed = {};    ///< "480 /min"
  std::string rotors = {};   ///< "9"
  std::string lean = {};     ///< "5°"
  std::string pattern = {};  ///< "facing", "step 2", or the flats: "1 4 1"
  std::string bearing = {};  ///< "55 x 100 x 21 mm": bore, outside diameter, width
  std::string spacer = {};   ///< "92 mm"
};

/// The text of a new shaft file.
///
/// Returns    TOML that read_shaft takes without a problem; it is read back before it is handed out.
/// Refuses    Options that do not make a shaft: the problems of reading it back, by field and without a place, and
///            definition.bearing_form where a bearing is not three sizes.
[[nodiscard]] Results<std::string> starter(const StarterOptions& options, const Say& say);

}  // namespace flatwise::definition
