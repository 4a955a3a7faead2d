// typed_entry.h: an entry as typed at the shell: "mark_seen rotor=4 half=b flat=2". The fields are those of job/entry_fields.h.
#pragma once

#include <string>
#include <vector>

#include "job/entry.h"

namespace flatwise::cli {

/// Refuses    A kind or field that there is not, a word without '=', a value that its field cannot take: all at once.
[[nodiscard]] Results<job::EntryBody> typed_entry(const std::vector<std::string>& words);
/// The kinds there are.
[[nodiscard]] std::vector<std::string> entry_kinds();

}  // namespace flatwise::cli
