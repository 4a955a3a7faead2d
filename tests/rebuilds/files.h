// files.h: the files of a rebuild as the program reads them, for what goes beyond asking it: entries, a page.
#pragma once

#include <optional>

#include "core/shaft/shaft.h"
#include "job/bench.h"
#include "tests/rebuilds/simulate.h"

namespace rebuilds {

struct Files {
  Texts texts;
  flatwise::Shaft shaft;
  flatwise::Workshop workshop;
  flatwise::Bench bench;
  bool refused = false;  ///< A value typed in the wrong unit was refused by name, and corrected, as anybody would.
};
/// None where the files cannot be read even so.
[[nodiscard]] std::optional<Files> files_of(const Rebuild& rebuild);

}  // namespace rebuilds
